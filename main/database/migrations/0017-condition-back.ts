/**
 * The back of a work in a condition report: which side a finding lies on, measured from the left edge as it is seen
 * from behind, and the photograph that the back is drawn on, where there is one.
 */
import type { Migration } from '../migrate.ts'

export const conditionBack: Migration = {
  version: 17,
  name: 'condition-back',
  sql: `
ALTER TABLE condition_report ADD COLUMN back_picture TEXT;
ALTER TABLE condition_finding ADD COLUMN side TEXT NOT NULL DEFAULT 'front' CHECK (side IN ('front', 'back'));
`,
}
