/** A catalogue moved or copied: with its pictures, documents and backups, or not at all. */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { beforeEach, describe, expect, test } from 'vitest'
import { backupFolder } from '../../main/database/backup-files.ts'
import { filesFolder } from '../../main/database/catalogue.ts'
import { type PreparedMove, prepareMove } from '../../main/database/move.ts'
import { Refusal } from '../../src/contract/refusal.ts'
import { type Known, makeFixture } from './fixture.ts'
import { type Opened, openOn, ownFolder, refusalCode } from './opened.ts'

let here: Opened
let known: Known
let target: string

beforeEach(async () => {
  const folder = ownFolder()
  const fixture = await makeFixture(folder)
  known = fixture.known
  here = openOn(folder, fixture.file)
  target = join(folder, 'Übersicht 2031')
  mkdirSync(target)
}, 60_000)

/** Every file under a folder with its content, by its path there. */
function tree(folder: string): Record<string, string> {
  if (!existsSync(folder)) return {}
  return Object.fromEntries(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter(entry => entry.isFile())
      .map(({ parentPath, name }) => join(parentPath, name))
      .sort()
      .map(path => [path.slice(folder.length), readFileSync(path, 'base64')]),
  )
}

describe('a move', { timeout: 60_000 }, () => {
  test('carries files and backups, leaves nothing behind, and the host goes on with it', async () => {
    await here.call('desk.sit', { person: known.person })
    await here.call('catalogue.keepBackup', {})
    const before = { files: tree(filesFolder(here.file)), backups: tree(backupFolder(here.file)) }
    expect(Object.keys(before.files).length).toBeGreaterThan(2)
    expect(Object.keys(before.backups)).toHaveLength(1)
    const moved = await here.call('catalogue.move', { folder: target, name: 'Low Water' })
    const file = join(target, 'Low Water.hangwright')
    expect(moved).toEqual({ name: 'Low Water', file, files: 2, missing: [] })
    expect(tree(filesFolder(file))).toEqual(before.files)
    expect(tree(backupFolder(file))).toEqual(before.backups)
    for (const left of [here.file, filesFolder(here.file), backupFolder(here.file)])
      expect(existsSync(left)).toBe(false)
    expect(here.events).toContainEqual({ kind: 'opened', file })
    expect(await here.call('desk.state', {})).toMatchObject({
      catalogue: { name: 'Low Water', file },
      person: { id: known.person },
    })
    // It is written to, undone and checked as before, and stands alone among the recent ones.
    await here.call('work.add', { title: 'After the move' })
    expect((await here.call('edit.undo', {})).undone).toContain('After the move')
    expect(await here.call('catalogue.check', {})).toEqual({ ok: true, integrity: [] })
    const { catalogues } = await here.call('desk.recent', {})
    expect(catalogues.map(({ file: recent, missing }) => [recent, missing])).toEqual([[file, false]])
    expect(await here.host.open?.store.picture(known.pansPictureHash, 'full')).not.toBeNull()
  })

  test('is refused where something of that name is, and all stays', async () => {
    const file = join(target, 'Low Water.hangwright')
    for (const there of [file, filesFolder(file), backupFolder(file)]) {
      writeFileSync(there, 'somebody’s')
      const refused = await here.ask('catalogue.move', { folder: target, name: 'Low Water' })
      expect(refused).toMatchObject({ ok: false, refusal: { code: 'file-exists', field: 'name' } })
      expect(readFileSync(there, 'utf8')).toBe('somebody’s')
      rmSync(there)
    }
    expect((await here.call('work.counts', {})).works).toBe(4)
  })

  test('is refused while another program has it open, and goes through when that has closed', async () => {
    const there = openOn(here.folder, here.file)
    const refused = await here.ask('catalogue.move', { folder: target, name: 'Low Water' })
    expect(refusalCode(refused)).toBe('catalogue-in-use')
    expect(readdirSync(target)).toEqual([])
    await here.call('work.add', { title: 'Still here' })
    expect((await there.call('work.counts', {})).works).toBe(5)
    await there.host.close()
    expect((await here.call('catalogue.move', { folder: target, name: 'Low Water' })).files).toBe(2)
    expect((await here.call('work.counts', {})).works).toBe(5)
  })

  test('lets an edit wait that is asked meanwhile, and then writes it where the catalogue is now', async () => {
    const [moved] = await Promise.all([
      here.call('catalogue.move', { folder: target, name: 'Low Water' }),
      here.call('work.add', { title: 'Meanwhile' }),
    ])
    expect(moved.file).toBe(join(target, 'Low Water.hangwright'))
    expect((await here.call('work.list', { search: 'meanwhile' })).total).toBe(1)
  })

  test('lets whoever asks wait while the catalogue itself is under way, and answers from where it is then', async () => {
    const file = join(target, 'Low Water.hangwright')
    const move = await prepareMove(here.file, file, { copies: true })
    here.host.closeFile()
    const answered: string[] = []
    const asked = [
      here.call('work.counts', {}).then(({ works }) => answered.push(`${works} works`)),
      here.call('desk.state', {}).then(({ catalogue }) => answered.push(catalogue?.file ?? 'none')),
      here.call('work.add', { title: 'Meanwhile' }).then(() => answered.push('written')),
    ]
    await move.finish()
    // What needs no catalogue is answered meanwhile, and a cancel is heard.
    expect((await here.call('desk.cancel', { job: 'none' })).cancelled).toBe(false)
    expect(answered).toEqual([])
    here.host.openFile(file)
    await Promise.all(asked)
    expect([...answered].sort()).toEqual([file, '4 works', 'written'].sort())
    expect((await here.call('work.list', { search: 'meanwhile' })).total).toBe(1)
  })

  test('tells those who waited where there is no catalogue any more', async () => {
    here.host.closeFile()
    const asked = here.ask('work.counts', {})
    expect(() => here.host.openFile(join(target, 'gone.hangwright'))).toThrow()
    expect(refusalCode(await asked)).toBe('no-catalogue')
  })

  test('names what is missing or altered and moves all the same', async () => {
    const store = here.host.open?.store
    if (store === undefined) throw new Error('the catalogue is open')
    rmSync(store.path(known.termsHash))
    writeFileSync(store.path(known.pansPictureHash), 'altered')
    const { files, missing } = await here.call('catalogue.move', { folder: target, name: 'Low Water' })
    expect(files).toBe(0)
    expect([...missing].sort()).toEqual([known.pansPictureHash, known.termsHash].sort())
    expect((await here.call('work.counts', {})).works).toBe(4)
  })
})

describe('onto another disk', { timeout: 60_000 }, () => {
  const to = () => join(target, 'Low Water.hangwright')
  const prepared = (signal?: AbortSignal): Promise<PreparedMove> =>
    prepareMove(here.file, to(), { copies: true, ...(signal === undefined ? {} : { signal }) })

  test('it copies all, holds each copy against its original, and then takes the originals away', async () => {
    await here.call('catalogue.keepBackup', {})
    const before = { files: tree(filesFolder(here.file)), backups: tree(backupFolder(here.file)) }
    const move = await prepared()
    // The catalogue is in use until now, so that something may still be added.
    await here.call('work.addDocument', { work: known.pans, handle: here.give('late.txt', 'late') })
    here.host.closeFile()
    await move.finish()
    expect(tree(backupFolder(to()))).toEqual(before.backups)
    expect(tree(filesFolder(to()))).toMatchObject(before.files)
    expect(readdirSync(dirname(here.file)).filter(name => name.startsWith('fixture'))).toEqual([])
    here.host.openFile(to())
    expect(await here.call('catalogue.check', {})).toEqual({ ok: true, integrity: [] })
    expect((await here.call('work.get', { id: known.pans })).documents.map(({ name }) => name)).toContain('late.txt')
  })

  test('a move that is dropped or refused leaves the catalogue where it was and nothing there', async () => {
    const before = tree(filesFolder(here.file))
    const move = await prepared()
    expect(readdirSync(target)).not.toEqual([])
    const other = openOn(here.folder, here.file)
    here.host.closeFile()
    await expect(move.finish()).rejects.toMatchObject({ code: 'catalogue-in-use' })
    move.drop()
    await other.host.close()
    expect(readdirSync(target)).toEqual([])
    expect(tree(filesFolder(here.file))).toEqual(before)
    here.host.openFile(here.file)
    expect((await here.call('work.counts', {})).works).toBe(4)
  })

  test('a cancel while it copies leaves nothing there', async () => {
    const abort = new AbortController()
    const move = prepareMove(here.file, to(), {
      copies: true,
      signal: abort.signal,
      progress: (done, _total, words) => {
        if (words.startsWith('Copying') && done > 0) abort.abort(new Refusal('cancelled', 'It was cancelled.'))
      },
    })
    await expect(move).rejects.toMatchObject({ code: 'cancelled' })
    expect(readdirSync(target)).toEqual([])
    expect(await here.call('catalogue.check', {})).toEqual({ ok: true, integrity: [] })
  })
})

test('a cancel of the host’s own move leaves the catalogue where it was', { timeout: 60_000 }, async () => {
  here.host.subscribe(event => {
    if (event.kind === 'progress' && event.job === 'move-1') here.host.cancel('move-1')
  })
  const answered = await here.ask('catalogue.move', { folder: target, name: 'Low Water' }, 'move-1')
  expect(refusalCode(answered)).toBe('cancelled')
  expect(readdirSync(target)).toEqual([])
  expect((await here.call('work.counts', {})).works).toBe(4)
})

test('a copy leaves the catalogue open where it is, and opens by itself', { timeout: 60_000 }, async () => {
  const { file, works, files } = await here.call('catalogue.saveCopy', { folder: target, name: 'spare.hangwright' })
  expect([file, works, files]).toEqual([join(target, 'spare.hangwright'), 4, 2])
  expect((await here.call('desk.state', {})).catalogue?.file).toBe(here.file)
  const copy = openOn(ownFolder(), file)
  expect(await copy.call('catalogue.check', {})).toEqual({ ok: true, integrity: [] })
  const again = await here.ask('catalogue.saveCopy', { folder: target, name: 'spare' })
  expect(again).toMatchObject({ ok: false, refusal: { code: 'file-exists', field: 'name' } })
})
