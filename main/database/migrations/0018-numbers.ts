/** Of each number of a work: since when it has it, who wrote it down, and a note. Former numbers are a kind of their own. */
import type { Migration } from '../migrate.ts'

export const numbers: Migration = {
  version: 18,
  name: 'numbers',
  sql: `
ALTER TABLE work_number ADD COLUMN since TEXT NOT NULL DEFAULT '';
ALTER TABLE work_number ADD COLUMN "by" TEXT NOT NULL DEFAULT '';
ALTER TABLE work_number ADD COLUMN note TEXT NOT NULL DEFAULT '';
`,
}
