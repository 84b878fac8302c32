/**
 * Light that works receive: how many hours a show is lit on which days, and readings of a meter at a work. A reading
 * is only added to (triggers refuse the rest); one that was wrong is struck by a row that refers to it. Lux, hours,
 * UV as microwatts per lumen; `weekdays` has a bit a day, Monday the lowest; days are of the calendar, not moments,
 * so that a changed clock makes no day longer.
 */
import type { Migration } from '../migrate.ts'

export const light: Migration = {
  version: 13,
  name: 'light',
  sql: `
CREATE TABLE hours_lit (
  id TEXT PRIMARY KEY NOT NULL,
  exhibition TEXT NOT NULL REFERENCES exhibition(id) ON DELETE CASCADE,
  kind TEXT NOT NULL CHECK (kind IN ('open', 'cleaning', 'installing', 'event', 'closed')),
  first TEXT NOT NULL, last TEXT NOT NULL,
  weekdays INTEGER NOT NULL DEFAULT 127 CHECK (weekdays BETWEEN 1 AND 127),
  hours REAL NOT NULL CHECK (hours BETWEEN 0 AND 24),
  lux REAL,
  note TEXT NOT NULL DEFAULT '',
  CHECK (first <= last)
) STRICT;
CREATE INDEX hours_lit_exhibition ON hours_lit(exhibition, first);

CREATE TABLE light_reading (
  id TEXT PRIMARY KEY NOT NULL,
  work TEXT NOT NULL REFERENCES work(id),
  at TEXT NOT NULL,
  points TEXT NOT NULL,
  lux REAL NOT NULL,
  uv REAL,
  meter TEXT NOT NULL DEFAULT '',
  note TEXT NOT NULL DEFAULT '',
  strikes TEXT REFERENCES light_reading(id),
  recorded_at TEXT NOT NULL,
  recorded_by TEXT NOT NULL CHECK (recorded_by <> '')
) STRICT;
CREATE INDEX light_reading_work ON light_reading(work, at);
CREATE UNIQUE INDEX light_reading_strikes ON light_reading(strikes) WHERE strikes IS NOT NULL;
`,
}
