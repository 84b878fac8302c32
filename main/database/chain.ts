/** What every chain of records shares: the link that the next row of a table joins. */
import type { ReadHandle } from './handles.ts'

/** Tables whose rows carry a hash over themselves and the row before. */
type ChainedTable =
  | 'movement'
  | 'condition_seal'
  | 'damage'
  | 'damage_word'
  | 'loan_receipt'
  | 'climate_file'
  | 'light_reading'

/** The hash of the newest row; empty before the first. */
export function lastLink(db: ReadHandle, table: ChainedTable): string {
  const found = db.prepare(`SELECT hash FROM ${table} ORDER BY rowid DESC LIMIT 1`).get() as
    | { hash: string }
    | undefined // the select list
  return found?.hash ?? ''
}
