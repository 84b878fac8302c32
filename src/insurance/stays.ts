/**
 * Where a work is, span by span: until the end of today as the record has it, from tomorrow on as it is planned. The
 * rule it keeps: a crate takes along what is in it, and a day to come is never told as if it were on record.
 */
import type { Day } from '../light/day.ts'
import { placesAround } from '../record/nested.ts'
import { isLent, type Lent } from './value.ts'

/** Milliseconds as the clock on the wall counts them: a day has 86 400 000, whatever the season. */
export type Clock = number
export const dayLong = 86_400_000

export interface Move {
  readonly at: Clock
  readonly place: string
}

/** A show that the work is in, with the place of its wall; null while it hangs on none. Both days count. */
export interface Shown {
  readonly first: Day
  readonly last: Day
  readonly place: string | null
}

export interface Stay {
  readonly from: Clock
  /** The first moment after it. */
  readonly to: Clock
  /** The innermost place first; empty where the work is expected and nobody has said where. */
  readonly places: readonly string[]
  readonly basis: 'record' | 'plan'
}

export interface Known {
  /** In the order of the record. */
  readonly moves: readonly Move[]
  /** Of crates and vehicles by their key, each in the order of the record. */
  readonly carried: ReadonlyMap<string, readonly Move[]>
  readonly shows: readonly Shown[]
  readonly loans: readonly Lent[]
}

/** Stays of one work from the first of its movements to the end of the day `last`, in order and without overlaps. */
export function staysOf(known: Known, today: Day, last: Day): Stay[] {
  const tomorrow = (today + 1) * dayLong
  const recorded = recordedStays(known, tomorrow)
  const stays = last < today ? recorded : [...recorded, ...plannedStays(known, recorded.at(-1)?.places, today, last)]
  const end = (last + 1) * dayLong
  return joined(stays.filter(({ from }) => from < end).map(stay => ({ ...stay, to: Math.min(stay.to, end) })))
}

function recordedStays({ moves, carried }: Known, until: Clock): Stay[] {
  // A clock set back in autumn gives a later movement an earlier time: it counts from the one before.
  let latest = -Infinity
  const own = moves.map(({ at, place }) => {
    latest = Math.max(latest, at)
    return { at: latest, place }
  })
  const [start] = own
  if (start === undefined) return []
  const times = new Set(own.map(({ at }) => at))
  for (const container of containers(own, carried))
    for (const { at } of carried.get(container) ?? []) if (at > start.at) times.add(at)
  const sorted = [...times].filter(at => at < until).sort((a, b) => a - b)
  return sorted.map((from, at) => {
    const standing = new Map<string, { readonly place: string }>()
    for (const [container, path] of carried) {
      const stood = path.findLast(move => move.at <= from)
      if (stood !== undefined) standing.set(container, stood)
    }
    const place = own.findLast(move => move.at <= from)?.place ?? start.place
    return { from, to: sorted[at + 1] ?? until, places: placesAround(place, standing), basis: 'record' }
  })
}

/** Every crate and vehicle that may ever be around. */
function containers(own: readonly Move[], carried: ReadonlyMap<string, readonly Move[]>): Set<string> {
  const found = new Set<string>()
  const look = (places: readonly Move[]) => {
    for (const { place } of places) {
      const path = carried.get(place)
      if (path === undefined || found.has(place)) continue
      found.add(place)
      look(path)
    }
  }
  look(own)
  return found
}

/** From tomorrow: in a show on its wall; else where it stands, unless all its loans have ended; else where its loan expects it. */
function plannedStays({ shows, loans }: Known, stands: readonly string[] | undefined, today: Day, last: Day): Stay[] {
  const turns = new Set([today + 1])
  for (const day of [
    ...shows.flatMap(show => [show.first, show.last + 1]),
    ...loans.flatMap(lent => [lent.first, lent.last === null ? null : lent.last + 1]),
  ])
    if (day !== null && day > today && day <= last) turns.add(day)
  const starts = [...turns].filter(day => day <= last).sort((a, b) => a - b)
  return starts.flatMap((day, at): Stay[] => {
    const show = shows.find(each => each.first <= day && day <= each.last)
    const lent = isLent(loans, day)
    const ended = loans.length > 0 && loans.every(each => each.last !== null && each.last < day)
    if (show === undefined && !lent && (stands === undefined || ended)) return []
    const places = show === undefined ? (stands ?? []) : show.place === null ? [] : [show.place]
    const to = (starts[at + 1] ?? last + 1) * dayLong
    return [{ from: day * dayLong, to, places, basis: 'plan' }]
  })
}

function joined(stays: readonly Stay[]): Stay[] {
  const kept: Stay[] = []
  for (const stay of stays) {
    const before = kept.at(-1)
    const same =
      before?.to === stay.from && before.basis === stay.basis && before.places.join(' ') === stay.places.join(' ')
    if (same) kept[kept.length - 1] = { ...before, to: stay.to }
    else kept.push(stay)
  }
  return kept
}
