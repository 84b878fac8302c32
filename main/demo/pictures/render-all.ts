/**
 * Makes many pictures, in as many threads as are asked for. The answer is in the order of the recipes and the same for
 * any number of threads; cancelling stops every thread and leaves nothing behind.
 */
import { existsSync } from 'node:fs'
import { setImmediate as breathe } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import type { Recipe, RenderedPicture } from './render.ts'
import { LONG_SIDE, renderPicture } from './render.ts'

export interface RenderOptions {
  readonly threads: number
  /** Longer side of the pictures, pixels. */
  readonly longSide?: number | undefined
  /** Where the code of a thread is, when it is bundled. */
  readonly thread?: URL | undefined
  readonly signal?: AbortSignal | undefined
  readonly progress?: ((done: number, total: number) => void) | undefined
}

type Answer = { readonly picture: RenderedPicture } | { readonly fault: string }

export async function renderAll(
  recipes: readonly Recipe[],
  seed: number,
  options: RenderOptions,
): Promise<readonly RenderedPicture[]> {
  const thread = options.thread ?? new URL('./picture-thread.ts', import.meta.url)
  // In a bundle that carries no thread of its own the pictures are made here, one after the other.
  if (options.threads <= 1 || !existsSync(fileURLToPath(thread))) return here(recipes, seed, options)
  return inThreads(recipes, seed, thread, options)
}

async function here(recipes: readonly Recipe[], seed: number, { signal, progress, longSide }: RenderOptions) {
  const pictures: RenderedPicture[] = []
  for (const recipe of recipes) {
    signal?.throwIfAborted()
    pictures.push(await renderPicture(recipe, seed, longSide))
    progress?.(pictures.length, recipes.length)
    await breathe()
  }
  return pictures
}

async function inThreads(
  recipes: readonly Recipe[],
  seed: number,
  thread: URL,
  { threads, signal, progress, longSide }: RenderOptions,
) {
  signal?.throwIfAborted()
  const pictures = new Map<number, RenderedPicture>()
  const workers = Array.from(
    { length: Math.min(threads, recipes.length) },
    () => new Worker(thread, { workerData: { seed, longSide: longSide ?? LONG_SIDE } }),
  )
  let next = 0
  try {
    await Promise.all(
      workers.map(worker =>
        Promise.race([
          cancelled(signal),
          (async () => {
            while (next < recipes.length) {
              const at = next
              next += 1
              pictures.set(at, await ask(worker, recipes[at]))
              progress?.(pictures.size, recipes.length)
            }
          })(),
        ]),
      ),
    )
  } finally {
    await Promise.all(workers.map(worker => worker.terminate()))
  }
  return recipes.flatMap((_, at) => pictures.get(at) ?? [])
}

function ask(worker: Worker, recipe: Recipe | undefined): Promise<RenderedPicture> {
  return new Promise((resolve, reject) => {
    const failed = (fault: Error) => reject(fault)
    worker.once('error', failed)
    worker.once('message', (answer: Answer) => {
      worker.off('error', failed)
      if ('fault' in answer) reject(new Error(`A picture could not be made: ${answer.fault}`))
      // A buffer crosses between threads as plain bytes.
      else resolve({ ...answer.picture, bytes: Buffer.from(answer.picture.bytes) })
    })
    worker.postMessage(recipe)
  })
}

function cancelled(signal: AbortSignal | undefined): Promise<never> {
  return new Promise((_, reject) => {
    signal?.addEventListener('abort', () => reject(signal.reason), { once: true })
  })
}
