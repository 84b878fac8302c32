/**
 * What every procedure brings to the contract test: at least one input that is answered, its answer written out, and
 * one that is refused, with code and field. The compiler demands both. `"$1"` in an input stands for the handle of the
 * example's first file, on every host.
 */
import { expect } from 'vitest'
import type { Input, Name } from '../../../src/contract/contract.ts'
import type { Known } from '../fixture.ts'

export interface GivenFile {
  readonly name: string
  readonly bytes: Uint8Array
}

export interface Answered<N extends Name> {
  readonly about: string
  readonly files?: readonly GivenFile[]
  /** Calls that must come first on the same catalogue, as [name, input]; an input may follow from earlier answers. */
  readonly first?: (known: Known) => readonly (readonly [Name, unknown])[]
  /** `earlier`: what the calls in `first` answered, in order. */
  readonly input: (known: Known, earlier: readonly unknown[]) => Input<N>
  /** The answer, written out; `anyId` and `anyHandle` where the program makes a name of its own. */
  readonly output: (known: Known) => unknown
}

export interface Refused {
  readonly about: string
  readonly files?: readonly GivenFile[]
  readonly first?: (known: Known) => readonly (readonly [Name, unknown])[]
  readonly input: (known: Known, earlier: readonly unknown[]) => unknown
  readonly code: string
  /** Null where the refusal is about no field. */
  readonly field: string | null
}

export interface Examples<N extends Name> {
  readonly answered: readonly [Answered<N>, ...Answered<N>[]]
  readonly refused: readonly [Refused, ...Refused[]]
}

export type ExamplesOf<N extends Name> = { readonly [K in N]: Examples<K> }

export const anyId: unknown = expect.stringMatching(/^[0-9a-z]{6,40}$/)
export const anyHandle: unknown = expect.stringMatching(/^[0-9a-f]{16}-/)
export const anyMoment: unknown = expect.stringMatching(/^\d{4}-\d\d-\d\dT/)

/** A strict object refuses what it does not know: the refusal that a procedure without fields can always show. */
export const unknownField: Refused = {
  about: 'a field that is not there',
  input: () => ({ nonsense: 1 }),
  code: 'bad-input',
  field: 'nonsense',
}
