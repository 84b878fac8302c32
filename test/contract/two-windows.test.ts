/**
 * Two windows on one catalogue: of one host, and of two hosts that are programs of their own. What one writes the other
 * is told; nothing that either wrote is lost; what both changed is asked, not overwritten.
 */
import { spawn } from 'node:child_process'
import { randomUUID } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { setTimeout as sleep } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import Database from 'better-sqlite3'
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest'
import type { Answer } from '../../main/hosts/answer.ts'
import type { Input, Name, Output } from '../../src/contract/contract.ts'
import { type HostEvent, hostEvent } from '../../src/contract/events.ts'
import { type Copy, copyOf } from './drivers.ts'
import { type Known, makeFixture } from './fixture.ts'
import { openOn, refusalCode } from './opened.ts'

const program = fileURLToPath(new URL('../../main/hosts/command-line/main.ts', import.meta.url))

/** What is stopped and taken away when all is over, the last first. */
const closing: (() => Promise<void> | void)[] = []

interface Served {
  readonly address: string
}

interface Window {
  readonly ask: <N extends Name>(name: N, input: Input<N>, job?: string) => Promise<Answer>
  readonly call: <N extends Name>(name: N, input: Input<N>) => Promise<Output<N>>
  /** Everything heard so far, over all connections. */
  readonly heard: readonly HostEvent[]
  readonly changes: () => number
  readonly hangUp: () => void
  readonly listen: () => Promise<void>
}

/** A host in a process of its own, as the command line starts it. */
async function serve(copy: Copy): Promise<Served> {
  const child = spawn(process.execPath, [program, 'serve', copy.file], {
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, HANGWRIGHT_DATA: join(copy.folder, 'data') },
  })
  const ended = new Promise<void>(resolve => child.once('exit', () => resolve()))
  closing.push(() => {
    child.kill('SIGTERM')
    return ended
  })
  const line = await new Promise<string>((resolve, reject) => {
    createInterface({ input: child.stdout }).once('line', resolve)
    child.once('exit', code => reject(new Error(`the host ended with ${code}`)))
  })
  return { address: JSON.parse(line).address }
}

async function openWindow(address: string): Promise<Window> {
  const { origin } = new URL(address)
  const cookie = (await fetch(address)).headers.get('set-cookie')?.split(';')[0] ?? ''
  const heard: HostEvent[] = []
  let connection = new AbortController()
  closing.push(() => connection.abort())

  async function read(body: ReadableStream<Uint8Array>, begun: () => void): Promise<void> {
    const decoder = new TextDecoder()
    let text = ''
    try {
      for await (const chunk of body) {
        begun()
        text += decoder.decode(chunk, { stream: true })
        const blocks = text.split('\n\n')
        text = blocks.pop() ?? ''
        for (const block of blocks) {
          const data = block.split('\n').find(line => line.startsWith('data: '))
          if (data !== undefined) heard.push(hostEvent.parse(JSON.parse(data.slice(6))))
        }
      }
    } catch {
      // Hung up, by us or by the host.
    }
  }

  async function ask(name: string, input: unknown, job?: string): Promise<Answer> {
    const response = await fetch(`${origin}/call`, {
      method: 'POST',
      headers: { cookie, origin, 'content-type': 'application/json' },
      body: JSON.stringify({ name, input, ...(job === undefined ? {} : { job }) }),
    })
    return response.json()
  }

  const window: Window = {
    ask,
    async call(name, input) {
      const answered = await ask(name, input)
      if (!answered.ok) throw new Error(`${name}: ${JSON.stringify(answered.refusal)}`)
      return answered.value as Output<typeof name> // the service of that name gave it
    },
    heard,
    changes: () => heard.filter(event => event.kind === 'changed').length,
    hangUp: () => connection.abort(),
    async listen() {
      connection = new AbortController()
      const response = await fetch(`${origin}/events`, { headers: { cookie }, signal: connection.signal })
      expect(response.status).toBe(200)
      const { body } = response
      if (body === null) throw new Error('the events have no body')
      await new Promise<void>(resolve => void read(body, resolve))
    },
  }
  await window.listen()
  return window
}

let known: Known
let copy: Copy
/** Both serve the same copy. */
let one: Served
let other: Served

beforeAll(async () => {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-two-'))
  closing.push(() => rmSync(folder, { recursive: true, force: true }))
  const fixture = await makeFixture(folder)
  known = fixture.known
  copy = copyOf(fixture.file, folder)
  ;[one, other] = await Promise.all([serve(copy), serve(copy)])
}, 120_000)

afterAll(async () => {
  for (const close of closing.reverse()) await close()
})

/** Heard within two looks of a host at the file, with room for a loaded machine. */
const soon = { timeout: 5000, interval: 20 }

const ways = [
  ['of one host', () => [one, one]],
  ['of two programs', () => [one, other]],
] as const

async function openBoth(hosts: readonly Served[]): Promise<readonly [Window, Window]> {
  const [here, there] = await Promise.all(hosts.map(({ address }) => openWindow(address)))
  if (here === undefined || there === undefined) throw new Error('two windows were to open')
  return [here, there]
}

/** Each test has a work of its own. */
async function newWork(window: Window): Promise<string> {
  return (await window.call('work.add', { title: 'Salt pans', maker: 'Ada Ruel', medium: 'etching on paper' })).id
}

describe.each(ways)('two windows %s', { timeout: 60_000 }, (_about, hosts) => {
  test('are told of each other’s edits, and read them', async () => {
    const [here, there] = await openBoth(hosts())
    const work = await newWork(here)
    for (const [writer, reader, title] of [
      [here, there, 'Salt pans, evening'],
      [there, here, 'Salt pans, morning'],
    ] as const) {
      const before = reader.changes()
      const { facts } = await writer.call('work.get', { id: work })
      await writer.call('work.update', { id: work, changes: { title: { was: facts.title, to: title } } })
      await expect.poll(reader.changes, soon).toBeGreaterThan(before)
      expect((await reader.call('work.get', { id: work })).facts.title).toBe(title)
    }
  })

  test('that change different fields of one work keep both', async () => {
    const [here, there] = await openBoth(hosts())
    const work = await newWork(here)
    const answers = await Promise.all([
      here.call('work.update', { id: work, changes: { medium: { was: 'etching on paper', to: 'drypoint' } } }),
      there.call('work.update', { id: work, changes: { maker: { was: 'Ada Ruel', to: 'Ada Ruehl' } } }),
    ])
    expect(answers).toEqual([
      { saved: ['medium'], clashes: [] },
      { saved: ['maker'], clashes: [] },
    ])
    for (const window of [here, there]) {
      expect(await window.call('work.get', { id: work })).toMatchObject({
        facts: { medium: 'drypoint', maker: 'Ada Ruehl' },
      })
    }
    const { edits } = await here.call('edit.list', { limit: 2 })
    expect(edits).toHaveLength(2)
    expect(new Set(edits.map(({ edit }) => edit)).size).toBe(2)
  })

  test('that change one field are asked: the later one is told the other’s value and may take its own', async () => {
    const [here, there] = await openBoth(hosts())
    const work = await newWork(here)
    const was = 'etching on paper'
    await here.call('work.update', { id: work, changes: { medium: { was, to: 'drypoint' } } })
    const changes = { medium: { was, to: 'aquatint' }, dateText: { was: '', to: '1931' } }
    const clashed = await there.call('work.update', { id: work, changes })
    expect(clashed).toEqual({
      saved: ['dateText'],
      clashes: [{ code: 'clash', id: work, field: 'medium', was, yours: 'aquatint', theirs: 'drypoint' }],
    })
    // Nothing of the other's is overwritten before the question is answered.
    expect(await here.call('work.get', { id: work })).toMatchObject({
      facts: { medium: 'drypoint', dateText: '1931' },
    })
    const again = { medium: { was: clashed.clashes[0]?.theirs as string, to: 'aquatint' } } // a medium is text
    expect(await there.call('work.update', { id: work, changes: again })).toEqual({
      saved: ['medium'],
      clashes: [],
    })
    expect((await here.call('work.get', { id: work })).facts.medium).toBe('aquatint')
  })

  test('that move one work on the wall are asked the same way', async () => {
    const [here, there] = await openBoth(hosts())
    const at = (x: number) => ({ face: known.northFace, x, rule: 'face' as const, y: null })
    const move = (from: number, to: number) => ({
      exhibition: known.show,
      places: [{ entry: known.pansEntry, ...at(to), was: at(from) }],
    })
    const { works } = await here.call('wall.elevation', { exhibition: known.show, face: known.northFace })
    const start = works.find(({ placement }) => placement === known.pansPlace)?.x ?? Number.NaN
    const moved = { placements: [known.pansPlace], clashes: [] }
    expect(await here.call('placement.put', move(start, start + 60))).toEqual(moved)
    expect(await there.call('placement.put', move(start, start + 160))).toEqual({
      placements: [],
      clashes: [
        {
          code: 'clash',
          id: known.pansEntry,
          field: 'place',
          was: at(start),
          yours: at(start + 160),
          theirs: at(start + 60),
        },
      ],
    })
    expect(await there.call('placement.put', move(start + 60, start + 160))).toEqual(moved)
  })

  test('that write at once lose nothing', async () => {
    const [here, there] = await openBoth(hosts())
    const series = `Series ${randomUUID().slice(0, 8)}`
    const titles = Array.from({ length: 40 }, (_, n) => `${series} ${n}`)
    await Promise.all(titles.map((title, n) => (n % 2 === 0 ? here : there).call('work.add', { title })))
    for (const window of [here, there]) {
      const { total, works } = await window.call('work.list', { search: series, limit: 100 })
      expect(total).toBe(40)
      expect(works.map(({ title }) => title).sort()).toEqual([...titles].sort())
    }
  })
})

describe('a window of another program', { timeout: 90_000 }, () => {
  test('is told of an edit that falls into long work of its own', async () => {
    const here = openOn(copy.folder, copy.file)
    const there = openOn(copy.folder, copy.file)
    const { id: work } = await here.call('work.add', { title: 'Salt pans' })
    let meanwhile: Promise<unknown> = Promise.resolve()
    here.host.subscribe(event => {
      // A moment before the worker writes, and long before the next look at the file.
      if (event.kind === 'progress') meanwhile = there.call('work.add', { title: 'Meanwhile' })
    })
    for (let round = 0; round < 4; round++) {
      const handle = here.give('terms.txt', `no daylight, ${round}`)
      await sleep(1100)
      const before = here.events.length
      await here.call('work.addDocument', { work, handle }, `attach-${round}`)
      await meanwhile
      // Its own change names the documents alone: a list of works would stay as it was.
      const ofWorks = () =>
        here.events
          .slice(before)
          .some(event => event.kind === 'changed' && (event.tables.length === 0 || event.tables.includes('work')))
      await expect.poll(ofWorks, soon).toBe(true)
    }
  })

  test('is refused its undo where the other has built on the edit, and nothing changes', async () => {
    const [here, there] = await openBoth([one, other])
    const work = await newWork(here)
    const { id } = await there.call('person.add', {
      name: 'Ivo Marl',
      role: 'registrar',
      lengthUnit: 'mm',
      paper: 'A4',
      fraction: 16,
    })
    await here.call('desk.sit', { person: known.person })
    await there.call('desk.sit', { person: id })
    const title = (was: string, to: string) => ({ id: work, changes: { title: { was, to } } })
    await here.call('work.update', title('Salt pans', 'Salt works'))
    await there.call('work.update', title('Salt works', 'Brine pans'))
    expect(refusalCode(await here.ask('edit.undo', {}))).toBe('undo-blocked')
    expect((await here.call('work.get', { id: work })).facts.title).toBe('Brine pans')
    await there.call('edit.undo', {})
    expect((await here.call('edit.undo', {})).undone).toContain('Salt')
    expect((await there.call('work.get', { id: work })).facts.title).toBe('Salt pans')
  })

  test('is not stopped by a third that writes for long: it reads on, and its edit is refused after ten seconds', async () => {
    const window = await openWindow(one.address)
    const work = await newWork(window)
    const { works } = await window.call('work.counts', {})
    const holder = new Database(copy.file, { timeout: 0 })
    onTestFinished(() => void holder.close())
    holder.exec('BEGIN IMMEDIATE')
    const began = performance.now()
    const writes = [window.ask('work.add', { title: 'Late' }), window.ask('work.add', { title: 'Later' })]
    await sleep(300)
    for (let n = 0; n < 20; n++) {
      const asked = performance.now()
      expect((await window.call('work.get', { id: work })).facts.title).toBe('Salt pans')
      expect(performance.now() - asked).toBeLessThan(1000)
    }
    const answers = await Promise.all(writes)
    const took = performance.now() - began
    expect(answers.map(refusalCode)).toEqual(['catalogue-busy', 'catalogue-busy'])
    expect(took).toBeGreaterThan(9000)
    // Who came second has waited for the same ten seconds, not for ten more.
    expect(took).toBeLessThan(15_000)
    holder.exec('ROLLBACK')
    await window.call('work.add', { title: 'At last' })
    expect((await window.call('work.counts', {})).works).toBe(works + 1)
  })

  test('waits for a third that is done in time', async () => {
    const window = await openWindow(one.address)
    const holder = new Database(copy.file, { timeout: 0 })
    onTestFinished(() => void holder.close())
    holder.exec('BEGIN IMMEDIATE')
    const added = window.call('work.add', { title: 'Late' })
    await sleep(1500)
    holder.exec('ROLLBACK')
    await added
    expect((await window.call('work.list', { search: 'late' })).total).toBe(1)
  })
})

describe('a window that lost its line', { timeout: 60_000 }, () => {
  test('hears again after it came back; the other heard all along', async () => {
    const [here, there] = await openBoth([one, one])
    here.hangUp()
    await there.call('work.add', { title: 'Unheard' })
    await expect.poll(there.changes, soon).toBe(1)
    expect(here.changes()).toBe(0)
    await here.listen()
    await there.call('work.add', { title: 'Heard' })
    await expect.poll(here.changes, soon).toBe(1)
    expect(there.changes()).toBe(2)
    for (let n = 0; n < 30; n++) {
      here.hangUp()
      await here.listen()
    }
    await there.call('work.add', { title: 'Heard once' })
    await expect.poll(here.changes, soon).toBe(2)
    await sleep(700)
    // Each line that was dropped is forgotten: what is told once is heard once, and an own edit is not told as another's.
    expect([here.changes(), there.changes()]).toEqual([2, 3])
  })
})
