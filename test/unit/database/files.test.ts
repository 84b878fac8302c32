/** Files that are not ours, newer or damaged are refused and left byte for byte as they were. */

import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { describe, expect, test } from 'vitest'
import { createCatalogue, openCatalogue } from '../../../main/database/catalogue.ts'
import { migrations } from '../../../main/database/migrations/list.ts'
import { networkShare, type Probe } from '../../../main/database/network.ts'
import { forgetCatalogue, recentCatalogues, rememberCatalogue } from '../../../main/database/recent.ts'
import { ann, fingerprint, look, refusalOf, testClock, testFolder } from './fixture.ts'

const clock = testClock()

async function filled(folder: string): Promise<string> {
  const file = join(folder, 'a.hangwright')
  const catalogue = createCatalogue(file, clock)
  await catalogue.edit({ procedure: 'test', person: ann, label: 'Add' }, ({ db }) => {
    for (let n = 0; n < 400; n++)
      db.prepare('INSERT INTO work(id, title, note) VALUES (?, ?, ?)').run(`w${n}`, `t${n}`, 'x'.repeat(300))
  })
  catalogue.close()
  return file
}

async function refused(file: string, code: string): Promise<void> {
  const folder = join(file, '..')
  const before = fingerprint(file)
  const names = readdirSync(folder)
  const refusal = await refusalOf(() => openCatalogue(file, clock).close())
  expect(refusal.code).toBe(code)
  expect(refusal.message.length).toBeGreaterThan(40)
  expect(fingerprint(file)).toBe(before)
  expect(readdirSync(folder)).toEqual(names)
}

describe('opening', () => {
  test.each([
    ['a text', Buffer.from('Checklist of works\n'.repeat(20))],
    ['nothing', Buffer.alloc(0)],
    ['the first words of a database', Buffer.from('SQLite format 3\0')],
  ])('refuses %s', async (_, bytes) => {
    const file = join(testFolder(), 'a.hangwright')
    writeFileSync(file, bytes)
    await refused(file, 'not-a-catalogue')
  })

  test('refuses another program’s database', async () => {
    const file = join(testFolder(), 'a.hangwright')
    const db = new Database(file)
    db.exec('CREATE TABLE work(id); INSERT INTO work VALUES (1)')
    db.close()
    await refused(file, 'not-a-catalogue')
  })

  test('refuses a newer catalogue, also where only its log says so', async () => {
    const folder = testFolder()
    const file = await filled(folder)
    look(file, db => db.pragma('user_version = 999'))
    await refused(file, 'newer-catalogue')
    // As if killed after migrating: the file itself still says the old version.
    const killed = testFolder()
    const source = await filled(testFolder())
    const db = new Database(source)
    db.pragma('journal_mode = WAL')
    db.pragma('user_version = 999')
    for (const side of ['', '-wal']) copyFileSync(`${source}${side}`, join(killed, `a.hangwright${side}`))
    db.close()
    expect(readFileSync(join(killed, 'a.hangwright')).readUInt32BE(60)).toBe(migrations.length)
    const wal = fingerprint(join(killed, 'a.hangwright-wal'))
    await refused(join(killed, 'a.hangwright'), 'newer-catalogue')
    expect(fingerprint(join(killed, 'a.hangwright-wal'))).toBe(wal)
  })

  test('refuses a truncated and an overwritten catalogue', async () => {
    const cut = await filled(testFolder())
    truncateSync(cut, readFileSync(cut).length - 5000)
    await refused(cut, 'damaged-catalogue')
    const spoilt = await filled(testFolder())
    const bytes = readFileSync(spoilt)
    bytes.fill(0xa5, 4096, bytes.length - 4096)
    writeFileSync(spoilt, bytes)
    await refused(spoilt, 'damaged-catalogue')
    const oneByte = await filled(testFolder())
    const some = readFileSync(oneByte)
    // The first pages hold the schema; their cell counts stand at byte 3 of each.
    some.writeUInt16BE(0xffff, 4096 * 20 + 3)
    writeFileSync(oneByte, some)
    await refused(oneByte, 'damaged-catalogue')
  })

  test('refuses what is not there, a folder, and making over a file', async () => {
    const folder = testFolder()
    expect((await refusalOf(() => openCatalogue(join(folder, 'none.hangwright'), clock))).code).toBe(
      'missing-catalogue',
    )
    mkdirSync(join(folder, 'b.hangwright'))
    expect((await refusalOf(() => openCatalogue(join(folder, 'b.hangwright'), clock))).code).toBe('not-a-catalogue')
    const file = await filled(folder)
    const before = fingerprint(file)
    expect((await refusalOf(() => createCatalogue(file, clock))).code).toBe('catalogue-exists')
    expect(fingerprint(file)).toBe(before)
  })
})

describe('writing', () => {
  test('outside an edit is refused by the file itself', async () => {
    const file = await filled(testFolder())
    look(file, db => {
      expect(() => db.prepare(`INSERT INTO work(id) VALUES ('x')`).run()).toThrow()
      expect(() => db.prepare('DELETE FROM work').run()).toThrow()
      expect(() => db.prepare('DELETE FROM journal').run()).toThrow()
      expect(() => db.prepare(`UPDATE edit SET label = 'other'`).run()).toThrow()
      expect(() =>
        db
          .prepare(
            `INSERT INTO sheet_print(id, exhibition, kind, revision, hash, at) VALUES ('s', 'x', 'wall', 1, 'h', '')`,
          )
          .run(),
      ).toThrow()
    })
  })

  test('a handle reads only, an edit cannot replace, wait or stay unnamed, and a failed one leaves nothing', async () => {
    const catalogue = openCatalogue(await filled(testFolder()), clock)
    const options = { procedure: 'test', person: ann, label: 'Try' }
    expect(() => catalogue.db.prepare('DELETE FROM work')).toThrow(/read handle/)
    await expect(
      catalogue.edit(options, ({ db }) => db.prepare('INSERT OR REPLACE INTO work(id) VALUES (1)')),
    ).rejects.toThrow(/CONFLICT/)
    await expect(catalogue.edit(options, async () => {})).rejects.toThrow(/wait/)
    await expect(
      catalogue.edit({ procedure: 'test', person: ann }, ({ db }) =>
        db.prepare(`DELETE FROM work WHERE id = 'w1'`).run(),
      ),
    ).rejects.toThrow(/saying what/)
    await expect(
      catalogue.edit(options, ({ db }) => {
        db.prepare(`DELETE FROM work WHERE id = 'w2'`).run()
        throw new Error('half way')
      }),
    ).rejects.toThrow('half way')
    await expect(
      catalogue.edit(options, ({ db }) => db.prepare(`UPDATE work SET id = 'other' WHERE id = 'w3'`).run()),
    ).rejects.toThrow()
    let kept: { prepare: (sql: string) => unknown } | undefined
    const nothing = await catalogue.edit(options, ({ db }) => {
      kept = db
      return 7
    })
    expect(nothing).toEqual({ value: 7, edit: null, tables: [], keys: [] })
    expect(() => kept?.prepare('DELETE FROM work')).toThrow(/outside/)
    expect(
      catalogue.db.prepare('SELECT count(*) AS works, (SELECT count(*) FROM edit) AS edits FROM work').get(),
    ).toEqual({ works: 400, edits: 1 })
    catalogue.close()
  })
})

test('a snapshot sees one state of the file, gives what it reads and lets go of it, also of what throws', async () => {
  const file = await filled(testFolder())
  const catalogue = openCatalogue(file, clock)
  const tables = () =>
    catalogue.db.prepare(`SELECT count(*) AS n FROM sqlite_schema WHERE name = 'written_meanwhile'`).get()
  const seen = catalogue.snapshot(() => {
    const before = tables()
    look(file, db => db.exec('CREATE TABLE written_meanwhile (id TEXT)'))
    return [before, tables(), catalogue.snapshot(tables)]
  })
  expect(seen).toEqual([{ n: 0 }, { n: 0 }, { n: 0 }])
  expect(tables()).toEqual({ n: 1 })
  expect(() =>
    catalogue.snapshot(() => {
      tables()
      throw new Error('half way')
    }),
  ).toThrow('half way')
  look(file, db => db.exec('DROP TABLE written_meanwhile'))
  expect(tables()).toEqual({ n: 0 })
  catalogue.close()
})

test('held, a catalogue stays one state while its reader waits, from before its first read on', async () => {
  const file = await filled(testFolder())
  const catalogue = openCatalogue(file, clock)
  const tables = () =>
    catalogue.db.prepare(`SELECT count(*) AS n FROM sqlite_schema WHERE name = 'written_meanwhile'`).get()
  const seen = await catalogue.held(async () => {
    look(file, db => db.exec('CREATE TABLE written_meanwhile (id TEXT)'))
    const first = tables()
    await new Promise(resolve => setTimeout(resolve, 5))
    return [first, tables()]
  })
  expect(seen).toEqual([{ n: 0 }, { n: 0 }])
  expect(tables()).toEqual({ n: 1 })
  await expect(catalogue.held(() => Promise.reject(new Error('half way')))).rejects.toThrow('half way')
  look(file, db => db.exec('DROP TABLE written_meanwhile'))
  expect(tables()).toEqual({ n: 0 })
  catalogue.close()
})

describe('a network share', () => {
  const linux = (mounts: string, type = 0xef53): Probe => ({
    platform: 'linux',
    realPath: path => path,
    type: () => type,
    mounts: () => mounts,
  })
  test('is told from a disk of this machine', () => {
    // Kinds as statfs(2) of the Linux manual lists them.
    expect(networkShare('/mnt/share', linux('', 0x6969))).toBe('NFS')
    expect(networkShare('/mnt/share', linux('', 0xff534d42 | 0))).toBe('CIFS')
    const mounts =
      '/dev/sda1 / ext4 rw 0 0\nme@host:/x /mnt/far\\040away fuse.sshfs rw 0 0\n/dev/sdb1 /mnt/far\\040away/disk ext4 rw 0 0\n'
    expect(networkShare('/home/me', linux(mounts))).toBeNull()
    expect(networkShare('/mnt/far away/show', linux(mounts))).toBe('fuse.sshfs')
    expect(networkShare('/mnt/far away/disk/show', linux(mounts))).toBeNull()
    const mac: Probe = {
      platform: 'darwin',
      realPath: path => path,
      type: () => 0,
      mounts: () => '/dev/disk1s1 on / (apfs, local)\n//me@host/x on /Volumes/x (smbfs, nodev)\n',
    }
    expect(networkShare('/Volumes/x/show', mac)).toBe('smbfs')
    expect(networkShare('/Users/me', mac)).toBeNull()
    const windows: Probe = { platform: 'win32', realPath: path => path, type: () => 0, mounts: () => '' }
    expect(networkShare('\\\\host\\share\\show', windows)).toBe('Windows share')
    expect(networkShare('C:\\Users\\me', windows)).toBeNull()
    expect(networkShare('\\\\?\\C:\\Users\\me', windows)).toBeNull()
  })
})

test('recent catalogues: newest first, one line each, with who sat there; a spoilt list is an empty one', () => {
  const data = join(testFolder(), 'data')
  expect(recentCatalogues(data)).toEqual([])
  rememberCatalogue(data, '/a.hangwright', '2031-03-01T00:00:00Z', 'ann')
  rememberCatalogue(data, '/b.hangwright', '2031-03-02T00:00:00Z')
  rememberCatalogue(data, '/a.hangwright', '2031-03-03T00:00:00Z')
  expect(recentCatalogues(data).map(({ file, openedAt, person }) => [file, openedAt, person])).toEqual([
    ['/a.hangwright', '2031-03-03T00:00:00Z', 'ann'],
    ['/b.hangwright', '2031-03-02T00:00:00Z', undefined],
  ])
  forgetCatalogue(data, recentCatalogues(data)[0]?.key ?? '')
  expect(recentCatalogues(data).map(({ file }) => file)).toEqual(['/b.hangwright'])
  writeFileSync(join(data, 'recent.json'), '{"half')
  expect(recentCatalogues(data)).toEqual([])
  expect(existsSync(data)).toBe(true)
})
