/**
 * Condition reports. A draft is changed and taken back like everything else. A signature says of which contents it is
 * (their hash), is only added, and counts as long as the report says that. A seal makes the report complete: from then
 * on triggers refuse every change of it, its findings and its signatures. A correction is a report that refers to it.
 * Findings lie on the work's face, in millimetres from its left and top edge; the face's size and the picture are the
 * report's own, as they were that day.
 */
import type { Migration } from '../migrate.ts'

export const condition: Migration = {
  version: 11,
  name: 'condition',
  sql: `
CREATE TABLE condition_term (
  id TEXT PRIMARY KEY NOT NULL,
  material TEXT NOT NULL CHECK (material IN ('painting', 'paper', 'photograph', 'textile', 'frame', 'object')),
  word TEXT NOT NULL,
  meaning TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE condition_report (
  id TEXT PRIMARY KEY NOT NULL,
  work TEXT NOT NULL REFERENCES work(id),
  kind TEXT NOT NULL CHECK (kind IN ('incoming', 'check', 'outgoing')),
  examined_at TEXT NOT NULL,
  place TEXT NOT NULL DEFAULT '',
  examiner TEXT NOT NULL DEFAULT '',
  packing TEXT NOT NULL DEFAULT '',
  note TEXT NOT NULL DEFAULT '',
  picture TEXT,
  width REAL NOT NULL, height REAL NOT NULL,
  corrects TEXT REFERENCES condition_report(id),
  why TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX condition_report_work ON condition_report(work, examined_at);
CREATE UNIQUE INDEX condition_report_corrects ON condition_report(corrects) WHERE corrects IS NOT NULL;

CREATE TABLE condition_finding (
  id TEXT PRIMARY KEY NOT NULL,
  report TEXT NOT NULL REFERENCES condition_report(id),
  position REAL NOT NULL,
  term TEXT NOT NULL DEFAULT '',
  word TEXT NOT NULL DEFAULT '',
  form TEXT NOT NULL CHECK (form IN ('mark', 'outline', 'area')),
  points TEXT NOT NULL,
  across REAL,
  age TEXT NOT NULL DEFAULT '' CHECK (age IN ('', 'old', 'new', 'unsure')),
  severity TEXT NOT NULL DEFAULT '' CHECK (severity IN ('', 'slight', 'marked', 'severe')),
  stable TEXT NOT NULL DEFAULT '' CHECK (stable IN ('', 'stable', 'unstable', 'unsure')),
  note TEXT NOT NULL DEFAULT '',
  follows TEXT REFERENCES condition_finding(id)
) STRICT;
CREATE INDEX condition_finding_report ON condition_finding(report, position, id);
CREATE INDEX condition_finding_follows ON condition_finding(follows) WHERE follows IS NOT NULL;

CREATE TABLE condition_signature (
  id TEXT PRIMARY KEY NOT NULL,
  report TEXT NOT NULL REFERENCES condition_report(id),
  role TEXT NOT NULL CHECK (role IN ('registrar', 'courier', 'conservator', 'lender', 'technician')),
  name TEXT NOT NULL CHECK (trim(name) <> ''),
  strokes TEXT NOT NULL,
  content TEXT NOT NULL,
  at TEXT NOT NULL
) STRICT;
CREATE INDEX condition_signature_report ON condition_signature(report);

CREATE TABLE condition_seal (
  id TEXT PRIMARY KEY NOT NULL,
  report TEXT NOT NULL REFERENCES condition_report(id),
  content TEXT NOT NULL,
  at TEXT NOT NULL,
  hash TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX condition_seal_report ON condition_seal(report);
`,
}
