/** Terms of a loan: added, changed, taken off. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { daySaid } from '../../../src/light/day.ts'
import { asksPerson, type TermWord } from '../../../src/loan/terms/asked.ts'
import { type TermAsked, termProblem, termWords } from '../../../src/loan/terms/term.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { changeFields, notFound, same } from '../change.ts'
import { dateAt } from '../days.ts'
import { nextPosition, orderedRows } from '../order.ts'
import type { Writing } from '../service.ts'
import { insert, remove as removeRow, row, update, value } from '../sql.ts'
import { openLoan } from './loan.ts'
import { type StoredTerm, termColumns, withWord } from './term-rows.ts'

/** Refuses a term that no plan can be held against. */
function refuseWrong(term: TermAsked, prefix: string): void {
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

function storedOf(db: ReadHandle, id: string) {
  const found = row<StoredTerm & { readonly loan: string }>(
    db,
    `SELECT loan, ${termColumns} FROM loan_term WHERE id = :id`,
    { id },
  )
  if (found === undefined) throw notFound('term')
  return withWord(found)
}

const noWord = { confirmed: '', confirmed_by: '', confirmed_on: '', confirmed_note: '' } as const

/** Refuses a word where nobody is asked, and one of a day to come. */
function refuseWord(writing: Writing, term: TermAsked, word: TermWord): void {
  if (!asksPerson(term))
    throw new Refusal(
      'no-word-asked',
      `A term of ${termWords[term.kind]} like this one is held against the plan and the record: nobody’s word is asked. Mend what it tells instead.`,
      { field: 'changes.confirmed' },
    )
  if (word.on > dateAt(writing.now()))
    throw new Refusal('in-future', `${daySaid(word.on)} is still to come. Write the day on which ${word.by} said it.`, {
      field: 'changes.confirmed',
    })
}

export function changeTerm(writing: Writing, { id, changes }: Received<'loan.updateTerm'>): Output<'loan.updateTerm'> {
  const { db } = writing
  const before = storedOf(db, id)
  const { loan, kind } = before
  const { confirmed, ...plain } = changes
  const of = `the term of ${termWords[kind]} of ${openLoan(db, loan, 'id')}`
  writing.label(
    confirmed === undefined ? `Change ${of}` : confirmed.to === null ? `Take back the word on ${of}` : `Confirm ${of}`,
  )
  const columns = { low: 'low', high: 'high', choice: 'choice', said: 'said' }
  const { saved, clashes } = changeFields(writing, 'loan_term', id, plain, columns, 'term')
  // As it is now, with what somebody else wrote meanwhile; a refusal leaves nothing of this edit.
  const after = storedOf(db, id)
  refuseWrong(after, 'changes.')
  // What was confirmed is not what is asked now.
  const asksElse = (['low', 'high', 'choice'] as const).some(field => after[field] !== before[field])
  if (asksElse && before.confirmed !== null) update(db, 'loan_term', id, noWord)
  if (confirmed === undefined) return { saved, clashes }
  const theirs = asksElse ? null : before.confirmed
  if (!same(theirs, confirmed.was) && !same(theirs, confirmed.to)) {
    const clash = { code: 'clash' as const, id, field: 'confirmed', was: confirmed.was, yours: confirmed.to, theirs }
    return { saved, clashes: [...clashes, clash] }
  }
  if (confirmed.to === null) update(db, 'loan_term', id, noWord)
  else {
    refuseWord(writing, after, confirmed.to)
    const { kept, by, on, note } = confirmed.to
    update(db, 'loan_term', id, {
      ...{ confirmed: kept ? 'kept' : 'not-kept', confirmed_by: by, confirmed_on: on, confirmed_note: note },
    })
  }
  return { saved: [...saved, 'confirmed'], clashes }
}

export function removeTerm(writing: Writing, { id }: Received<'loan.removeTerm'>): Output<'loan.removeTerm'> {
  const { loan, kind } = storedOf(writing.db, id)
  writing.label(`Take the term of ${termWords[kind]} off ${openLoan(writing.db, loan, 'id')}`)
  removeRow(writing.db, 'loan_term', id)
  return { done: true }
}
