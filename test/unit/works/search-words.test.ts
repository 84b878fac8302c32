/** The words of a search against SQLite's own index (FTS5): every letter and figure of Unicode may be typed. */
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { migrate } from '../../../main/database/migrate.ts'
import { migrations } from '../../../main/database/migrations/list.ts'
import { fullTextQuery } from '../../../main/services/works/filter.ts'

function index(): Database.Database {
  const db = new Database(':memory:')
  migrate(db, migrations, () => '2031-03-01T00:00:00.000Z')
  return db
}

test('no letter or figure makes a query that the index refuses', { timeout: 120_000 }, () => {
  const db = index()
  const find = db.prepare('SELECT rowid FROM work_fts WHERE work_fts MATCH ?').pluck()
  const refused: string[] = []
  let tried = 0
  for (let code = 0; code < 0x110000; code++) {
    if (code >= 0xd800 && code <= 0xdfff) continue
    const sign = String.fromCodePoint(code)
    // Ideographs and Hangul by the ten thousand are all alike.
    if (!/[\p{L}\p{N}]/u.test(sign) || (code % 64 > 0 && /[\p{sc=Han}\p{sc=Hangul}]/u.test(sign))) continue
    tried++
    try {
      find.all(fullTextQuery(`a${sign}b`))
    } catch {
      refused.push(code.toString(16))
    }
  }
  expect(tried).toBeGreaterThan(30_000)
  expect(refused).toEqual([])
})

test('a few first letters find what longer words find', () => {
  const db = index()
  db.exec('UPDATE edit_now SET edit = 0')
  const add = db.prepare('INSERT INTO work(id, title, maker) VALUES (?, ?, ?)')
  add.run('a', 'Nets drying', 'Ina Vörr')
  add.run('b', 'Nettle field', 'Oda Ketil')
  const found = (search: string) =>
    db.prepare('SELECT rowid FROM work_fts WHERE work_fts MATCH ?').pluck().all(fullTextQuery(search))
  expect(['n', 'ne', 'net', 'nett', 'n vo', 'v n', 'drying ina', '“nets, drying”', 'x'].map(found)).toEqual([
    [1, 2],
    [1, 2],
    [1, 2],
    [2],
    [1],
    [1],
    [1],
    [1],
    [],
  ])
})
