/** What was done: the list of edits and the history of one record, read from the journal. */
import type { Output, Received } from '../../src/contract/contract.ts'
import { editsOf, historyOf, undoStateOf } from '../database/history.ts'
import type { Reading } from './service.ts'

export function state({ db, person }: Reading): Output<'edit.state'> {
  return undoStateOf(db, person?.id ?? '')
}

export function list({ db }: Reading, { offset = 0, limit = 100 }: Received<'edit.list'>): Output<'edit.list'> {
  return editsOf(db, { offset, limit })
}

export function history({ db }: Reading, { table, id }: Received<'edit.history'>): Output<'edit.history'> {
  return { changes: historyOf(db, table, id) }
}
