/** What a host and a worker with long work say to each other. Plain values that structured clone carries unchanged. */
import type { Person } from '../../src/contract/areas/desk.ts'
import type { NameOf } from '../../src/contract/contract.ts'
import type { RefusalJson } from '../../src/contract/refusal.ts'
import type { ClockStart } from '../services/clock.ts'

/** Taking back an edit is long work where the edit was. */
export type LongName = NameOf<'long'> | 'edit.undo' | 'edit.redo'

export interface WorkOrder {
  readonly catalogue: string
  readonly handles: string
  readonly name: LongName
  /** Already through the procedure's schema. */
  readonly input: unknown
  readonly person: Person | null
  readonly clock?: ClockStart
}

export type ToWorker = { readonly kind: 'lock' } | { readonly kind: 'cancel' }

export type FromWorker =
  | { readonly kind: 'progress'; readonly done: number; readonly total: number | null; readonly words: string }
  | { readonly kind: 'want-lock' }
  | { readonly kind: 'release-lock'; readonly edit: number | null; readonly tables: readonly string[] }
  | { readonly kind: 'value'; readonly value: unknown }
  | { readonly kind: 'refusal'; readonly refusal: RefusalJson }
  | { readonly kind: 'fault'; readonly message: string; readonly stack: string }
