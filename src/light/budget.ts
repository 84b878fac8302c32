/** What of a yearly budget of light is used, what is left, and when it ends. A year is any 365 days in a row. */
import type { Day } from './day.ts'
import type { LitDay } from './dose.ts'

const year = 365

export type Sensitivity = 'high' | 'medium' | 'low' | 'none' | ''
const mostFirst: readonly Sensitivity[] = ['high', 'medium', 'low', 'none', '']

/**
 * How sensitive to light a work counts: as it is said of itself; where nobody said, a set as its most sensitive part and
 * a part as its set (`related`: what is said of those; '' where nothing is). Common practice, no source.
 */
export function sensitivityOf(own: Sensitivity, related: readonly Sensitivity[]): Sensitivity {
  return own === '' ? (mostFirst.find(each => related.includes(each)) ?? '') : own
}

/** Days behind the last that say how fast a budget goes. */
const rateOf = 28

export interface Spent {
  /** Lux-hours in the 365 days until today, and all there ever were until today. */
  readonly used: number
  readonly ever: number
  /** Of the budget, in the fullest 365 days that are known or planned. */
  readonly most: number
  /** The day by whose end more than the budget was received within 365 days; null where that never comes. */
  readonly ends: Day | null
  /** The same if the show went on past its last day as in its last four weeks; null where even that holds. */
  readonly endsIfLonger: Day | null
  /** Hours of unknown level until today: the figures are at least so much. */
  readonly unknownHours: number
}

type LightOfDay = Pick<LitDay, 'day' | 'luxHours' | 'unknownHours'>

/** `days` in order; `budget` in lux-hours a year, null where none is known. */
export function spentOf(days: readonly LightOfDay[], budget: number | null, today: Day): Spent {
  let [used, ever, unknownHours, most, within, from] = [0, 0, 0, 0, 0, 0]
  let ends: Day | null = null
  for (const { day, luxHours, unknownHours: unknown } of days) {
    if (day <= today) {
      ever += luxHours
      unknownHours += unknown
      if (day > today - year) used += luxHours
    }
    within += luxHours
    for (; (days[from]?.day ?? day) <= day - year; from++) within -= days[from]?.luxHours ?? 0
    most = Math.max(most, within)
    if (ends === null && budget !== null && within > budget + 1e-6) ends = day
  }
  return { used, ever, most, ends, endsIfLonger: ends ?? ifLonger(days, budget), unknownHours }
}

/** After a year of the same every day, each day that comes is like the one that goes: nothing can end later. */
function ifLonger(days: readonly LightOfDay[], budget: number | null): Day | null {
  const last = days.at(-1)?.day
  if (last === undefined || budget === null) return null
  const late = days.filter(each => each.day > last - rateOf)
  const rate = late.reduce((sum, each) => sum + each.luxHours, 0) / Math.min(rateOf, last - (days[0]?.day ?? last) + 1)
  const byDay = new Map(days.map(each => [each.day, each.luxHours]))
  let within = days.filter(each => each.day > last - year).reduce((sum, each) => sum + each.luxHours, 0)
  for (let day = last + 1; day <= last + year; day++) {
    within += rate - (byDay.get(day - year) ?? 0)
    if (within > budget + 1e-6) return day
  }
  return null
}

export interface Violet {
  /** mWh/m² in the 365 days until today, in all, and in the fullest 365 days: of the hours that were read alone. */
  readonly used: number
  readonly ever: number
  readonly most: number
  /** Hours lit until today whose ultraviolet was read, and those whose was not. */
  readonly hours: number
  readonly unknownHours: number
}

/** Ultraviolet received: what was read of it, and for how many hours nobody did. `days` in order. */
export function violetOf(days: readonly LitDay[], today: Day): Violet {
  const asLight = days.map(({ day, uvDose, hours, uvHours }) => {
    return { day, luxHours: uvDose, unknownHours: hours - uvHours }
  })
  const { used, ever, most, unknownHours } = spentOf(asLight, null, today)
  const hours = days.reduce((sum, each) => sum + (each.day <= today ? each.uvHours : 0), 0)
  return { used, ever, most, hours, unknownHours }
}

export interface Above {
  /** Hours above the limit, hours at or under it, hours of which nobody knows; with what is planned. */
  readonly hours: number
  readonly within: number
  readonly unknownHours: number
  /** The first day with an hour above; null where there is none. */
  readonly first: Day | null
  /** The greatest that is known; null where nothing is. */
  readonly greatest: number | null
}

/** Hours of light above a limit, lx or µW/lm. */
export function above(days: readonly LitDay[], of: 'lux' | 'uv', limit: number): Above {
  let [hours, within, unknownHours] = [0, 0, 0]
  let [first, greatest]: [Day | null, number | null] = [null, null]
  for (const { day, pieces } of days) {
    for (const piece of pieces) {
      const figure = piece[of]
      if (figure === null) {
        unknownHours += piece.hours
        continue
      }
      greatest = Math.max(greatest ?? figure, figure)
      if (figure <= limit + 1e-9) within += piece.hours
      else {
        hours += piece.hours
        first ??= day
      }
    }
  }
  return { hours, within, unknownHours, first, greatest }
}

/** µW/lm from what a meter showed of a surface, mW/m², at a level in lx; null in the dark. */
export function perLumen(area: number, lux: number): number | null {
  return lux > 0 ? (area * 1000) / lux : null
}
