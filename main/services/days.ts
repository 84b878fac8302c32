/** Moments and days by the clock of this machine, as a person there would write them. */
import { type Clock, dayLong } from '../../src/insurance/stays.ts'
import { type Day, dateOf } from '../../src/light/day.ts'

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
