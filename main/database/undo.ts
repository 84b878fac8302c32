/**
 * Undo and redo: an edit of its own that applies an earlier edit's entries in reverse, journaled by the same triggers.
 * It goes through only if it writes exactly the mirror of what it takes back; else nothing changes, and the refusal
 * says what stands in the way and whose it is. Nothing is suppressed, removed or rewritten.
 */
import type Database from 'better-sqlite3'
import { Refusal } from '../../src/contract/refusal.ts'
import { type Edited, runEdit, type Who } from './edit.ts'
import { isConstraint } from './faults.ts'
import { readHandle } from './handles.ts'
import { type Target, targetOf } from './history.ts'
import { journaledTables, literal, quoted } from './tables.ts'
import { withTextRebuilt } from './triggers.ts'
import { inTheWay, type Obstacle, refuseClosedShow } from './undo-way.ts'

export interface Entry {
  readonly seq: number
  readonly tbl: string
  readonly key: string
  readonly op: 'i' | 'u' | 'd'
  readonly data: string | null
}

export interface Span {
  readonly first_seq: number
  readonly last_seq: number
}

/** What a long replay tells on its way. `progress` may throw: then nothing was changed. */
export interface TakingBack {
  readonly progress: (done: number, total: number, words: string) => void
}

/** From here on the text index is built anew once instead of followed row by row. */
const manyWorks = 5000
const pageOf = 2000

/** Thrown inside the transaction to roll it back; the refusal is made after, from the journal as it was. */
class Blocked extends Error {
  readonly obstacle: Obstacle | null
  constructor(obstacle: Obstacle | null) {
    super('something stands in the way')
    this.obstacle = obstacle
  }
}

export function entries(
  db: Database.Database,
  { first_seq, last_seq }: Span,
  way: 'ASC' | 'DESC',
  onPage: (count: number) => void = () => {},
): Iterable<Entry> {
  const from = db.prepare<[number, number], Entry>(
    `SELECT seq, tbl, key, op, data FROM journal WHERE seq BETWEEN ? AND ? ORDER BY seq ${way} LIMIT ${pageOf}`,
  )
  // In pages: while an iterator is open, its connection cannot write.
  return (function* () {
    let low = first_seq
    let high = last_seq
    for (;;) {
      const page = from.all(low, high)
      yield* page
      onPage(page.length)
      const end = page.at(-1)
      if (end === undefined || page.length < pageOf) return
      if (way === 'ASC') low = end.seq + 1
      else high = end.seq - 1
    }
  })()
}

function columnsOfUpdate(data: string): string[] {
  return Object.keys(JSON.parse(data) as object) // an object by the trigger that wrote it
}

/** Applies the entries in reverse, each to exactly one row. */
function replay(db: Database.Database, span: Span, onPage: (count: number) => void): void {
  const columns = new Map(journaledTables(db).map(table => [table.name, table.columns]))
  const prepared = new Map<string, Database.Statement<unknown[]>>()
  function run(sql: string, values: Record<string, string | null>): void {
    let statement = prepared.get(sql)
    if (statement === undefined) {
      statement = db.prepare(sql)
      prepared.set(sql, statement)
    }
    if (statement.run(values).changes !== 1) throw new Blocked(null)
  }
  for (const { tbl, key, op, data } of entries(db, span, 'DESC', onPage)) {
    const table = quoted(tbl)
    if (op === 'i') run(`DELETE FROM ${table} WHERE id = :key`, { key })
    else if (op === 'u') {
      const set = columnsOfUpdate(data ?? '{}').map(
        c => `${quoted(c)} = json_extract(:data, ${literal(`$."${c}"[0]`)})`,
      )
      run(`UPDATE ${table} SET ${set.join(', ')} WHERE id = :key`, { key, data })
    } else {
      const names = columns.get(tbl) ?? []
      const values = names.map(c => `json_extract(:data, ${literal(`$."${c}"`)})`)
      run(`INSERT INTO ${table} (${names.map(quoted).join(', ')}) VALUES (${values.join(', ')})`, { data })
    }
  }
}

function swapped(data: string): string {
  const pairs = Object.entries(JSON.parse(data) as Record<string, [unknown, unknown]>) // the trigger's form of an update
  return JSON.stringify(Object.fromEntries(pairs.map(([column, [before, after]]) => [column, [after, before]])))
}

const mirrored = { i: 'd', u: 'u', d: 'i' } as const

function mirrors(done: Entry, written: Entry): boolean {
  if (done.tbl !== written.tbl || done.key !== written.key || mirrored[done.op] !== written.op) return false
  return done.op !== 'u' || swapped(done.data ?? '{}') === JSON.stringify(JSON.parse(written.data ?? '{}'))
}

/** The first written entry that mirrors nothing; null where all is as it should be. */
function strayEntry(db: Database.Database, done: Span, written: Span, onPage: (count: number) => void): Entry | null {
  const back = entries(db, done, 'DESC')[Symbol.iterator]()
  for (const entry of entries(db, written, 'ASC', onPage)) {
    const { value: of } = back.next() as { value: Entry | undefined } // undefined past the end
    if (of === undefined || !mirrors(of, entry)) return entry
  }
  return null
}

function takeBack(db: Database.Database, span: Span, first: number, onPage: (count: number) => void): void {
  // Rows come back in an order in which their references may not be there yet.
  db.pragma('defer_foreign_keys = ON')
  replay(db, span, onPage)
  const last = Number(db.prepare('SELECT max(seq) FROM journal').pluck().get())
  const written = { first_seq: first, last_seq: last }
  const stray = strayEntry(db, span, written, onPage)
  if (stray !== null) throw new Blocked({ kind: 'row', table: stray.tbl, key: stray.key, before: first })
  if (last - first !== span.last_seq - span.first_seq) throw new Blocked(null)
  const broken = db
    .prepare<[], { table: string; rowid: number }>('SELECT "table", rowid FROM pragma_foreign_key_check LIMIT 1')
    .get()
  if (broken !== undefined) {
    const key = db
      .prepare(`SELECT id FROM ${quoted(broken.table)} WHERE rowid = ?`)
      .pluck()
      .get(broken.rowid)
    throw new Blocked({ kind: 'row', table: broken.table, key: String(key), before: first })
  }
}

export async function undoOrRedo(
  db: Database.Database,
  file: string,
  way: 'undo' | 'redo',
  person: Who,
  at: string,
  telling: TakingBack = { progress: () => {} },
): Promise<Edited<string>> {
  let target: Target | undefined
  try {
    return await runEdit(
      db,
      file,
      {
        procedure: `edit.${way}`,
        person,
        at,
        get undoes() {
          return target?.id ?? null
        },
        label: () => `${way === 'undo' ? 'Undo' : 'Redo'}: ${target?.label ?? ''}`,
      },
      (_, first) => {
        target = targetOf(readHandle(db), way, person.id)
        if (target === undefined) {
          throw new Refusal(
            `nothing-to-${way}`,
            way === 'undo' ? 'There is nothing of yours to undo.' : 'There is nothing to redo.',
          )
        }
        const span = db.prepare<[number], Span>('SELECT first_seq, last_seq FROM edit WHERE id = ?').get(target.id)
        if (span === undefined) throw new Error(`Edit ${target.id} is not there`)
        refuseClosedShow(db, span, target.label)
        const later = inTheWay(db, { kind: 'later', span })
        if (later !== null) throw blocked(target.label, later)
        const works = db
          .prepare<[number, number], number>(
            `SELECT count(*) FROM (SELECT 1 FROM journal WHERE seq BETWEEN ? AND ? AND tbl = 'work' LIMIT ${manyWorks})`,
          )
          .pluck()
          .get(span.first_seq, span.last_seq)
        const { label } = target
        const words = `${way === 'undo' ? 'Taking back' : 'Doing again'} “${label}”`
        // Every entry is replayed, then held against what its replay wrote.
        const total = 2 * (span.last_seq - span.first_seq + 1)
        let told = 0
        telling.progress(told, total, words)
        function onPage(count: number): void {
          told += count
          telling.progress(told, total, words)
        }
        const replayed = () => takeBack(db, span, first, onPage)
        if (works === manyWorks) withTextRebuilt(db, replayed)
        else replayed()
        return label
      },
    )
  } catch (error) {
    if (target === undefined || !(error instanceof Blocked || isConstraint(error))) throw error
    const obstacle = error instanceof Blocked ? error.obstacle : null
    throw blocked(target.label, inTheWay(db, obstacle ?? { kind: 'any', edit: target.id }))
  }
}

interface InTheWay {
  readonly edit: number
  readonly label: string
  readonly person: string
  readonly at: string
}

function blocked(label: string, by: InTheWay | null): Refusal {
  const whose =
    by === null ? 'What was built on it since' : `“${by.label}”${by.person === '' ? '' : ` by ${by.person}`}`
  return new Refusal(
    'undo-blocked',
    `“${label}” cannot be taken back: ${whose} stands in the way. Nothing was changed.`,
    {
      details: by === null ? {} : { ...by },
    },
  )
}
