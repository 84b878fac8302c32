/**
 * The plain facts of a work by their name in the contract: the column of `work` that holds each, what people call it,
 * and whether it is set for many works at once. The rule it keeps: a fact that the contract has and this table lacks
 * does not compile.
 */
import type { workFields } from '../contract/areas/works-shape.ts'

interface WorkFact {
  readonly column: string
  readonly words: string
  /** Nobody gives many works one title. */
  readonly many: boolean
}

export const workFacts = {
  title: { column: 'title', words: 'title', many: false },
  maker: { column: 'maker', words: 'maker', many: true },
  dateText: { column: 'date_text', words: 'date', many: true },
  medium: { column: 'medium', words: 'medium', many: true },
  creditLine: { column: 'credit_line', words: 'credit line', many: true },
  lender: { column: 'lender', words: 'lender', many: true },
  kind: { column: 'kind', words: 'kind', many: true },
  objectName: { column: 'object_name', words: 'object name', many: true },
  titleTranslation: { column: 'title_translation', words: 'title in translation', many: false },
  titleLanguage: { column: 'title_language', words: 'language of the title', many: true },
  inscriptions: { column: 'inscriptions', words: 'inscriptions and marks', many: false },
  subject: { column: 'subject', words: 'subject', many: true },
  description: { column: 'description', words: 'description', many: false },
  placeOfOrigin: { column: 'place_of_origin', words: 'place of origin', many: true },
  distinguishing: { column: 'distinguishing', words: 'distinguishing features', many: false },
  department: { column: 'department', words: 'owner’s department', many: true },
  sensitivity: { column: 'sensitivity', words: 'sensitivity', many: true },
  lightLimit: { column: 'light_limit', words: 'light limit', many: true },
  glazing: { column: 'glazing', words: 'glazing', many: true },
  frameColour: { column: 'frame_colour', words: 'frame’s colour', many: true },
  handWeight: { column: 'hand_weight', words: 'weight by hand', many: false },
  handling: { column: 'handling', words: 'handling', many: true },
  loanTerms: { column: 'loan_terms', words: 'loan terms', many: true },
  notBeside: { column: 'not_beside', words: 'not beside', many: true },
  note: { column: 'note', words: 'note', many: false },
} as const satisfies Readonly<Record<keyof typeof workFields, WorkFact>>

type Facts = typeof workFacts
/** A fact that is set for many works at once. */
export type ManyFact = { [Key in keyof Facts]: Facts[Key]['many'] extends true ? Key : never }[keyof Facts]

export const manyFacts = Object.entries(workFacts).flatMap(([key, { many }]) => (many ? [key] : [])) as ManyFact[] // Object.entries forgets the keys
