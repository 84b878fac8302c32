/**
 * Long work: it tells how far it is, can be cancelled until its commit and then leaves everything as it was, and takes
 * nothing with it when it fails. Taking back a large edit is long work too, so that the host stays free meanwhile.
 */
import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { describe, expect, test } from 'vitest'
import { backupFolder } from '../../main/database/backup-files.ts'
import { checkCatalogue } from '../../main/database/check.ts'
import type { HostEvent } from '../../src/contract/events.ts'
import { makeFixture } from './fixture.ts'
import { listOf, newCatalogue, type Opened, openOn, ownFolder, refusalCode } from './opened.ts'

type Progress = Extract<HostEvent, { readonly kind: 'progress' }>

function fresh(more: { readonly worker?: URL } = {}): Opened {
  const folder = ownFolder()
  return openOn(folder, newCatalogue(folder), more)
}

function progressOf({ events }: Opened, job: string): Progress[] {
  return events.filter(event => event.kind === 'progress').filter(event => event.job === job)
}

/** Cancels the job the first time it tells such words. */
function cancelAt({ host }: Opened, job: string, words: string): { readonly cancelled: () => boolean } {
  let cancelled = false
  host.subscribe(event => {
    if (cancelled || event.kind !== 'progress' || event.job !== job || !event.words.startsWith(words)) return
    cancelled = host.cancel(job)
  })
  return { cancelled: () => cancelled }
}

describe('progress', () => {
  test('says in words what is done and how far it is', { timeout: 60_000 }, async () => {
    const opened = fresh()
    const handle = opened.give('list.csv', listOf(4000))
    const { added } = await opened.call('import.accept', { handle, exhibitionTitle: 'Tides' }, 'list-1')
    expect(added).toBe(4000)
    const told = progressOf(opened, 'list-1')
    expect(new Set(told.map(({ words }) => words)).size).toBeGreaterThan(1)
    for (const { done, total } of told) {
      expect(done).toBeGreaterThanOrEqual(0)
      if (total !== null) expect(done).toBeLessThanOrEqual(total)
    }
    for (const words of new Set(told.map(event => event.words))) {
      const steps = told.filter(event => event.words === words).map(({ done }) => done)
      expect(steps).toEqual([...steps].sort((a, b) => a - b))
    }
    // Nobody listens to a job under another name.
    expect(progressOf(opened, 'job-1')).toEqual([])
  })
})

describe('cancel', () => {
  test.each(['Reading', 'Comparing', 'Writing'])(
    'an import while it says %s leaves everything as it was',
    {
      timeout: 60_000,
    },
    async words => {
      const opened = fresh()
      await opened.call('work.add', { title: 'Before' })
      const before = opened.state()
      const handle = opened.give('list.csv', listOf(30_000))
      const cancel = cancelAt(opened, 'list-1', words)
      const answered = await opened.ask('import.accept', { handle, exhibitionTitle: 'Tides' }, 'list-1')
      expect(cancel.cancelled()).toBe(true)
      expect(refusalCode(answered)).toBe('cancelled')
      expect(opened.state()).toBe(before)
      expect(opened.events.filter(event => event.kind === 'changed' && event.tables.includes('import_run'))).toEqual([])
      // The lock is free again, the name too, and the text index is whole.
      await opened.call('work.add', { title: 'After' })
      expect(await opened.call('desk.cancel', { job: 'list-1' })).toEqual({ cancelled: false })
      expect((await opened.call('work.list', { search: 'after' })).total).toBe(1)
      expect(await checkCatalogue(opened.file)).toEqual([])
    },
  )

  test('a backup leaves no half of it', { timeout: 60_000 }, async () => {
    const opened = fresh()
    await opened.call('import.accept', { handle: opened.give('list.csv', listOf(9000)) })
    const before = opened.state()
    const cancel = cancelAt(opened, 'copy-1', 'Copying')
    expect(refusalCode(await opened.ask('catalogue.backup', { name: 'friday' }, 'copy-1'))).toBe('cancelled')
    expect(cancel.cancelled()).toBe(true)
    expect(opened.state()).toBe(before)
    const copies = join(backupFolder(opened.file), 'copies')
    expect(existsSync(copies) ? readdirSync(copies) : []).toEqual([])
    expect((await opened.call('catalogue.backup', { name: 'friday' })).works).toBe(9000)
  })

  test.each([
    ['sheet.template', 'Drawing', 'causewayPlace'],
    ['sheet.hangingOrder', 'Putting works', 'show'],
  ] as const)('%s leaves no file and no name of one', { timeout: 60_000 }, async (name, words, of) => {
    const folder = ownFolder()
    const { file, known } = await makeFixture(folder)
    const opened = openOn(folder, file)
    const before = readdirSync(opened.host.handles.folder)
    const cancel = cancelAt(opened, 'paper-1', words)
    const asked =
      name === 'sheet.template'
        ? opened.ask(name, { placement: known[of] ?? '', area: 'work' }, 'paper-1')
        : opened.ask(name, { exhibition: known.show }, 'paper-1')
    expect(refusalCode(await asked)).toBe('cancelled')
    expect(cancel.cancelled()).toBe(true)
    expect(readdirSync(opened.host.handles.folder)).toEqual(before)
  })

  test('after the commit it does nothing', { timeout: 60_000 }, async () => {
    const opened = fresh()
    let asked = false
    opened.host.subscribe(event => {
      if (event.kind !== 'changed' || !event.tables.includes('import_run')) return
      asked = true
      opened.host.cancel('list-1')
    })
    const handle = opened.give('list.csv', listOf(3000))
    const { added } = await opened.call('import.accept', { handle }, 'list-1')
    expect(asked).toBe(true)
    expect(added).toBe(3000)
    const after = opened.state()
    expect(await opened.call('desk.cancel', { job: 'list-1' })).toEqual({ cancelled: false })
    expect(opened.state()).toBe(after)
    expect((await opened.call('work.counts', {})).works).toBe(3000)
  })

  test('while it waits for the lock', { timeout: 60_000 }, async () => {
    const opened = fresh()
    let free = () => {}
    const held = opened.host.alone(() => new Promise<void>(resolve => (free = resolve)))
    const handle = opened.give('list.csv', listOf(50))
    const waiting = opened.ask('import.accept', { handle }, 'list-1')
    await expect
      .poll(() => opened.events.some(event => event.kind === 'waiting' && event.waits), { timeout: 20_000 })
      .toBe(true)
    expect(await opened.call('desk.cancel', { job: 'list-1' })).toEqual({ cancelled: true })
    expect(refusalCode(await waiting)).toBe('cancelled')
    free()
    await held
    expect((await opened.call('work.counts', {})).works).toBe(0)
  })

  test('of a job that nobody knows', async () => {
    expect(await fresh().call('desk.cancel', { job: 'nothing' })).toEqual({ cancelled: false })
  })
})

describe('trouble', () => {
  test('a name that is in use is refused, the work under it goes on', { timeout: 60_000 }, async () => {
    const opened = fresh()
    const first = opened.call('import.accept', { handle: opened.give('list.csv', listOf(2000)) }, 'same')
    const second = await opened.ask('catalogue.check', {}, 'same')
    expect(second).toMatchObject({ ok: false, refusal: { code: 'job-in-use', field: 'job' } })
    expect((await first).added).toBe(2000)
    expect((await opened.call('catalogue.check', {}, 'same')).ok).toBe(true)
  })

  test('a worker that dies of memory is refused, and the lock it held is free again', {
    timeout: 120_000,
  }, async () => {
    const opened = fresh({ worker: new URL('./hungry-worker.ts', import.meta.url) })
    const work = opened.ask('catalogue.check', {}, 'hungry')
    await sleep(500)
    // It waits behind the dying worker and is then done.
    const write = opened.call('work.add', { title: 'Meanwhile' })
    expect(refusalCode(await work)).toBe('too-large')
    await write
    expect((await opened.call('work.counts', {})).works).toBe(1)
  })
})

describe('a change that only adds a record', () => {
  test('is told to the screens', { timeout: 60_000 }, async () => {
    const folder = ownFolder()
    const { file, known } = await makeFixture(folder)
    const opened = openOn(folder, file)
    await opened.call('sheet.wall', { exhibition: known.show, faces: [known.northFace] })
    expect(opened.events.filter(event => event.kind === 'changed')).toContainEqual({
      kind: 'changed',
      edit: null,
      tables: ['sheet_print'],
    })
  })
})

describe('taking back a large edit', () => {
  const rows = 20_000

  /** The longest time that the host's own thread was kept from answering, in milliseconds. */
  async function longestPause<T>(work: Promise<T>): Promise<{ value: T; pause: number }> {
    let last = performance.now()
    let pause = 0
    const beat = setInterval(() => {
      const now = performance.now()
      pause = Math.max(pause, now - last)
      last = now
    }, 10)
    try {
      return { value: await work, pause }
    } finally {
      clearInterval(beat)
    }
  }

  test('leaves the host free, tells how far it is, can be cancelled, and is exact', { timeout: 170_000 }, async () => {
    const opened = fresh()
    await opened.call('work.add', { title: 'Before' })
    const before = opened.state().split('\n').slice(1).join('\n')
    const handle = opened.give('harbour.csv', listOf(rows))
    await opened.call('import.accept', { handle, exhibitionTitle: 'Tides' })
    const full = opened.state()

    const cancel = cancelAt(opened, 'back-0', 'Taking back')
    expect(refusalCode(await opened.ask('edit.undo', {}, 'back-0'))).toBe('cancelled')
    expect(cancel.cancelled()).toBe(true)
    expect(opened.state()).toBe(full)

    const { value, pause } = await longestPause(
      Promise.all([opened.call('edit.undo', {}, 'back-1'), opened.call('work.list', { search: 'tide', limit: 5 })]),
    )
    const [{ undone }, list] = value
    expect(undone).toContain('harbour.csv')
    // Reading went on before it was committed; the thread was never away for long (a loaded machine included).
    expect(list.total).toBe(rows)
    expect(pause).toBeLessThan(1500)
    const told = progressOf(opened, 'back-1')
    expect(told.length).toBeGreaterThan(3)
    expect(told[0]?.words).toBe(`Taking back “${undone}”`)
    expect(told.at(-1)?.done).toBe(told.at(-1)?.total)
    expect(opened.state().split('\n').slice(1).join('\n')).toBe(before)
    expect(opened.events.filter(event => event.kind === 'changed').at(-1)).toMatchObject({
      tables: expect.arrayContaining(['work']),
    })

    // What comes next finds the lock free, and is its own edit.
    expect((await opened.call('edit.redo', {})).redone).toBe(undone)
    expect(opened.state().split('\n').slice(1)).toEqual(full.split('\n').slice(1))
    await opened.call('work.add', { title: 'After' })
    expect((await opened.call('edit.undo', {})).undone).toContain('After')
    expect(await checkCatalogue(opened.file)).toEqual([])
  })
})
