/**
 * Light received: level × hours, day by day, over the days a work hung or is to hang where it is lit. Steady or in
 * pieces is the same (reciprocity; the source stands in the published tests). What nobody read or planned is kept as
 * hours of unknown level: it is never counted as darkness.
 */
import type { Day } from './day.ts'
import { type HoursLit, litOnOnce } from './hours.ts'

/** One show that the work is in. */
export interface ShowLit {
  readonly exhibition: string
  readonly title: string
  readonly hours: readonly HoursLit[]
  /** The wall it is to hang on; null while it has none. */
  readonly face: string | null
  /** Planned lux by wall. */
  readonly planned: ReadonlyMap<string, number>
  /** The walls and rooms it uses, where the work is in it by the record alone; null where it is on its checklist. */
  readonly uses: ReadonlySet<string> | null
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
  /** Ultraviolet for each lumen, µW/lm; null where the meter did not say. */
  readonly uv: number | null
}

/** Hours of a day at one level; both figures null where nobody knows them. */
export interface Piece {
  readonly hours: number
  readonly lux: number | null
  readonly uv: number | null
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
  /** µW/lm while the show is open; null where nobody read it. */
  readonly uv: number | null
  /** All hours lit, and those of them whose level nobody knows. */
  readonly hours: number
  readonly unknownHours: number
  readonly luxHours: number
  /** Hours whose ultraviolet was read, and what they brought: mWh/m². */
  readonly uvHours: number
  readonly uvDose: number
  readonly pieces: readonly Piece[]
}

/** The last of those that begin by the day; they are in order. */
function lastBy<T extends { readonly from: Day }>(all: readonly T[], day: Day): T | undefined {
  return all.findLast(each => each.from <= day)
}

/**
 * Every day on which light falls on the work, in order; a day is counted once, for the show whose wall the work is on,
 * else for the one named first. Until `today` the record says where it was; after, and before its first movement, the
 * plan does. Away from the show's rooms it is dark. A reading holds until the next, or until the work is moved; its
 * ultraviolet until the next that has one.
 */
export function litDays(
  shows: readonly ShowLit[],
  record: readonly StoodFrom[],
  readings: readonly ReadFrom[],
  today: Day,
): LitDay[] {
  const found = new Map<Day, LitDay & { readonly own: boolean }>()
  const violet = readings.filter(each => each.uv !== null)
  for (const show of shows) {
    const first = Math.min(...show.hours.map(row => row.first))
    const last = Math.max(...show.hours.map(row => row.last))
    for (let day = first; day <= last; day++) {
      const known = found.get(day)
      if (known?.own === true) continue
      const stood = lastBy(record, Math.min(day, today))
      const place = placeOn(show, stood, day <= today)
      if (place === null) continue
      const rows = litOnOnce(show.hours, day)
      const own = place === show.face
      if (rows.length === 0 || (known !== undefined && !own)) continue
      const by = Math.min(day, today)
      // A reading before the work was last moved was of another place; so is one from before a show that is to come.
      const holds = (read: ReadFrom | undefined): read is ReadFrom =>
        read !== undefined &&
        (stood === undefined || (read.from >= stood.from && (day <= today || stood.place === place))) &&
        read.from >= first
      const [read, uv] = [lastBy(readings, by), lastBy(violet, by)]
      const lux = holds(read) ? read.lux : (show.planned.get(place) ?? null)
      const basis = holds(read) ? 'read' : lux === null ? 'unknown' : 'planned'
      const { exhibition, title } = show
      const sums = sumsOf(rows, lux, holds(uv) ? uv.uv : null)
      found.set(day, { day, exhibition, title, place, basis, lux, ...sums, own })
    }
  }
  return [...found.values()].sort((a, b) => a.day - b.day).map(({ own: _, ...day }) => day)
}

/** Where the work is lit by the show; null where it is not. */
function placeOn(show: ShowLit, stood: StoodFrom | undefined, past: boolean): string | null {
  const recorded = past ? stood : undefined
  if (recorded?.kind === 'elsewhere') return null
  const place = recorded?.place ?? show.face
  return place === null || (show.uses !== null && !show.uses.has(place)) ? null : place
}

/** Work lights and lights of an evening are other lamps: nothing is known of their ultraviolet. */
function sumsOf(rows: readonly HoursLit[], lux: number | null, uv: number | null) {
  const pieces = rows.map((row): Piece => {
    return { hours: row.hours, lux: row.lux ?? lux, uv: row.lux === null ? uv : null }
  })
  let [hours, unknownHours, luxHours, uvHours, uvDose] = [0, 0, 0, 0, 0]
  for (const piece of pieces) {
    hours += piece.hours
    if (piece.lux === null) unknownHours += piece.hours
    else {
      luxHours += piece.lux * piece.hours
      if (piece.uv !== null) {
        uvHours += piece.hours
        // µW/lm × lm/m² × h are µWh/m².
        uvDose += (piece.uv * piece.lux * piece.hours) / 1000
      }
    }
  }
  return { uv, hours, unknownHours, luxHours, uvHours, uvDose, pieces }
}

export interface LitSpan extends Omit<LitDay, 'day' | 'pieces'> {
  readonly first: Day
  readonly last: Day
  readonly days: number
}

/** Days in a row with one place, one show, one level and one share of ultraviolet, as one line of a ledger. */
export function spansOf(days: readonly LitDay[]): LitSpan[] {
  const spans: LitSpan[] = []
  for (const { day, pieces: _, ...lit } of days) {
    const last = spans.at(-1)
    const same =
      last !== undefined &&
      last.exhibition === lit.exhibition &&
      last.place === lit.place &&
      last.basis === lit.basis &&
      last.lux === lit.lux &&
      last.uv === lit.uv
    if (same) spans[spans.length - 1] = { ...last, last: day, days: last.days + 1, ...added(last, lit) }
    else spans.push({ ...lit, first: day, last: day, days: 1 })
  }
  return spans
}

type Sums = Pick<LitDay, 'hours' | 'unknownHours' | 'luxHours' | 'uvHours' | 'uvDose'>

const added = (a: Sums, b: Sums): Sums => ({
  hours: a.hours + b.hours,
  unknownHours: a.unknownHours + b.unknownHours,
  luxHours: a.luxHours + b.luxHours,
  uvHours: a.uvHours + b.uvHours,
  uvDose: a.uvDose + b.uvDose,
})

export interface InShow extends Sums {
  readonly exhibition: string
  readonly title: string
  readonly first: string
  readonly last: string
}

/** What each show brought, the one that began first before the others. Spans are in order. */
export function byShow(spans: readonly InShow[]): InShow[] {
  const shows = new Map<string, InShow>()
  for (const { exhibition, title, first, last, ...sums } of spans) {
    const known = shows.get(exhibition)
    const { hours, unknownHours, luxHours, uvHours, uvDose } = sums
    const one = { exhibition, title, first, last, hours, unknownHours, luxHours, uvHours, uvDose }
    shows.set(exhibition, known === undefined ? one : { ...known, last, ...added(known, one) })
  }
  return [...shows.values()]
}

/** Lux over the hours whose level is known, where hours at a level of their own make it another than `lux`; else null. */
export function meanLevel(span: Pick<LitSpan, 'lux' | 'hours' | 'unknownHours' | 'luxHours'>): number | null {
  const known = span.hours - span.unknownHours
  if (span.lux === null || known <= 0 || Math.abs(span.lux * known - span.luxHours) < 0.5) return null
  return span.luxHours / known
}
