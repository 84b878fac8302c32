/**
 * Loans: an agreement with a lender or borrower, the people of it, and its works with the value that was agreed for it.
 * A value is whole minor units (cents) of a currency by ISO 4217, both or neither; days are of the calendar.
 * Rows of a loan are found as its parts before they are found as a work's, so that its history is whole.
 */
import type { Migration } from '../migrate.ts'
import { withinColumns as closed, partsOfRule } from './0014-removed-rows.ts'

/** In this order; `removedWith` asks for exactly this, and a test holds it against the dictionary's words. */
export const withinColumns = ['loan', ...closed] as const

/** Of a removal's entry: the key of what the row was a part of. */
export const removedFrom = `coalesce(iif(tbl IN (${partsOfRule.map(name => `'${name}'`).join(', ')}), data ->> 'rule', NULL), ${withinColumns.map(column => `data ->> '${column}'`).join(', ')})`

export const loans: Migration = {
  version: 15,
  name: 'loans',
  sql: `
CREATE TABLE loan (
  id TEXT PRIMARY KEY NOT NULL,
  party TEXT NOT NULL REFERENCES party(id),
  way TEXT NOT NULL DEFAULT 'in' CHECK (way IN ('in', 'out')),
  number TEXT NOT NULL,
  purpose TEXT NOT NULL DEFAULT '',
  first TEXT NOT NULL DEFAULT '', last TEXT NOT NULL DEFAULT '',
  agreed TEXT NOT NULL DEFAULT '',
  credit_line TEXT NOT NULL DEFAULT '',
  note TEXT NOT NULL DEFAULT '',
  closed TEXT NOT NULL DEFAULT '',
  CHECK (first = '' OR last = '' OR first <= last)
) STRICT;
CREATE INDEX loan_party ON loan(party);

CREATE TABLE loan_contact (
  id TEXT PRIMARY KEY NOT NULL,
  loan TEXT NOT NULL REFERENCES loan(id) ON DELETE CASCADE,
  name TEXT NOT NULL,
  role TEXT NOT NULL DEFAULT '',
  reach TEXT NOT NULL DEFAULT '',
  position REAL NOT NULL DEFAULT 0
) STRICT;
CREATE INDEX loan_contact_loan ON loan_contact(loan);

CREATE TABLE loan_work (
  id TEXT PRIMARY KEY NOT NULL,
  loan TEXT NOT NULL REFERENCES loan(id) ON DELETE CASCADE,
  work TEXT NOT NULL REFERENCES work(id),
  item TEXT NOT NULL DEFAULT '',
  value INTEGER CHECK (value >= 0),
  currency TEXT NOT NULL DEFAULT '',
  insured_by TEXT NOT NULL DEFAULT '' CHECK (insured_by IN ('', 'lender', 'borrower', 'indemnity', 'nobody')),
  note TEXT NOT NULL DEFAULT '',
  position REAL NOT NULL DEFAULT 0,
  UNIQUE (loan, work),
  CHECK ((value IS NULL) = (currency = ''))
) STRICT;
CREATE INDEX loan_work_work ON loan_work(work);

DROP INDEX journal_removed;
CREATE INDEX journal_removed ON journal(tbl, ${removedFrom}) WHERE op = 'd';
`,
}
