/** Terms as they are stored, and as the contract has them. */
import type { LoanTerm } from '../../../src/contract/areas/loans.ts'

export const termColumns = `loan_term.id, loan_term.item, loan_term.kind, loan_term.low, loan_term.high, loan_term.choice,
  loan_term.said, loan_term.confirmed, loan_term.confirmed_by AS confirmedBy, loan_term.confirmed_on AS confirmedOn,
  loan_term.confirmed_note AS confirmedNote`

export interface StoredWord {
  readonly confirmed: '' | 'kept' | 'not-kept'
  readonly confirmedBy: string
  readonly confirmedOn: string
  readonly confirmedNote: string
}

export type StoredTerm = Omit<LoanTerm, 'confirmed'> & StoredWord

/** With a person's word as one, and whatever else the row has. */
export function withWord<T extends StoredWord>({ confirmed, confirmedBy, confirmedOn, confirmedNote, ...term }: T) {
  const word = { kept: confirmed === 'kept', by: confirmedBy, on: confirmedOn, note: confirmedNote }
  return { ...term, confirmed: confirmed === '' ? null : word }
}
