/** A row as it stood at a moment, told backwards from what it is now. */
import type { ReadHandle } from '../../database/handles.ts'
import { type Entry, entriesOf, type Row, removedFromAny } from '../../database/history.ts'
import { type Kept, rowOf, writtenBy } from './rows.ts'

export interface AsOf {
  /** Null where it was not there: written down later, or taken away by then. */
  readonly row: Row | null
  /** The first entry after that moment; null where nothing was done to it since. */
  readonly next: Entry | null
}

/** `at`: an ISO moment, which counts as past. */
export function asOf(db: ReadHandle, kept: Kept, at: string): AsOf {
  const entries = entriesOf(db, kept.table, kept.key)
  const last = rowOf(db, kept, entries)
  const later = entries.filter(entry => entry.at > at)
  const [first] = later
  if (first === undefined) return { row: entries.at(-1)?.kind === 'removed' ? null : last, next: null }
  return { row: first.kind === 'added' ? null : writtenBy(later, last), next: first }
}

interface Taken {
  readonly key: string
  readonly row: Row
  readonly at: string
  readonly person: string
}

/** Rows that were parts of a record at a moment and are there no more: what each was then, and when it went. */
export function takenSince(db: ReadHandle, table: string, record: string, at: string): Taken[] {
  return removedFromAny(db, table, [record]).flatMap(key => {
    const { row } = asOf(db, { table, key }, at)
    const gone = entriesOf(db, table, key).at(-1)
    if (row === null || gone?.kind !== 'removed' || gone.at <= at) return []
    return [{ key, row, at: gone.at, person: gone.person }]
  })
}
