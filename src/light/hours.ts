/** When a show is lit: hours of its days, by what they are lit for. */
import { type Day, weekdayOf } from './day.ts'

export const litFor = ['open', 'cleaning', 'installing', 'event', 'closed'] as const
export type LitFor = (typeof litFor)[number]

export interface HoursLit {
  readonly kind: LitFor
  /** Both are counted. */
  readonly first: Day
  readonly last: Day
  /** A bit a weekday, Monday the lowest. */
  readonly weekdays: number
  /** A day. */
  readonly hours: number
  /** Of work lights, or dimmed for an evening; null where it is the level that the work has anyhow. */
  readonly lux: number | null
}

const covers = (row: HoursLit, day: Day) =>
  row.first <= day && day <= row.last && (row.weekdays & (1 << weekdayOf(day))) !== 0

/** What lights a day. On a closed day nobody opens, but it may be cleaned, rebuilt or let for an evening. */
export function litOn(rows: readonly HoursLit[], day: Day): HoursLit[] {
  const on = rows.filter(row => covers(row, day))
  const closed = on.some(row => row.kind === 'closed')
  return on.filter(row => row.kind !== 'closed' && row.hours > 0 && !(closed && row.kind === 'open'))
}

const byDay = new WeakMap<readonly HoursLit[], Map<Day, readonly HoursLit[]>>()

/** The same, worked out once for a list however many works of its show ask. */
export function litOnOnce(rows: readonly HoursLit[], day: Day): readonly HoursLit[] {
  const days = byDay.get(rows) ?? new Map<Day, readonly HoursLit[]>()
  byDay.set(rows, days)
  const known = days.get(day) ?? litOn(rows, day)
  days.set(day, known)
  return known
}

/** The first day that would have more than 24 hours; null where none has. */
export function overfull(rows: readonly HoursLit[]): { readonly day: Day; readonly hours: number } | null {
  const first = Math.min(...rows.map(row => row.first))
  const last = Math.max(...rows.map(row => row.last))
  for (let day = first; day <= last; day++) {
    const hours = litOn(rows, day).reduce((sum, row) => sum + row.hours, 0)
    if (hours > 24 + 1e-9) return { day, hours }
  }
  return null
}
