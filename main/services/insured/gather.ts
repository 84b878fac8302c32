/** What sums are made of, read from the record, the plan, loans and valuations: one read for a period. */
import type { Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { Into } from '../../../src/insurance/held.ts'
import type { Limit } from '../../../src/insurance/limits.ts'
import { type Piece, piecesOf } from '../../../src/insurance/pieces.ts'
import { dayLong, type Stay, staysOf } from '../../../src/insurance/stays.ts'
import { valueSpans } from '../../../src/insurance/value.ts'
import { type Day, dateOf, dayOf } from '../../../src/light/day.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { dayAt } from '../days.ts'
import type { Reading } from '../service.ts'
import { row } from '../sql.ts'
import { type Facts, factsOf } from './facts.ts'
import { limitsOf } from './limits.ts'
import { Places } from './places.ts'
import { ratesOf } from './rates.ts'

export interface Gathered {
  readonly pieces: readonly Piece[]
  readonly stays: ReadonlyMap<string, readonly Stay[]>
  readonly facts: Facts
  readonly places: Places
  readonly into: Into
  readonly currencies: readonly string[]
  readonly limits: readonly Limit[]
  readonly limitsTold: ReturnType<typeof limitsOf>
  readonly today: Day
  readonly first: Day
  readonly last: Day
}

type Asked = Pick<Received<'insured.days'>, 'exhibition' | 'currency' | 'first' | 'last'>

/** Days before a show and after it: works come and go then. */
const around = 14
/** Days ahead, where no show says how far. */
const ahead = 90
/** Longer periods are a slip of the finger in a year. */
const longest = 1100

function periodOf(db: ReadHandle, asked: Asked, today: Day, within: Day | undefined): { first: Day; last: Day } {
  const { exhibition = '' } = asked
  const show = row<{ opens: string; closes: string }>(
    db,
    'SELECT opens, closes FROM exhibition WHERE id = :exhibition',
    {
      exhibition,
    },
  )
  if (asked.exhibition !== undefined && show === undefined) throw notFound('exhibition', 'exhibition')
  const opens = show === undefined || show.opens === '' ? today : dayOf(show.opens)
  const closes = show === undefined || show.closes === '' ? opens + ahead : dayOf(show.closes)
  const first = asked.first === undefined ? opens - around : dayOf(asked.first)
  const last =
    asked.last === undefined ? Math.max(first, Math.min(closes + around, first + longest)) : dayOf(asked.last)
  if (last < first) {
    const sentence = `The period would end on ${dateOf(last)}, before it begins on ${dateOf(first)}. Put the days in order.`
    throw new Refusal('reversed', sentence, { field: 'last' })
  }
  if (within !== undefined && (within < first || within > last)) {
    return periodOf(
      db,
      { ...asked, first: dateOf(Math.min(first, within)), last: dateOf(Math.max(last, within)) },
      today,
      within,
    )
  }
  if (last - first > longest) {
    const sentence = `From ${dateOf(first)} to ${dateOf(last)} are more than three years. Ask for a shorter period.`
    throw new Refusal('too-long', sentence, { field: 'last' })
  }
  return { first, last }
}

/** The currency of most values; of a limit where nothing has a value; else the euro. */
function usual(pieces: readonly Piece[], limits: ReturnType<typeof limitsOf>): string {
  const counted = new Map<string, number>()
  for (const { value } of pieces)
    if (value !== null) counted.set(value.currency, (counted.get(value.currency) ?? 0) + 1)
  const [most] = [...counted].sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1))
  return most?.[0] ?? limits[0]?.amount.currency ?? 'EUR'
}

/** `within` is a day that the period is widened to. Refuses `not-found`, `reversed` and `too-long`. */
export function gather({ db, now }: Reading, asked: Asked, within?: Day): Gathered {
  const today = dayAt(now())
  const { first, last } = periodOf(db, asked, today, within)
  const places = new Places(db)
  const { exhibition } = asked
  const facts = factsOf(db, exhibition === undefined ? 'catalogue' : { exhibition })
  const stays = new Map<string, readonly Stay[]>()
  const pieces = facts.works.flatMap(({ id, lender }) => {
    const known = facts.known(id)
    const own = staysOf(known, today, last)
    stays.set(id, own)
    // From its first stay: what came first is asked too, not only what was there in the period.
    const [start] = own
    const from = start === undefined ? first : Math.min(first, Math.floor(start.from / dayLong))
    const values = valueSpans(facts.agreed(id), facts.valued(id), from, last)
    return piecesOf(id, own, values, around => places.groupsOf(around, lender))
  })
  const rates = ratesOf(db)
  const limitsTold = limitsOf(db)
  const currency = asked.currency ?? usual(pieces, limitsTold)
  const currencies = new Set([
    currency,
    ...pieces.flatMap(({ value }) => (value === null ? [] : [value.currency])),
    ...rates.flatMap(({ from, to }) => [from, to]),
    ...limitsTold.map(({ amount }) => amount.currency),
  ])
  const limits = limitsTold.map(({ id, scope, lender, place, amount, ...days }): Limit => {
    const dayOrNull = (text: string) => (text === '' ? null : dayOf(text))
    return {
      id,
      scope,
      subject: lender ?? place ?? '',
      amount,
      first: dayOrNull(days.first),
      last: dayOrNull(days.last),
    }
  })
  return {
    pieces,
    stays,
    facts,
    places,
    limits,
    limitsTold,
    today,
    first,
    last,
    into: new Into(currency, rates),
    currencies: [...currencies].sort(),
  }
}
