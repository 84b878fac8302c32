/**
 * Terms of the lender's courier and of size and mass as hung; and of a term that no plan tells, what a named person said:
 * that it is so or is not, on which day, and how they know.
 */
import type { Migration } from '../migrate.ts'

export const termWords: Migration = {
  version: 30,
  name: 'term words',
  sql: `
CREATE TABLE loan_term_new (
  id TEXT PRIMARY KEY NOT NULL,
  loan TEXT NOT NULL REFERENCES loan(id) ON DELETE CASCADE,
  item TEXT REFERENCES loan_work(id) ON DELETE CASCADE,
  kind TEXT NOT NULL CHECK (kind IN ('light', 'dose', 'uv', 'humidity', 'temperature', 'glazing', 'fixing', 'framing',
    'height', 'barrier', 'apart', 'handling', 'security', 'credit', 'indemnity', 'vehicle',
    'journey', 'courier', 'hung-width', 'hung-height', 'hung-depth', 'hung-mass')),
  low REAL,
  high REAL,
  choice TEXT NOT NULL DEFAULT '',
  said TEXT NOT NULL DEFAULT '',
  position REAL NOT NULL DEFAULT 0,
  confirmed TEXT NOT NULL DEFAULT '' CHECK (confirmed IN ('', 'kept', 'not-kept')),
  confirmed_by TEXT NOT NULL DEFAULT '',
  confirmed_on TEXT NOT NULL DEFAULT '',
  confirmed_note TEXT NOT NULL DEFAULT ''
) STRICT;
INSERT INTO loan_term_new(id, loan, item, kind, low, high, choice, said, position)
  SELECT id, loan, item, kind, low, high, choice, said, position FROM loan_term;
DROP TABLE loan_term;
ALTER TABLE loan_term_new RENAME TO loan_term;
CREATE INDEX loan_term_loan ON loan_term(loan);
CREATE INDEX loan_term_item ON loan_term(item) WHERE item IS NOT NULL;
`,
}
