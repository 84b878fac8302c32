/** Moments and days by the clock of this machine, as a person there would write them. */
import { type Clock, dayLong } from '../../src/insurance/stays.ts'
import { type Day, dateOf, dayOf } from '../../src/light/day.ts'

export function clockAt(moment: string): Clock {
  const date = new Date(moment)
  return date.getTime() - date.getTimezoneOffset() * 60_000
}

export function dayAt(moment: string): Day {
  return Math.floor(clockAt(moment) / dayLong)
}

/** As `2031-04-01`. */
export function dateAt(moment: string): string {
  return dateOf(dayAt(moment))
}

/** The moment at which clocks of this machine show it, in milliseconds; of an hour that autumn has twice the first. */
export function momentAt(clock: Clock): number {
  const shown = new Date(clock)
  const [year, month, date] = [shown.getUTCFullYear(), shown.getUTCMonth(), shown.getUTCDate()]
  const rest = clock - Date.UTC(year, month, date)
  return new Date(year, month, date, 0, 0, 0, rest).getTime()
}

/** The last moment of a date. */
export function endOf(date: string): string {
  return new Date(momentAt((dayOf(date) + 1) * dayLong) - 1).toISOString()
}
