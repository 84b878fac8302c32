/** Random edits over every journaled table, from a seed: what the journal's tests replay. */
import type { WriteHandle } from '../../../main/database/handles.ts'

export function randomFrom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    // Numerical Recipes' quick generator: enough to shuffle steps, and the same on every machine.
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 2 ** 32
  }
}

interface Column {
  readonly name: string
  readonly type: string
  readonly notnull: number
  readonly refers: string | null
}

export interface Table {
  readonly name: string
  readonly columns: readonly Column[]
}

type Value = string | number | null

const texts = [
  '',
  'Salt pans, evening',
  'd\'Ävila “q” "r"',
  '{"a":1}',
  '[1]',
  'null',
  '5',
  'x'.repeat(60),
  '日本\u2009½',
  'AND OR NEAR',
]
const reals = [0.1 + 0.2, 1e-300, -0, 622.3, 1e15 + 0.5, 24.5 * 25.4]
/** Columns that the tables hold to a few values. */
const choices: Readonly<Record<string, readonly Value[]>> = {
  length_unit: ['mm', 'cm', 'in'],
  paper: ['A4', 'A3', 'Letter', 'Tabloid'],
  fraction: [8, 16, 32],
  hang_source: ['', 'listed', 'measured'],
  mass_source: ['', 'listed', 'measured'],
  'work_size.kind': ['listed', 'measured'],
  'work_mass.kind': ['listed', 'measured'],
  seen_from: ['front', 'back'],
  'exhibition.state': ['planning', 'installing', 'open', 'closing'],
  'placement.state': ['planned', 'hung', 'level', 'locked', 'checked'],
  'placement_step.state': ['planned', 'hung', 'level', 'locked', 'checked'],
  'mark.state': ['marked', 'drilled'],
  datum_by: ['', 'high', 'middle', 'ramp'],
  set_form: ['', 'row', 'column', 'grid'],
  set_keeps: ['', 'gaps', 'centres'],
  side: ['a', 'b'],
  'survey.kind': ['side', 'diagonal', 'angle'],
  'survey.how': ['drawn', 'measured'],
  'section.hang': ['row', 'stacks', 'grid'],
  align: ['axis', 'left', 'right'],
  used: [0, 1],
  'zone.kind': ['climate', 'light'],
  reachable: [0, 1],
  round: [0, 1],
  shown: [0, 1],
  approximate: [0, 1],
  chosen: [0, 1],
  held: [0, 1],
  'hang_rule.kind': ['side by side', 'not facing', 'only on', 'first', 'axis'],
  'location.kind': ['place', 'elsewhere', 'lift', 'crate', 'vehicle'],
  material: ['painting', 'paper', 'photograph', 'textile', 'frame', 'object'],
  'condition_report.kind': ['incoming', 'check', 'outgoing'],
  form: ['mark', 'outline', 'area'],
  'condition_finding.side': ['front', 'back'],
  'condition_finding.face': ['', 'frame', 'left', 'right', 'top', 'bottom'],
  age: ['', 'old', 'new', 'unsure'],
  severity: ['', 'slight', 'marked', 'severe'],
  stable: ['', 'stable', 'unstable', 'unsure'],
  taken_from: ['', 'camera', 'file', 'person'],
  way: ['in', 'out'],
  'loan.first': ['', '2031-03-01'],
  'loan.last': ['', '2031-03-01', '2031-09-01'],
  'loan_work.value': [null, 0, 4_500_000],
  'loan_work.currency': ['', 'EUR'],
  'loan_term.kind': ['light', 'uv', 'glazing', 'barrier', 'vehicle'],
  'loan_term.confirmed': ['', 'kept', 'not-kept'],
  insured_by: ['', 'lender', 'borrower', 'indemnity', 'nobody'],
  'work_value.value': [0, 4_500_000],
  'work_value.currency': ['EUR', 'CHF'],
  from_currency: ['EUR', 'CHF'],
  to_currency: ['USD', 'JPY'],
  'value_limit.scope': ['all', 'lender', 'crate', 'vehicle', 'journey'],
  bearer: ['', 'house', 'indemnity'],
  'value_limit.place': [''],
  'value_limit.value': [1, 4_500_000],
  'value_limit.currency': ['EUR', 'CHF'],
  'value_limit.first': ['', '2031-03-01'],
  'value_limit.last': ['', '2031-03-01', '2031-09-01'],
  'hours_lit.kind': ['open', 'cleaning', 'installing', 'event', 'closed'],
  'hours_lit.first': ['2031-03-01'],
  'hours_lit.last': ['2031-03-01', '2031-04-01'],
  weekdays: [1, 64, 127],
  hours: [0, 7.5, 24],
  within: ['', 'wall', 'room', 'section', 'show'],
  in_force: [0, 1],
  said_in: ['', 'notBeside', 'loanTerms'],
  'planned_move.hands': [null, 1, 4],
  'planned_move.day': ['2031-03-01', '2031-04-01'],
}

export function tablesOf(db: WriteHandle, names: readonly string[]): Table[] {
  return names.map(name => ({
    name,
    columns: db
      .prepare(
        `SELECT c.name, c.type, c."notnull", f."table" AS refers FROM pragma_table_info('${name}') AS c
         LEFT JOIN pragma_foreign_key_list('${name}') AS f ON f."from" = c.name WHERE c.name <> 'n'`,
      )
      .all() as Column[], // the select list
  }))
}

export interface Chance {
  readonly random: () => number
  readonly newId: () => string
}

function pick<T>(random: () => number, from: readonly T[]): T {
  const found = from[Math.floor(random() * from.length)]
  if (found === undefined) throw new Error('nothing to pick from')
  return found
}

function anId(db: WriteHandle, random: () => number, table: string): string | undefined {
  const { count } = db.prepare(`SELECT count(*) AS count FROM ${table}`).get() as { count: number } // the select list
  if (count === 0) return undefined
  const row = db.prepare(`SELECT id FROM ${table} ORDER BY id LIMIT 1 OFFSET ?`).get(Math.floor(random() * count))
  return (row as { id: string }).id // the select list
}

/** Undefined where a needed reference has nothing to refer to. */
function valueFor(db: WriteHandle, { random, newId }: Chance, table: string, column: Column): Value | undefined {
  if (column.name === 'id') return newId()
  if (column.refers !== null) {
    if (column.notnull === 0 && random() < 0.4) return null
    return anId(db, random, column.refers) ?? (column.notnull === 0 ? null : undefined)
  }
  const choice = choices[`${table}.${column.name}`] ?? choices[column.name]
  if (choice !== undefined) return pick(random, choice)
  if (column.notnull === 0 && random() < 0.2) return null
  if (column.type === 'TEXT') return random() < 0.5 ? pick(random, texts) : newId()
  if (column.type === 'REAL') return random() < 0.4 ? pick(random, reals) : random() * 1e4
  return Math.floor(random() * 1e6)
}

function insertOne(db: WriteHandle, chance: Chance, { name, columns }: Table): void {
  const values = columns.map(column => valueFor(db, chance, name, column))
  if (values.includes(undefined)) return
  const names = columns.map(column => column.name)
  // Some come in as upserts, which is another path through the triggers.
  const upsert = chance.random() < 0.2 ? ` ON CONFLICT (id) DO UPDATE SET ${names[1]} = excluded.${names[1]}` : ''
  if (upsert !== '' && chance.random() < 0.5)
    values[names.indexOf('id')] = anId(db, chance.random, name) ?? chance.newId()
  db.prepare(`INSERT INTO ${name} (${names.join(', ')}) VALUES (${names.map(() => '?').join(', ')})${upsert}`).run(
    ...values,
  )
}

function updateSome(db: WriteHandle, chance: Chance, { name, columns }: Table): void {
  const { random } = chance
  const column = pick(
    random,
    columns.filter(each => each.name !== 'id'),
  )
  const value = valueFor(db, chance, name, column)
  const id = anId(db, random, name)
  if (value === undefined || id === undefined) return
  if (column.type === 'REAL' && column.refers === null && random() < 0.2)
    db.prepare(`UPDATE ${name} SET ${column.name} = ${column.name} + 0.1`).run()
  else db.prepare(`UPDATE ${name} SET ${column.name} = ? WHERE id = ?`).run(value, id)
}

function deleteOne(db: WriteHandle, { random }: Chance, { name }: Table): void {
  const id = anId(db, random, name)
  if (id !== undefined) db.prepare(`DELETE FROM ${name} WHERE id = ?`).run(id)
}

/** One step: mostly additions and changes. It may fail on a rule of the tables; then the edit is rolled back. */
export function randomStep(db: WriteHandle, chance: Chance, tables: readonly Table[]): void {
  const table = pick(chance.random, tables)
  const what = chance.random()
  if (what < 0.55) insertOne(db, chance, table)
  else if (what < 0.85) updateSome(db, chance, table)
  else deleteOne(db, chance, table)
}
