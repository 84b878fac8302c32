/** Terms that no plan and no record tells whole: a named person confirms them, or says that it is not so. */
import type { Term, TermKind } from './term.ts'

const asked: Partial<Readonly<Record<TermKind, readonly string[]>>> = {
  framing: ['frame-stays', 'glazing-stays'],
  security: ['watched', 'alarm', 'locked-room'],
  courier: ['hanging', 'taking-down'],
}

export const asksPerson = ({ kind, choice }: Pick<Term, 'kind' | 'choice'>): boolean =>
  asked[kind]?.includes(choice) ?? false

/** What a person said of such a term. */
export interface TermWord {
  /** False: it is not so. */
  readonly kept: boolean
  readonly by: string
  /** A date. */
  readonly on: string
  /** How they know; may be empty. */
  readonly note: string
}
