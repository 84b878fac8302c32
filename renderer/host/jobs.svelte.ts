/**
 * Long work under way and what waits for it. A call made here gets a job's name, shows its progress after a moment and
 * can be cancelled until it commits.
 */
import type { Input, NameOf, Output } from '../../src/contract/contract.ts'
import { Carried, CutOff, type Uploaded } from './carried.ts'
import { ask, listen } from './client.svelte.ts'

export interface Job {
  readonly job: string
  readonly label: string
  readonly done: number
  readonly total: number | null
  readonly words: string
  readonly since: number
  readonly cancelling: boolean
  /** Of a file whose connection broke on its way: it waits here until a person says whether it goes on. */
  readonly goOn: (() => void) | null
}

/** A move is the host's own work and takes as long as a disk does. */
type LongName = NameOf<'long'> | 'catalogue.move'

class Jobs {
  list = $state.raw<readonly Job[]>([])
  waits = $state(false)
  /** How files under way to the host are stopped: it does not know of them yet. */
  private readonly carrying = new Map<string, AbortController>()

  constructor() {
    listen(event => {
      if (event.kind === 'waiting') this.waits = event.waits
      if (event.kind === 'progress')
        this.change(event.job, { done: event.done, total: event.total, words: event.words })
    })
  }

  private change(job: string, to: Partial<Job>): void {
    this.list = this.list.map(one => (one.job === job ? { ...one, ...to } : one))
  }

  /** `superseded` ends it where another call has taken its place: nobody waits for its end any more. */
  async run<N extends LongName>(name: N, label: string, input: Input<N>, superseded?: AbortSignal): Promise<Output<N>> {
    const job = crypto.randomUUID()
    superseded?.addEventListener('abort', () => {
      if (!this.list.some(one => one.job === job)) return
      this.list = this.list.filter(one => one.job !== job)
      void ask('desk.cancel', { job }).catch(() => undefined)
    })
    this.begin(job, label, null)
    try {
      return await ask(name, input, { job })
    } finally {
      this.end(job)
    }
  }

  /**
   * Hands a file to the host and gives the handle under which calls may name it; told and cancelled like any long work.
   * Where the connection breaks it waits for a person to go on or to cancel. Throws `Refused`.
   * `left` cancels it where nobody waits for the file any more.
   */
  async upload(file: File, left?: AbortSignal): Promise<Uploaded> {
    const carried = new Carried(file)
    const job = crypto.randomUUID()
    const stop = new AbortController()
    left?.addEventListener('abort', () => stop.abort(), { once: true })
    this.carrying.set(job, stop)
    this.begin(job, `Bringing ${file.name}`, file.size)
    const far = (bytes: number) => `${Math.round(bytes / 1e6)} of ${Math.round(file.size / 1e6)} MB`
    try {
      for (;;) {
        try {
          return await carried.goOn(done => this.change(job, { done, words: far(done) }), stop.signal)
        } catch (thrown) {
          if (!(thrown instanceof CutOff)) throw thrown
          await this.cutOff(
            job,
            carried.bytes,
            `The connection broke after ${far(carried.bytes)}; these are kept.`,
            stop,
          )
        }
      }
    } finally {
      this.carrying.delete(job)
      this.end(job)
    }
  }

  /** Ends when a person goes on, or cancels. */
  private async cutOff(job: string, done: number, words: string, stop: AbortController): Promise<void> {
    const { promise, resolve } = Promise.withResolvers<void>()
    stop.signal.addEventListener('abort', () => resolve(), { once: true })
    this.change(job, { done, words, goOn: resolve })
    await promise
    this.change(job, { goOn: null })
  }

  private begin(job: string, label: string, total: number | null): void {
    const since = performance.now()
    this.list = [...this.list, { job, label, done: 0, total, words: '', since, cancelling: false, goOn: null }]
  }

  private end(job: string): void {
    this.list = this.list.filter(one => one.job !== job)
  }

  async cancel(job: string): Promise<void> {
    this.change(job, { cancelling: true })
    const carried = this.carrying.get(job)
    if (carried !== undefined) return carried.abort()
    await ask('desk.cancel', { job })
  }
}

export const jobs = new Jobs()
