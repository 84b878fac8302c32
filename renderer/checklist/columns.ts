/** The columns of the checklist: heading, what sorts by it, whether it can be written in, and when it gives way. */
import type { Input } from '../../src/contract/contract.ts'

export type Sort = NonNullable<Input<'work.list'>['sort']>
export type Field = 'running' | 'title' | 'maker' | 'dateText' | 'medium' | 'size' | 'lightLimit'

export interface Column {
  readonly key: string
  readonly word: string
  readonly sort: Sort | null
  readonly field: Field | null
  /** The narrower the window, the fewer columns: 1 always, 2 from 800 px, 3 from 1060 px of list. */
  readonly rank: 1 | 2 | 3
  readonly align: 'start' | 'end'
}

export const columns: readonly Column[] = [
  { key: 'running', word: '', sort: 'order', field: 'running', rank: 1, align: 'start' },
  { key: 'picture', word: '', sort: null, field: null, rank: 1, align: 'start' },
  { key: 'number', word: 'Number', sort: 'number', field: null, rank: 2, align: 'start' },
  { key: 'title', word: 'Title', sort: 'title', field: 'title', rank: 1, align: 'start' },
  { key: 'maker', word: 'Maker', sort: 'maker', field: 'maker', rank: 1, align: 'start' },
  { key: 'date', word: 'Date', sort: 'date', field: 'dateText', rank: 3, align: 'start' },
  { key: 'medium', word: 'Medium', sort: null, field: 'medium', rank: 3, align: 'start' },
  { key: 'size', word: 'H × W × D', sort: 'size', field: 'size', rank: 1, align: 'end' },
  { key: 'from', word: 'Size from', sort: null, field: null, rank: 3, align: 'start' },
  { key: 'limit', word: 'Limit', sort: 'limit', field: 'lightLimit', rank: 2, align: 'end' },
  { key: 'where', word: 'Where', sort: 'where', field: null, rank: 1, align: 'start' },
]

export const writable: readonly Field[] = columns.flatMap(column => (column.field === null ? [] : [column.field]))
