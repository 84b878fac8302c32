/**
 * Why an edit was made: what a person said of it, then or later. Only added to; whoever knows better says so beside it.
 * Moments in UTC.
 */
import type { Migration } from '../migrate.ts'

export const editReason: Migration = {
  version: 24,
  name: 'edit reason',
  sql: `
CREATE TABLE edit_reason (
  id TEXT PRIMARY KEY NOT NULL,
  edit INTEGER NOT NULL REFERENCES edit(id),
  why TEXT NOT NULL CHECK (trim(why) <> ''),
  recorded_at TEXT NOT NULL,
  recorded_by TEXT NOT NULL CHECK (recorded_by <> '')
) STRICT;
CREATE INDEX edit_reason_edit ON edit_reason(edit);
`,
}
