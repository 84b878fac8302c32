/**
 * The plan: where rooms stand in the building, what was measured of them and when, walls that two rooms share, and what
 * stands on the floor. What has an `exhibition` belongs to that show alone; the rest is the building's.
 */
import type { Migration } from '../migrate.ts'

export const plan: Migration = {
  version: 6,
  name: 'plan',
  sql: `
ALTER TABLE building ADD COLUMN north REAL;
ALTER TABLE room ADD COLUMN at_x REAL;
ALTER TABLE room ADD COLUMN at_y REAL;
ALTER TABLE room ADD COLUMN turn REAL NOT NULL DEFAULT 0;
ALTER TABLE room ADD COLUMN storey TEXT NOT NULL DEFAULT '';
ALTER TABLE room ADD COLUMN floor_level REAL;
ALTER TABLE wall ADD COLUMN thickness REAL;
ALTER TABLE wall ADD COLUMN backs TEXT REFERENCES wall(id) ON DELETE SET NULL;
ALTER TABLE wall ADD COLUMN exhibition TEXT REFERENCES exhibition(id);
CREATE INDEX wall_backs ON wall(backs) WHERE backs IS NOT NULL;
CREATE INDEX wall_exhibition ON wall(exhibition) WHERE exhibition IS NOT NULL;
ALTER TABLE opening ADD COLUMN swing TEXT NOT NULL DEFAULT '';
ALTER TABLE opening ADD COLUMN leads_to TEXT REFERENCES room(id) ON DELETE SET NULL;
ALTER TABLE opening ADD COLUMN other TEXT REFERENCES opening(id) ON DELETE SET NULL;
ALTER TABLE opening ADD COLUMN depth REAL;
CREATE INDEX opening_leads_to ON opening(leads_to) WHERE leads_to IS NOT NULL;
CREATE INDEX opening_other ON opening(other) WHERE other IS NOT NULL;
ALTER TABLE keep_clear ADD COLUMN depth REAL;
ALTER TABLE keep_clear ADD COLUMN reachable INTEGER NOT NULL DEFAULT 0 CHECK (reachable IN (0, 1));
ALTER TABLE keep_clear ADD COLUMN side TEXT NOT NULL DEFAULT 'a' CHECK (side IN ('a', 'b'));

CREATE TABLE survey (
  id TEXT PRIMARY KEY NOT NULL, room TEXT NOT NULL REFERENCES room(id) ON DELETE CASCADE,
  kind TEXT NOT NULL CHECK (kind IN ('side', 'diagonal', 'angle')), wall TEXT REFERENCES wall(id) ON DELETE CASCADE,
  from_corner TEXT REFERENCES corner(id) ON DELETE CASCADE, to_corner TEXT REFERENCES corner(id) ON DELETE CASCADE,
  value REAL NOT NULL, text TEXT NOT NULL DEFAULT '', how TEXT NOT NULL DEFAULT 'measured' CHECK (how IN ('drawn', 'measured')),
  used INTEGER NOT NULL DEFAULT 1 CHECK (used IN (0, 1)), at TEXT NOT NULL DEFAULT '', by TEXT NOT NULL DEFAULT '',
  note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX survey_room ON survey(room, kind);
CREATE INDEX survey_wall ON survey(wall) WHERE wall IS NOT NULL;
CREATE INDEX survey_from_corner ON survey(from_corner) WHERE from_corner IS NOT NULL;
CREATE INDEX survey_to_corner ON survey(to_corner) WHERE to_corner IS NOT NULL;

CREATE TABLE standing (
  id TEXT PRIMARY KEY NOT NULL, room TEXT NOT NULL REFERENCES room(id), exhibition TEXT REFERENCES exhibition(id),
  kind TEXT NOT NULL, name TEXT NOT NULL DEFAULT '', x REAL NOT NULL, y REAL NOT NULL, turn REAL NOT NULL DEFAULT 0,
  width REAL NOT NULL, depth REAL NOT NULL, height REAL, bottom REAL NOT NULL DEFAULT 0,
  round INTEGER NOT NULL DEFAULT 0 CHECK (round IN (0, 1)), data TEXT, note TEXT NOT NULL DEFAULT '',
  position REAL NOT NULL DEFAULT 0
) STRICT;
CREATE INDEX standing_room ON standing(room);
CREATE INDEX standing_exhibition ON standing(exhibition) WHERE exhibition IS NOT NULL;
CREATE TABLE track (
  id TEXT PRIMARY KEY NOT NULL, room TEXT NOT NULL REFERENCES room(id), name TEXT NOT NULL DEFAULT '',
  from_x REAL NOT NULL, from_y REAL NOT NULL, to_x REAL NOT NULL, to_y REAL NOT NULL, height REAL,
  note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX track_room ON track(room);
CREATE TABLE zone (
  id TEXT PRIMARY KEY NOT NULL, building TEXT NOT NULL REFERENCES building(id),
  kind TEXT NOT NULL CHECK (kind IN ('climate', 'light')), name TEXT NOT NULL, note TEXT NOT NULL DEFAULT '',
  position REAL NOT NULL DEFAULT 0
) STRICT;
CREATE INDEX zone_building ON zone(building);
CREATE TABLE zone_room (
  id TEXT PRIMARY KEY NOT NULL, zone TEXT NOT NULL REFERENCES zone(id) ON DELETE CASCADE,
  room TEXT NOT NULL REFERENCES room(id) ON DELETE CASCADE, UNIQUE (zone, room)
) STRICT;
CREATE INDEX zone_room_room ON zone_room(room);
CREATE TABLE underlay (
  id TEXT PRIMARY KEY NOT NULL, building TEXT NOT NULL REFERENCES building(id), storey TEXT NOT NULL DEFAULT '',
  hash TEXT NOT NULL, mime TEXT NOT NULL DEFAULT '', name TEXT NOT NULL DEFAULT '', width_px INTEGER NOT NULL,
  height_px INTEGER NOT NULL, at_x REAL NOT NULL DEFAULT 0, at_y REAL NOT NULL DEFAULT 0, mm_per_px REAL NOT NULL DEFAULT 1,
  turn REAL NOT NULL DEFAULT 0, shown INTEGER NOT NULL DEFAULT 1 CHECK (shown IN (0, 1))
) STRICT;
CREATE INDEX underlay_building ON underlay(building);
`,
}
