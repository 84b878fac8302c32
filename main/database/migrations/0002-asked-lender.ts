/** A question of a list may be put to its lender: since when, and by whom. It stays open until it is answered. */
import type { Migration } from '../migrate.ts'

export const askedLender: Migration = {
  version: 2,
  name: 'asked-lender',
  sql: `
ALTER TABLE import_question ADD COLUMN asked_at TEXT;
ALTER TABLE import_question ADD COLUMN asked_by TEXT;
CREATE INDEX import_question_asked ON import_question(work) WHERE asked_at IS NOT NULL AND answer IS NULL;
`,
}
