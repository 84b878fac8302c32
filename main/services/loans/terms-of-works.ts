/** The terms that works are lent under. */
import type { LoanTerm } from '../../../src/contract/areas/loans.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { rows } from '../sql.ts'
import { type StoredWord, termColumns, withWord } from './term-rows.ts'

export interface TermOfWork extends LoanTerm {
  readonly work: string
  readonly loan: string
  readonly loanNumber: string
  readonly partyName: string
}

/** Terms of loans to this house that are not closed, of these works. */
export function termsOfWorks(db: ReadHandle, works: readonly string[]): TermOfWork[] {
  return rows<Omit<TermOfWork, 'confirmed'> & StoredWord>(
    db,
    `SELECT ${termColumns}, loan_work.work, loan.id AS loan, loan.number AS loanNumber, party.name AS partyName
     FROM json_each(:works) AS wanted CROSS JOIN loan_work ON loan_work.work = wanted.value
     JOIN loan ON loan.id = loan_work.loan JOIN loan_term ON loan_term.loan = loan.id
     JOIN party ON party.id = loan.party
     WHERE loan.closed = '' AND loan.way = 'in' AND (loan_term.item IS NULL OR loan_term.item = loan_work.id)
     ORDER BY wanted.key, loan.id, loan_term.position, loan_term.id`,
    { works: JSON.stringify(works) },
  ).map(withWord)
}
