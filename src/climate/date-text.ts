/** Dates and times as loggers write them. Which of two small numbers is the month, a file says or a person. */

export const dateOrders = ['day first', 'month first'] as const
export type DateOrder = (typeof dateOrders)[number]

export interface DateRead {
  readonly year: number
  /** The two numbers in the order in which they stand; of a date that begins with its year month and day. */
  readonly first: number
  readonly second: number
  readonly yearFirst: boolean
}

export interface TimeRead {
  readonly seconds: number
  /** Seconds ahead of UTC, where the text says it; else null. */
  readonly offset: number | null
}

const yearFirst = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})/
const yearLast = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})(?!\d)/
const time = /^(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,]\d+)?)?\s*([ap]\.?m\.?)?\s*(Z|UTC|GMT|[+-]\d{2}:?\d{2})?$/i

/** The date at the start of a text and what follows it; null where none stands there. */
export function readDate(text: string): { readonly date: DateRead; readonly rest: string } | null {
  const iso = yearFirst.exec(text)
  if (iso !== null) {
    const date = { year: Number(iso[1]), first: Number(iso[2]), second: Number(iso[3]), yearFirst: true }
    return { date, rest: text.slice(iso[0].length).replace(/^[T\s,]+/, '') }
  }
  const other = yearLast.exec(text)
  if (other === null) return null
  const year = Number(other[3])
  const date = {
    year: year < 100 ? 2000 + year : year,
    first: Number(other[1]),
    second: Number(other[2]),
    yearFirst: false,
  }
  return { date, rest: text.slice(other[0].length).replace(/^[T\s,]+/, '') }
}

/** A time of day; null where the text is none. */
export function readTime(text: string): TimeRead | null {
  const found = time.exec(text.trim())
  if (found === null) return null
  const [, hours = '', minutes = '', seconds = '0', half = '', zone = ''] = found
  let hour = Number(hours)
  if (half !== '') {
    if (hour < 1 || hour > 12) return null
    hour = (hour % 12) + (half.toLowerCase().startsWith('p') ? 12 : 0)
  }
  if (hour > 23 || Number(minutes) > 59 || Number(seconds) > 59) return null
  return { seconds: hour * 3600 + Number(minutes) * 60 + Number(seconds), offset: offsetOf(zone) }
}

function offsetOf(zone: string): number | null {
  if (zone === '') return null
  const found = /^([+-])(\d{2}):?(\d{2})$/.exec(zone)
  if (found === null) return 0
  const seconds = Number(found[2]) * 3600 + Number(found[3]) * 60
  return found[1] === '-' ? -seconds : seconds
}

/** Midnight of the date, in seconds as if it were UTC; null where there is no such day. */
export function midnightOf({ year, first, second, yearFirst }: DateRead, order: DateOrder): number | null {
  const [month, day] = yearFirst || order === 'month first' ? [first, second] : [second, first]
  const at = Date.UTC(year, month - 1, day)
  const date = new Date(at)
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day ? at / 1000 : null
}

/** Which order all dates together allow: null where they allow both. Where they allow neither, the one more have. */
export function orderOf(dates: Iterable<DateRead>): DateOrder | null {
  let [dayFirst, monthFirst] = [0, 0]
  for (const { first, second, yearFirst } of dates) {
    if (yearFirst) continue
    if (first > 12) dayFirst++
    if (second > 12) monthFirst++
  }
  if (dayFirst === monthFirst) return null
  return dayFirst > monthFirst ? 'day first' : 'month first'
}
