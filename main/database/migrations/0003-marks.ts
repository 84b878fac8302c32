/**
 * What marks need beyond the Foundation: what is behind and above a wall, fixings by wall type, locks, marks that have
 * been made, steps of a placement with their time and name, sets, labels, crews and stock. Profiles are JSON
 * `[[x, y], …]`, lists of places JSON `[x, …]`, millimetres. A made mark outlives its placement: the hole is there.
 */
import type { Migration } from '../migrate.ts'

export const marks: Migration = {
  version: 3,
  name: 'marks',
  sql: `
ALTER TABLE wall ADD COLUMN ceiling TEXT;
ALTER TABLE wall ADD COLUMN studs TEXT;
ALTER TABLE wall ADD COLUMN joints TEXT;
ALTER TABLE wall ADD COLUMN rail TEXT;
ALTER TABLE wall ADD COLUMN rail_rated REAL;
ALTER TABLE wall ADD COLUMN behind_seen TEXT NOT NULL DEFAULT '';
ALTER TABLE wall ADD COLUMN datum_by TEXT NOT NULL DEFAULT '' CHECK (datum_by IN ('', 'high', 'middle', 'ramp'));

ALTER TABLE fixing_kind ADD COLUMN head REAL;
ALTER TABLE fixing_kind ADD COLUMN bit TEXT NOT NULL DEFAULT '';
ALTER TABLE fixing_kind ADD COLUMN tool TEXT NOT NULL DEFAULT '';
ALTER TABLE fixing_kind ADD COLUMN in_stock INTEGER;
CREATE TABLE fixing_rating (
  id TEXT PRIMARY KEY NOT NULL, fixing TEXT NOT NULL REFERENCES fixing_kind(id) ON DELETE CASCADE, wall_type TEXT NOT NULL,
  rated_kg REAL, source TEXT NOT NULL DEFAULT '', UNIQUE (fixing, wall_type)
) STRICT;

ALTER TABLE placement ADD COLUMN keeper TEXT REFERENCES fixing_kind(id);
ALTER TABLE placement ADD COLUMN lock_tool TEXT NOT NULL DEFAULT '';
CREATE INDEX placement_keeper ON placement(keeper) WHERE keeper IS NOT NULL;
CREATE TABLE placement_step (
  id TEXT PRIMARY KEY NOT NULL, placement TEXT NOT NULL REFERENCES placement(id) ON DELETE CASCADE,
  state TEXT NOT NULL CHECK (state IN ('planned', 'hung', 'level', 'locked', 'checked')), at TEXT NOT NULL,
  by TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX placement_step_placement ON placement_step(placement, at);

CREATE TABLE mark (
  id TEXT PRIMARY KEY NOT NULL, exhibition TEXT NOT NULL REFERENCES exhibition(id), face TEXT NOT NULL REFERENCES face(id),
  placement TEXT REFERENCES placement(id) ON DELETE SET NULL, slot TEXT NOT NULL, x REAL NOT NULL, y REAL NOT NULL,
  bearing_y REAL NOT NULL, fixing TEXT REFERENCES fixing_kind(id), fixing_name TEXT NOT NULL DEFAULT '',
  kind TEXT NOT NULL DEFAULT '', state TEXT NOT NULL CHECK (state IN ('marked', 'drilled')),
  services_at TEXT NOT NULL DEFAULT '', services_by TEXT NOT NULL DEFAULT '',
  marked_at TEXT NOT NULL DEFAULT '', marked_by TEXT NOT NULL DEFAULT '',
  drilled_at TEXT NOT NULL DEFAULT '', drilled_by TEXT NOT NULL DEFAULT '',
  filled_at TEXT NOT NULL DEFAULT '', filled_by TEXT NOT NULL DEFAULT '', note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX mark_face ON mark(face, exhibition);
CREATE INDEX mark_exhibition ON mark(exhibition);
CREATE INDEX mark_placement ON mark(placement) WHERE placement IS NOT NULL;
CREATE INDEX mark_fixing ON mark(fixing) WHERE fixing IS NOT NULL;

ALTER TABLE work ADD COLUMN set_form TEXT NOT NULL DEFAULT '' CHECK (set_form IN ('', 'row', 'column', 'grid'));
ALTER TABLE work ADD COLUMN set_columns INTEGER;
ALTER TABLE work ADD COLUMN set_gap_x REAL;
ALTER TABLE work ADD COLUMN set_gap_y REAL;
ALTER TABLE work ADD COLUMN set_keeps TEXT NOT NULL DEFAULT '' CHECK (set_keeps IN ('', 'gaps', 'centres'));

ALTER TABLE entry ADD COLUMN label_text TEXT NOT NULL DEFAULT '';
ALTER TABLE entry ADD COLUMN label_width REAL;
ALTER TABLE entry ADD COLUMN label_height REAL;
ALTER TABLE entry ADD COLUMN label_gap REAL;
ALTER TABLE entry ADD COLUMN label_proofed TEXT NOT NULL DEFAULT '';
ALTER TABLE room ADD COLUMN label_line REAL;

ALTER TABLE exhibition ADD COLUMN crew_teams INTEGER;
ALTER TABLE exhibition ADD COLUMN crew_hours REAL;
ALTER TABLE exhibition ADD COLUMN crew_spare REAL;
CREATE TABLE method_time (
  id TEXT PRIMARY KEY NOT NULL, minutes REAL NOT NULL, source TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE TABLE equipment (
  id TEXT PRIMARY KEY NOT NULL, name TEXT NOT NULL, carries_kg REAL, reaches REAL, count INTEGER NOT NULL DEFAULT 1,
  people INTEGER NOT NULL DEFAULT 1, note TEXT NOT NULL DEFAULT ''
) STRICT;
`,
}
