/** What sums are made of, read from the record, the plan, loans and valuations: one read for a period. */
import type { Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { sliced } from '../../../src/insurance/groups.ts'
import { Into } from '../../../src/insurance/held.ts'
import { journeysOf } from '../../../src/insurance/journeys.ts'
import type { Limit } from '../../../src/insurance/limits.ts'
import { type Piece, piecesOf } from '../../../src/insurance/pieces.ts'
import { dayLong, type Stay, staysOf } from '../../../src/insurance/stays.ts'
import { valueSpans } from '../../../src/insurance/value.ts'
import { type Day, dateOf, dayOf, daySaid } from '../../../src/light/day.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { dayAt } from '../days.ts'
import type { Reading } from '../service.ts'
import { row } from '../sql.ts'
import { type Facts, factsOf, type Scope } from './facts.ts'
import { limitsOf } from './limits.ts'
import { Places } from './places.ts'
import { ratesOf } from './rates.ts'
import { termLimitsOf } from './terms.ts'

export interface Gathered {
  readonly pieces: readonly Piece[]
  readonly stays: ReadonlyMap<string, readonly Stay[]>
  readonly facts: Facts
  readonly places: Places
  readonly into: Into
  readonly currencies: readonly string[]
  readonly limits: readonly Limit[]
  /** By the limit's key. */
  readonly limitsTold: ReadonlyMap<string, { readonly words: string; readonly source: string }>
  readonly today: Day
  readonly first: Day
  readonly last: Day
}

/** Of one show, of one loan, or of the whole catalogue. */
interface Asked extends Pick<Received<'insured.days'>, 'exhibition' | 'currency' | 'first' | 'last'> {
  readonly loan?: string
}

function scopeOf({ exhibition, loan }: Asked): Scope {
  if (loan !== undefined) return { loan }
  return exhibition === undefined ? 'catalogue' : { exhibition }
}

/** Days before a show and after it: works come and go then. */
const around = 14
/** Days ahead, where no show says how far. */
const ahead = 90
/** Longer periods are a slip of the finger in a year. */
const longest = 1100

/** Days of the show, or of the loan. Refuses `not-found`. */
function daysAsked(db: ReadHandle, { exhibition, loan }: Asked, today: Day): { first: Day; last: Day } {
  const table =
    loan === undefined ? 'SELECT opens, closes FROM exhibition' : 'SELECT first AS opens, last AS closes FROM loan'
  const id = loan ?? exhibition
  const found =
    id === undefined ? undefined : row<{ opens: string; closes: string }>(db, `${table} WHERE id = :id`, { id })
  if (id !== undefined && found === undefined)
    throw loan === undefined ? notFound('exhibition', 'exhibition') : notFound('loan', 'loan')
  const first = found === undefined || found.opens === '' ? today : dayOf(found.opens)
  // What has no end lasts at least until today.
  const open = (loan === undefined ? first : Math.max(first, today)) + ahead
  const last = found === undefined || found.closes === '' ? open : dayOf(found.closes)
  return {
    first: (loan === undefined ? first : Math.max(first, last - longest + 2 * around)) - around,
    last: last + around,
  }
}

function periodOf(db: ReadHandle, asked: Asked, today: Day, within: Day | undefined): { first: Day; last: Day } {
  const usually = daysAsked(db, asked, today)
  const first = asked.first === undefined ? usually.first : dayOf(asked.first)
  const last = asked.last === undefined ? Math.max(first, Math.min(usually.last, first + longest)) : dayOf(asked.last)
  if (last < first) {
    const sentence = `The period would end on ${daySaid(dateOf(last))}, before it begins on ${daySaid(dateOf(first))}. Put the days in order.`
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
    const sentence = `From ${daySaid(dateOf(first))} to ${daySaid(dateOf(last))} are more than three years. Ask for a shorter period.`
    throw new Refusal('too-long', sentence, { field: 'last' })
  }
  return { first, last }
}

/** The currency of most values; of a limit where nothing has a value; else the euro. */
function usual(pieces: readonly Piece[], limits: readonly Limit[]): string {
  const counted = new Map<string, number>()
  for (const { value } of pieces)
    if (value !== null) counted.set(value.currency, (counted.get(value.currency) ?? 0) + 1)
  const [most] = [...counted].sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1))
  return most?.[0] ?? limits[0]?.amount.currency ?? 'EUR'
}

/** Limits that were set, then those of terms of loans. */
function limitsAndTerms(db: ReadHandle): Pick<Gathered, 'limits' | 'limitsTold'> {
  const dayOrNull = (text: string) => (text === '' ? null : dayOf(text))
  const set = limitsOf(db).map(({ id, scope, lender, place, bearer, amount, words, source, ...days }) => ({
    limit: {
      ...{ id, scope, subject: lender ?? place ?? '', slice: bearer, amount },
      ...{ first: dayOrNull(days.first), last: dayOrNull(days.last) },
    },
    words,
    source,
  }))
  const all = [...set, ...termLimitsOf(db)]
  return { limits: all.map(({ limit }) => limit), limitsTold: new Map(all.map(each => [each.limit.id, each])) }
}

/** `within` is a day that the period is widened to. Refuses `not-found`, `reversed` and `too-long`. */
export function gather({ db, now }: Pick<Reading, 'db' | 'now'>, asked: Asked, within?: Day): Gathered {
  const today = dayAt(now())
  const { first, last } = periodOf(db, asked, today, within)
  const places = new Places(db)
  const facts = factsOf(db, scopeOf(asked))
  const { limits, limitsTold } = limitsAndTerms(db)
  const stays = new Map<string, readonly Stay[]>()
  const held = facts.works.flatMap(work => {
    const { id, lender } = work
    const own = staysOf(facts.known(id), today, last)
    stays.set(id, own)
    // From its first stay: what came first is asked too, not only what was there in the period.
    const [start] = own
    const from = start === undefined ? first : Math.min(first, Math.floor(start.from / dayLong))
    const values = valueSpans(facts.agreed(id), facts.valued(id), from, last, facts.unlent(work))
    return piecesOf(id, own, values, (around, slices) => sliced(places.groupsOf(around, lender), slices, limits))
  })
  const rates = ratesOf(db)
  const currency = asked.currency ?? usual(held, limits)
  const currencies = new Set([
    currency,
    ...held.flatMap(({ value }) => (value === null ? [] : [value.currency])),
    ...rates.flatMap(({ from, to }) => [from, to]),
    ...limits.map(({ amount }) => amount.currency),
  ])
  return {
    pieces: [...held, ...journeysOf(held, limits)],
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
