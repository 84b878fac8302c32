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

/** "confirmed, Ines Farrow, 2 March 2031: rota of the gallery"; empty where nobody has said anything. `day` in words. */
export function wordSaid(word: TermWord | null, day: (day: string) => string): string {
  if (word === null) return ''
  const how = word.note.trim() === '' ? '' : `: ${word.note.trim()}`
  return `${word.kept ? 'confirmed' : 'not so'}, ${word.by}, ${day(word.on)}${how}`
}
