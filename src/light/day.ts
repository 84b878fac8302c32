/** Days of the calendar as whole numbers. No clock is in them: a day on which the clocks change is a day like another. */

/** Days since 1 January 1970. */
export type Day = number

const msOfDay = 86_400_000

/** Of a date such as `2031-04-01`. */
export function dayOf(date: string): Day {
  return Math.round(Date.parse(`${date}T00:00:00Z`) / msOfDay)
}

/** As `2031-04-01`. */
export function dateOf(day: Day): string {
  return new Date(day * msOfDay).toISOString().slice(0, 10)
}

const months = 'January February March April May June July August September October November December'.split(' ')

/** A date as a sentence or a sheet says it: `14 March 2031` of `2031-03-14`. */
export function daySaid(date: string): string {
  const [year, month, day] = date.split('-').map(Number)
  return `${day} ${months[(month ?? 1) - 1]} ${year}`
}

/** Monday is 0: the first of January 1970 was a Thursday. */
export function weekdayOf(day: Day): number {
  return (((day + 3) % 7) + 7) % 7
}
