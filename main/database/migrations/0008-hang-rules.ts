/**
 * Rules that a coordinator gives a show: works that stay, hang together or apart, on these walls or not on those, first
 * or last, on the axis of a doorway or a bench. A rule names works, not their entries, so that it rests while a work is
 * out of the show and holds again when it is back. Its places are walls, rooms, a doorway or a bench, whichever the kind
 * asks for. `said` is the note of a work that it was made from, as it stood then.
 */
import type { Migration } from '../migrate.ts'

export const hangRules: Migration = {
  version: 8,
  name: 'hang rules',
  sql: `
CREATE TABLE hang_rule (
  id TEXT PRIMARY KEY NOT NULL,
  exhibition TEXT NOT NULL REFERENCES exhibition(id) ON DELETE CASCADE,
  kind TEXT NOT NULL CHECK (kind IN ('stays', 'side by side', 'in this order', 'one wall', 'not beside', 'not facing',
    'only on', 'not on', 'first', 'last', 'axis')),
  within TEXT NOT NULL DEFAULT '' CHECK (within IN ('', 'wall', 'room', 'section', 'show')),
  in_force INTEGER NOT NULL DEFAULT 1 CHECK (in_force IN (0, 1)),
  reason TEXT NOT NULL DEFAULT '',
  said_of TEXT REFERENCES work(id) ON DELETE SET NULL,
  said_in TEXT NOT NULL DEFAULT '' CHECK (said_in IN ('', 'notBeside', 'loanTerms')),
  said TEXT NOT NULL DEFAULT '',
  position REAL NOT NULL DEFAULT 0
) STRICT;
CREATE INDEX hang_rule_exhibition ON hang_rule(exhibition);
CREATE INDEX hang_rule_said_of ON hang_rule(said_of);

CREATE TABLE hang_rule_work (
  id TEXT PRIMARY KEY NOT NULL,
  rule TEXT NOT NULL REFERENCES hang_rule(id) ON DELETE CASCADE,
  work TEXT NOT NULL REFERENCES work(id) ON DELETE CASCADE,
  position REAL NOT NULL DEFAULT 0
) STRICT;
CREATE INDEX hang_rule_work_rule ON hang_rule_work(rule);
CREATE INDEX hang_rule_work_work ON hang_rule_work(work);

CREATE TABLE hang_rule_place (
  id TEXT PRIMARY KEY NOT NULL,
  rule TEXT NOT NULL REFERENCES hang_rule(id) ON DELETE CASCADE,
  face TEXT REFERENCES face(id) ON DELETE CASCADE,
  room TEXT REFERENCES room(id) ON DELETE CASCADE,
  opening TEXT REFERENCES opening(id) ON DELETE CASCADE,
  standing TEXT REFERENCES standing(id) ON DELETE CASCADE,
  position REAL NOT NULL DEFAULT 0
) STRICT;
CREATE INDEX hang_rule_place_rule ON hang_rule_place(rule);
CREATE INDEX hang_rule_place_face ON hang_rule_place(face);
CREATE INDEX hang_rule_place_room ON hang_rule_place(room);
CREATE INDEX hang_rule_place_opening ON hang_rule_place(opening);
CREATE INDEX hang_rule_place_standing ON hang_rule_place(standing);
`,
}
