/** Limits of what may be together, as a policy, an indemnity or an agreement says them. */

import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { bearerWords } from '../../../src/insurance/bearer.ts'
import type { LimitScope } from '../../../src/insurance/limits.ts'
import { daySaid } from '../../../src/light/day.ts'
import { writeAmount } from '../../../src/money/write.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { placeNamed, placeOf } from '../record/places.ts'
import type { Reading, Writing } from '../service.ts'
import { insert, remove as removeRow, row, rows, value } from '../sql.ts'

type Told = Output<'insured.limits'>['limits'][number]

interface Stored extends Omit<Told, 'words' | 'amount' | 'place'> {
  readonly minor: number
  readonly currency: string
  readonly place: string
}

function wordsOf(
  db: ReadHandle,
  { scope, lender, place, bearer }: Pick<Stored, 'scope' | 'lender' | 'place' | 'bearer'>,
) {
  const what = whatOf(db, scope, lender, place)
  return bearer === '' ? what : `${what}, ${bearerWords[bearer]}`
}

function whatOf(db: ReadHandle, scope: LimitScope, lender: string | null, place: string): string {
  if (scope === 'all') return 'everything'
  if (scope === 'crate') return 'each crate'
  if (scope === 'vehicle') return 'each vehicle'
  if (scope === 'journey') return 'each journey'
  if (scope === 'place') return placeOf(db, place)?.words ?? 'a place that is gone'
  return value<string>(db, 'SELECT name FROM party WHERE id = :lender', { lender }) ?? ''
}

const columns = 'id, scope, lender, place, bearer, value AS minor, currency, first, last, source, "by"'

function toldOf(db: ReadHandle, { minor, currency, place, ...stored }: Stored): Told {
  const words = wordsOf(db, { ...stored, place })
  return { ...stored, place: place === '' ? null : place, words, amount: { minor, currency } }
}

/** All of them: for everything first, then by what they are for. */
export function limitsOf(db: ReadHandle): Told[] {
  const order = `CASE scope WHEN 'all' THEN 0 WHEN 'lender' THEN 1 WHEN 'place' THEN 2 WHEN 'crate' THEN 3 WHEN 'vehicle' THEN 4 ELSE 5 END`
  return rows<Stored>(db, `SELECT ${columns} FROM value_limit ORDER BY ${order}, first, id`).map(each =>
    toldOf(db, each),
  )
}

export function list({ db }: Reading): Output<'insured.limits'> {
  return { limits: limitsOf(db) }
}

/** Refuses what a limit of that scope needs and lacks. */
function subjectOf(db: ReadHandle, input: Received<'insured.addLimit'>): { lender: string | null; place: string } {
  const { scope, lender, place } = input
  if (scope === 'lender') {
    if (lender === undefined) throw new Refusal('no-lender', 'Say whose works the limit is for.', { field: 'lender' })
    if (value(db, 'SELECT id FROM party WHERE id = :lender', { lender }) === undefined)
      throw notFound('lender', 'lender')
    return { lender, place: '' }
  }
  if (scope !== 'place') return { lender: null, place: '' }
  if (place === undefined) throw new Refusal('no-place', 'Say which place the limit is for.', { field: 'place' })
  const named = placeNamed(db, place, 'place')
  if (named.kind !== 'face') return { lender: null, place }
  const sentence = `Sums are by room, not by wall: set the limit for the room of ${named.words}.`
  throw new Refusal('wall-no-limit', sentence, { field: 'place' })
}

export function add(writing: Writing, input: Received<'insured.addLimit'>): Output<'insured.addLimit'> {
  const { db, person } = writing
  const { scope, bearer = '', amount, first = '', last = '' } = input
  if (amount.minor === 0) {
    throw new Refusal('no-limit', 'A limit of nothing would be over on every day. Say how much may be together.', {
      field: 'amount',
    })
  }
  if (first !== '' && last !== '' && last < first) {
    const sentence = `The limit would end on ${daySaid(last)}, before it begins on ${daySaid(first)}. Put the days in order.`
    throw new Refusal('reversed', sentence, { field: 'last' })
  }
  const subject = subjectOf(db, input)
  writing.label(`Set a limit of ${writeAmount(amount)} for ${wordsOf(db, { scope, bearer, ...subject })}`)
  const id = writing.newId()
  insert(db, 'value_limit', {
    id,
    scope,
    ...subject,
    bearer,
    value: amount.minor,
    currency: amount.currency,
    first,
    last,
    source: input.source ?? '',
    by: person?.name ?? '',
  })
  return { id }
}

export function remove(writing: Writing, { id }: Received<'insured.removeLimit'>): Output<'insured.removeLimit'> {
  const stored = row<Stored>(writing.db, `SELECT ${columns} FROM value_limit WHERE id = :id`, { id })
  if (stored === undefined) throw notFound('limit')
  const { words, amount } = toldOf(writing.db, stored)
  writing.label(`Take the limit of ${writeAmount(amount)} for ${words} away`)
  removeRow(writing.db, 'value_limit', id)
  return { done: true }
}
