/**
 * The three hosts as the contract test drives them, each on its own copy of a catalogue: real HTTP, the command line's
 * own function, and a stand-in of Electron's IPC that clones what crosses as the real one does.
 */
import { cpSync, mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Answer } from '../../main/hosts/answer.ts'
import { runCommandLine } from '../../main/hosts/command-line/run.ts'
import { answerMessage, origin } from '../../main/hosts/desktop/shell.ts'
import { createHost, type Host } from '../../main/hosts/host.ts'
import { serveLoopback } from '../../main/hosts/loopback/server.ts'
import { callClock } from './fixture.ts'
import type { GivenFile } from './examples/types.ts'

export interface Call {
  readonly name: string
  readonly input: unknown
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
  cpSync(`${file}-files`, `${copy}-files`, { recursive: true, force: true })
  return { folder, file: copy }
}

function withHandles(input: unknown, handles: readonly string[]): unknown {
  const text = JSON.stringify(input)
  return JSON.parse(text.replace(/"\$(\d+)"/g, (whole, figure: string) => JSON.stringify(handles[Number(figure) - 1] ?? whole)))
}

function hostOn(copy: Copy, kind: 'loopback' | 'desktop'): Host {
  const host = createHost({ kind, data: join(copy.folder, 'data'), clock: callClock, checksOutput: true, report: error => {
    throw error
  } })
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
          body: bytes,
        })
        handles.push((await put.json()).value.handle)
      }
      let last: Answer | undefined
      for (const { name, input } of calls) {
        const response = await fetch(`${served.origin}/call`, {
          method: 'POST',
          headers: { ...headers, 'content-type': 'application/json' },
          body: JSON.stringify({ name, input: withHandles(input, handles) }),
        })
        last = await response.json()
      }
      return last ?? noCalls()
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
      let last: Answer | undefined
      for (const { name, input } of calls) {
        const text = structuredClone(JSON.stringify({ name, input: withHandles(input, handles) }))
        last = JSON.parse(structuredClone(await answerMessage(host, new Set([1]), event, text, () => {})))
      }
      return last ?? noCalls()
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
      let last: Answer | undefined
      for (const [index, { name, input }] of calls.entries()) {
        const out: string[] = []
        const err: string[] = []
        const status = await runCommandLine(
          ['call', copy.file, name, '-', ...paths.flatMap(path => ['--file', path])],
          {
            out: text => out.push(text),
            err: text => err.push(text),
            readIn: async () => JSON.stringify(input),
            // Each call is a program of its own; its clock goes on where the one before stopped being near.
            clock: { ...callClock, ids: index === 0 ? callClock.ids : `${callClock.ids}${index}n` },
            checksOutput: true,
          },
        )
        if (status === 2) throw new Error(err.join(''))
        const refusal = err.join('').trim().split('\n').at(-1) ?? ''
        last = status === 0 ? { ok: true, value: JSON.parse(out.join('')) } : { ok: false, refusal: JSON.parse(refusal) }
      }
      return last ?? noCalls()
    } finally {
      if (before === undefined) delete process.env.HANGWRIGHT_DATA
      else process.env.HANGWRIGHT_DATA = before
    }
  },
}

function noCalls(): never {
  throw new Error('an example makes at least one call')
}

export const drivers: readonly Driver[] = [loopback, commandLine, desktop]

export function forget(copy: Copy): void {
  rmSync(copy.folder, { recursive: true, force: true })
}
