/** Sums of one day, group by group, and the works of one of them. */
import { type InsuredLine, type InsuredWork, lineKinds } from '../../../src/contract/areas/insured.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { bearers } from '../../../src/insurance/bearer.ts'
import type { DaySum } from '../../../src/insurance/held.ts'
import { against, bringOver } from '../../../src/insurance/limits.ts'
import type { Piece } from '../../../src/insurance/pieces.ts'
import { dayLong } from '../../../src/insurance/stays.ts'
import { inGroup } from '../../../src/insurance/sums.ts'
import { type Day, dateOf, dayOf } from '../../../src/light/day.ts'
import { halfEven, times } from '../../../src/money/exact.ts'
import type { Rate } from '../../../src/money/exchange.ts'
import type { ReadHandle } from '../../database/handles.ts'
import type { Reading } from '../service.ts'
import { row } from '../sql.ts'
import { firstNumber } from '../works/figures.ts'
import { type Gathered, gather } from './gather.ts'
import { ratesOf } from './rates.ts'
import { empty, head, sumsOf, told } from './told.ts'

const pageOf = 200

export function dayTold(reading: Reading, input: Received<'insured.day'>): Output<'insured.day'> {
  const { db } = reading
  const { group = 'all', offset = 0, limit = pageOf } = input
  const day = dayOf(input.day)
  const gathered = gather(reading, input, day)
  const sums = sumsOf(gathered)
  const lines = [...sums].map(([each, all]) => lineOf(gathered, each, all, day)).sort(byKindThenSum)
  const at = sums.get(group)?.find(sum => sum.day === day)
  const came = at === undefined ? [] : inGroup(gathered.pieces, group, at.at)
  const over = at === undefined ? new Set<string>() : overOf(gathered, group, at, came)
  const moment = sums.get('all')?.find(sum => sum.day === day)?.at ?? day * dayLong
  const stood = gathered.facts.works.map(({ id }) => {
    return gathered.stays.get(id)?.find(stay => stay.from <= moment && moment < stay.to)
  })
  return {
    ...head(gathered),
    day: input.day,
    lines,
    rates: usedOn(db, gathered, day),
    works: came.slice(offset, offset + limit).map(piece => workOf(db, gathered, piece, day, over.has(piece.work))),
    total: came.length,
    outside: stood.filter(stay => stay !== undefined && gathered.places.isOutside(stay.places)).length,
    nowhere: stood.filter(stay => stay === undefined).length,
  }
}

function lineOf(
  { limits, limitsTold, into, places }: Gathered,
  group: string,
  all: readonly DaySum[],
  day: Day,
): InsuredLine {
  const sum = all.find(each => each.day === day) ?? empty(day)
  const [top = sum] = all.toSorted((a, b) => b.minor - a.minor || a.day - b.day)
  return {
    group,
    ...places.groupWords(group),
    ...told(sum),
    against: against(limits, group, sum, into).map(({ limit, minor, verdict, over }) => {
      const { words = '', source = '' } = limitsTold.get(limit.id) ?? {}
      return { limit: limit.id, words, source, amount: { ...limit.amount }, minor, verdict, over }
    }),
    greatest: { day: dateOf(top.day), minor: top.minor },
  }
}

function byKindThenSum(a: InsuredLine, b: InsuredLine): number {
  const kind = lineKinds.indexOf(a.kind) - lineKinds.indexOf(b.kind)
  return kind || b.minor - a.minor || (a.words < b.words ? -1 : 1)
}

/** Works that bring the group over any of its limits. */
function overOf({ limits, into }: Gathered, group: string, sum: DaySum, came: readonly Piece[]): Set<string> {
  const over = against(limits, group, sum, into).filter(({ verdict }) => verdict === 'over')
  return new Set(over.flatMap(({ minor }) => (minor === null ? [] : bringOver(came, minor, into, sum.day))))
}

function workOf(
  db: ReadHandle,
  { into, places }: Gathered,
  { work, value, by, slices, basis, places: around }: Piece,
  day: Day,
  over: boolean,
): InsuredWork {
  const said = row<{ number: string; title: string; lender: string | null }>(
    db,
    `SELECT coalesce(${firstNumber}, '') AS number, work.title, party.name AS lender
     FROM work LEFT JOIN party ON party.id = work.lender WHERE work.id = :work`,
    { work },
  )
  const factor = value === null ? null : into.factor(value.currency, day)
  const minor =
    value === null || factor === null ? null : halfEven(times({ num: BigInt(value.minor), den: 1n }, factor))
  return {
    work,
    number: said?.number ?? '',
    title: said?.title ?? '',
    lender: said?.lender ?? '',
    words: places.wordsOf(around),
    basis,
    value: value === null ? null : { ...value },
    minor,
    ...whyOf(db, by),
    bearer: bearers.find(each => each === slices[0]) ?? 'unsaid',
    over,
  }
}

function whyOf(db: ReadHandle, by: Piece['by']): Pick<InsuredWork, 'why' | 'since'> {
  if (by === null) return { why: '', since: null }
  const { kind, id } = by
  if (kind === 'loan') {
    const loan = row<{ number: string }>(db, 'SELECT number FROM loan WHERE id = :id', { id })
    return { why: `loan ${loan?.number ?? ''}`, since: null }
  }
  const own = row<{ day: string; source: string }>(db, 'SELECT day, source FROM work_value WHERE id = :id', { id })
  return { why: own?.source ?? '', since: own?.day ?? null }
}

/** The rates that sums and limits of a day rest on. */
function usedOn(db: ReadHandle, { into, currencies, pieces, limits }: Gathered, day: Day) {
  const met = new Set([
    ...pieces.flatMap(({ value }) => (value === null ? [] : [value.currency])),
    ...limits.map(({ amount }) => amount.currency),
  ])
  const used = new Set(
    currencies.flatMap(each => (met.has(each) ? [into.rate(each, day)] : [])).map((rate?: Rate) => rate?.id),
  )
  return ratesOf(db).filter(({ id }) => used.has(id))
}
