/**
 * What a work is known by: what Object ID asks besides title, maker and sizes, and what a registrar of a show wants of
 * Spectrum's identification, all found by the search of the lists; and of a loan who signed it for the other house.
 */
import type { Migration } from '../migrate.ts'

export const identification: Migration = {
  version: 29,
  name: 'identification',
  sql: `
ALTER TABLE work ADD COLUMN object_name TEXT NOT NULL DEFAULT '';
ALTER TABLE work ADD COLUMN title_translation TEXT NOT NULL DEFAULT '';
ALTER TABLE work ADD COLUMN title_language TEXT NOT NULL DEFAULT '';
ALTER TABLE work ADD COLUMN inscriptions TEXT NOT NULL DEFAULT '';
ALTER TABLE work ADD COLUMN subject TEXT NOT NULL DEFAULT '';
ALTER TABLE work ADD COLUMN description TEXT NOT NULL DEFAULT '';
ALTER TABLE work ADD COLUMN place_of_origin TEXT NOT NULL DEFAULT '';
ALTER TABLE work ADD COLUMN distinguishing TEXT NOT NULL DEFAULT '';
ALTER TABLE work ADD COLUMN department TEXT NOT NULL DEFAULT '';
ALTER TABLE loan ADD COLUMN authoriser TEXT NOT NULL DEFAULT '';
DROP TABLE work_fts;
CREATE VIRTUAL TABLE work_fts USING fts5(
  title, maker, medium, date_text, credit_line, numbers, note, object_name, title_translation, inscriptions, subject,
  description, place_of_origin, distinguishing, department,
  content='work', content_rowid='n', tokenize='unicode61 remove_diacritics 2',
  detail='none', columnsize=0, prefix='1 2'
);
INSERT INTO work_fts(work_fts) VALUES ('rebuild');
`,
}
