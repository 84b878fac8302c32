/**
 * The lists: a first letter finds its works at once, and the counts beside a list are read from an index alone.
 * `detail` and `columnsize`: words are asked for one by one, never as a phrase, and nothing is ranked, so that the index
 * need not keep their places.
 */
import type { Migration } from '../migrate.ts'

export const firstLetters: Migration = {
  version: 4,
  name: 'first-letters',
  sql: `
DROP TABLE work_fts;
CREATE VIRTUAL TABLE work_fts USING fts5(
  title, maker, medium, date_text, credit_line, numbers, note,
  content='work', content_rowid='n', tokenize='unicode61 remove_diacritics 2',
  detail='none', columnsize=0, prefix='1 2'
);
INSERT INTO work_fts(work_fts) VALUES ('rebuild');
DROP INDEX work_lender;
CREATE INDEX work_lender ON work(lender, kind, hang_source, hang_width);
CREATE INDEX work_measured ON work(id) WHERE hang_source = 'measured';
DROP INDEX journal_key;
CREATE INDEX journal_key ON journal(key);
`,
}
