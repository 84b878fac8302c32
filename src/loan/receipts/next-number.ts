/**
 * The next number of a series, made as the last one was: the house's pattern is whatever it wrote last. The rule it
 * keeps: a number that was given is never given again.
 */
import { normalNumber } from '../../checklist/numbers.ts'

const figures = /\d+(?=\D*$)/u
const year = /(?<!\d)(?:19|20)\d\d(?!\d)/u

/**
 * @param last the number given last; '' before the first
 * @param taken numbers that were given, in their normal form
 * @param today such as `2031-03-02`; where the last number has a year before its count, a new year begins anew at 1
 */
export function nextNumber(last: string, taken: ReadonlySet<string>, today: string): string {
  const now = today.slice(0, 4)
  const pattern = last === '' ? `R ${now}-0` : last
  const run = figures.exec(pattern)
  const head = run === null ? `${pattern}-` : pattern.slice(0, run.index)
  const tail = run === null ? '' : pattern.slice(run.index + run[0].length)
  const before = year.exec(head)?.[0]
  const fresh = before !== undefined && before < now
  const begin = fresh ? head.replace(year, now) : head
  let count = fresh || run === null ? 1n : BigInt(run[0]) + 1n
  // Only a count that is written with noughts in front has a width to be kept.
  const width = run?.[0].startsWith('0') ? run[0].length : 0
  for (;;) {
    const number = `${begin}${String(count).padStart(width, '0')}${tail}`
    if (!taken.has(normalNumber(number))) return number
    count += 1n
  }
}
