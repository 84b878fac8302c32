/** Backups and kept files: copies are whole, a restore can be taken back, altered files are found, nothing needed goes. */
import { existsSync, readdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { backupIfChanged, backupNow, backupTo, restoreBackup } from '../../../main/database/backup.ts'
import { backupFolder, backupKey, listBackups, outdated } from '../../../main/database/backup-files.ts'
import { type Catalogue, createCatalogue, openCatalogue } from '../../../main/database/catalogue.ts'
import { checkCatalogue } from '../../../main/database/check.ts'
import { tidyFiles } from '../../../main/database/tidy.ts'
import { openStore } from '../../../main/files/store.ts'
import { ann, look, refusalOf, testClock, testFolder } from './fixture.ts'

const clock = testClock()

function addWork(catalogue: Catalogue, id: string) {
  return catalogue.edit({ procedure: 'test', person: ann, label: `Add ${id}` }, ({ db }) =>
    db.prepare('INSERT INTO work(id, title) VALUES (?, ?)').run(id, id),
  )
}

async function picture(path: string, colour: string): Promise<string> {
  await sharp({ create: { width: 300, height: 200, channels: 3, background: colour } })
    .jpeg()
    .toFile(path)
  return path
}

/** A catalogue with one work and its picture. */
async function withPicture() {
  const folder = testFolder()
  const file = join(folder, 'a.hangwright')
  const catalogue = createCatalogue(file, clock)
  const store = openStore(file)
  const kept = await store.addPicture(await picture(join(folder, 'p.jpg'), '#336699'))
  await addWork(catalogue, 'w1')
  await catalogue.edit({ procedure: 'test', person: ann, label: 'Picture' }, ({ db }) => {
    db.prepare(`INSERT INTO picture(id, work, hash) VALUES ('i1', 'w1', ?)`).run(kept.hash)
    db.prepare('UPDATE work SET picture = ?').run(kept.hash)
  })
  return { folder, file, catalogue, store, kept }
}

describe('backups', () => {
  test('one at every opening that follows a change, while the catalogue is open', async () => {
    const { file, catalogue } = await withPicture()
    const key = await backupIfChanged(file, '2031-03-01T09:00:00.000Z')
    expect(key).toBe('20310301T090000000Z-2-opening.hangwright')
    expect(await backupIfChanged(file, '2031-03-01T09:05:00.000Z')).toBeNull()
    await addWork(catalogue, 'w2')
    expect(await backupIfChanged(file, '2031-03-01T10:00:00.000Z')).not.toBeNull()
    expect(listBackups(file).map(({ at, why, edit }) => [at, why, edit])).toEqual([
      ['2031-03-01T10:00:00.000Z', 'opening', 3],
      ['2031-03-01T09:00:00.000Z', 'opening', 2],
    ])
    expect(readdirSync(backupFolder(file)).length).toBe(2)
    expect(await checkCatalogue(join(backupFolder(file), key ?? ''))).toMatchObject([{ code: 'file-missing' }])
    catalogue.close()
  })

  test('three of today stay, one of each earlier day, ten in all', () => {
    const day = (date: number, hour: number) => {
      const at = new Date(Date.UTC(2031, 2, date, hour)).toISOString()
      return { key: backupKey(at, 1, 'opening'), at, bytes: 1, why: 'opening' as const, edit: 1 }
    }
    const all = Array.from({ length: 14 }, (_, n) => 20 - n).flatMap(date => [
      day(date, 18),
      day(date, 12),
      day(date, 9),
      day(date, 8),
    ])
    const gone = new Set(outdated(all, '2031-03-20T20:00:00.000Z').map(({ key }) => key))
    const kept = all.filter(({ key }) => !gone.has(key)).map(({ at }) => at.slice(8, 13))
    expect(kept).toEqual(['20T18', '20T12', '20T09', '19T18', '18T18', '17T18', '16T18', '15T18', '14T18', '13T18'])
    const asked = { ...day(1, 1), why: 'asked' as const }
    expect(outdated([...all, asked], '2031-03-20T20:00:00.000Z')).not.toContain(asked)
  })

  test('a restore puts aside what is there and can be taken back', async () => {
    const { file, catalogue } = await withPicture()
    const key = await backupNow(file, 'asked', '2031-03-01T09:00:00.000Z')
    await addWork(catalogue, 'later')
    expect((await refusalOf(() => restoreBackup(file, key, '2031-03-02T09:00:00.000Z'))).code).toBe('catalogue-busy')
    catalogue.close()
    const aside = await restoreBackup(file, key, '2031-03-02T09:00:00.000Z')
    expect(look(file, db => db.prepare('SELECT id FROM work ORDER BY n').pluck().all())).toEqual(['w1'])
    const [newest] = listBackups(file)
    expect(join(backupFolder(file), newest?.key ?? '')).toBe(aside)
    await restoreBackup(file, newest?.key ?? '', '2031-03-03T09:00:00.000Z')
    const again = openCatalogue(file, clock)
    expect(again.db.prepare('SELECT id FROM work ORDER BY n').all()).toEqual([{ id: 'w1' }, { id: 'later' }])
    expect((await again.undo(ann)).label).toBe('Add later')
    again.close()
    expect(await checkCatalogue(file)).toEqual([])
    expect((await refusalOf(() => restoreBackup(file, '../../etc', '2031-03-03T09:00:00.000Z'))).code).toBe('not-found')
  })

  test('a damaged catalogue is put aside too', async () => {
    const { file, catalogue } = await withPicture()
    const key = await backupNow(file, 'asked', '2031-03-01T09:00:00.000Z')
    catalogue.close()
    const bytes = readFileSync(file).fill(0xa5, 4096)
    writeFileSync(file, bytes)
    const aside = await restoreBackup(file, key, '2031-03-02T09:00:00.000Z')
    expect(readFileSync(aside).equals(bytes)).toBe(true)
    expect(await checkCatalogue(file)).toEqual([])
  })

  test('a copy carries its files, tells what is missing, replaces nothing and leaves nothing when cancelled', async () => {
    const { folder, file, catalogue, store, kept } = await withPicture()
    const to = join(folder, 'copy.hangwright')
    const steps: string[] = []
    const done = await backupTo(catalogue, to, { progress: (_done, _total, words) => steps.push(words) })
    expect(done).toMatchObject({ file: to, works: 1, files: 1, fileBytes: kept.bytes, missing: [] })
    expect(new Set(steps)).toEqual(new Set(['Copying the catalogue', 'Copying pictures and documents']))
    expect(await checkCatalogue(to)).toEqual([])
    expect((await refusalOf(() => backupTo(catalogue, to))).code).toBe('file-exists')
    writeFileSync(store.path(kept.hash), 'altered')
    expect((await backupTo(catalogue, join(folder, 'second.hangwright'))).missing).toEqual([kept.hash])
    expect(await checkCatalogue(file)).toMatchObject([{ code: 'file-altered' }])
    const names = readdirSync(folder)
    const cancelled = new Error('cancelled')
    await expect(
      backupTo(catalogue, join(folder, 'third.hangwright'), { signal: AbortSignal.abort(cancelled) }),
    ).rejects.toThrow('cancelled')
    expect(readdirSync(folder)).toEqual(names)
    catalogue.close()
  })
})

describe('kept files', () => {
  test('a picture is upright, by its content’s name, in three sizes, without the camera’s position', async () => {
    const { folder, store } = await withPicture()
    const path = join(folder, 'turned.jpg')
    await sharp({ create: { width: 2000, height: 1000, channels: 3, background: '#aa2211' } })
      .jpeg()
      .withExif({ IFD0: { Orientation: '6' }, IFD3: { GPSLatitudeRef: 'N' } })
      .withMetadata({ orientation: 6 })
      .toFile(path)
    const kept = await store.addPicture(path)
    expect([kept.widthPx, kept.heightPx, kept.mime]).toEqual([1000, 2000, 'image/jpeg'])
    expect(readFileSync(store.path(kept.hash)).equals(readFileSync(path))).toBe(true)
    for (const size of [96, 480, 1600] as const) {
      const shown = await store.picture(kept.hash, size)
      const { width, height, exif } = await sharp(shown?.bytes).metadata()
      expect([shown?.type, width, height, exif]).toEqual(['image/jpeg', size / 2, size, undefined])
    }
    expect((await store.addPicture(path)).hash).toBe(kept.hash)
    expect(store.hashes().length).toBe(2)
  })

  test('what cannot be decoded is kept without a preview; a missing one is told', async () => {
    const { folder, store } = await withPicture()
    const path = join(folder, 'p.heic')
    writeFileSync(path, Buffer.concat([Buffer.from('\0\0\0\x18ftypheic', 'latin1'), Buffer.alloc(200, 3)]))
    const kept = await store.addPicture(path)
    expect(kept).toMatchObject({ mime: 'image/heic', widthPx: null, heightPx: null })
    expect(existsSync(store.path(kept.hash))).toBe(true)
    expect(await store.picture(kept.hash, 480)).toBeNull()
    expect(await store.picture(kept.hash, 'full')).toBeNull()
    expect(await store.picture('0'.repeat(64), 480)).toBeNull()
    expect((await refusalOf(() => store.path('../../etc/passwd'))).code).toBe('bad-input')
  })

  test('a drawing with scripts is never handed out as it is', async () => {
    const { folder, store } = await withPicture()
    const path = join(folder, 'p.svg')
    writeFileSync(
      path,
      '<svg xmlns="http://www.w3.org/2000/svg" width="40" height="20"><script>alert(1)</script><rect width="40" height="20"/></svg>',
    )
    const kept = await store.addPicture(path)
    expect((await store.picture(kept.hash, 'full'))?.type).toMatch(/^image\/(png|jpeg)$/)
  })

  test('tidying spares what rows, the journal or a backup name, and what is new', async () => {
    const { folder, file, catalogue, store, kept } = await withPicture()
    const keep = async (name: string, colour: string) =>
      (await store.addPicture(await picture(join(folder, name), colour))).hash
    const inJournal = await keep('j.jpg', '#111111')
    await catalogue.edit({ procedure: 'test', person: ann, label: 'Add' }, ({ db }) =>
      db.prepare(`INSERT INTO picture(id, work, hash) VALUES ('i2', 'w1', ?)`).run(inJournal),
    )
    await catalogue.edit({ procedure: 'test', person: ann, label: 'Remove' }, ({ db }) =>
      db.prepare(`DELETE FROM picture WHERE id = 'i2'`).run(),
    )
    const nobodys = await keep('n.jpg', '#222222')
    const fresh = await keep('f.jpg', '#333333')
    const old = new Date(Date.now() - 2 * 60 * 60 * 1000)
    for (const hash of [kept.hash, inJournal, nobodys]) utimesSync(store.path(hash), old, old)
    const inBackup = await keep('b.jpg', '#444444')
    utimesSync(store.path(inBackup), old, old)
    const key = await backupNow(file, 'asked', '2031-03-01T09:00:00.000Z')
    const backup = new Database(join(backupFolder(file), key))
    backup.prepare('UPDATE edit_now SET edit = 99').run()
    backup.prepare(`INSERT INTO document(id, subject_kind, subject, hash) VALUES ('d1', 'work', 'w1', ?)`).run(inBackup)
    backup.close()
    expect(await tidyFiles(file, Date.now())).toMatchObject({ removed: 1 })
    expect(store.hashes()).toEqual([kept.hash, inJournal, fresh, inBackup].sort())
    expect(await store.picture(nobodys, 96)).toBeNull()
    catalogue.close()
  })
})

test('a check finds broken rules, a stale text index, altered triggers and references to nothing', async () => {
  const { file, catalogue } = await withPicture()
  catalogue.close()
  expect(await checkCatalogue(file)).toEqual([])
  look(file, db => {
    db.pragma('foreign_keys = OFF')
    db.exec(
      'DROP TRIGGER journal_work_size_i; DROP TRIGGER text_work_u; DROP TRIGGER journal_work_u; DROP TRIGGER journal_work_number_i',
    )
    db.exec(`UPDATE work SET title = 'unseen', picture = 'other';
      INSERT INTO work_size(id, work, part, height, width, kind, at) VALUES ('s1', 'w1', 'framed', -5, 10, 'listed', '');
      INSERT INTO work_number(id, work, kind, text) VALUES ('n1', 'nowhere', 'lender', '7')`)
  })
  const codes = new Set((await checkCatalogue(file)).map(({ code }) => code))
  expect([...codes].sort()).toEqual(['picture-copy', 'reference', 'size-not-positive', 'text-index', 'trigger'])
})
