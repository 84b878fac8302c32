/**
 * The three hosts as the contract test drives them, each on its own copy of a catalogue: real HTTP, the command line's
 * own function, and a stand-in of Electron's IPC that clones what crosses as the real one does.
 */
import { cpSync, existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { filesFolder } from '../../main/database/catalogue.ts'
import type { Answer } from '../../main/hosts/answer.ts'
import { runCommandLine } from '../../main/hosts/command-line/run.ts'
import { answerMessage, origin } from '../../main/hosts/desktop/shell.ts'
import { createHost, type Host } from '../../main/hosts/host.ts'
import { serveLoopback } from '../../main/hosts/loopback/server.ts'
import type { GivenFile } from './examples/types.ts'
import { callClock } from './fixture.ts'

export interface Call {
  readonly name: string
  /** From what the calls before it answered. */
  readonly input: (earlier: readonly unknown[]) => unknown
}

export interface Driver {
  readonly name: 'loopback' | 'command line' | 'desktop'
  /** Runs the calls one after the other on one copy of the catalogue; the last one's answer. */
  readonly drive: (copy: Copy, calls: readonly Call[], files: readonly GivenFile[]) => Promise<Answer>
}

export interface Copy {
  readonly folder: string
  readonly file: string
}

let copies = 0

/** A copy of the fixture with its files folder, in a folder of its own. */
export function copyOf(file: string, into: string): Copy {
  const folder = join(into, `copy-${copies++}`)
  mkdirSync(folder, { recursive: true })
  const copy = join(folder, 'fixture.hangwright')
  cpSync(file, copy)
  const files = filesFolder(file)
  if (existsSync(files)) cpSync(files, filesFolder(copy), { recursive: true })
  return { folder, file: copy }
}

export function forget(copy: Copy): void {
  rmSync(copy.folder, { recursive: true, force: true })
}

/** The last call's answer. A call before it that is refused is a fault of the example. */
async function oneByOne(
  calls: readonly Call[],
  ask: (name: string, input: unknown, index: number) => Promise<Answer>,
): Promise<Answer> {
  const earlier: unknown[] = []
  for (const [index, { name, input }] of calls.entries()) {
    const answered = await ask(name, input(earlier), index)
    if (index === calls.length - 1) return answered
    if (!answered.ok) throw new Error(`${name}, which comes first, was refused: ${answered.refusal.message}`)
    earlier.push(answered.value)
  }
  throw new Error('an example makes at least one call')
}

function withHandles(input: unknown, handles: readonly string[]): unknown {
  const text = JSON.stringify(input)
  return JSON.parse(
    text.replace(/"\$(\d+)"/g, (whole, figure: string) => JSON.stringify(handles[Number(figure) - 1] ?? whole)),
  )
}

function hostOn(copy: Copy, kind: 'loopback' | 'desktop'): Host {
  const host = createHost({
    kind,
    data: join(copy.folder, 'data'),
    clock: callClock,
    checksOutput: true,
    report(error) {
      throw error
    },
  })
  host.openFile(copy.file)
  return host
}

const loopback: Driver = {
  name: 'loopback',
  async drive(copy, calls, files) {
    const host = hostOn(copy, 'loopback')
    const served = await serveLoopback(host)
    try {
      const cookie = (await fetch(served.address)).headers.get('set-cookie')?.split(';')[0] ?? ''
      const headers = { cookie, origin: served.origin }
      const handles: string[] = []
      for (const { name, bytes } of files) {
        const put = await fetch(`${served.origin}/upload?name=${encodeURIComponent(name)}`, {
          method: 'PUT',
          headers: { ...headers, 'content-type': 'application/octet-stream' },
          body: new Blob([new Uint8Array(bytes)]),
        })
        handles.push((await put.json()).value.handle)
      }
      return await oneByOne(calls, async (name, input) => {
        const response = await fetch(`${served.origin}/call`, {
          method: 'POST',
          headers: { ...headers, 'content-type': 'application/json' },
          body: JSON.stringify({ name, input: withHandles(input, handles) }),
        })
        return response.json()
      })
    } finally {
      await served.close()
      await host.close()
    }
  },
}

const desktop: Driver = {
  name: 'desktop',
  async drive(copy, calls, files) {
    const host = hostOn(copy, 'desktop')
    const event = { senderFrame: { url: `${origin}/`, parent: null }, sender: { id: 1 } }
    try {
      const handles = files.map(({ name, bytes }) => {
        const { handle, path } = host.handles.create(name)
        writeFileSync(path, structuredClone(bytes))
        return handle
      })
      return await oneByOne(calls, async (name, input) => {
        const text = structuredClone(JSON.stringify({ name, input: withHandles(input, handles) }))
        return JSON.parse(structuredClone(await answerMessage(host, new Set([1]), event, text, () => {})))
      })
    } finally {
      await host.close()
    }
  },
}

const commandLine: Driver = {
  name: 'command line',
  async drive(copy, calls, files) {
    const paths = files.map(({ name, bytes }) => {
      const path = join(copy.folder, name)
      writeFileSync(path, bytes)
      return path
    })
    const before = process.env.HANGWRIGHT_DATA
    process.env.HANGWRIGHT_DATA = join(copy.folder, 'data')
    try {
      return await oneByOne(calls, async (name, input, index) => {
        const out: string[] = []
        const err: string[] = []
        const status = await runCommandLine(
          ['call', copy.file, name, '-', ...paths.flatMap(path => ['--file', path])],
          {
            out: text => out.push(text),
            err: text => err.push(text),
            readIn: async () => JSON.stringify(input),
            // Each call is a program of its own; the ids of a later one must not meet an earlier one's.
            clock: { ...callClock, ids: index === 0 ? callClock.ids : `${callClock.ids}${index}n` },
            checksOutput: true,
          },
        )
        if (status === 2) throw new Error(err.join(''))
        const refusal = err.join('').trim().split('\n').at(-1) ?? ''
        return status === 0
          ? { ok: true, value: JSON.parse(out.join('')) }
          : { ok: false, refusal: JSON.parse(refusal) }
      })
    } finally {
      if (before === undefined) delete process.env.HANGWRIGHT_DATA
      else process.env.HANGWRIGHT_DATA = before
    }
  },
}

export const drivers: readonly Driver[] = [loopback, commandLine, desktop]
