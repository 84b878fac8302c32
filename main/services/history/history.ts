/** What was done: the list of edits, what one of them changed, and the history of one record with its parts. */
import type { RecordChange } from '../../../src/contract/areas/history.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { dictionary } from '../../../src/dictionary/dictionary.ts'
import { amountIn } from '../../../src/dictionary/money-said.ts'
import {
  type Entry,
  editsOf,
  entriesOf,
  entriesOfEdit,
  type Json,
  peopleOf,
  type Reason,
  reasonsOf,
  undoStateOf,
} from '../../database/history.ts'
import { exempt } from '../../database/tables.ts'
import { notFound } from '../change.ts'
import { signed } from '../record/record.ts'
import type { Reading, Writing } from '../service.ts'
import { insert, value } from '../sql.ts'
import { Rows, rowOf, writtenBy } from './rows.ts'

export function state({ db, person }: Reading): Output<'edit.state'> {
  return undoStateOf(db, person?.id ?? '')
}

export function list(
  { db }: Reading,
  { find = '', person = '', from, until, offset = 0, limit = 100 }: Received<'edit.list'>,
): Output<'edit.list'> {
  if (from !== undefined && until !== undefined && until <= from) {
    throw new Refusal('dates-reversed', 'The last day is before the first. Put the days in order.', { field: 'until' })
  }
  // In one form, so that texts sort as moments do.
  const inOneForm = (moment: string | undefined) => (moment === undefined ? '' : new Date(moment).toISOString())
  const days = { from: inOneForm(from), until: inOneForm(until) }
  return { ...editsOf(db, { find, person, ...days, offset, limit }), people: peopleOf(db) }
}

const empty = (value: Json | undefined): boolean => value === null || value === undefined || value === ''

/** An entry in words; `all` are the entries of the same row, oldest first. */
function said(reading: Reading, rows: Rows, entry: Entry, all: readonly Entry[]): RecordChange {
  const { table, key, kind } = entry
  const words = dictionary[table]
  const later = all.filter(({ seq }) => seq > entry.seq)
  const after = kind === 'removed' ? {} : writtenBy(later, rowOf(reading.db, { table, key }, all))
  const fields =
    kind === 'added'
      ? Object.entries(after).map(([column, value]): [string, readonly [Json, Json]] => [column, [null, value]])
      : Object.entries(entry.fields)
  const before = { ...after, ...Object.fromEntries(fields.map(([column, [from]]) => [column, from])) }
  const nameOf = (column: string, value: Json) => {
    const there = rows.refers(table, column)
    return there === '' || typeof value !== 'string' ? null : rows.name({ table: there, key: value })
  }
  return {
    edit: entry.edit,
    at: entry.at,
    person: entry.person,
    label: entry.label,
    kind,
    table,
    key,
    one: words?.one ?? table,
    called: rows.name({ table, key }),
    fields: fields
      .filter(
        ([column, [from, to]]) =>
          column !== 'id' && words?.columns[column]?.follows !== true && !(empty(from) && empty(to)),
      )
      .map(([column, [from, to]]) => ({
        column,
        called: words?.columns[column]?.called ?? column,
        unit: words?.columns[column]?.unit ?? '',
        from,
        to,
        names: [
          nameOf(column, from) ?? amountIn(table, column, before),
          nameOf(column, to) ?? amountIn(table, column, after),
        ],
      })),
  }
}

export function history(
  reading: Reading,
  { table, id, limit = 500 }: Received<'edit.history'>,
): Output<'edit.history'> {
  const rows = new Rows(reading.db)
  if (!rows.known(table) || Object.hasOwn(exempt, table)) throw notFound('table', 'table')
  const entries = rows.belonging({ table, key: id }).map(kept => entriesOf(reading.db, kept.table, kept.key))
  const newest = entries.flatMap(all => all.map(entry => ({ entry, all }))).sort((a, b) => b.entry.seq - a.entry.seq)
  const reasons = new Map<number, readonly Reason[]>()
  const reasonsAt = (edit: number) => {
    const known = reasons.get(edit) ?? reasonsOf(reading.db, edit)
    reasons.set(edit, known)
    return [...known]
  }
  return {
    total: newest.length,
    changes: newest
      .slice(0, limit)
      .map(({ entry, all }) => ({ ...said(reading, rows, entry, all), reasons: reasonsAt(entry.edit) })),
  }
}

export function changes(
  reading: Reading,
  { edit, offset = 0, limit = 100 }: Received<'edit.changes'>,
): Output<'edit.changes'> {
  const found = entriesOfEdit(reading.db, edit, { offset, limit })
  if (found === null) throw notFound('edit', 'edit')
  const rows = new Rows(reading.db)
  return {
    total: found.total,
    reasons: reasonsOf(reading.db, edit),
    changes: found.entries.map(entry => said(reading, rows, entry, entriesOf(reading.db, entry.table, entry.key))),
  }
}

export function explain(writing: Writing, { edit, why, by }: Received<'edit.explain'>): Output<'edit.explain'> {
  const { db } = writing
  const recorded = signed(writing, by)
  if (value(db, 'SELECT id FROM edit WHERE id = :edit', { edit }) === undefined) throw notFound('edit', 'edit')
  const id = writing.newId()
  insert(db, 'edit_reason', { id, edit, why, recorded_at: writing.now(), recorded_by: recorded })
  return { id }
}
