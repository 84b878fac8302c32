/**
 * The plain facts of a work by their name in the contract: the column of `work` that holds each, and what people call
 * it. The rule it keeps: a fact that the contract has and this table lacks does not compile.
 */
import type { workFields } from '../contract/areas/works-shape.ts'

export interface WorkFact {
  readonly column: string
  readonly words: string
}

export const workFacts: Readonly<Record<keyof typeof workFields, WorkFact>> = {
  title: { column: 'title', words: 'title' },
  maker: { column: 'maker', words: 'maker' },
  dateText: { column: 'date_text', words: 'date' },
  medium: { column: 'medium', words: 'medium' },
  creditLine: { column: 'credit_line', words: 'credit line' },
  lender: { column: 'lender', words: 'lender' },
  kind: { column: 'kind', words: 'kind' },
  sensitivity: { column: 'sensitivity', words: 'sensitivity' },
  lightLimit: { column: 'light_limit', words: 'light limit' },
  glazing: { column: 'glazing', words: 'glazing' },
  notBeside: { column: 'not_beside', words: 'not beside' },
  loanTerms: { column: 'loan_terms', words: 'loan terms' },
  handling: { column: 'handling', words: 'handling' },
  note: { column: 'note', words: 'note' },
}
