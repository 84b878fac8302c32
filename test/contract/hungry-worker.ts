/** A worker that takes the write lock and then needs more memory than any: how a host lives on is what the test asks. */
import { parentPort } from 'node:worker_threads'

const kept: number[][] = []

parentPort?.on('message', () => {
  for (;;) kept.push(new Array(100_000).fill(Math.random()))
})
parentPort?.postMessage({ kind: 'want-lock' })
