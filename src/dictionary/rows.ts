/** The data dictionary as a table: what the file itself says of its columns, and what they are called and mean. */
import { dictionary } from './dictionary.ts'

export interface StoredColumn {
  readonly name: string
  /** TEXT, REAL, INTEGER or BLOB. */
  readonly type: string
  /** Whether it may be empty. */
  readonly required: boolean
  /** The table whose key it holds; '' where it holds none. */
  readonly refers: string
  /** The only values it takes; empty where it takes any. */
  readonly values: readonly string[]
}

export interface StoredTable {
  readonly name: string
  readonly columns: readonly StoredColumn[]
}

export const dictionaryHeadings = [
  'table',
  'a row is a',
  'what the table holds',
  'column',
  'called',
  'meaning',
  'type',
  'unit',
  'may be empty',
  'only one of',
  'refers to',
] as const

/** A row a column, tables and columns in the order given. Throws for a table or column that has no words. */
export function dictionaryRows(tables: readonly StoredTable[]): readonly (readonly string[])[] {
  return tables.flatMap(({ name: table, columns }) => {
    const words = dictionary[table]
    if (words === undefined) throw new Error(`the table “${table}” has no words in the dictionary`)
    return columns.map(({ name, type, required, refers, values }) => {
      const column = words.columns[name]
      if (column === undefined) throw new Error(`“${table}.${name}” has no words in the dictionary`)
      return [
        table,
        words.one,
        words.says,
        name,
        column.called,
        column.says,
        type,
        column.unit,
        required ? 'no' : 'yes',
        values.map(value => (value === '' ? '(nothing)' : value)).join('; '),
        refers,
      ]
    })
  })
}
