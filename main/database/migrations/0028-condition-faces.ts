/**
 * More sides of a work in a condition report: the frame as a side of its own, and the sides of what has a depth. A
 * finding on one of them keeps its name in `face`; what lies on the front or the back has none. How deep the work was
 * that day is kept with its width and height.
 */
import type { Migration } from '../migrate.ts'

export const conditionFaces: Migration = {
  version: 28,
  name: 'condition-faces',
  sql: `
ALTER TABLE condition_report ADD COLUMN depth REAL;
ALTER TABLE condition_finding ADD COLUMN face TEXT NOT NULL DEFAULT ''
  CHECK (face IN ('', 'frame', 'left', 'right', 'top', 'bottom'));
`,
}
