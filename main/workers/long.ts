/**
 * A worker with one long procedure. It reads and computes on its own connection without a transaction; to write it
 * asks the host for the write lock, then runs one edit, all or nothing. A cancel is heeded until that edit begins.
 */
import { parentPort, workerData } from 'node:worker_threads'
import { Refusal } from '../../src/contract/refusal.ts'
import { openCatalogue } from '../database/catalogue.ts'
import { openHandles } from '../files/handles.ts'
import { openStore } from '../files/store.ts'
import { clockFrom } from '../services/clock.ts'
import type { Job } from '../services/service.ts'
import { catalogueServices } from '../services/table.ts'
import type { FromWorker, ToWorker, WorkOrder } from './messages.ts'

const port = parentPort
if (port === null) throw new Error('long.ts is a worker; a host starts it')
const order = workerData as WorkOrder // only runLong starts this file
const say = (message: FromWorker) => port.postMessage(message)

const abort = new AbortController()
const cancelled = () => new Refusal('cancelled', 'It was cancelled. Nothing was changed.')
let granted: (() => void) | undefined
port.on('message', (message: ToWorker) => {
  if (message.kind === 'cancel') abort.abort(cancelled())
  else granted?.()
})

function wantLock(): Promise<void> {
  return new Promise((resolve, reject) => {
    granted = resolve
    abort.signal.addEventListener('abort', () => reject(cancelled()), { once: true })
    say({ kind: 'want-lock' })
  })
}

async function work(): Promise<void> {
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
      progress: (done, total, words) => say({ kind: 'progress', done, total, words }),
      async alone(use) {
        abort.signal.throwIfAborted()
        await wantLock()
        try {
          return await use()
        } finally {
          say({ kind: 'release-lock', edit: null, tables: [] })
        }
      },
      async write(change, options = {}) {
        abort.signal.throwIfAborted()
        await wantLock()
        let edit: number | null = null
        let tables: readonly string[] = []
        try {
          const edited = await catalogue.edit({ procedure: order.name, person: who, ...options }, writing =>
            change({
              db: writing.db,
              store,
              handles,
              person: order.person,
              now: clock.now,
              newId: clock.newId,
              label: writing.setLabel,
            }),
          )
          edit = edited.edit
          tables = edited.tables
          return edited.value
        } finally {
          say({ kind: 'release-lock', edit, tables })
        }
      },
    }
    const service = catalogueServices[order.name] as (job: Job, input: unknown) => Promise<unknown> // the table is typed by name
    say({ kind: 'value', value: await service(job, order.input) })
  } finally {
    catalogue.close()
  }
}

work().catch((error: unknown) => {
  if (error instanceof Refusal) say({ kind: 'refusal', refusal: error.toJson() })
  else {
    const fault = error instanceof Error ? error : new Error(String(error))
    say({ kind: 'fault', message: fault.message, stack: fault.stack ?? '' })
  }
})
