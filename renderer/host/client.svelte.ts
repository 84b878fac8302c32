/**
 * The one door to the catalogue: typed calls by name, refusals as `Refused`, events one way. Every input passes
 * `$state.snapshot` here and nowhere else, since a proxy cannot cross a bridge.
 */
import type { Input, Name, NameOf, Output } from '../../src/contract/contract.ts'
import type { HostEvent } from '../../src/contract/events.ts'
import type { RefusalJson } from '../../src/contract/refusal.ts'
import { transport } from './transport.ts'

/** An expected "no" of the host. Nothing matches on its message; the code stays the same for ever. */
export class Refused extends Error {
  override readonly name = 'Refused'
  readonly code: string
  readonly field: string | undefined
  readonly details: unknown

  constructor(refusal: RefusalJson) {
    super(refusal.message)
    this.code = refusal.code
    this.field = refusal.field
    this.details = refusal.details
  }
}

export interface CallOptions {
  /** Names long work, so that it can be cancelled. */
  readonly job?: string
  readonly onProgress?: (done: number, total: number | null, words: string) => void
}

type Answer = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly refusal: RefusalJson }

const listeners = new Set<(event: HostEvent) => void>()
const connection = $state({ lost: false })

/** Whether the host has stopped answering. */
export function isLost(): boolean {
  return connection.lost
}

transport.subscribe(
  text => {
    const event = JSON.parse(text) as HostEvent // the host made it by the same schema
    for (const listener of listeners) listener(event)
  },
  connected => {
    // What changed while nobody listened is unknown.
    if (connected && connection.lost)
      for (const listener of listeners) listener({ kind: 'changed', edit: null, tables: [] })
    connection.lost = !connected
  },
)

/** Hears what the host tells; gives back the way to stop. */
export function listen(listener: (event: HostEvent) => void): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/** What the host's answer says. Throws `Refused`. */
export function read(text: string): unknown {
  let answer: Answer
  try {
    answer = JSON.parse(text) as Answer // checked by its `ok` below
  } catch {
    throw new Refused({ code: 'host-gone', message: 'The program gave no answer. Start it again; nothing was lost.' })
  }
  if (answer.ok) return answer.value
  throw new Refused(answer.refusal)
}

async function reach(send: () => Promise<string>): Promise<unknown> {
  let text: string
  try {
    text = await send()
  } catch {
    throw new Refused({ code: 'host-gone', message: 'The program has stopped. Start it again; nothing was lost.' })
  }
  return read(text)
}

/**
 * Asks a procedure of the contract at once, beside whatever else is on its way: for reading, for long work that can be
 * cancelled, and for cancelling it. Throws `Refused`.
 */
export async function ask<N extends Name>(name: N, input: Input<N>, options: CallOptions = {}): Promise<Output<N>> {
  return send(name, $state.snapshot(input), options)
}

/** The edit that was sent last; the next one leaves when it is answered. */
let last: Promise<unknown> = Promise.resolve()

/**
 * Sends an edit, or what changes the desk. They leave one after the other, since requests on several connections
 * overtake each other: of two keys pressed quickly, "looked" and "drilled", the second must find the first written.
 * Throws `Refused`; an edit that was refused holds up none after it.
 */
export async function call<N extends NameOf<'write' | 'desk'>>(name: N, input: Input<N>): Promise<Output<N>> {
  // What is sent is what was meant when it was called, not what it has become while it waited.
  const meant = $state.snapshot(input)
  const answered = last.then(() => send<N>(name, meant, {}))
  last = answered.catch(() => undefined)
  return answered
}

async function send<N extends Name>(name: N, input: unknown, { job, onProgress }: CallOptions): Promise<Output<N>> {
  const stop =
    job === undefined || onProgress === undefined
      ? undefined
      : listen(event => {
          if (event.kind === 'progress' && event.job === job) onProgress(event.done, event.total, event.words)
        })
  try {
    const text = JSON.stringify({ name, input, ...(job === undefined ? {} : { job }) })
    return (await reach(() => transport.call(text))) as Output<N> // the host checked it by the contract's schema
  } finally {
    stop?.()
  }
}

/** The refusal in whatever was thrown; a fault of ours goes on being thrown. */
export function refusalOf(thrown: unknown): Refused {
  if (thrown instanceof Refused) return thrown
  throw thrown
}
