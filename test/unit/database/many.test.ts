/** Many rows at once leave what one by one leaves: rows, journal, text index, schema; and undo takes them back. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { type Catalogue, createCatalogue } from '../../../main/database/catalogue.ts'
import { fewRows, type NewRows } from '../../../main/database/many.ts'
import { clockFrom } from '../../../main/services/clock.ts'

const who = { id: '', name: 'Ada' }
let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'hangwright-many-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

function works(count: number, from = 0): NewRows[] {
  const numbered = Array.from({ length: count }, (_, i) => i + from)
  return [
    {
      table: 'work',
      columns: ['id', 'title', 'maker', 'sort_title', 'numbers', 'light_limit', 'note'],
      rows: numbered.map(i => [
        `w${i}`,
        `Title ${i % 7}`,
        "O'Neill",
        `title ${i % 7}`,
        `1995.${i}`,
        i % 3 === 0 ? null : 50,
        '',
      ]),
    },
    {
      table: 'work_number',
      columns: ['id', 'work', 'kind', 'text', 'norm'],
      rows: numbered.map(i => [`n${i}`, `w${i}`, 'permanent', `1995.${i}`, `1995.${i}`]),
    },
  ]
}

function oneByOne(catalogue: Catalogue, batches: readonly NewRows[]) {
  return catalogue.edit({ procedure: 'work.add', person: who, label: 'Add many' }, ({ db }) => {
    for (const { table, columns, rows } of batches) {
      const add = db.prepare(
        `INSERT INTO ${table} (${columns.join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`,
      )
      for (const row of rows) add.run(row)
    }
  })
}

function atOnce(catalogue: Catalogue, batches: readonly NewRows[]) {
  return catalogue.edit({ procedure: 'work.add', person: who, label: 'Add many' }, ({ db }) => db.insertMany(batches))
}

function opened(name: string): Catalogue {
  return createCatalogue(join(folder, `${name}.hangwright`), clockFrom({ at: '2026-01-01T00:00:00.000Z', ids: 'x' }))
}

/** Rows with their row numbers, the schema, and what the text index finds. */
function dump({ db }: Catalogue): string {
  const tables = ['work', 'work_number', 'journal', 'edit', 'edit_now']
  const rows = tables.map(table => db.prepare(`SELECT rowid AS n_, * FROM ${table} ORDER BY rowid`).all())
  const schema = db.prepare('SELECT type, name, tbl_name, sql FROM sqlite_schema ORDER BY type, name').all()
  const found = ['neill', 'title', '1995'].map(word =>
    db.prepare('SELECT rowid FROM work_fts WHERE work_fts MATCH ? ORDER BY rowid').all(word),
  )
  return JSON.stringify([rows, schema, found])
}

function sound({ file }: Catalogue): void {
  const db = new Database(file)
  try {
    db.exec("INSERT INTO work_fts(work_fts, rank) VALUES ('integrity-check', 1)")
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok')
  } finally {
    db.close()
  }
}

describe('many rows at once', () => {
  test.each([
    ['few', 10],
    ['more than there were', fewRows],
    ['as many again', 3 * fewRows],
  ])('leave what one by one leaves: %s', async (_, count) => {
    const [slow, quick] = [opened('slow'), opened('quick')]
    try {
      for (const batches of [works(count), works(count, count), works(fewRows, 2 * count)]) {
        await oneByOne(slow, batches)
        await atOnce(quick, batches)
        expect(dump(quick)).toBe(dump(slow))
      }
      sound(quick)
      for (const catalogue of [slow, quick]) await catalogue.undo(who)
      expect(dump(quick)).toBe(dump(slow))
      expect(quick.db.prepare('SELECT count(*) AS n FROM work').get()).toEqual({ n: 2 * count })
    } finally {
      slow.close()
      quick.close()
    }
  })

  test.each([
    ['a key twice', (rows: NewRows[]) => [...rows, ...works(1)]],
    ['a number of no work', (rows: NewRows[]) => rows.slice(1)],
    [
      'a table without journal',
      (rows: NewRows[]) => [...rows, { table: 'setting_now', columns: ['id'], rows: [['a']] }],
    ],
  ])('leave nothing, and every trigger and index, where one is refused: %s', async (_, spoil) => {
    const catalogue = opened('spoilt')
    try {
      await oneByOne(catalogue, works(5))
      const before = dump(catalogue)
      await expect(atOnce(catalogue, spoil(works(2 * fewRows, 10)))).rejects.toThrow()
      expect(dump(catalogue)).toBe(before)
      await atOnce(catalogue, works(fewRows, 10))
      sound(catalogue)
    } finally {
      catalogue.close()
    }
  })

  test('are refused outside an edit', async () => {
    const catalogue = opened('outside')
    try {
      const kept = await catalogue.edit({ procedure: 'work.add', person: who, label: 'x' }, ({ db }) => ({ db }))
      for (const count of [1, fewRows]) expect(() => kept.value.db.insertMany(works(count))).toThrow('outside')
    } finally {
      catalogue.close()
    }
  })
})
