/** The loopback host as a program: serves one catalogue until it is told to stop or whoever started it is gone. */
import { dataFolder } from '../../files/data-folder.ts'
import type { ClockStart } from '../../services/clock.ts'
import { openAndRemember } from '../desk.ts'
import { createHost } from '../host.ts'
import { serveLoopback } from './server.ts'

export interface ServeOptions {
  readonly file: string
  readonly port: number
  readonly clock?: ClockStart
  readonly onAddress: (address: string) => void
}

const lookForParentEvery = 1000

export async function serveUntilStopped(options: ServeOptions): Promise<void> {
  const host = createHost({
    kind: 'loopback',
    data: dataFolder(),
    ...(options.clock === undefined ? {} : { clock: options.clock }),
  })
  try {
    openAndRemember(host, options.file)
    const loopback = await serveLoopback(host, { port: options.port })
    options.onAddress(loopback.address)
    await stopped()
    await loopback.close()
  } finally {
    await host.close()
  }
}

function stopped(): Promise<void> {
  const parent = process.ppid
  return new Promise(resolve => {
    const look = setInterval(() => {
      // A parent that was killed leaves us to another: nobody would ever stop us.
      if (process.platform !== 'win32' && process.ppid !== parent) end()
    }, lookForParentEvery)
    const end = () => {
      clearInterval(look)
      resolve()
    }
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, end)
  })
}
