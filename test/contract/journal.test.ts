/**
 * The journal's promise: whatever edits do to any journaled table, undo and redo walk back and forth through exactly
 * the states that were there, across reopening; and of two people, neither takes back what the other built.
 */
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { describe, expect, test } from 'vitest'
import { type Catalogue, createCatalogue, openCatalogue } from '../../main/database/catalogue.ts'
import { undoStateOf } from '../../main/database/history.ts'
import { exempt, journaledTables, ordinaryTables } from '../../main/database/tables.ts'
import { storedTriggers } from '../../main/database/triggers.ts'
import { Refusal } from '../../src/contract/refusal.ts'
import { ann, bo, checkText, dump, look, refusalOf, testClock, testFolder } from '../unit/database/fixture.ts'
import { type Chance, randomFrom, randomStep, type Table, tablesOf } from '../unit/database/random-edits.ts'

function isRule(error: unknown): boolean {
  return error instanceof Database.SqliteError && error.code.startsWith('SQLITE_CONSTRAINT')
}

/** One random edit; false where a rule of the tables refused it. */
async function tryEdit(
  catalogue: Catalogue,
  who: typeof ann,
  chance: Chance,
  names: readonly string[],
): Promise<boolean> {
  try {
    const { edit } = await catalogue.edit({ procedure: 'test.random', person: who, label: 'Random' }, ({ db }) => {
      const tables: Table[] = tablesOf(db, names)
      const steps = 1 + Math.floor(chance.random() * 8)
      for (let step = 0; step < steps; step++) randomStep(db, chance, tables)
    })
    return edit !== null
  } catch (error) {
    if (isRule(error)) return false
    throw error
  }
}

describe('the journal', () => {
  test('every table is journaled or exempt for a reason', () => {
    const file = join(testFolder(), 'a.hangwright')
    createCatalogue(file, testClock()).close()
    look(file, db => {
      const triggers = new Set(storedTriggers(db).map(({ name }) => name))
      for (const table of ordinaryTables(db)) {
        // The index's own tables follow from the works.
        if (table.startsWith('work_fts')) continue
        const journaled = ['i', 'u', 'd'].every(op => triggers.has(`journal_${table}_${op}`))
        expect(journaled || (exempt[table] ?? '') !== '', `${table} is neither journaled nor exempt`).toBe(true)
        if (journaled) expect(exempt[table]).toBeUndefined()
      }
      expect(Object.keys(exempt).sort()).toEqual([
        'climate_day',
        'climate_file',
        'condition_seal',
        'condition_signature',
        'damage',
        'damage_word',
        'edit',
        'edit_now',
        'edit_reason',
        'journal',
        'light_reading',
        'loan_receipt',
        'loan_receipt_work',
        'moved',
        'movement',
        'picture_tone',
        'schema_step',
        'sheet_print',
      ])
    })
  })

  test.each([1, 2, 3, 4])(
    'undo and redo pass through every state again (seed %i)',
    { timeout: 120_000 },
    async seed => {
      const file = join(testFolder(), 'a.hangwright')
      const clock = testClock()
      let catalogue = createCatalogue(file, clock)
      const second = new Database(file)
      const names = journaledTables(second).map(({ name }) => name)
      const chance: Chance = { random: randomFrom(seed * 7919), newId: clock.newId }
      const states = [dump(second)]
      const untouched = () =>
        names.filter(name => second.prepare(`SELECT 1 FROM journal WHERE tbl = ? LIMIT 1`).get(name) === undefined)
      // Some tables need rows of three others first: it goes on until each was written to.
      for (let count = 0; count < 220 || (count < 1200 && untouched().length > 0); count++) {
        if (await tryEdit(catalogue, ann, chance, names)) states.push(dump(second))
        if (count % 40 === 39) {
          catalogue.close()
          catalogue = openCatalogue(file, clock)
        }
      }
      expect(states.length).toBeGreaterThan(100)
      expect(untouched()).toEqual([])

      async function walk(way: 'undo' | 'redo', at: number): Promise<void> {
        await catalogue[way](ann)
        expect(dump(second) === states[at], `${way} to state ${at}`).toBe(true)
        checkText(second)
        if (at % 17 === 0) {
          catalogue.close()
          catalogue = openCatalogue(file, clock)
        }
      }
      for (let at = states.length - 2; at >= 0; at--) await walk('undo', at)
      expect((await refusalOf(() => catalogue.undo(ann))).code).toBe('nothing-to-undo')
      for (let at = 1; at < states.length; at++) await walk('redo', at)
      expect((await refusalOf(() => catalogue.redo(ann))).code).toBe('nothing-to-redo')
      let at = states.length - 1
      for (let step = 0; step < 60; step++) {
        const way = at === 0 || (at < states.length - 1 && chance.random() < 0.5) ? 'redo' : 'undo'
        at += way === 'redo' ? 1 : -1
        await walk(way, at)
      }
      expect(second.pragma('foreign_key_check')).toEqual([])
      second.close()
      catalogue.close()
    },
  )

  test.each([11, 12, 13, 14])(
    'of two people neither takes back what the other built (seed %i)',
    { timeout: 120_000 },
    async seed => {
      const file = join(testFolder(), 'a.hangwright')
      const clock = testClock()
      const catalogue = createCatalogue(file, clock)
      const second = new Database(file)
      const names = journaledTables(second).map(({ name }) => name)
      const chance: Chance = { random: randomFrom(seed * 104729), newId: clock.newId }
      const counts = { done: 0, blocked: 0 }
      const rows = (): Map<string, string> =>
        new Map(
          names.flatMap(name =>
            (second.prepare(`SELECT * FROM ${name}`).all() as { id: string }[]).map(row => [
              `${name} ${row.id}`,
              JSON.stringify(row),
            ]),
          ),
        )
      for (let count = 0; count < 360; count++) {
        const who = chance.random() < 0.5 ? ann : bo
        if (chance.random() < 0.6) {
          await tryEdit(catalogue, who, chance, names)
          continue
        }
        const way = chance.random() < 0.4 ? 'redo' : 'undo'
        const before = rows()
        let edit: number | null = null
        try {
          ;({ edit } = await catalogue[way](who))
          counts.done++
        } catch (error) {
          if (!(error instanceof Refusal)) throw error
          if (error.code === 'undo-blocked') counts.blocked++
          else expect(error.code).toBe(`nothing-to-${way}`)
        }
        const after = rows()
        const touched = [...new Set([...before.keys(), ...after.keys()])].filter(
          key => before.get(key) !== after.get(key),
        )
        const own = new Set(
          second
            .prepare(
              `SELECT tbl || ' ' || key FROM journal JOIN edit ON seq BETWEEN first_seq AND last_seq
             WHERE edit.id = (SELECT undoes FROM edit WHERE id = ?) AND edit.person = ?`,
            )
            .pluck()
            .all(edit, who.id) as string[],
        )
        expect(touched.filter(key => !own.has(key))).toEqual([])
        checkText(second)
        expect(second.pragma('foreign_key_check')).toEqual([])
      }
      // Both outcomes must have been met, or this proved nothing.
      expect(counts.done).toBeGreaterThan(20)
      expect(counts.blocked).toBeGreaterThan(1)
      second.close()
      catalogue.close()
    },
  )
})

describe('undo', () => {
  function fresh(): Catalogue {
    return createCatalogue(join(testFolder(), 'a.hangwright'), testClock())
  }
  const work = (catalogue: Catalogue, who: typeof ann, id: string, label = `Add ${id}`) =>
    catalogue.edit({ procedure: 'work.add', person: who, label }, ({ db }) =>
      db.prepare('INSERT INTO work(id, title) VALUES (?, ?)').run(id, id),
    )
  const run = (catalogue: Catalogue, who: typeof ann, label: string, sql: string) =>
    catalogue.edit({ procedure: 'test.run', person: who, label }, ({ db }) => db.prepare(sql).run())

  test('names whose edit stands in the way', async () => {
    const catalogue = fresh()
    await work(catalogue, ann, 'w1')
    await run(catalogue, bo, 'Rename it', `UPDATE work SET title = 'other' WHERE id = 'w1'`)
    const refusal = await refusalOf(() => catalogue.undo(ann))
    expect(refusal.code).toBe('undo-blocked')
    expect(refusal.details).toMatchObject({ edit: 2, label: 'Rename it', person: 'Bo' })
    await catalogue.undo(bo)
    expect((await catalogue.undo(ann)).label).toBe('Add w1')
    catalogue.close()
  })

  test('does not let a removal reach what somebody built on it', async () => {
    const catalogue = fresh()
    await work(catalogue, ann, 'w1')
    await run(
      catalogue,
      bo,
      'Number it',
      `INSERT INTO work_number(id, work, kind, text) VALUES ('n1', 'w1', 'lender', '7')`,
    )
    const refusal = await refusalOf(() => catalogue.undo(ann))
    expect(refusal.code).toBe('undo-blocked')
    expect(refusal.details).toMatchObject({ label: 'Number it', person: 'Bo' })
    expect(catalogue.db.prepare('SELECT count(*) AS n FROM work_number').get()).toEqual({ n: 1 })
    catalogue.close()
  })

  test('names the edit that refers to what would go', async () => {
    const catalogue = fresh()
    await run(catalogue, ann, 'Add a lender', `INSERT INTO party(id, name) VALUES ('p1', 'Harrow Point House')`)
    await run(catalogue, bo, 'Add a loan', `INSERT INTO work(id, title, lender) VALUES ('w1', 'w', 'p1')`)
    const refusal = await refusalOf(() => catalogue.undo(ann))
    expect(refusal.code).toBe('undo-blocked')
    expect(refusal.details).toMatchObject({ label: 'Add a loan', person: 'Bo' })
    catalogue.close()
  })

  test('leaves a closed exhibition alone, but takes the closing back', async () => {
    const catalogue = fresh()
    await run(catalogue, ann, 'Make a show', `INSERT INTO exhibition(id, title) VALUES ('x1', 'Tides')`)
    await run(catalogue, ann, 'Section', `INSERT INTO section(id, exhibition, title) VALUES ('s1', 'x1', 'One')`)
    await run(catalogue, bo, 'Close', `UPDATE exhibition SET state = 'closed' WHERE id = 'x1'`)
    expect((await refusalOf(() => catalogue.undo(ann))).code).toBe('undo-blocked')
    await catalogue.undo(bo)
    expect((await catalogue.undo(ann)).label).toBe('Section')
    catalogue.close()
  })

  test('never uses the number of a removed work again, so that it can come back', async () => {
    const catalogue = fresh()
    await work(catalogue, ann, 'w1')
    await run(catalogue, ann, 'Remove it', `DELETE FROM work WHERE id = 'w1'`)
    await work(catalogue, bo, 'w2')
    await catalogue.undo(ann)
    expect(catalogue.db.prepare('SELECT id FROM work ORDER BY n').all()).toEqual([{ id: 'w1' }, { id: 'w2' }])
    catalogue.close()
  })

  test('a new edit ends what could be redone, and only one’s own', async () => {
    const catalogue = fresh()
    await work(catalogue, ann, 'w1')
    await catalogue.undo(ann)
    await work(catalogue, bo, 'w2')
    expect(undoStateOf(catalogue.db, 'ann')).toEqual({ undo: null, redo: 'Add w1', last: 3 })
    await work(catalogue, ann, 'w3')
    expect(undoStateOf(catalogue.db, 'ann')).toEqual({ undo: 'Add w3', redo: null, last: 4 })
    catalogue.close()
  })
})
