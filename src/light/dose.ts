/**
 * Light received: level × hours, day by day, over the days a work hung or is to hang where it is lit. Steady or in
 * pieces is the same (reciprocity; the source stands in the published tests). What nobody read or planned is kept as
 * hours of unknown level: it is never counted as darkness.
 */
import type { Day } from './day.ts'
import { type HoursLit, litOn } from './hours.ts'

/** One show that the work is in. */
export interface ShowLit {
  readonly exhibition: string
  readonly title: string
  readonly hours: readonly HoursLit[]
  /** The wall it is to hang on; null while it has none. */
  readonly face: string | null
  /** Planned lux by wall. */
  readonly planned: ReadonlyMap<string, number>
}

/** The record's word from a day on, until the next. */
export interface StoodFrom {
  readonly from: Day
  readonly kind: 'face' | 'room' | 'elsewhere'
  readonly place: string
}

export interface ReadFrom {
  readonly from: Day
  /** The greatest of its points. */
  readonly lux: number
}

/** Where a level is from: a meter, the plan of the wall, or nowhere. */
export type Basis = 'read' | 'planned' | 'unknown'

export interface LitDay {
  readonly day: Day
  readonly exhibition: string
  readonly title: string
  /** Where it hung, by the record or by the plan; a wall or a room. */
  readonly place: string
  readonly basis: Basis
  /** The level it has while the show is open; null where nobody knows. */
  readonly lux: number | null
  /** All hours lit, and those of them whose level nobody knows. */
  readonly hours: number
  readonly unknownHours: number
  readonly luxHours: number
}

/** The last of those that begin by the day; they are in order. */
function lastBy<T extends { readonly from: Day }>(all: readonly T[], day: Day): T | undefined {
  return all.findLast(each => each.from <= day)
}

/**
 * Every day on which light falls on the work, in order; a day is counted once, for the show whose wall the work is on,
 * else for the one named first. Until `today` the record says where it was; after, and before its first movement, the
 * plan does. Away from the show's rooms it is dark. A reading holds until the next, or until the work is moved.
 */
export function litDays(
  shows: readonly ShowLit[],
  record: readonly StoodFrom[],
  readings: readonly ReadFrom[],
  today: Day,
): LitDay[] {
  const found = new Map<Day, LitDay & { readonly own: boolean }>()
  for (const show of shows) {
    const first = Math.min(...show.hours.map(row => row.first))
    const last = Math.max(...show.hours.map(row => row.last))
    for (let day = first; day <= last; day++) {
      const known = found.get(day)
      if (known?.own === true) continue
      const lit = litDay(show, record, readings, today, day)
      if (lit === null || (known !== undefined && !lit.own)) continue
      found.set(day, lit)
    }
  }
  return [...found.values()].sort((a, b) => a.day - b.day).map(({ own: _, ...day }) => day)
}

function litDay(
  show: ShowLit,
  record: readonly StoodFrom[],
  readings: readonly ReadFrom[],
  today: Day,
  day: Day,
): (LitDay & { readonly own: boolean }) | null {
  const stood = lastBy(record, Math.min(day, today))
  const recorded = day <= today ? stood : undefined
  if (recorded?.kind === 'elsewhere') return null
  const place = recorded?.place ?? show.face
  if (place === null) return null
  const rows = litOn(show.hours, day)
  if (rows.length === 0) return null
  const read = lastBy(readings, Math.min(day, today))
  // A reading before the work was last moved was of another place; so is one from before a show that is to come.
  const holds =
    read !== undefined &&
    (stood === undefined || (read.from >= stood.from && (day <= today || stood.place === place))) &&
    read.from >= Math.min(...show.hours.map(row => row.first))
  const lux = holds ? read.lux : (show.planned.get(place) ?? null)
  let [hours, unknownHours, luxHours] = [0, 0, 0]
  for (const row of rows) {
    const level = row.lux ?? lux
    hours += row.hours
    if (level === null) unknownHours += row.hours
    else luxHours += level * row.hours
  }
  const basis = holds ? 'read' : lux === null ? 'unknown' : 'planned'
  const { exhibition, title } = show
  return { day, exhibition, title, place, basis, lux, hours, unknownHours, luxHours, own: place === show.face }
}

export interface LitSpan extends Omit<LitDay, 'day'> {
  readonly first: Day
  readonly last: Day
  readonly days: number
}

/** Days in a row with one place, one show and one level, as one line of a ledger. */
export function spansOf(days: readonly LitDay[]): LitSpan[] {
  const spans: LitSpan[] = []
  for (const { day, ...lit } of days) {
    const last = spans.at(-1)
    const same =
      last !== undefined &&
      last.exhibition === lit.exhibition &&
      last.place === lit.place &&
      last.basis === lit.basis &&
      last.lux === lit.lux
    if (!same) spans.push({ ...lit, first: day, last: day, days: 1 })
    else {
      spans[spans.length - 1] = {
        ...last,
        last: day,
        days: last.days + 1,
        hours: last.hours + lit.hours,
        unknownHours: last.unknownHours + lit.unknownHours,
        luxHours: last.luxHours + lit.luxHours,
      }
    }
  }
  return spans
}

/** Lux over the hours whose level is known, where hours at a level of their own make it another than `lux`; else null. */
export function meanLevel(span: Pick<LitSpan, 'lux' | 'hours' | 'unknownHours' | 'luxHours'>): number | null {
  const known = span.hours - span.unknownHours
  if (span.lux === null || known <= 0 || Math.abs(span.lux * known - span.luxHours) < 0.5) return null
  return span.luxHours / known
}
