/** A host on a catalogue in a folder of its own, for tests of what goes on inside one host or between two. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import { createCatalogue } from '../../main/database/catalogue.ts'
import { type Answer, answer } from '../../main/hosts/answer.ts'
import { createHost, type Host } from '../../main/hosts/host.ts'
import { clockFrom } from '../../main/services/clock.ts'
import type { Input, Name, Output } from '../../src/contract/contract.ts'
import type { HostEvent } from '../../src/contract/events.ts'
import { dump, look } from '../unit/database/fixture.ts'

export interface Opened {
  readonly folder: string
  readonly file: string
  readonly host: Host
  /** Everything the host told its screens so far. */
  readonly events: readonly HostEvent[]
  /** The answer, or an error that names the refusal. */
  readonly call: <N extends Name>(name: N, input: Input<N>, job?: string) => Promise<Output<N>>
  /** The answer as it crosses. */
  readonly ask: <N extends Name>(name: N, input: Input<N>, job?: string) => Promise<Answer>
  readonly give: (name: string, bytes: string | Uint8Array) => string
  /** All journaled tables and how long the journal is. */
  readonly state: () => string
}

export function ownFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-contract-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

export function newCatalogue(folder: string, name = 'a'): string {
  const file = join(folder, `${name}.hangwright`)
  createCatalogue(file, clockFrom(undefined)).close()
  return file
}

/** Opens the file on one more host; it is closed when the test is over. */
export function openOn(folder: string, file: string, more: { readonly worker?: URL } = {}): Opened {
  const host = createHost({ kind: 'loopback', data: join(folder, 'data'), checksOutput: true, ...more })
  host.openFile(file)
  onTestFinished(() => host.close())
  const events: HostEvent[] = []
  host.subscribe(event => events.push(event))
  return {
    folder,
    file,
    host,
    events,
    async call(name, input, job) {
      const answered = await answer(host, name, input, job)
      if (!answered.ok) throw new Error(`${name}: ${JSON.stringify(answered.refusal)}`)
      return answered.value as Output<typeof name> // the service of that name gave it
    },
    ask: (name, input, job) => answer(host, name, input, job),
    give(name, bytes) {
      const { handle, path } = host.handles.create(name)
      writeFileSync(path, bytes)
      return handle
    },
    state: () => look(file, db => `${db.prepare('SELECT max(seq) FROM journal').pluck().get()}\n${dump(db)}`),
  }
}

export function refusalCode(answered: Answer): string {
  return answered.ok ? `answered ${JSON.stringify(answered.value)}` : answered.refusal.code
}

/** A checklist of invented works, each row new. */
export function listOf(rows: number): string {
  const lines = ['Inventory no.;Artist;Title;Date;Medium;Dimensions']
  for (let n = 1; n <= rows; n++) {
    lines.push(
      `T-${n};Maker ${n % 97};Tide table ${n};${1900 + (n % 90)};etching on paper;${200 + (n % 300)} x ${300 + (n % 200)} mm`,
    )
  }
  return `${lines.join('\n')}\n`
}
