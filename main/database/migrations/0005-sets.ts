/** What a part of a set hangs on, where it is not what its whole set hangs on. */
import type { Migration } from '../migrate.ts'

export const sets: Migration = {
  version: 5,
  name: 'sets',
  sql: `
CREATE TABLE placement_part (
  id TEXT PRIMARY KEY NOT NULL, placement TEXT NOT NULL REFERENCES placement(id) ON DELETE CASCADE,
  work TEXT NOT NULL REFERENCES work(id) ON DELETE CASCADE, fixing TEXT REFERENCES fixing_kind(id),
  keeper TEXT REFERENCES fixing_kind(id), lock_tool TEXT NOT NULL DEFAULT '', hooks_apart REAL, UNIQUE (placement, work)
) STRICT;
CREATE INDEX placement_part_work ON placement_part(work);
CREATE INDEX placement_part_fixing ON placement_part(fixing) WHERE fixing IS NOT NULL;
CREATE INDEX placement_part_keeper ON placement_part(keeper) WHERE keeper IS NOT NULL;
`,
}
