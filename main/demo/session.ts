/**
 * The demo is written as a user would write it: every change is a procedure of the contract, its input through the
 * procedure's schema, done by the same service. What differs is that many such changes make one edit with one label,
 * and that they may carry the date on which they are said to have happened.
 */
import type { Person } from '../../src/contract/areas/desk.ts'
import { contract, type Input, type NameOf, type Output } from '../../src/contract/contract.ts'
import type { Catalogue } from '../database/catalogue.ts'
import type { Handles } from '../files/handles.ts'
import type { FileStore } from '../files/store.ts'
import type { Job, JournalName, Reading, Writing } from '../services/service.ts'
import { catalogueServices } from '../services/table.ts'

export type WriteName = Exclude<NameOf<'write'>, JournalName>
export type Do = <N extends WriteName>(name: N, input: Input<N>) => Output<N>

export interface Session {
  readonly read: <N extends NameOf<'read'>>(name: N, input: Input<N>) => Output<N>
  /** Several changes as one edit, `daysAgo` before the demo is made. */
  readonly edit: <T>(label: string, procedure: WriteName, daysAgo: number, change: (act: Do) => T) => Promise<T>
  /** Long work that makes its own edit. */
  readonly long: <N extends NameOf<'long'>>(name: N, input: Input<N>, daysAgo: number) => Promise<Output<N>>
  /** The same long work many times over, all their changes together as one edit, in which `then` goes on. */
  readonly longs: <N extends NameOf<'long'>>(
    label: string,
    name: N,
    inputs: readonly Input<N>[],
    daysAgo: number,
    then?: (act: Do) => void,
  ) => Promise<readonly Output<N>[]>
  readonly sit: (person: Person) => void
}

/** Moments of a day so many days before today, each a second after the last. */
export interface DayClock {
  readonly now: () => string
  readonly goTo: (daysAgo: number) => void
}

export function dayClock(today: string): DayClock {
  let start = Date.parse(today)
  let seconds = 0
  return {
    now: () => new Date(start + 1000 * seconds++).toISOString(),
    goTo(daysAgo) {
      start = Date.parse(today) - daysAgo * 86_400_000
    },
  }
}

export interface SessionParts {
  readonly catalogue: Catalogue
  readonly store: FileStore
  readonly handles: Handles
  /** The clock that the catalogue was made with, so that an edit and its rows are of one day. */
  readonly clock: DayClock
  readonly newId: () => string
  readonly signal: AbortSignal
}

export function openSession({ catalogue, store, handles, clock, newId, signal }: SessionParts): Session {
  let person: Person | null = null

  function reading(): Reading {
    return { db: catalogue.db, store, handles, now: clock.now, person }
  }

  function who() {
    return { id: person?.id ?? '', name: person?.name ?? '' }
  }

  function jobOf(write: Job['write'], ids = newId): Job {
    return { ...reading(), newId: ids, signal, progress: () => {}, write, held: catalogue.held, alone: use => use() }
  }

  function actIn(writing: Writing): Do {
    return (name, input) => {
      const service = catalogueServices[name] as (writing: Writing, input: unknown) => Output<typeof name> // typed by name, known here only by kind
      return service(writing, contract[name].input.parse(input))
    }
  }

  const session: Session = {
    read(name, input) {
      const service = catalogueServices[name] as (reading: Reading, input: unknown) => Output<typeof name> // typed by name, known here only by kind
      return service(reading(), contract[name].input.parse(input))
    },
    async edit(label, procedure, daysAgo, change) {
      signal.throwIfAborted()
      clock.goTo(daysAgo)
      const edited = await catalogue.edit({ procedure, person: who() }, edit => {
        edit.setLabel(label)
        return change(actIn({ ...reading(), db: edit.db, newId, label: () => {} }))
      })
      return edited.value
    },
    async long(name, input, daysAgo) {
      clock.goTo(daysAgo)
      const service = catalogueServices[name] as (job: Job, input: unknown) => Promise<Output<typeof name>> // typed by name, known here only by kind
      const job = jobOf(async (change, options = {}) => {
        const edited = await catalogue.edit({ procedure: name, person: who(), ...options }, edit =>
          change({ ...reading(), db: edit.db, newId, label: edit.setLabel }),
        )
        return edited.value
      })
      return service(job, contract[name].input.parse(input))
    },
    async longs(label, name, inputs, daysAgo, then) {
      clock.goTo(daysAgo)
      const service = catalogueServices[name] as (job: Job, input: unknown) => Promise<Output<typeof name>> // typed by name, known here only by kind
      const ready = inputs.map(() => Promise.withResolvers<void>())
      const queue: (((writing: Writing) => void) | undefined)[] = []
      const waits =
        (index: number): Job['write'] =>
        change =>
          new Promise((resolve, reject) => {
            queue[index] = writing => {
              try {
                resolve(change(writing))
              } catch (fault) {
                reject(fault)
                throw fault
              }
            }
            ready[index]?.resolve()
          })
      const answers = inputs.map((input, index) => {
        // Drawn in order, since the works' files are read in whatever order the machine gets to them.
        let own: string | null = newId()
        const ids = () => {
          const id = own ?? newId()
          own = null
          return id
        }
        return service(jobOf(waits(index), ids), contract[name].input.parse(input))
      })
      // Whichever fails first ends it; the others' refusals have nobody left to hear them.
      for (const answer of answers) answer.catch(() => {})
      await Promise.race([Promise.all(ready.map(each => each.promise)), Promise.all(answers)])
      await catalogue.edit({ procedure: name, person: who() }, edit => {
        edit.setLabel(label)
        const writing: Writing = { ...reading(), db: edit.db, newId, label: () => {} }
        for (const change of queue) change?.(writing)
        then?.(actIn(writing))
      })
      return Promise.all(answers)
    },
    sit(someone) {
      person = someone
    },
  }
  return session
}
