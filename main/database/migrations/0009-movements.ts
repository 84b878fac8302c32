/**
 * Where things are: agreed places beyond the building's own rooms and walls, and the record of movements. A movement is
 * only added to (triggers refuse the rest); what corrects one refers to it. `place` is the key of a location, a room or
 * a face, with its words as they stood: rooms and faces may go, the record stays. What moved is a work or a crate, one
 * row each, with its time and place beside it so that an index alone answers where it was. Millimetres, hours.
 */
import type { Migration } from '../migrate.ts'

export const movements: Migration = {
  version: 9,
  name: 'movements',
  sql: `
CREATE TABLE location (
  id TEXT PRIMARY KEY NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('place', 'elsewhere', 'lift', 'crate', 'vehicle')),
  parent TEXT REFERENCES location(id),
  name TEXT NOT NULL,
  address TEXT NOT NULL DEFAULT '',
  width REAL, height REAL, depth REAL,
  hold_hours REAL,
  note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX location_parent ON location(parent) WHERE parent IS NOT NULL;

CREATE TABLE movement (
  id TEXT PRIMARY KEY NOT NULL,
  at TEXT NOT NULL,
  place TEXT NOT NULL,
  place_kind TEXT NOT NULL CHECK (place_kind IN ('location', 'room', 'face')),
  place_words TEXT NOT NULL,
  location TEXT REFERENCES location(id),
  spot TEXT NOT NULL DEFAULT '',
  method TEXT NOT NULL DEFAULT '',
  people TEXT NOT NULL DEFAULT '',
  reason TEXT NOT NULL DEFAULT '',
  condition TEXT NOT NULL DEFAULT '',
  corrects TEXT REFERENCES movement(id),
  struck INTEGER NOT NULL DEFAULT 0 CHECK (struck IN (0, 1)),
  recorded_at TEXT NOT NULL,
  recorded_by TEXT NOT NULL CHECK (recorded_by <> ''),
  hash TEXT NOT NULL
) STRICT;
CREATE INDEX movement_at ON movement(at);
CREATE INDEX movement_location ON movement(location) WHERE location IS NOT NULL;
CREATE UNIQUE INDEX movement_corrects ON movement(corrects) WHERE corrects IS NOT NULL;

CREATE TABLE moved (
  id TEXT PRIMARY KEY NOT NULL,
  movement TEXT NOT NULL REFERENCES movement(id),
  work TEXT REFERENCES work(id),
  crate TEXT REFERENCES location(id),
  at TEXT NOT NULL,
  place TEXT NOT NULL,
  from_place TEXT NOT NULL DEFAULT '',
  from_words TEXT NOT NULL DEFAULT '',
  CHECK ((work IS NULL) <> (crate IS NULL))
) STRICT;
CREATE INDEX moved_movement ON moved(movement);
CREATE INDEX moved_work ON moved(work, at, movement, place) WHERE work IS NOT NULL;
CREATE INDEX moved_crate ON moved(crate, at, movement, place) WHERE crate IS NOT NULL;
`,
}
