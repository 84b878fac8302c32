/**
 * Receipts of loans: works received by this house, sent out by it, acknowledged by the other side. A receipt is only
 * added to (triggers refuse the rest); one that was wrong is set right, or struck, by a row that refers to it. Days are
 * of the calendar; names, places and crates are kept in words, for they are what was on the paper that was signed.
 */
import type { Migration } from '../migrate.ts'

export const receipts: Migration = {
  version: 22,
  name: 'receipts',
  sql: `
CREATE TABLE loan_receipt (
  id TEXT PRIMARY KEY NOT NULL,
  loan TEXT NOT NULL REFERENCES loan(id),
  number TEXT NOT NULL CHECK (number <> ''),
  number_norm TEXT NOT NULL UNIQUE,
  kind TEXT NOT NULL CHECK (kind IN ('received', 'sent', 'acknowledged')),
  day TEXT NOT NULL,
  place TEXT NOT NULL DEFAULT '',
  handed_by TEXT NOT NULL DEFAULT '',
  received_by TEXT NOT NULL DEFAULT '',
  note TEXT NOT NULL DEFAULT '',
  corrects TEXT REFERENCES loan_receipt(id),
  struck INTEGER NOT NULL DEFAULT 0 CHECK (struck IN (0, 1)),
  why TEXT NOT NULL DEFAULT '',
  recorded_at TEXT NOT NULL,
  recorded_by TEXT NOT NULL CHECK (recorded_by <> ''),
  hash TEXT NOT NULL,
  CHECK (struck = 0 OR corrects IS NOT NULL)
) STRICT;
CREATE INDEX loan_receipt_loan ON loan_receipt(loan);
CREATE UNIQUE INDEX loan_receipt_corrects ON loan_receipt(corrects) WHERE corrects IS NOT NULL;

CREATE TABLE loan_receipt_work (
  id TEXT PRIMARY KEY NOT NULL,
  receipt TEXT NOT NULL REFERENCES loan_receipt(id),
  item TEXT NOT NULL REFERENCES loan_work(id),
  work TEXT NOT NULL REFERENCES work(id),
  condition TEXT NOT NULL DEFAULT '',
  crate TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX loan_receipt_work_receipt ON loan_receipt_work(receipt);
CREATE INDEX loan_receipt_work_item ON loan_receipt_work(item);
CREATE INDEX loan_receipt_work_work ON loan_receipt_work(work);
`,
}
