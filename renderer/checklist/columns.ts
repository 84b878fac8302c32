/** The columns of the checklist: heading, what sorts by it, whether it can be written in, and when it gives way. */
import type { Input } from '../../src/contract/contract.ts'

export type Sort = NonNullable<Input<'work.list'>['sort']>
export type Field = 'running' | 'title' | 'maker' | 'dateText' | 'medium' | 'size' | 'lightLimit'

export type ColumnKey =
  | 'running'
  | 'picture'
  | 'number'
  | 'title'
  | 'maker'
  | 'date'
  | 'medium'
  | 'size'
  | 'from'
  | 'limit'
  | 'where'

/** At least so many pixels, and a share of what is left. */
const share = (least: number, part: number) => `minmax(${least}px, ${part}fr)`

export interface Column {
  readonly key: ColumnKey
  readonly word: string
  readonly sort: Sort | null
  readonly field: Field | null
  /** Its track of the grid in a list from 1060 px, from 760 px, narrower; the column gives way where none is said. */
  readonly widths: readonly [wide: string, middle?: string, narrow?: string]
  readonly align: 'start' | 'end'
}

export const columns: readonly Column[] = [
  { key: 'running', word: '', sort: 'order', field: 'running', widths: ['32px', '30px', '28px'], align: 'start' },
  { key: 'picture', word: '', sort: null, field: null, widths: ['40px', '40px', '40px'], align: 'start' },
  {
    key: 'number',
    word: 'Number',
    sort: 'number',
    field: null,
    widths: [share(84, 0.7), share(80, 0.8)],
    align: 'start',
  },
  {
    key: 'title',
    word: 'Title',
    sort: 'title',
    field: 'title',
    widths: [share(150, 1.9), share(120, 1.9), share(100, 1.9)],
    align: 'start',
  },
  {
    key: 'maker',
    word: 'Maker',
    sort: 'maker',
    field: 'maker',
    widths: [share(120, 1.3), share(100, 1.3), share(76, 1.1)],
    align: 'start',
  },
  { key: 'date', word: 'Date', sort: 'date', field: 'dateText', widths: [share(58, 0.5)], align: 'start' },
  { key: 'medium', word: 'Medium', sort: null, field: 'medium', widths: [share(110, 1.2)], align: 'start' },
  {
    key: 'size',
    word: 'H × W × D',
    sort: 'size',
    field: 'size',
    widths: [share(128, 1), share(122, 1), share(116, 1)],
    align: 'end',
  },
  { key: 'from', word: 'Size from', sort: null, field: null, widths: [share(88, 0.8)], align: 'start' },
  { key: 'limit', word: 'Limit', sort: 'limit', field: 'lightLimit', widths: ['44px', '44px'], align: 'end' },
  {
    key: 'where',
    word: 'Where',
    sort: 'where',
    field: null,
    widths: [share(140, 1.5), share(120, 1.5), share(90, 1.2)],
    align: 'start',
  },
]

export const writable: readonly Field[] = columns.flatMap(column => (column.field === null ? [] : [column.field]))
