/**
 * What a service is given. A service is one plain function a procedure; its kind in the contract decides which of the
 * contexts it gets, so a reading service cannot write and a long one writes only through its job.
 */

import type { Person } from '../../src/contract/areas/desk.ts'
import type { Contract, Name, NameOf, Output, Received } from '../../src/contract/contract.ts'
import type { ReadHandle, WriteHandle } from '../database/handles.ts'
import type { Handles } from '../files/handles.ts'
import type { FileStore } from '../files/store.ts'

export interface Reading {
  readonly db: ReadHandle
  /** The content-addressed files beside the catalogue. */
  readonly store: FileStore
  /** Files that come from or go to a person. */
  readonly handles: Handles
  /** ISO 8601 in UTC. */
  readonly now: () => string
  /** Who is at the desk; null before anyone has said. */
  readonly person: Person | null
}

export interface Writing extends Omit<Reading, 'db'> {
  readonly db: WriteHandle
  readonly newId: () => string
  /** Says for people what this edit does: "Move 4 to Room 2 east". Each write must say it once. */
  readonly label: (text: string) => void
}

export interface Job extends Reading {
  readonly newId: () => string
  /** Aborted when the person cancels. Ask it between steps; `write` refuses once it is aborted. */
  readonly signal: AbortSignal
  /** `total` is null while nobody knows. Cheap: the host passes on ten a second at most. */
  readonly progress: (done: number, total: number | null, words: string) => void
  /** Waits for the host's one write lock, then runs `change` as one edit, all or nothing. */
  readonly write: <T>(change: (writing: Writing) => T) => Promise<T>
  /** Everything that `read` reads is one state of the catalogue, whatever others write meanwhile. Not to write in. */
  readonly held: <T>(read: () => Promise<T>) => Promise<T>
  /** Waits for the same lock, then works on the file itself (a backup, a clean-up) while nobody writes. */
  readonly alone: <T>(work: () => Promise<T>) => Promise<T>
}

type ContextOf<N extends Name> = Contract[N]['kind'] extends 'read'
  ? Reading
  : Contract[N]['kind'] extends 'write'
    ? Writing
    : Contract[N]['kind'] extends 'long'
      ? Job
      : never

export type PureService<N extends Name> = (input: Received<N>) => Output<N>
export type Service<N extends Name> = Contract[N]['kind'] extends 'long'
  ? (context: Job, input: Received<N>) => Promise<Output<N>>
  : (context: ContextOf<N>, input: Received<N>) => Output<N>

/** Undo and redo are done by the journal itself, so that the host runs them, not a service. */
export type JournalName = 'edit.undo' | 'edit.redo'

export type PureServices = { readonly [N in NameOf<'pure'>]: PureService<N> }
export type CatalogueServices = {
  readonly [N in Exclude<NameOf<'read' | 'write' | 'long'>, JournalName>]: Service<N>
}
/** The services of one area, to be spread into the whole table. */
export type ServicesOf<N extends Exclude<NameOf<'read' | 'write' | 'long'>, JournalName>> = Pick<CatalogueServices, N>
