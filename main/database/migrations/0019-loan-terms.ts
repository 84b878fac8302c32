/**
 * Terms of a loan: what is asked of how its works are shown, as figures beside the words of the agreement. Without an
 * item it is for all works of the loan. Units by kind: lx, lx h a year, µW/lm, per cent, °C, mm.
 */
import type { Migration } from '../migrate.ts'

export const loanTerms: Migration = {
  version: 19,
  name: 'loan terms',
  sql: `
CREATE TABLE loan_term (
  id TEXT PRIMARY KEY NOT NULL,
  loan TEXT NOT NULL REFERENCES loan(id) ON DELETE CASCADE,
  item TEXT REFERENCES loan_work(id) ON DELETE CASCADE,
  kind TEXT NOT NULL CHECK (kind IN ('light', 'dose', 'uv', 'humidity', 'temperature', 'glazing', 'fixing', 'framing',
    'height', 'barrier', 'apart', 'handling')),
  low REAL,
  high REAL,
  choice TEXT NOT NULL DEFAULT '',
  said TEXT NOT NULL DEFAULT '',
  position REAL NOT NULL DEFAULT 0
) STRICT;
CREATE INDEX loan_term_loan ON loan_term(loan);
CREATE INDEX loan_term_item ON loan_term(item) WHERE item IS NOT NULL;
`,
}
