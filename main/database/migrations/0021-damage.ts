/**
 * Damage: what was found, and every word on it afterwards. Both are only added to (triggers refuse the rest); a word
 * that was wrong is struck by one that refers to it. A reference is never used twice, in whatever letters. Whether a
 * damage is open follows from its last word that closes or reopens it. Moments in UTC.
 */
import type { Migration } from '../migrate.ts'

export const damage: Migration = {
  version: 21,
  name: 'damage',
  sql: `
CREATE TABLE damage (
  id TEXT PRIMARY KEY NOT NULL,
  reference TEXT NOT NULL COLLATE NOCASE CHECK (trim(reference) <> ''),
  work TEXT NOT NULL REFERENCES work(id),
  found_at TEXT NOT NULL,
  reported_at TEXT NOT NULL,
  reporter TEXT NOT NULL CHECK (trim(reporter) <> ''),
  how TEXT NOT NULL DEFAULT '',
  circumstances TEXT NOT NULL DEFAULT '',
  report TEXT REFERENCES condition_report(id),
  recorded_at TEXT NOT NULL,
  recorded_by TEXT NOT NULL CHECK (recorded_by <> ''),
  hash TEXT NOT NULL,
  CHECK (found_at <= reported_at)
) STRICT;
CREATE UNIQUE INDEX damage_reference ON damage(reference);
CREATE INDEX damage_work ON damage(work, found_at);
CREATE INDEX damage_report ON damage(report) WHERE report IS NOT NULL;

CREATE TABLE damage_word (
  id TEXT PRIMARY KEY NOT NULL,
  damage TEXT NOT NULL REFERENCES damage(id),
  kind TEXT NOT NULL CHECK (kind IN ('owner told', 'insurer told', 'action', 'report', 'note', 'struck', 'closed', 'reopened')),
  at TEXT NOT NULL,
  whom TEXT NOT NULL DEFAULT '',
  how TEXT NOT NULL DEFAULT '',
  said TEXT NOT NULL DEFAULT '',
  report TEXT REFERENCES condition_report(id),
  strikes TEXT REFERENCES damage_word(id),
  recorded_at TEXT NOT NULL,
  recorded_by TEXT NOT NULL CHECK (recorded_by <> ''),
  hash TEXT NOT NULL,
  CHECK ((kind = 'report') = (report IS NOT NULL)),
  CHECK ((kind = 'struck') = (strikes IS NOT NULL))
) STRICT;
CREATE INDEX damage_word_damage ON damage_word(damage);
CREATE INDEX damage_word_report ON damage_word(report) WHERE report IS NOT NULL;
CREATE UNIQUE INDEX damage_word_strikes ON damage_word(strikes) WHERE strikes IS NOT NULL;
`,
}
