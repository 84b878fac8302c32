/** One loan by itself: added, changed, closed, removed, and the people of it. */

import { normalNumber } from '../../../src/checklist/numbers.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { daySaid } from '../../../src/light/day.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { changeFields, notFound } from '../change.ts'
import { nextPosition, orderedRows } from '../order.ts'
import type { Writing } from '../service.ts'
import { insert, remove as removeRow, row, rows, value } from '../sql.ts'

interface Stored {
  readonly number: string
  readonly party: string
  readonly name: string
  readonly way: 'in' | 'out'
  readonly closed: string
  readonly first: string
  readonly last: string
}

function storedOf(db: ReadHandle, id: string, field: string): Stored {
  const found = row<Stored>(
    db,
    `SELECT loan.number, loan.party, party.name, loan.way, loan.closed, loan.first, loan.last
     FROM loan JOIN party ON party.id = loan.party WHERE loan.id = :id`,
    { id },
  )
  if (found === undefined) throw notFound('loan', field)
  return found
}

/** How an edit calls it: "loan L-7 of Harrow Point House". */
const called = ({ number, name, way }: Stored) => `loan ${number} ${way === 'in' ? 'of' : 'to'} ${name}`

/** What a loan that is not closed is called. Refuses `loan-closed`. */
export function openLoan(db: ReadHandle, id: string, field: string): string {
  const stored = storedOf(db, id, field)
  if (stored.closed === '') return called(stored)
  const sentence = `The ${called(stored)} was closed on ${stored.closed}. Open it again to change it.`
  throw new Refusal('loan-closed', sentence, { field })
}

/** Refuses `recorded`: receipts stay, so the loan that they are of stays, and the side that it is seen from. */
function refuseReceipts(db: ReadHandle, loan: string, field: string, instead: string): void {
  const number = value<string>(db, 'SELECT number FROM loan_receipt WHERE loan = :loan LIMIT 1', { loan })
  if (number === undefined) return
  throw new Refusal('recorded', `Receipt ${number} is of this loan. ${instead}`, { field })
}

/** Refuses `reversed`, naming both days. */
function inOrder(first: string, last: string, field: string): void {
  if (first === '' || last === '' || first <= last) return
  const sentence = `The loan would end on ${daySaid(last)}, before it begins on ${daySaid(first)}. Put the days in order.`
  throw new Refusal('reversed', sentence, { field })
}

/** Refuses `number-taken`: one agreement has one number, however it is written. */
function freeNumber(db: ReadHandle, party: string, number: string, but: string, field: string): void {
  const wanted = normalNumber(number)
  const others = rows<{ id: string; number: string }>(db, 'SELECT id, number FROM loan WHERE party = :party', { party })
  const taken = others.find(each => each.id !== but && normalNumber(each.number) === wanted)
  if (taken === undefined) return
  const name = value<string>(db, 'SELECT name FROM party WHERE id = :party', { party }) ?? ''
  const sentence = `${name} has a loan ${taken.number} already. Give this one the number of its own agreement.`
  throw new Refusal('number-taken', sentence, { field, details: { loan: taken.id } })
}

export function add(writing: Writing, input: Received<'loan.add'>): Output<'loan.add'> {
  const { db } = writing
  const { party, number, way = 'in', first = '', last = '' } = input
  const name = value<string>(db, 'SELECT name FROM party WHERE id = :party', { party })
  if (name === undefined) throw notFound('lender or borrower', 'party')
  inOrder(first, last, 'last')
  freeNumber(db, party, number, '', 'number')
  const id = writing.newId()
  writing.label(`Add ${called({ number, name, way, party, closed: '', first, last })}`)
  insert(db, 'loan', {
    id,
    party,
    way,
    number,
    purpose: input.purpose ?? '',
    first,
    last,
    agreed: input.agreed ?? '',
    authoriser: input.authoriser ?? '',
    credit_line: input.creditLine ?? '',
    note: input.note ?? '',
  })
  return { id }
}

const columns = {
  way: 'way',
  number: 'number',
  purpose: 'purpose',
  first: 'first',
  last: 'last',
  agreed: 'agreed',
  authoriser: 'authoriser',
  creditLine: 'credit_line',
  note: 'note',
  closed: 'closed',
} as const

export function change(writing: Writing, { id, changes }: Received<'loan.update'>): Output<'loan.update'> {
  const { db } = writing
  const before = storedOf(db, id, 'id')
  if (changes.closed === undefined) openLoan(db, id, 'id')
  if (changes.way !== undefined && changes.way.to !== before.way) {
    refuseReceipts(db, id, 'changes.way', 'Who lends stays as its receipts have it: add another loan.')
  }
  const closing = changes.closed === undefined ? '' : changes.closed.to === '' ? 'Open again: ' : 'Close '
  writing.label(closing === '' ? `Change ${called(before)}` : `${closing}${called(before)}`)
  // Before anything is written: the table itself would refuse reversed days without a sentence.
  inOrder(
    changes.first?.to ?? before.first,
    changes.last?.to ?? before.last,
    changes.last === undefined ? 'changes.first' : 'changes.last',
  )
  if (changes.number !== undefined) freeNumber(db, before.party, changes.number.to, id, 'changes.number')
  const { saved, clashes } = changeFields(writing, 'loan', id, changes, columns, 'loan')
  return { saved, clashes }
}

export function remove(writing: Writing, { id }: Received<'loan.remove'>): Output<'loan.remove'> {
  const { db } = writing
  writing.label(`Remove ${openLoan(db, id, 'id')}`)
  refuseReceipts(db, id, 'id', 'A record stays, and the loan with it: close it instead.')
  for (const table of ['loan_term', 'loan_contact', 'loan_work']) {
    for (const each of rows<{ id: string }>(db, `SELECT id FROM ${table} WHERE loan = :id`, { id })) {
      removeRow(db, table, each.id)
    }
  }
  removeRow(db, 'loan', id)
  return { done: true }
}

export function addContact(writing: Writing, input: Received<'loan.addContact'>): Output<'loan.addContact'> {
  const { db } = writing
  const { loan, name, role = '', reach = '' } = input
  writing.label(`Add ${name} to ${openLoan(db, loan, 'loan')}`)
  const id = writing.newId()
  const position = nextPosition(orderedRows(db, 'loan_contact', 'loan = :loan', { loan }))
  insert(db, 'loan_contact', { id, loan, name, role, reach, position })
  return { id }
}

function contactOf(db: ReadHandle, id: string): { readonly loan: string; readonly name: string } {
  const found = row<{ loan: string; name: string }>(db, 'SELECT loan, name FROM loan_contact WHERE id = :id', { id })
  if (found === undefined) throw notFound('person of a loan')
  return found
}

export function changeContact(
  writing: Writing,
  { id, changes }: Received<'loan.updateContact'>,
): Output<'loan.updateContact'> {
  const { loan, name } = contactOf(writing.db, id)
  writing.label(`Change ${name} of ${openLoan(writing.db, loan, 'id')}`)
  const named = { name: 'name', role: 'role', reach: 'reach' }
  const { saved, clashes } = changeFields(writing, 'loan_contact', id, changes, named, 'person of a loan')
  return { saved, clashes }
}

export function removeContact(writing: Writing, { id }: Received<'loan.removeContact'>): Output<'loan.removeContact'> {
  const { loan, name } = contactOf(writing.db, id)
  writing.label(`Take ${name} off ${openLoan(writing.db, loan, 'id')}`)
  removeRow(writing.db, 'loan_contact', id)
  return { done: true }
}
