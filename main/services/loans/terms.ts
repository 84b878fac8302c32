/** Terms of a loan: added, changed, taken off. */
import type { LoanTerm } from '../../../src/contract/areas/loans.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { type Term, termProblem, termWords } from '../../../src/loan/terms/term.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { changeFields, notFound } from '../change.ts'
import { nextPosition, orderedRows } from '../order.ts'
import type { Writing } from '../service.ts'
import { insert, remove as removeRow, row, value } from '../sql.ts'
import { openLoan } from './loan.ts'

/** Refuses a term that no plan can be held against. */
function refuseWrong(term: Omit<Term, 'said'>, prefix: string): void {
  const wrong = termProblem(term)
  if (wrong !== null) throw new Refusal(wrong.code, wrong.message, { field: `${prefix}${wrong.field}` })
}

export function addTerm(writing: Writing, input: Received<'loan.addTerm'>): Output<'loan.addTerm'> {
  const { db } = writing
  const { loan, item = null, kind, low = null, high = null, choice = '', said = '' } = input
  writing.label(`Add a term of ${termWords[kind]} to ${openLoan(db, loan, 'loan')}`)
  if (item !== null && value<string>(db, 'SELECT loan FROM loan_work WHERE id = :item', { item }) !== loan) {
    throw notFound('work of this loan', 'item')
  }
  refuseWrong({ kind, low, high, choice }, '')
  const id = writing.newId()
  const position = nextPosition(orderedRows(db, 'loan_term', 'loan = :loan', { loan }))
  insert(db, 'loan_term', { id, loan, item, kind, low, high, choice, said, position })
  return { id }
}

type Stored = Omit<LoanTerm, 'id' | 'item'> & { readonly loan: string }

function storedOf(db: ReadHandle, id: string): Stored {
  const found = row<Stored>(db, 'SELECT loan, kind, low, high, choice, said FROM loan_term WHERE id = :id', { id })
  if (found === undefined) throw notFound('term')
  return found
}

export function changeTerm(writing: Writing, { id, changes }: Received<'loan.updateTerm'>): Output<'loan.updateTerm'> {
  const { db } = writing
  const { loan, kind } = storedOf(db, id)
  writing.label(`Change the term of ${termWords[kind]} of ${openLoan(db, loan, 'id')}`)
  const columns = { low: 'low', high: 'high', choice: 'choice', said: 'said' }
  const { saved, clashes } = changeFields(writing, 'loan_term', id, changes, columns, 'term')
  // As it is now, with what somebody else wrote meanwhile; a refusal leaves nothing of this edit.
  refuseWrong(storedOf(db, id), 'changes.')
  return { saved, clashes }
}

export function removeTerm(writing: Writing, { id }: Received<'loan.removeTerm'>): Output<'loan.removeTerm'> {
  const { loan, kind } = storedOf(writing.db, id)
  writing.label(`Take the term of ${termWords[kind]} off ${openLoan(writing.db, loan, 'id')}`)
  removeRow(writing.db, 'loan_term', id)
  return { done: true }
}
