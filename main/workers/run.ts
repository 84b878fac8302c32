/** Runs one long procedure in a worker for a host: passes on its progress, gives it the lock when it asks, cancels it. */
import { Worker } from 'node:worker_threads'
import { Refusal } from '../../src/contract/refusal.ts'
import type { WriteLock } from '../hosts/write-lock.ts'
import type { FromWorker, ToWorker, WorkOrder } from './messages.ts'

export interface LongOptions {
  readonly signal: AbortSignal
  readonly lock: WriteLock
  readonly progress: (done: number, total: number | null, words: string) => void
  readonly changed: (edit: number | null, tables: readonly string[]) => void
  readonly worker?: URL
}

/** A worker that needs more than this ends, and the host goes on. */
const memoryLimitMb = 1536
const nurseryMb = 96

export function runLong(order: WorkOrder, options: LongOptions): Promise<unknown> {
  const { signal, lock } = options
  if (signal.aborted) return Promise.reject(signal.reason)
  return new Promise((resolve, reject) => {
    const worker = new Worker(options.worker ?? new URL('./long.ts', import.meta.url), {
      workerData: order,
      // Long work makes much that lives long: a larger nursery copies it less often.
      resourceLimits: { maxOldGenerationSizeMb: memoryLimitMb, maxYoungGenerationSizeMb: nurseryMb },
      stdout: false,
    })
    const say = (message: ToWorker) => worker.postMessage(message)
    let giveBack: (() => void) | undefined
    let settled = false

    function end(finish: () => void): void {
      if (settled) return
      settled = true
      signal.removeEventListener('abort', cancel)
      giveBack?.()
      finish()
      void worker.terminate()
    }

    function cancel(): void {
      say({ kind: 'cancel' })
    }
    signal.addEventListener('abort', cancel, { once: true })

    worker.on('message', (message: FromWorker) => {
      switch (message.kind) {
        case 'progress':
          return options.progress(message.done, message.total, message.words)
        case 'want-lock':
          lock.take(signal).then(
            release => {
              if (settled) return release()
              giveBack = release
              say({ kind: 'lock' })
            },
            // The cancel itself has been sent; the worker refuses by it.
            () => {},
          )
          return
        case 'release-lock':
          giveBack?.()
          giveBack = undefined
          // What only added records has no number, but screens show it too.
          if (message.edit !== null || message.tables.length > 0) options.changed(message.edit, message.tables)
          return
        case 'value':
          return end(() => resolve(message.value))
        case 'refusal': {
          const { code, message: words, ...more } = message.refusal
          return end(() => reject(new Refusal(code, words, more)))
        }
        case 'fault':
          return end(() => reject(Object.assign(new Error(message.message), { stack: message.stack })))
      }
    })
    worker.on('error', error => {
      const tooLarge = 'code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY'
      end(() =>
        reject(
          tooLarge
            ? new Refusal(
                'too-large',
                'This needs more memory than the program allows itself. Split the file and try again. Nothing was changed.',
              )
            : error,
        ),
      )
    })
    worker.on('exit', code => end(() => reject(new Error(`the worker for ${order.name} ended with ${code}`))))
  })
}
