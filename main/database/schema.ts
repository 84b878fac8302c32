/** What the file itself says of its tables: columns, their types and references, and the only values that some take. */
import type { StoredTable } from '../../src/dictionary/rows.ts'
import type { ReadHandle } from './handles.ts'
import { ordinaryTables } from './tables.ts'

interface Column {
  readonly name: string
  readonly type: string
  readonly required: 0 | 1
}

/** The values of `CHECK (column IN ('a', 'b'))`; the only form in which migrations limit a column to words. */
function valuesOf(sql: string, column: string): readonly string[] {
  const [, list] = new RegExp(`CHECK \\(${column} IN \\(([^)]*)\\)`).exec(sql) ?? []
  return [...(list ?? '').matchAll(/'((?:[^']|'')*)'|(-?\d+)/g)].map(
    ([, text, figure]) => text?.replaceAll("''", "'") ?? figure ?? '',
  )
}

/** Every ordinary table, by name; stored columns in their order. */
export function schemaOf(db: ReadHandle): readonly StoredTable[] {
  return ordinaryTables(db).map(name => {
    const { sql } = db.prepare(`SELECT sql FROM sqlite_master WHERE type = 'table' AND name = ?`).get(name) as {
      sql: string
    } // the select list
    const refers = new Map(
      (
        db.prepare('SELECT "from" AS here, "table" AS there FROM pragma_foreign_key_list(?)').all(name) as {
          here: string
          there: string
        }[]
      ).map(({ here, there }) => [here, there]), // the select list
    )
    const columns = db
      .prepare('SELECT name, type, "notnull" AS required FROM pragma_table_xinfo(?) WHERE hidden = 0 ORDER BY cid')
      .all(name) as Column[] // the select list
    return {
      name,
      columns: columns.map(column => ({
        name: column.name,
        type: column.type,
        required: column.required === 1,
        refers: refers.get(column.name) ?? '',
        values: valuesOf(sql, column.name),
      })),
    }
  })
}
