/** A full disk and a file without the right to write: a clear refusal, nothing lost or half-written. */
import { execFileSync } from 'node:child_process'
import { chmodSync, existsSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, onTestFinished, test } from 'vitest'
import { createCatalogue, openCatalogue } from '../../main/database/catalogue.ts'
import { checkCatalogue } from '../../main/database/check.ts'
import { runEdit } from '../../main/database/edit.ts'
import { type WriteHandle, writeHandle } from '../../main/database/handles.ts'
import { openStore } from '../../main/files/store.ts'
import { ann, dump, fingerprint, look, refusalOf, testClock, testFolder } from '../unit/database/fixture.ts'
import { startWriter } from './child.ts'

const clock = testClock()

/** A disk of so many bytes. Needs the right to mount; where there is none this fails, as it proves nothing then. */
function smallDisk(bytes: number): string {
  const folder = join(testFolder(), 'disk')
  mkdirSync(folder)
  execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${bytes}`, 'tmpfs', folder])
  onTestFinished(() => {
    execFileSync('umount', ['-l', folder])
  })
  return folder
}

const addMany = (count: number, start: number) => (db: Pick<WriteHandle, 'prepare'>) => {
  const insert = db.prepare('INSERT INTO work(id, title, note) VALUES (?, ?, ?)')
  for (let n = start; n < start + count; n++) insert.run(`w${n}`, `title ${n}`, 'tide ledger '.repeat(40))
}

test('a full disk refuses the edit and keeps every one before it', { timeout: 60_000 }, async () => {
  const disk = smallDisk(4 * 1024 * 1024)
  const file = join(disk, 'a.hangwright')
  const catalogue = createCatalogue(file, clock)
  let kept = 0
  const refusal = await refusalOf(async () => {
    for (; kept < 10_000; kept++) {
      await catalogue.edit({ procedure: 'test', person: ann, label: 'Add' }, ({ db }) => addMany(20, kept * 20)(db))
    }
  })
  expect(refusal.code).toBe('disk-full')
  expect(refusal.message).toContain('Make room')
  expect(kept).toBeGreaterThan(3)
  expect(catalogue.db.prepare('SELECT count(*) AS n FROM work').get()).toEqual({ n: kept * 20 })
  catalogue.close()
  // With room again, it goes on where it was.
  execFileSync('mount', ['-o', 'remount,size=64m', disk])
  const again = openCatalogue(file, clock)
  expect(again.db.prepare('SELECT count(*) AS n FROM work').get()).toEqual({ n: kept * 20 })
  expect(
    (await again.edit({ procedure: 'test', person: ann, label: 'Add' }, ({ db }) => addMany(20, kept * 20)(db))).edit,
  ).toBe(kept + 1)
  again.close()
  expect(await checkCatalogue(file)).toEqual([])
})

test('on a full disk no catalogue is begun and no picture half kept', async () => {
  const disk = smallDisk(128 * 1024)
  const file = join(disk, 'a.hangwright')
  expect((await refusalOf(() => createCatalogue(file, clock))).code).toBe('disk-full')
  expect(readdirSync(disk)).toEqual([])
  const large = join(testFolder(), 'large.bin')
  writeFileSync(large, Buffer.alloc(512 * 1024, 7))
  const store = openStore(file)
  expect((await refusalOf(() => store.add(large))).code).toBe('disk-full')
  expect(store.hashes()).toEqual([])
  expect(readdirSync(store.folder)).toEqual([])
})

test('a file that may not grow refuses the edit whole', async () => {
  const file = join(testFolder(), 'a.hangwright')
  createCatalogue(file, clock).close()
  const db = new Database(file, { timeout: 0 })
  db.pragma('foreign_keys = ON')
  const before = dump(db)
  db.pragma(`max_page_count = ${Number(db.pragma('page_count', { simple: true })) + 2}`)
  const row = { procedure: 'test', person: ann, at: clock.now(), undoes: null, label: () => 'Add' }
  expect((await refusalOf(() => runEdit(db, file, row, () => addMany(500, 0)(writeHandle(db, () => true))))).code).toBe(
    'disk-full',
  )
  expect(db.inTransaction).toBe(false)
  expect(dump(db)).toBe(before)
  expect(db.prepare('SELECT count(*) FROM edit').pluck().get()).toBe(0)
  db.close()
})

/** "nobody" of Debian. Anything but root will do: root may write everything. */
const nobody = { uid: 65534, gid: 65534 }

test.each(['file', 'folder'])(
  'without the right to write the %s another user is refused, the file untouched',
  async what => {
    const folder = testFolder()
    const file = join(folder, 'a.hangwright')
    createCatalogue(file, clock).close()
    chmodSync(folder, what === 'folder' ? 0o755 : 0o777)
    chmodSync(file, what === 'file' ? 0o644 : 0o666)
    const before = fingerprint(file)
    const child = startWriter([file, 'n', '1'], nobody)
    await child.ended
    expect(child.lines(), child.errors()).toEqual(['refused read-only-catalogue'])
    expect(fingerprint(file)).toBe(before)
    expect(readdirSync(folder)).toEqual(['a.hangwright'])
    // The same user with the right to write goes on: so the refusal was about the right.
    chmodSync(folder, 0o777)
    chmodSync(file, 0o666)
    const allowed = startWriter([file, 'n', '1'], nobody)
    await allowed.ended
    expect(allowed.lines(), allowed.errors()).toEqual(['open', 'n0'])
  },
)

test('another program that holds the catalogue is waited for, then named as busy', { timeout: 30_000 }, async () => {
  const file = join(testFolder(), 'a.hangwright')
  const catalogue = createCatalogue(file, clock)
  const other = new Database(file, { timeout: 0 })
  const add = (id: string) =>
    catalogue.edit({ procedure: 'test', person: ann, label: 'Add' }, ({ db }) =>
      db.prepare('INSERT INTO work(id) VALUES (?)').run(id),
    )
  other.exec('BEGIN IMMEDIATE')
  const waiting = add('w1')
  setTimeout(() => other.exec('ROLLBACK'), 300)
  expect((await waiting).edit).toBe(1)
  other.exec('BEGIN IMMEDIATE')
  // The thread stays free while it waits.
  let ticks = 0
  const timer = setInterval(() => ticks++, 20)
  const from = performance.now()
  expect((await refusalOf(() => add('w2'))).code).toBe('catalogue-busy')
  clearInterval(timer)
  expect(performance.now() - from).toBeGreaterThan(9_500)
  expect(ticks).toBeGreaterThan(200)
  other.exec('ROLLBACK')
  other.close()
  catalogue.close()
  look(file, db => expect(db.prepare('SELECT id FROM work').pluck().all()).toEqual(['w1']))
  expect(existsSync(`${file}-wal`)).toBe(false)
  rmSync(file)
})
