/**
 * Removed rows by what they were a part of, so that a record's history finds those without reading the whole journal.
 * A row is a part of one other at most; where it has several of these columns, the first is that one's.
 */
import type { Migration } from '../migrate.ts'

/** In this order; `removedWith` asks for exactly this, and a test holds it against the dictionary's words. */
export const withinColumns = [
  'placement',
  'layout',
  'entry',
  'report',
  'zone',
  'work',
  'room',
  'wall',
  'face',
  'fixing',
  'run',
  'building',
  'exhibition',
  'subject',
] as const

/** Parts of a rule name walls, rooms and works too; a rule in other tables is no key. */
export const partsOfRule = ['hang_rule_work', 'hang_rule_place'] as const

/** Of a removal's entry: the key of what the row was a part of. */
export const removedFrom = `coalesce(iif(tbl IN (${partsOfRule.map(name => `'${name}'`).join(', ')}), data ->> 'rule', NULL), ${withinColumns.map(column => `data ->> '${column}'`).join(', ')})`

export const removedRows: Migration = {
  version: 14,
  name: 'removed rows',
  sql: `
CREATE INDEX journal_removed ON journal(tbl, ${removedFrom}) WHERE op = 'd';
`,
}
