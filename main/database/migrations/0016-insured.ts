/**
 * What works are worth and how much may be together: a work's own valuations, rates of exchange that a person entered,
 * and limits. Money is whole minor units of a currency by ISO 4217; a rate is a decimal as text, so that it stays as it
 * was typed. Each counts from its day. The place of a limit is the key of a room, a wall or an agreed place, without a
 * reference: rooms and walls may go.
 */
import type { Migration } from '../migrate.ts'

export const insured: Migration = {
  version: 16,
  name: 'insured',
  sql: `
CREATE TABLE work_value (
  id TEXT PRIMARY KEY NOT NULL,
  work TEXT NOT NULL REFERENCES work(id) ON DELETE CASCADE,
  value INTEGER NOT NULL CHECK (value >= 0),
  currency TEXT NOT NULL CHECK (length(currency) = 3),
  day TEXT NOT NULL,
  source TEXT NOT NULL DEFAULT '',
  by TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX work_value_work ON work_value(work, day);

CREATE TABLE exchange_rate (
  id TEXT PRIMARY KEY NOT NULL,
  from_currency TEXT NOT NULL CHECK (length(from_currency) = 3),
  to_currency TEXT NOT NULL CHECK (length(to_currency) = 3),
  rate TEXT NOT NULL,
  day TEXT NOT NULL,
  source TEXT NOT NULL DEFAULT '',
  by TEXT NOT NULL DEFAULT '',
  UNIQUE (from_currency, to_currency, day),
  CHECK (from_currency <> to_currency)
) STRICT;

CREATE TABLE value_limit (
  id TEXT PRIMARY KEY NOT NULL,
  scope TEXT NOT NULL CHECK (scope IN ('all', 'lender', 'place', 'crate', 'vehicle')),
  lender TEXT REFERENCES party(id),
  place TEXT NOT NULL DEFAULT '',
  value INTEGER NOT NULL CHECK (value > 0),
  currency TEXT NOT NULL CHECK (length(currency) = 3),
  first TEXT NOT NULL DEFAULT '', last TEXT NOT NULL DEFAULT '',
  source TEXT NOT NULL DEFAULT '',
  by TEXT NOT NULL DEFAULT '',
  CHECK (first = '' OR last = '' OR first <= last),
  CHECK ((scope = 'lender') = (lender IS NOT NULL)),
  CHECK ((scope = 'place') = (place <> ''))
) STRICT;
CREATE INDEX value_limit_lender ON value_limit(lender) WHERE lender IS NOT NULL;
`,
}
