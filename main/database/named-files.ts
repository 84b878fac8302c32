/** Which kept files a catalogue names: in its rows, or in its journal, from where undo could bring them back. */
import type Database from 'better-sqlite3'

const tables = ['picture', 'document', 'underlay'] as const

export function namedInRows(db: Database.Database): Set<string> {
  const hashes = db
    .prepare<[], string>(tables.map(table => `SELECT hash FROM ${table}`).join(' UNION '))
    .pluck()
    .all()
  return new Set(hashes)
}

/** Rows and journal: a removed row's entry holds its hash, so a removed picture can come back. */
export function namedAnywhere(db: Database.Database): Set<string> {
  const names = tables.map(table => `'${table}'`).join(', ')
  const gone = db
    .prepare<[], string | null>(
      `SELECT DISTINCT json_extract(data, CASE op WHEN 'd' THEN '$.hash' ELSE '$.hash[0]' END) FROM journal
       WHERE tbl IN (${names}) AND op IN ('d', 'u')`,
    )
    .pluck()
    .all()
  return new Set([...namedInRows(db), ...gone.filter(hash => hash !== null)])
}
