/**
 * What is recorded stays as it was recorded: through every procedure that writes, with its examples, answered and
 * refused, one after the other on one catalogue; and by SQL on the open catalogue, whatever statement tries, on every
 * table that the file itself says is only added to.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { exempt, quoted, records } from '../../main/database/tables.ts'
import { answer } from '../../main/hosts/answer.ts'
import { withHandles } from '../../main/hosts/command-line/files.ts'
import { createHost, type Host } from '../../main/hosts/host.ts'
import { contract, type Name } from '../../src/contract/contract.ts'
import { examples } from './examples/all.ts'
import type { GivenFile } from './examples/types.ts'
import { callClock, callOn, type Known, makeFixture } from './fixture.ts'
import { countOf, onlyAdded, type Recorded, recordedRows, touched } from './recorded.ts'
import { steps } from './steps.ts'

type PlainExample = {
  readonly about: string
  readonly files?: readonly GivenFile[]
  readonly first?: (known: Known) => readonly (readonly [Name, unknown])[]
  readonly input: (known: Known, earlier: readonly unknown[]) => unknown
}

let folder = ''
let file = ''
/** Records that were touched, with the call after which it was seen. */
const faults: string[] = []
/** Procedures that were answered at least once. */
const answeredOnce = new Set<string>()

/** The journal grows with every call: it is looked at once a procedure, the records after every call. */
const journal = ['edit', 'journal']

function read(without: readonly string[] = []): Recorded {
  const db = new Database(file, { readonly: true, timeout: 5000 })
  try {
    return recordedRows(db, without)
  } finally {
    db.close()
  }
}

/** Whoever opened another catalogue comes back; who moved this one is followed. */
function comeBack(host: Host, name: string, ok: boolean): void {
  const now = host.open?.catalogue.file ?? ''
  if (name === 'catalogue.move' && ok) file = now
  else if (now !== file) host.openFile(file)
}

const makesRecords = /^(location|movement|condition|light|climate|damage|receipt)\.|^sheet\.wall$/
/** Their examples make the first record of its kind, or draw a work that those of sets take off its wall. */
const makesFirst = /^sheet\.(damage|receipt|template)$/

/** What only reads runs outside an edit, where the triggers refuse every write: tried below. */
const writes = (name: string) => !['pure', 'read'].includes(contract[name as Name].kind) // only names of the contract have examples
/** Long work takes a worker of its own each time: one answered and one refused example are enough of it. */
const isLong = (name: string) => contract[name as Name].kind === 'long' // as above

/** The walks through all steps (sequences.test.ts) try these, and see each succeed. */
const walked = (name: string) => Object.hasOwn(steps, name)

/** Records first, so that there is something to touch; then, while all is there, what no walk tries; then the rest. */
function inOrder() {
  // A backup is kept where something changed since the last one, so it is restored before a file is opened anew.
  const ranks = [makesFirst, makesRecords, /^catalogue\.restore$/]
  const rank = (name: string) => {
    const known = ranks.findIndex(names => names.test(name))
    return known >= 0 ? known : walked(name) ? ranks.length + 1 : ranks.length
  }
  return Object.entries(examples)
    .filter(([name]) => writes(name))
    .sort(([a], [b]) => rank(a) - rank(b))
}

async function callAll(host: Host, known: Known): Promise<void> {
  let before = read(journal)
  let whole = read()
  const ask = async (name: string, input: unknown): Promise<unknown> => {
    const answered = await answer(host, name, input)
    comeBack(host, name, answered.ok)
    if (answered.ok) answeredOnce.add(name)
    if (!writes(name)) return answered.ok ? answered.value : null
    const after = read(journal)
    for (const row of touched(before, after)) faults.push(`${name} ${JSON.stringify(input)} touched ${row}`)
    before = after
    return answered.ok ? answered.value : null
  }
  for (const [name, { answered, refused }] of inOrder()) {
    const most = isLong(name) ? 1 : undefined
    for (const example of [...answered.slice(0, most), ...refused.slice(0, most)] as readonly PlainExample[]) {
      const handles = (example.files ?? []).map(({ name: called, bytes }) => {
        const { handle, path } = host.handles.create(called)
        writeFileSync(path, bytes)
        return handle
      })
      const earlier: unknown[] = []
      const made = (input: unknown) => withHandles(typeof input === 'function' ? input(earlier) : input, handles)
      try {
        for (const [each, input] of example.first?.(known) ?? []) earlier.push(await ask(each, made(input)))
        await ask(name, made(example.input(known, earlier)))
      } catch (error) {
        // What an example builds on may be gone by now: then its input cannot even be written.
        if (!(error instanceof TypeError)) throw error
      }
    }
    const now = read()
    for (const row of touched(whole, now)) faults.push(`${name} touched ${row}`)
    whole = now
  }
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'hangwright-recorded-'))
  const fixture = await makeFixture(folder)
  file = fixture.file
  const host = createHost({ kind: 'loopback', data: join(folder, 'data'), clock: callClock, report: () => {} })
  try {
    host.openFile(file)
    await answer(host, 'desk.sit', { person: fixture.known.person })
    // The examples give all damage one reference, so only the first of them is answered here.
    const found = { work: fixture.known.loose, foundAt: callClock.at, reference: 'D-9000' }
    const { id: damage } = await callOn(host, 'damage.add', found)
    await callOn(host, 'damage.say', { damage, kind: 'note', said: 'kept apart' })
    await callAll(host, fixture.known)
  } finally {
    await host.close()
  }
}, 600_000)

afterAll(() => rmSync(folder, { recursive: true, force: true }))

test('the file’s triggers keep all records and the journal, and no table that is written otherwise', () => {
  const db = new Database(file, { readonly: true })
  expect(onlyAdded(db)).toEqual([...records, 'edit', 'journal'].sort())
  expect(onlyAdded(db).filter(table => exempt[table] === undefined)).toEqual([])
  db.close()
})

describe('through every procedure that writes', () => {
  test('with its examples, no record was touched', () => {
    expect(faults).toEqual([])
    const names = Object.keys(contract).filter(writes)
    expect(names.filter(name => !answeredOnce.has(name) && !walked(name))).toEqual([])
    expect(names.filter(name => answeredOnce.has(name)).length).toBeGreaterThan(names.length / 2)
  })

  test('there were records of every kind, or it proved nothing', () => {
    const rows = read()
    const db = new Database(file, { readonly: true })
    expect(onlyAdded(db).filter(table => countOf(rows, table) === 0)).toEqual([])
    expect(countOf(rows, 'condition_finding')).toBeGreaterThan(0)
    db.close()
  })
})

interface Try {
  readonly about: string
  readonly sql: string
}

/** By which columns a row is known: its key, its rowid, every unique index. */
function keysOf(db: Database.Database, table: string, key: string): string[][] {
  const unique = db
    .prepare<[string], string>('SELECT name FROM pragma_index_list(?) WHERE "unique" = 1')
    .pluck()
    .all(table)
    .map(index => db.prepare<[string], string>('SELECT name FROM pragma_index_info(?)').pluck().all(index))
  // An integer key is the rowid itself.
  const whole =
    db
      .prepare(`SELECT typeof(${quoted(key)}) FROM ${quoted(table)}`)
      .pluck()
      .get() === 'integer'
  return [...unique, [whole ? key : 'rowid']]
}

/** Statements that take a row by one of its keys while all else in it is new or another’s. */
function replacements(db: Database.Database, table: string, columns: readonly string[]): Try[] {
  const [own = 'id'] = columns
  return keysOf(db, table, own).flatMap(key => {
    const there = key.map(column => `${quoted(column)} IS NOT NULL`).join(' AND ')
    const has = db
      .prepare(`SELECT count(*) FROM ${quoted(table)} WHERE ${there}`)
      .pluck()
      .get()
    // No row has it: nothing to take. Such keys are of corrections, and each is met where there is one.
    if (has === 0) return []
    const named = key.includes('rowid') ? ['rowid', ...columns] : columns
    const chosen = named.map(column => (column === own && !key.includes(own) ? `'never-there'` : quoted(column)))
    const into = `${quoted(table)}(${named.map(quoted).join(', ')})`
    const from = `SELECT ${chosen.join(', ')} FROM ${quoted(table)} WHERE ${there} LIMIT 1`
    const about = key.join(', ')
    return [{ about: `replaced by ${about}`, sql: `INSERT OR REPLACE INTO ${into} ${from}` }]
  })
}

/** Another value of the same type: a STRICT table would refuse any other for that alone. */
const other = (column: string) =>
  `CASE typeof(${quoted(column)}) WHEN 'text' THEN ${quoted(column)} || 'x' ELSE ${quoted(column)} + 1 END`

function triesOf(db: Database.Database, table: string): Try[] {
  const columns = db
    .prepare<[string], string>('SELECT name FROM pragma_table_xinfo(?) WHERE hidden = 0 ORDER BY cid')
    .pluck()
    .all(table)
  const name = quoted(table)
  const key = columns[0] ?? 'id'
  const parents = db
    .prepare<[string], { table: string; from: string; to: string | null }>(
      'SELECT "table", "from", "to" FROM pragma_foreign_key_list(?)',
    )
    .all(table)
    .filter(({ from }) => {
      const there = `SELECT count(*) FROM ${name} WHERE ${quoted(from)} IS NOT NULL`
      return db.prepare(there).pluck().get() !== 0
    })
  return [
    ...columns.flatMap(column => [
      { about: `changed in ${column}`, sql: `UPDATE ${name} SET ${quoted(column)} = ${quoted(column)}` },
      {
        about: `changed in ${column} where it can be`,
        sql: `UPDATE OR IGNORE ${name} SET ${quoted(column)} = ${other(column)}`,
      },
    ]),
    { about: 'given another row', sql: `UPDATE OR REPLACE ${name} SET rowid = rowid + 1` },
    { about: 'removed', sql: `DELETE FROM ${name} WHERE rowid = (SELECT min(rowid) FROM ${name})` },
    { about: 'emptied', sql: `DELETE FROM ${name}` },
    {
      about: 'rewritten on the way',
      sql: `INSERT INTO ${name} SELECT * FROM ${name} WHERE true ON CONFLICT DO UPDATE SET ${quoted(key)} = excluded.${quoted(key)}`,
    },
    ...replacements(db, table, columns),
    ...parents.map(parent => ({
      about: `parted from its ${parent.table}`,
      sql: `DELETE FROM ${quoted(parent.table)} WHERE ${quoted(parent.to ?? 'id')} IN (SELECT ${quoted(parent.from)} FROM ${name})`,
    })),
  ]
}

describe('by SQL on the open catalogue', () => {
  const kept = [...records, 'edit', 'journal']
  test.each(kept)('no statement changes, removes or replaces a row of %s, in an edit or outside of one', table => {
    const db = new Database(file)
    try {
      const others = journal.filter(each => each !== table)
      const before = recordedRows(db, others)
      const tries = triesOf(db, table)
      expect(tries.length).toBeGreaterThan(10)
      for (const recursive of ['OFF', 'ON']) {
        db.pragma(`recursive_triggers = ${recursive}`)
        db.pragma('foreign_keys = ON')
        for (const within of ['UPDATE edit_now SET edit = 1', 'UPDATE edit_now SET edit = NULL']) {
          for (const { about, sql } of tries) {
            db.exec('BEGIN')
            db.exec(within)
            expect(() => db.exec(sql), `${table} ${about}: ${sql}`).toThrow(
              /only added to|outside an edit|FOREIGN KEY|never changes|never altered/,
            )
            expect(touched(before, recordedRows(db, others)), `${table} ${about}`).toEqual([])
            db.exec('ROLLBACK')
          }
        }
      }
    } finally {
      db.close()
    }
  })
})
