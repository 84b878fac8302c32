/**
 * The air of rooms. A logger's file and its readings are a record: only added to, a wrong file is withdrawn by a row
 * that refers to it. Readings are kept a day a row as short texts (src/climate/pack.ts): a year of one every five
 * minutes takes half a megabyte. What a room is held to is journaled; an empty limit is the house rule's.
 * A room is named by its key and the words it had, and bears no reference, as in movements.
 */
import type { Migration } from '../migrate.ts'

export const climate: Migration = {
  version: 20,
  name: 'climate',
  sql: `
CREATE TABLE climate_file (
  id TEXT PRIMARY KEY NOT NULL,
  room TEXT NOT NULL,
  room_words TEXT NOT NULL,
  name TEXT NOT NULL,
  file_hash TEXT NOT NULL,
  logger TEXT NOT NULL,
  read_as TEXT NOT NULL,
  told TEXT NOT NULL,
  count INTEGER NOT NULL,
  first TEXT NOT NULL, last TEXT NOT NULL,
  note TEXT NOT NULL DEFAULT '',
  withdraws TEXT REFERENCES climate_file(id),
  recorded_at TEXT NOT NULL,
  recorded_by TEXT NOT NULL CHECK (recorded_by <> '')
) STRICT;
CREATE INDEX climate_file_room ON climate_file(room, logger, first);
CREATE UNIQUE INDEX climate_file_withdraws ON climate_file(withdraws) WHERE withdraws IS NOT NULL;

CREATE TABLE climate_day (
  id TEXT PRIMARY KEY NOT NULL,
  file TEXT NOT NULL REFERENCES climate_file(id),
  day INTEGER NOT NULL,
  seconds TEXT NOT NULL,
  celsius TEXT NOT NULL,
  humidity TEXT NOT NULL,
  count INTEGER NOT NULL
) STRICT;
CREATE INDEX climate_day_file ON climate_day(file, day);

CREATE TABLE climate_limit (
  id TEXT PRIMARY KEY NOT NULL,
  room TEXT NOT NULL UNIQUE REFERENCES room(id) ON DELETE CASCADE,
  humidity_low REAL, humidity_high REAL, humidity_change REAL,
  celsius_low REAL, celsius_high REAL, celsius_change REAL,
  why TEXT NOT NULL DEFAULT ''
) STRICT;
`,
}
