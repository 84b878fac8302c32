/** Loans as they are told: by lender, one by one, and of a work. */
import { numberSortKey } from '../../../src/checklist/numbers.ts'
import type { LoanHead, LoanWork } from '../../../src/contract/areas/loans.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { dateAt } from '../days.ts'
import type { Reading } from '../service.ts'
import { row, rows, value } from '../sql.ts'
import { firstNumber } from '../works/figures.ts'
import { amountOf } from './works.ts'

const head = `loan.id, loan.party, party.name AS partyName, loan.way, loan.number, loan.purpose, loan.first, loan.last, loan.closed,
  (SELECT count(*) FROM loan_work WHERE loan_work.loan = loan.id) AS works`

/** By number as people count: 2 before 10. */
const byNumber = (a: { readonly number: string }, b: { readonly number: string }): number => {
  const [one, other] = [numberSortKey(a.number), numberSortKey(b.number)]
  return one < other ? -1 : one > other ? 1 : 0
}

export function list({ db }: Reading, { words = '' }: Received<'loan.list'>): Output<'loan.list'> {
  const wanted = words.toLocaleLowerCase('en').split(/\s+/u)
  const found = (text: string) => wanted.every(word => text.toLocaleLowerCase('en').includes(word))
  const loans = rows<LoanHead & { readonly said: string }>(
    db,
    `SELECT ${head}, loan.number || ' ' || loan.purpose || ' ' || loan.credit_line || ' ' || loan.authoriser || ' ' || party.name || ' ' ||
      coalesce((SELECT group_concat(work.title || ' ' || work.maker || ' ' || work.numbers || ' ' || loan_work.item, ' ')
        FROM loan_work JOIN work ON work.id = loan_work.work WHERE loan_work.loan = loan.id), '') AS said
     FROM loan JOIN party ON party.id = loan.party ORDER BY loan.id`,
  )
  const parties = rows<{ id: string; name: string; kind: string }>(
    db,
    `SELECT id, name, kind FROM party WHERE kind = 'lender' OR id IN (SELECT party FROM loan)
     ORDER BY name COLLATE NOCASE, id`,
  )
  const kept = Map.groupBy(
    loans.filter(({ said }) => found(said)),
    ({ party }) => party,
  )
  return {
    parties: parties
      .map(party => ({
        ...party,
        loans: (kept.get(party.id) ?? []).map(({ said: _, ...each }) => each).sort(byNumber),
      }))
      .filter(({ name, loans }) => loans.length > 0 || found(name)),
    total: loans.length,
  }
}

type Item = Omit<LoanWork, 'value'> & { readonly value: number | null; readonly currency: string }

/** Works of a loan in the order of the agreement's item numbers, then as they were put in. */
function itemsOf(db: ReadHandle, loan: string): LoanWork[] {
  return rows<Item>(
    db,
    `SELECT loan_work.id, loan_work.work, coalesce(${firstNumber}, '') AS number, work.title, work.maker, work.lender,
      loan_work.item, loan_work.value, loan_work.currency, loan_work.insured_by AS insuredBy, loan_work.note
     FROM loan_work JOIN work ON work.id = loan_work.work WHERE loan_work.loan = :loan
     ORDER BY loan_work.position, loan_work.id`,
    { loan },
  )
    .map(({ value, currency, ...item }) => ({ ...item, value: amountOf({ value, currency }) }))
    .sort((a, b) => Number(a.item === '') - Number(b.item === '') || byNumber({ number: a.item }, { number: b.item }))
}

export function get({ db, now }: Reading, { id }: Received<'loan.get'>): Output<'loan.get'> {
  type Found = LoanHead & Pick<Output<'loan.get'>, 'agreed' | 'authoriser' | 'creditLine' | 'note' | 'contact'>
  const found = row<Found>(
    db,
    `SELECT ${head}, loan.agreed, loan.authoriser, loan.credit_line AS creditLine, loan.note, party.contact
     FROM loan JOIN party ON party.id = loan.party WHERE loan.id = :id`,
    { id },
  )
  if (found === undefined) throw notFound('loan')
  return {
    ...found,
    today: dateAt(now()),
    contacts: rows(db, 'SELECT id, name, role, reach FROM loan_contact WHERE loan = :id ORDER BY position, id', { id }),
    items: itemsOf(db, id),
  }
}

export function ofWork({ db }: Reading, { work }: Received<'loan.ofWork'>): Output<'loan.ofWork'> {
  if (value(db, 'SELECT id FROM work WHERE id = :work', { work }) === undefined) throw notFound('work', 'work')
  type Found = LoanHead & Pick<Item, 'item' | 'value' | 'currency' | 'insuredBy'>
  return {
    loans: rows<Found>(
      db,
      `SELECT ${head}, loan_work.item, loan_work.value, loan_work.currency, loan_work.insured_by AS insuredBy
       FROM loan_work JOIN loan ON loan.id = loan_work.loan JOIN party ON party.id = loan.party
       WHERE loan_work.work = :work ORDER BY loan.first DESC, loan.id DESC`,
      { work },
    ).map(({ value, currency, ...each }) => ({ ...each, value: amountOf({ value, currency }) })),
  }
}
