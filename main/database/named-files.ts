/** Which kept files a catalogue names: in its rows, or in its journal, from where undo could bring them back. */
import type Database from 'better-sqlite3'

/** By table, the columns that hold a file's hash. */
const columns = {
  picture: ['hash'],
  document: ['hash'],
  underlay: ['hash'],
  condition_report: ['picture', 'back_picture'],
  condition_photo: ['hash'],
} as const
const named = Object.entries(columns).flatMap(([table, each]) => each.map(column => [table, column] as const))

export function namedInRows(db: Database.Database): Set<string> {
  const hashes = db
    .prepare<[], string>(
      named.map(([table, column]) => `SELECT ${column} FROM ${table} WHERE ${column} IS NOT NULL`).join(' UNION '),
    )
    .pluck()
    .all()
  return new Set(hashes)
}

/** Rows and journal: a removed row's entry holds its hash, so a removed picture can come back. */
export function namedAnywhere(db: Database.Database): Set<string> {
  const gone = named.flatMap(([table, column]) =>
    db
      .prepare<[string], string | null>(
        `SELECT DISTINCT json_extract(data, CASE op WHEN 'd' THEN '$.${column}' ELSE '$.${column}[0]' END) FROM journal
         WHERE tbl = ? AND op IN ('d', 'u')`,
      )
      .pluck()
      .all(table),
  )
  return new Set([...namedInRows(db), ...gone.filter(hash => hash !== null)])
}
