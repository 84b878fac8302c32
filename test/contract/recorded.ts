/**
 * The records of a catalogue byte by byte, past our own code: what was there before must be there after, as it was. Which
 * tables they are is read from the triggers of the file itself, not from our list of them.
 */
import type Database from 'better-sqlite3'
import { quoted } from '../../main/database/tables.ts'

/** Every table whose rows the file’s own triggers keep from removal, the journal’s among them. */
export function onlyAdded(db: Database.Database): string[] {
  return db
    .prepare<[], string>(
      `SELECT tbl_name FROM sqlite_schema WHERE type = 'trigger' AND sql LIKE '%BEFORE DELETE ON%'
       AND sql LIKE '%raise(ABORT%' AND sql NOT LIKE '% WHEN %' ORDER BY tbl_name`,
    )
    .pluck()
    .all()
}

/** Also closed, row by row: what complete condition reports are made of. */
const sealed: Readonly<Record<string, string>> = {
  condition_report: 'id IN (SELECT report FROM condition_seal)',
  condition_finding: 'report IN (SELECT report FROM condition_seal)',
  condition_photo: 'report IN (SELECT report FROM condition_seal)',
}

export type Recorded = ReadonlyMap<string, string>

/** Each recorded row by its table and row, as SQL writes its values; `without` the tables that need not be looked at. */
export function recordedRows(db: Database.Database, without: readonly string[] = []): Recorded {
  const found = new Map<string, string>()
  const kept = onlyAdded(db).filter(table => !without.includes(table))
  const wanted = [...kept.map(table => [table, '1'] as const), ...Object.entries(sealed)]
  for (const [table, where] of wanted) {
    const columns = db
      .prepare<[string], string>('SELECT name FROM pragma_table_xinfo(?) WHERE hidden = 0 ORDER BY cid')
      .pluck()
      .all(table)
    const text = columns.map(column => `quote(${quoted(column)})`).join(` || ',' || `)
    const stored = db
      .prepare<[], { key: number; text: string }>(
        `SELECT rowid AS key, ${text} AS text FROM ${quoted(table)} WHERE ${where}`,
      )
      .all()
    for (const row of stored) found.set(`${table} ${row.key}`, row.text)
  }
  return found
}

/** The rows of `before` that are gone or say something else. */
export function touched(before: Recorded, after: Recorded): string[] {
  return [...before].filter(([key, text]) => after.get(key) !== text).map(([key, text]) => `${key}: ${text}`)
}

/** How many rows of a table are among them. */
export function countOf(rows: Recorded, table: string): number {
  return [...rows.keys()].filter(key => key.startsWith(`${table} `)).length
}
