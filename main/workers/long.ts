/**
 * A worker with one long procedure. It reads and computes on its own connection without a transaction; to write it
 * asks the host for the write lock, then runs one edit, all or nothing. A cancel is heeded until that edit commits.
 */
import { type MessagePort, parentPort, receiveMessageOnPort, workerData } from 'node:worker_threads'
import { Refusal } from '../../src/contract/refusal.ts'
import { type Catalogue, openCatalogue } from '../database/catalogue.ts'
import type { Who } from '../database/edit.ts'
import { openHandles } from '../files/handles.ts'
import { openStore } from '../files/store.ts'
import { clockFrom } from '../services/clock.ts'
import type { Job } from '../services/service.ts'
import type { FromWorker, ToWorker, WorkOrder } from './messages.ts'

if (parentPort === null) throw new Error('long.ts is a worker; a host starts it')
const port: MessagePort = parentPort
const order = workerData as WorkOrder // only runLong starts this file
const say = (message: FromWorker) => port.postMessage(message)

const abort = new AbortController()
const cancelled = () => new Refusal('cancelled', 'It was cancelled. Nothing was changed.')
let granted: (() => void) | undefined
let committed = false
function hear(message: ToWorker): void {
  if (message.kind === 'lock') granted?.()
  // What is committed stays; a cancel that comes after must not let the answer say otherwise.
  else if (!committed) abort.abort(cancelled())
}
port.on('message', hear)

/** As often as an eye can follow, ms: each message costs as much as the rows between two of them. */
const progressEvery = 100
let told = 0
let doing = ''

/** Tells how far it is, and throws where it was cancelled: inside an edit no message would be heard otherwise. */
function progress(done: number, total: number | null, words: string): void {
  for (let given = receiveMessageOnPort(port); given !== undefined; given = receiveMessageOnPort(port))
    hear(given.message)
  abort.signal.throwIfAborted()
  const now = performance.now()
  // What is being done now is always told, and its end.
  if (now - told < progressEvery && done !== total && words === doing) return
  told = now
  doing = words
  say({ kind: 'progress', done, total, words })
}

function wantLock(): Promise<void> {
  return new Promise((resolve, reject) => {
    granted = resolve
    abort.signal.addEventListener('abort', () => reject(cancelled()), { once: true })
    say({ kind: 'want-lock' })
  })
}

/** The answer, once the catalogue is closed: whoever hears it may move the file away at once. */
async function work(): Promise<unknown> {
  const clock = clockFrom(order.clock)
  const catalogue = openCatalogue(order.catalogue, clock, { forWork: true })
  try {
    const store = openStore(order.catalogue)
    const handles = openHandles(order.handles)
    const who = { id: order.person?.id ?? '', name: order.person?.name ?? '' }
    const job: Job = {
      db: catalogue.db,
      store,
      handles,
      person: order.person,
      now: clock.now,
      newId: clock.newId,
      signal: abort.signal,
      progress,
      held: catalogue.held,
      async alone(use) {
        abort.signal.throwIfAborted()
        await wantLock()
        try {
          return await use()
        } finally {
          say({ kind: 'release-lock', edit: null, tables: [] })
        }
      },
      async write(change) {
        abort.signal.throwIfAborted()
        await wantLock()
        let edit: number | null = null
        let tables: readonly string[] = []
        try {
          const edited = await catalogue.edit({ procedure: order.name, person: who }, writing => {
            abort.signal.throwIfAborted()
            return change({
              db: writing.db,
              store,
              handles,
              person: order.person,
              now: clock.now,
              newId: clock.newId,
              label: writing.setLabel,
            })
          })
          committed = true
          edit = edited.edit
          tables = edited.tables
          return edited.value
        } finally {
          say({ kind: 'release-lock', edit, tables })
        }
      },
    }
    if (order.name === 'edit.undo' || order.name === 'edit.redo') return await takeBack(catalogue, order.name, who)
    const services: Readonly<Record<string, unknown>> = await servicesFor(order.name)
    const service = services[order.name] as (job: Job, input: unknown) => Promise<unknown> // the table is typed by name
    return await service(job, order.input)
  } finally {
    catalogue.close()
  }
}

/** Every long call begins a worker: one that loads only its own area begins in a quarter of the time. */
async function servicesFor(name: WorkOrder['name']) {
  switch (name.slice(0, name.indexOf('.'))) {
    case 'import':
      return (await import('../services/import/import.ts')).importServices
    case 'drawing':
      return (await import('../services/drawing/drawing.ts')).drawingServices
    case 'underlay':
      return (await import('../services/plan/underlay.ts')).underlayServices
    case 'climate':
      return (await import('../services/climate/climate.ts')).climateServices
    case 'work':
      return (await import('../services/works/files.ts')).fileServices
    case 'sheet':
      return (await import('../services/sheets/sheets.ts')).sheetServices
    default:
      return (await import('../services/table.ts')).catalogueServices
  }
}

async function takeBack(catalogue: Catalogue, name: 'edit.undo' | 'edit.redo', who: Who) {
  await wantLock()
  const back = name === 'edit.undo' ? await catalogue.undo(who, { progress }) : await catalogue.redo(who, { progress })
  committed = true
  say({ kind: 'release-lock', edit: back.edit, tables: back.tables })
  return name === 'edit.undo' ? { undone: back.label } : { redone: back.label }
}

work().then(
  value => say({ kind: 'value', value }),
  (error: unknown) => {
    if (error instanceof Refusal) return say({ kind: 'refusal', refusal: error.toJson() })
    const fault = error instanceof Error ? error : new Error(String(error))
    say({ kind: 'fault', message: fault.message, stack: fault.stack ?? '' })
  },
)
