/**
 * Movements that are planned: what is to go where on which day, with how and by whom. They are written and undone like
 * everything else. What was carried names the plan that it fulfilled, with its words: a plan may go, the record stays.
 */
import type { Migration } from '../migrate.ts'

export const plannedMoves: Migration = {
  version: 31,
  name: 'planned moves',
  sql: `
CREATE TABLE planned_move (
  id TEXT PRIMARY KEY NOT NULL,
  work TEXT REFERENCES work(id) ON DELETE CASCADE,
  crate TEXT REFERENCES location(id) ON DELETE CASCADE,
  place TEXT NOT NULL,
  place_words TEXT NOT NULL,
  spot TEXT NOT NULL DEFAULT '',
  day TEXT NOT NULL,
  hour TEXT NOT NULL DEFAULT '',
  method TEXT NOT NULL DEFAULT '',
  people TEXT NOT NULL DEFAULT '',
  hands INTEGER CHECK (hands > 0),
  reason TEXT NOT NULL DEFAULT '',
  note TEXT NOT NULL DEFAULT '',
  CHECK ((work IS NULL) <> (crate IS NULL))
) STRICT;
CREATE INDEX planned_move_day ON planned_move(day);
CREATE INDEX planned_move_work ON planned_move(work) WHERE work IS NOT NULL;
CREATE INDEX planned_move_crate ON planned_move(crate) WHERE crate IS NOT NULL;

ALTER TABLE moved ADD COLUMN plan TEXT NOT NULL DEFAULT '';
ALTER TABLE moved ADD COLUMN plan_words TEXT NOT NULL DEFAULT '';
CREATE INDEX moved_plan ON moved(plan) WHERE plan <> '';
`,
}
