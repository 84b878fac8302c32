/** What stands at the rules of the drawing: values in the unit of the day, time by the clock of this machine. */
import { fahrenheit } from '../../src/measure/temperature.ts'

/** Of the vertical rule, in the unit of the day. */
export const onRule = (celsius: number, imperial: boolean) =>
  imperial ? String(Math.round(fahrenheit(celsius))) : String(Number(celsius.toFixed(1)))

const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short' })
const month = new Intl.DateTimeFormat('en-GB', { month: 'short', year: 'numeric' })
const clock = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' })

const hour = 3600
const dayLong = 86_400

export interface Tick {
  readonly at: number
  readonly words: string
}

/** Moments to write on the axis, at most `most` of them, at whole hours, days or months of this machine's clock. */
export function ticksOf(from: number, until: number, most: number): Tick[] {
  const wanted = (until - from) / Math.max(1, most)
  const steps = [300, 900, 1800, hour, 3 * hour, 6 * hour, 12 * hour]
  const short = steps.find(step => step >= wanted)
  const ticks: Tick[] = []
  const start = new Date(from * 1000)
  if (short !== undefined) {
    start.setHours(0, 0, 0, 0)
    for (let at = start.getTime() / 1000; at <= until; at += short) {
      const date = new Date(at * 1000)
      const midnight = date.getHours() === 0 && date.getMinutes() === 0
      if (at >= from) ticks.push({ at, words: midnight ? day.format(date) : clock.format(date) })
    }
    return ticks
  }
  const days = [1, 2, 7, 14].find(count => count * dayLong >= wanted)
  if (days !== undefined) {
    start.setHours(0, 0, 0, 0)
    for (const date = start; date.getTime() / 1000 <= until; date.setDate(date.getDate() + days)) {
      if (date.getTime() / 1000 >= from) ticks.push({ at: date.getTime() / 1000, words: day.format(date) })
    }
    return ticks
  }
  const months = [1, 3, 6, 12].find(count => count * 30 * dayLong >= wanted) ?? 24
  const date = new Date(start.getFullYear(), 0, 1)
  for (; date.getTime() / 1000 <= until; date.setMonth(date.getMonth() + months)) {
    if (date.getTime() / 1000 >= from) ticks.push({ at: date.getTime() / 1000, words: month.format(date) })
  }
  return ticks
}
