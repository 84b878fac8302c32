/** Works of a loan: put in, what was agreed for each, taken out. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { changeFields, notFound, same } from '../change.ts'
import { nextPosition, orderedRows } from '../order.ts'
import type { Writing } from '../service.ts'
import { insert, remove as removeRow, row, rows, update } from '../sql.ts'
import { workName } from '../works/facts.ts'
import { openLoan } from './loan.ts'

export function addWorks(writing: Writing, { loan, works }: Received<'loan.addWorks'>): Output<'loan.addWorks'> {
  const { db } = writing
  const words = openLoan(db, loan, 'loan')
  const there = new Set(
    rows<{ work: string }>(db, 'SELECT work FROM loan_work WHERE loan = :loan', { loan }).map(({ work }) => work),
  )
  const wanted = [...new Set(works)].filter(work => !there.has(work))
  const names = wanted.map(work => {
    if (row(db, 'SELECT id FROM work WHERE id = :work', { work }) === undefined) throw notFound('work', 'works')
    return workName(db, work)
  })
  writing.label(names.length === 1 ? `Put ${names[0]} into ${words}` : `Put ${names.length} works into ${words}`)
  let position = nextPosition(orderedRows(db, 'loan_work', 'loan = :loan', { loan }))
  const added = wanted.map(work => {
    const id = writing.newId()
    insert(db, 'loan_work', { id, loan, work, position: position++ })
    return { id }
  })
  return { added }
}

interface Stored {
  readonly loan: string
  readonly work: string
  readonly value: number | null
  readonly currency: string
}

function storedOf(db: ReadHandle, id: string): Stored {
  const found = row<Stored>(db, 'SELECT loan, work, value, currency FROM loan_work WHERE id = :id', { id })
  if (found === undefined) throw notFound('work of a loan')
  return found
}

/** A value as the contract has it; a figure without a currency is never stored. */
export function amountOf({ value, currency }: Pick<Stored, 'value' | 'currency'>) {
  return value === null ? null : { minor: value, currency }
}

const columns = { item: 'item', insuredBy: 'insured_by', note: 'note' } as const

export function changeWork(writing: Writing, { id, changes }: Received<'loan.updateWork'>): Output<'loan.updateWork'> {
  const { db } = writing
  const stored = storedOf(db, id)
  writing.label(`Change what is agreed for ${workName(db, stored.work)} in ${openLoan(db, stored.loan, 'id')}`)
  const { value, ...plain } = changes
  const { saved, clashes } = changeFields(writing, 'loan_work', id, plain, columns, 'work of a loan')
  if (value === undefined) return { saved, clashes }
  const theirs = amountOf(stored)
  if (same(theirs, value.was) || same(theirs, value.to)) {
    update(db, 'loan_work', id, { value: value.to?.minor ?? null, currency: value.to?.currency ?? '' })
    return { saved: [...saved, 'value'], clashes }
  }
  const clash = { code: 'clash' as const, id, field: 'value', was: value.was, yours: value.to, theirs }
  return { saved, clashes: [...clashes, clash] }
}

/** Refuses `recorded`: a receipt that names the work stays. */
function refuseNamed(db: ReadHandle, item: string, work: string): void {
  const found = row<{ number: string }>(
    db,
    `SELECT loan_receipt.number FROM loan_receipt_work AS named JOIN loan_receipt ON loan_receipt.id = named.receipt
     WHERE named.item = :item LIMIT 1`,
    { item },
  )
  if (found === undefined) return
  const sentence = `Receipt ${found.number} names ${workName(db, work)}, so it stays in the loan: what is on record is not taken away.`
  throw new Refusal('recorded', sentence, { field: 'id' })
}

export function removeWork(writing: Writing, { id }: Received<'loan.removeWork'>): Output<'loan.removeWork'> {
  const { loan, work } = storedOf(writing.db, id)
  writing.label(`Take ${workName(writing.db, work)} out of ${openLoan(writing.db, loan, 'id')}`)
  refuseNamed(writing.db, id, work)
  for (const each of rows<{ id: string }>(writing.db, 'SELECT id FROM loan_term WHERE item = :id', { id })) {
    removeRow(writing.db, 'loan_term', each.id)
  }
  removeRow(writing.db, 'loan_work', id)
  return { done: true }
}
