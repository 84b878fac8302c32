/**
 * Photographs of a condition report. The file lies beside the catalogue under its hash, as every picture does; what a
 * photograph shows, of which findings, when and by whom it was taken is said here and closes with the report's seal.
 */
import type { Migration } from '../migrate.ts'

export const conditionPhotos: Migration = {
  version: 12,
  name: 'condition-photos',
  sql: `
CREATE TABLE condition_photo (
  id TEXT PRIMARY KEY NOT NULL,
  report TEXT NOT NULL REFERENCES condition_report(id),
  position REAL NOT NULL,
  hash TEXT NOT NULL,
  mime TEXT NOT NULL,
  name TEXT NOT NULL,
  width_px INTEGER NOT NULL,
  height_px INTEGER NOT NULL,
  shows TEXT NOT NULL DEFAULT '',
  findings TEXT NOT NULL DEFAULT '[]',
  taken_at TEXT,
  taken_from TEXT NOT NULL DEFAULT '' CHECK (taken_from IN ('', 'camera', 'file', 'person')),
  taken_by TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX condition_photo_report ON condition_photo(report, position, id);
`,
}
