/**
 * A host's inside, the same for the desktop, the loopback host and the command line: one open catalogue, one person
 * at the desk, one write lock, long work in workers, events to whoever listens. It knows nothing of windows or sockets.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Person } from '../../src/contract/areas/desk.ts'
import { contract, type Name, type NameOf, type Received } from '../../src/contract/contract.ts'
import type { HostEvent } from '../../src/contract/events.ts'
import { Refusal } from '../../src/contract/refusal.ts'
import { type Catalogue, openCatalogue } from '../database/catalogue.ts'
import { entriesToTakeBack } from '../database/history.ts'
import { type Handles, openHandles } from '../files/handles.ts'
import { type FileStore, openStore } from '../files/store.ts'
import { type Clock, type ClockStart, clockFrom } from '../services/clock.ts'
import { keptPreview } from '../services/import/kept.ts'
import { personOf } from '../services/people.ts'
import type { Reading, Writing } from '../services/service.ts'
import { catalogueServices, pureServices } from '../services/table.ts'
import type { LongName } from '../workers/messages.ts'
import { runLong } from '../workers/run.ts'
import { runDesk } from './desk.ts'
import { createWriteLock, type WriteLock } from './write-lock.ts'

export interface OpenCatalogue {
  readonly catalogue: Catalogue
  readonly store: FileStore
}

export interface HostOptions {
  readonly kind: 'desktop' | 'loopback' | 'command line'
  /** The user's data folder: recent catalogues, who sat here last, the demo. */
  readonly data: string
  readonly clock?: ClockStart
  /** Every answer is held against its schema. For tests: it costs time on large answers. */
  readonly checksOutput?: boolean
  readonly report?: (error: unknown) => void
  /** Where the worker's code is, when it is bundled. */
  readonly worker?: URL
}

export interface Host {
  readonly kind: HostOptions['kind']
  readonly data: string
  readonly handles: Handles
  readonly handlesFolder: string
  readonly clock: Clock
  readonly checksOutput: boolean
  readonly report: (error: unknown) => void
  readonly open: OpenCatalogue | null
  readonly person: Person | null
  readonly openFile: (file: string) => void
  /** For a moment, while the file itself is replaced or moved: until `openFile` whoever asks for it waits. */
  readonly closeFile: () => void
  /** Resolves when no file is closed for a moment. */
  readonly back: () => Promise<void>
  readonly sit: (person: Person | null) => void
  readonly cancel: (job: string) => boolean
  readonly run: (name: Name, input: unknown, job?: string) => Promise<unknown>
  readonly tell: (event: HostEvent) => void
  readonly subscribe: (listener: (event: HostEvent) => void) => () => void
  /** Runs a change of the whole file (restore, move) while nobody writes. */
  readonly alone: <T>(change: () => Promise<T> | T) => Promise<T>
  /** Long work of the host itself: it tells its progress and can be cancelled by its job's name. */
  readonly underWay: <T>(
    job: string | undefined,
    work: (signal: AbortSignal, progress: Progress) => Promise<T>,
  ) => Promise<T>
  readonly close: () => Promise<void>
}

export type Progress = (done: number, total: number | null, words: string) => void

const lookEvery = 500
/** Taking back more entries than this takes over half a second, so it goes to a worker. */
const manyEntries = 5000

export function createHost(options: HostOptions): Host {
  const handlesFolder = mkdtempSync(join(tmpdir(), 'hangwright-'))
  const handles = openHandles(handlesFolder)
  const clock = clockFrom(options.clock)
  const listeners = new Set<(event: HostEvent) => void>()
  const jobs = new Map<string, AbortController>()
  const running = new Set<Promise<unknown>>()
  const lock = createWriteLock(waiting => host.tell({ kind: 'waiting', job: null, waits: waiting > 0 }))
  let open: OpenCatalogue | null = null
  let person: Person | null = null
  let away: PromiseWithResolvers<void> | null = null
  let seen = 0
  let jobCount = 0

  const look = setInterval(() => {
    if (open === null) return
    const version = open.catalogue.dataVersion()
    if (version !== seen) {
      seen = version
      host.tell({ kind: 'changed', edit: null, tables: [] })
    }
  }, lookEvery)
  look.unref()

  function opened(): OpenCatalogue {
    if (open === null) throw new Refusal('no-catalogue', 'No catalogue is open. Open one, or make a new one.')
    return open
  }

  function sitting() {
    const { person: who } = host
    return { id: who?.id ?? '', name: who?.name ?? '' }
  }

  function reading(): Reading {
    const { catalogue, store } = opened()
    return { db: catalogue.db, store, handles, now: clock.now, person: host.person }
  }

  async function takeBack(name: 'edit.undo' | 'edit.redo', job: string | undefined): Promise<unknown> {
    const { catalogue } = opened()
    const who = sitting()
    const way = name === 'edit.undo' ? 'undo' : 'redo'
    if (entriesToTakeBack(catalogue.db, way, who.id) > manyEntries) {
      // The lock is held here already; the worker is given it as soon as it asks.
      return inWorker(name, {}, job, { take: () => Promise.resolve(() => {}), waiting: lock.waiting })
    }
    const back = await catalogue[way](who)
    host.tell({ kind: 'changed', edit: back.edit, tables: [...back.tables] })
    return way === 'undo' ? { undone: back.label } : { redone: back.label }
  }

  async function write(name: NameOf<'write'>, input: unknown, job: string | undefined): Promise<unknown> {
    const askedAt = performance.now()
    const giveBack = await lock.take()
    try {
      if (name === 'edit.undo' || name === 'edit.redo') return await takeBack(name, job)
      const { catalogue } = opened()
      const who = sitting()
      const service = catalogueServices[name] as (writing: Writing, input: unknown) => unknown // the table is typed by name
      const edited = await catalogue.edit({ procedure: name, person: who, askedAt }, edit =>
        service({ ...reading(), db: edit.db, newId: clock.newId, label: edit.setLabel }, input),
      )
      // What only added records has no number, but screens show it too.
      if (edited.edit !== null || edited.tables.length > 0) {
        host.tell({ kind: 'changed', edit: edited.edit, tables: [...edited.tables] })
      }
      return edited.value
    } finally {
      giveBack()
    }
  }

  async function inWorker(
    name: LongName,
    input: unknown,
    given: string | undefined,
    ownLock: WriteLock,
  ): Promise<unknown> {
    return host.underWay(given, (signal, progress) =>
      runLong(
        {
          catalogue: opened().catalogue.file,
          handles: handlesFolder,
          name,
          input,
          person: host.person,
          ...(options.clock === undefined
            ? {}
            : { clock: { ...options.clock, ids: `${options.clock.ids}w${++jobCount}x` } }),
        },
        {
          signal,
          lock: ownLock,
          progress,
          ...(options.worker === undefined ? {} : { worker: options.worker }),
          // The next look at the file tells it once more, of all tables: another program may have written meanwhile,
          // and nothing says which of the two a new data version came from.
          changed: (edit, tables) => host.tell({ kind: 'changed', edit, tables: [...tables] }),
        },
      ),
    )
  }

  async function dispatch(name: Name, input: unknown, job: string | undefined): Promise<unknown> {
    const { kind } = contract[name]
    if (away !== null && kind !== 'pure' && name !== 'desk.cancel') await away.promise
    // The tables are typed by name; here the name is only known to be one of its kind.
    switch (kind) {
      case 'pure':
        return (pureServices[name as NameOf<'pure'>] as (input: unknown) => unknown)(input)
      case 'desk':
        return runDesk(host, name as NameOf<'desk'>, input, job)
      case 'read':
        return opened().catalogue.snapshot(() =>
          (catalogueServices[name as keyof typeof catalogueServices] as (reading: Reading, input: unknown) => unknown)(
            reading(),
            input,
          ),
        )
      case 'write':
        return write(name as NameOf<'write'>, input, job)
      case 'long': {
        const kept = name === 'import.preview' ? keptPreview(reading(), input as Received<'import.preview'>) : undefined
        if (kept !== undefined) return kept
        return inWorker(name as NameOf<'long'>, input, job, lock)
      }
    }
  }

  const host: Host = {
    kind: options.kind,
    data: options.data,
    handles,
    handlesFolder,
    clock,
    checksOutput: options.checksOutput ?? false,
    report: options.report ?? (error => console.error(error)),
    get open() {
      return open
    },
    get person() {
      // Read anew: the person may have changed their unit or their name since they sat down.
      if (person !== null && open !== null) person = personOf(open.catalogue.db, person.id)
      return person
    },
    openFile(file) {
      try {
        const catalogue = openCatalogue(file, clock)
        open?.catalogue.close()
        open = { catalogue, store: openStore(file) }
        seen = catalogue.dataVersion()
        person = person === null ? null : personOf(catalogue.db, person.id)
        host.tell({ kind: 'opened', file })
      } finally {
        // Where it cannot be opened, those who wait are told so.
        away?.resolve()
        away = null
      }
    },
    closeFile() {
      open?.catalogue.close()
      open = null
      away ??= Promise.withResolvers()
    },
    async back() {
      await away?.promise
    },
    sit(who) {
      person = who
    },
    cancel(job) {
      const abort = jobs.get(job)
      abort?.abort(new Refusal('cancelled', 'It was cancelled. Nothing was changed.'))
      return abort !== undefined
    },
    run(name, input, job) {
      const work = dispatch(name, input, job)
      running.add(work)
      const forget = () => running.delete(work)
      work.then(forget, forget)
      return work
    },
    tell(event) {
      for (const listener of listeners) listener(event)
    },
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    async alone(change) {
      const giveBack = await lock.take()
      try {
        return await change()
      } finally {
        giveBack()
      }
    },
    async underWay(given, work) {
      const job = given ?? `job-${++jobCount}`
      if (jobs.has(job)) throw new Refusal('job-in-use', 'Work under this name goes on already.', { field: 'job' })
      const abort = new AbortController()
      jobs.set(job, abort)
      try {
        return await work(abort.signal, (done, total, words) =>
          host.tell({ kind: 'progress', job, done, total, words }),
        )
      } finally {
        jobs.delete(job)
      }
    },
    async close() {
      clearInterval(look)
      for (const job of jobs.keys()) host.cancel(job)
      await Promise.allSettled(running)
      open?.catalogue.close()
      open = null
      rmSync(handlesFolder, { recursive: true, force: true })
    },
  }
  return host
}
