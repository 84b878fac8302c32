/**
 * Limits for the works that one bears alone, and for what a vehicle carries on one journey; terms of loans of security,
 * credit line and of how much may be together. Of money `high` is whole minor units and `choice` the currency.
 */
import type { Migration } from '../migrate.ts'

export const borne: Migration = {
  version: 25,
  name: 'borne',
  sql: `
CREATE TABLE value_limit_new (
  id TEXT PRIMARY KEY NOT NULL,
  scope TEXT NOT NULL CHECK (scope IN ('all', 'lender', 'place', 'crate', 'vehicle', 'journey')),
  lender TEXT REFERENCES party(id),
  place TEXT NOT NULL DEFAULT '',
  bearer TEXT NOT NULL DEFAULT '' CHECK (bearer IN ('', 'house', 'lender', 'borrower', 'indemnity', 'nobody')),
  value INTEGER NOT NULL CHECK (value > 0),
  currency TEXT NOT NULL CHECK (length(currency) = 3),
  first TEXT NOT NULL DEFAULT '', last TEXT NOT NULL DEFAULT '',
  source TEXT NOT NULL DEFAULT '',
  by TEXT NOT NULL DEFAULT '',
  CHECK (first = '' OR last = '' OR first <= last),
  CHECK ((scope = 'lender') = (lender IS NOT NULL)),
  CHECK ((scope = 'place') = (place <> ''))
) STRICT;
INSERT INTO value_limit_new(id, scope, lender, place, value, currency, first, last, source, by)
  SELECT id, scope, lender, place, value, currency, first, last, source, by FROM value_limit;
DROP TABLE value_limit;
ALTER TABLE value_limit_new RENAME TO value_limit;
CREATE INDEX value_limit_lender ON value_limit(lender) WHERE lender IS NOT NULL;

CREATE TABLE loan_term_new (
  id TEXT PRIMARY KEY NOT NULL,
  loan TEXT NOT NULL REFERENCES loan(id) ON DELETE CASCADE,
  item TEXT REFERENCES loan_work(id) ON DELETE CASCADE,
  kind TEXT NOT NULL CHECK (kind IN ('light', 'dose', 'uv', 'humidity', 'temperature', 'glazing', 'fixing', 'framing',
    'height', 'barrier', 'apart', 'handling', 'security', 'credit', 'indemnity', 'vehicle', 'journey')),
  low REAL,
  high REAL,
  choice TEXT NOT NULL DEFAULT '',
  said TEXT NOT NULL DEFAULT '',
  position REAL NOT NULL DEFAULT 0
) STRICT;
INSERT INTO loan_term_new(id, loan, item, kind, low, high, choice, said, position)
  SELECT id, loan, item, kind, low, high, choice, said, position FROM loan_term;
DROP TABLE loan_term;
ALTER TABLE loan_term_new RENAME TO loan_term;
CREATE INDEX loan_term_loan ON loan_term(loan);
CREATE INDEX loan_term_item ON loan_term(item) WHERE item IS NOT NULL;
`,
}
