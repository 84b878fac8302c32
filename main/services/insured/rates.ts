/** Rates of exchange as a person entered them. One that was wrong is taken away and entered anew. */

import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { daySaid } from '../../../src/light/day.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { dateAt } from '../days.ts'
import type { Reading, Writing } from '../service.ts'
import { insert, remove as removeRow, row, rows, value } from '../sql.ts'

type Stored = Output<'insured.rates'>['rates'][number]

/** All of them, the newest first. */
export function ratesOf(db: ReadHandle): Stored[] {
  return rows<Stored>(
    db,
    `SELECT id, from_currency AS "from", to_currency AS "to", rate, day, source, "by" FROM exchange_rate
     ORDER BY day DESC, from_currency, to_currency, id`,
  )
}

export function list({ db }: Reading): Output<'insured.rates'> {
  return { rates: ratesOf(db) }
}

export function add(writing: Writing, input: Received<'insured.addRate'>): Output<'insured.addRate'> {
  const { db, now, person } = writing
  const { from, to, rate } = input
  if (from === to) {
    throw new Refusal('same-currency', `One ${from} is one ${from}. A rate is between two currencies.`, { field: 'to' })
  }
  const day = input.day ?? dateAt(now())
  const sql = 'SELECT id FROM exchange_rate WHERE from_currency = :from AND to_currency = :to AND day = :day'
  if (value(db, sql, { from, to, day }) !== undefined) {
    const sentence = `There is a rate of ${from} in ${to} from ${daySaid(day)} already. Take that away first, or say another day.`
    throw new Refusal('day-taken', sentence, { field: 'day' })
  }
  writing.label(`Enter that 1 ${from} is ${rate} ${to} from ${daySaid(day)}`)
  const id = writing.newId()
  const said = { source: input.source ?? '', by: person?.name ?? '' }
  insert(db, 'exchange_rate', { id, from_currency: from, to_currency: to, rate, day, ...said })
  return { id }
}

export function remove(writing: Writing, { id }: Received<'insured.removeRate'>): Output<'insured.removeRate'> {
  const found = row<Pick<Stored, 'from' | 'to' | 'day'>>(
    writing.db,
    'SELECT from_currency AS "from", to_currency AS "to", day FROM exchange_rate WHERE id = :id',
    { id },
  )
  if (found === undefined) throw notFound('rate of exchange')
  writing.label(`Take the rate of ${found.from} in ${found.to} from ${daySaid(found.day)} away`)
  removeRow(writing.db, 'exchange_rate', id)
  return { done: true }
}
