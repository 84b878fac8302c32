/** Which tables the journal keeps, and how the few others are exempt, each with its reason. */
import type Database from 'better-sqlite3'
import type { ReadHandle } from './handles.ts'

/** Tables without journal triggers. A table that is neither here nor journaled fails a test. */
export const exempt: Readonly<Record<string, string>> = {
  schema_step: 'says which migrations ran; written by migrations alone',
  edit: 'is the journal itself: the list of edits',
  edit_now: 'is the journal itself: the edit under way, empty outside a transaction',
  journal: 'is the journal itself: the entries',
  sheet_print: 'a record: the printed paper exists whatever is undone; only added to, by its own triggers',
  movement: 'a record: what was carried where, when and by whom; a correction is a row that refers to what it corrects',
  moved: 'a record: what each movement carried, and from where',
  condition_signature:
    'a record: who signed which contents of a condition report, and when; one signs anew, never otherwise',
  condition_seal: 'a record: that a condition report is complete; what it says is closed by triggers from then on',
  light_reading: 'a record: what a meter showed at a work; one that was wrong is struck by a row that refers to it',
  climate_file: 'a record: a logger’s file brought in for a room; a wrong one is withdrawn by a row that refers to it',
  climate_day: 'a record: the readings of a logger’s file, a day a row',
  damage: 'a record: what was found damaged, when and by whom; what is wrong in it is told by a word on it',
  damage_word: 'a record: a word on a damage; one that was wrong is struck by a row that refers to it',
  loan_receipt:
    'a record: works of a loan received, sent, acknowledged; one that was wrong is set right by a row that refers to it',
  loan_receipt_work: 'a record: the works of each receipt, in which condition and crate',
  edit_reason: 'a record: why an edit was made, as somebody said it',
  picture_tone: 'follows from the bytes of a picture: what is computed is nobody’s edit, and can be computed again',
}

/** Records: only added to. Undo never touches them. */
export const records = [
  'sheet_print',
  'movement',
  'moved',
  'condition_signature',
  'condition_seal',
  'light_reading',
  'climate_file',
  'climate_day',
  'damage',
  'damage_word',
  'loan_receipt',
  'loan_receipt_work',
  'edit_reason',
] as const

export interface TableShape {
  readonly name: string
  readonly columns: readonly string[]
}

interface Named {
  readonly name: string
}

export function quoted(name: string): string {
  return `"${name.replaceAll('"', '""')}"`
}

export function literal(text: string): string {
  return `'${text.replaceAll("'", "''")}'`
}

const ordinary = `SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY name`

/** Every ordinary table of the catalogue: neither SQLite's own nor the text index's. */
export function ordinaryTables(db: Pick<Database.Database, 'prepare'> | ReadHandle): string[] {
  return (db.prepare(ordinary).all() as Named[]).map(({ name }) => name) // the select list
}

export function shapeOf(db: Database.Database, name: string): TableShape {
  // Stored columns only: a generated one (hidden 2 or 3) follows from the others.
  const columns = db
    .prepare<[string], Named>('SELECT name FROM pragma_table_xinfo(?) WHERE hidden = 0 ORDER BY cid')
    .all(name)
  return { name, columns: columns.map(column => column.name) }
}

export function journaledTables(db: Database.Database): TableShape[] {
  return ordinaryTables(db)
    .filter(name => !Object.hasOwn(exempt, name))
    .map(name => shapeOf(db, name))
}
