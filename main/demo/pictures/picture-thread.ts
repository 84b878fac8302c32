/** One thread of the picture makers: takes a recipe, answers with the picture or with what went wrong. */
import { parentPort, workerData } from 'node:worker_threads'
import type { Recipe } from './render.ts'
import { renderPicture } from './render.ts'

const { seed, longSide } = workerData as { readonly seed: number; readonly longSide: number } // render-all starts this file

parentPort?.on('message', (recipe: Recipe) => {
  renderPicture(recipe, seed, longSide).then(
    picture => parentPort?.postMessage({ picture }),
    (fault: unknown) => parentPort?.postMessage({ fault: fault instanceof Error ? fault.message : String(fault) }),
  )
})
