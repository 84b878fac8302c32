/**
 * How the works of a section hang: in one row, in stacks, or in grids of like frames; how many, how far apart, how alike
 * they are at least, and between which heights their edges stay (null: the house rule's). Millimetres.
 */
import type { Migration } from '../migrate.ts'

export const sectionHang: Migration = {
  version: 10,
  name: 'section hang',
  sql: `
ALTER TABLE section ADD COLUMN hang TEXT NOT NULL DEFAULT 'row' CHECK (hang IN ('row', 'stacks', 'grid'));
ALTER TABLE section ADD COLUMN rows INTEGER NOT NULL DEFAULT 2;
ALTER TABLE section ADD COLUMN columns INTEGER NOT NULL DEFAULT 4;
ALTER TABLE section ADD COLUMN align TEXT NOT NULL DEFAULT 'axis' CHECK (align IN ('axis', 'left', 'right'));
ALTER TABLE section ADD COLUMN gap_down REAL NOT NULL DEFAULT 80;
ALTER TABLE section ADD COLUMN gap_across REAL NOT NULL DEFAULT 80;
ALTER TABLE section ADD COLUMN alike REAL NOT NULL DEFAULT 50;
ALTER TABLE section ADD COLUMN lowest REAL;
ALTER TABLE section ADD COLUMN highest REAL;
`,
}
