/**
 * What one line of the contract says. A procedure takes one strict object and gives one JSON value.
 *
 * - `pure`: answers from its input alone; needs no catalogue.
 * - `read`: answers from the catalogue.
 * - `write`: changes the catalogue as exactly one edit.
 * - `long`: runs in a worker, tells its progress, can be cancelled until it commits.
 * - `desk`: about the host itself (which catalogue is open, who sits here, handles of files); never journaled.
 */
import type * as z from 'zod'

export type Kind = 'pure' | 'read' | 'write' | 'long' | 'desk'

export interface Procedure<K extends Kind = Kind, I extends z.ZodType = z.ZodType, O extends z.ZodType = z.ZodType> {
  readonly kind: K
  /** One sentence for people: what it does. Shown by `procedures`. */
  readonly does: string
  readonly input: I
  readonly output: O
}

export function procedure<K extends Kind, I extends z.ZodType, O extends z.ZodType>(
  kind: K,
  does: string,
  input: I,
  output: O,
): Procedure<K, I, O> {
  return { kind, does, input, output }
}
