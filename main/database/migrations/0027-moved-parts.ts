/**
 * What moved in its set: the set that a part was carried in, so that a set which is taken apart later leaves its record
 * as it was, and the condition in which each thing of a movement arrived, where more than its whole was looked at.
 */
import type { Migration } from '../migrate.ts'

export const movedParts: Migration = {
  version: 27,
  name: 'moved-parts',
  sql: `
ALTER TABLE moved ADD COLUMN part_of TEXT REFERENCES work(id);
ALTER TABLE moved ADD COLUMN condition TEXT NOT NULL DEFAULT '';
CREATE INDEX moved_part_of ON moved(part_of) WHERE part_of IS NOT NULL;
`,
}
