/** How the air of a room is said: both units, by the clock of this machine. */
import type { LimitKey } from '../../src/climate/limits.ts'
import { FAHRENHEIT_IN_KELVIN, fahrenheit } from '../../src/measure/temperature.ts'

/** A temperature in the unit of the day and, in brackets, in the other. */
export function degrees(celsius: number, imperial: boolean): string {
  const [c, f] = [`${celsius.toFixed(1)} °C`, `${fahrenheit(celsius).toFixed(1)} °F`]
  return imperial ? `${f} (${c})` : `${c} (${f})`
}

/** A span of temperature: 1 K is 1.8 °F. */
export function span(kelvins: number, imperial: boolean): string {
  const [k, f] = [`${kelvins.toFixed(1)} K`, `${(kelvins * FAHRENHEIT_IN_KELVIN).toFixed(1)} °F`]
  return imperial ? `${f} (${k})` : `${k} (${f})`
}

export const percent = (value: number) => `${value.toFixed(1)} %`

/** Of the vertical rule, in the unit of the day. */
export const onRule = (celsius: number, imperial: boolean) =>
  imperial ? String(Math.round(fahrenheit(celsius))) : String(Number(celsius.toFixed(1)))

export const limitWords: Readonly<Record<LimitKey, string>> = {
  humidityLow: 'too dry',
  humidityHigh: 'too damp',
  humidityChange: 'humidity changes too fast',
  celsiusLow: 'too cold',
  celsiusHigh: 'too warm',
  celsiusChange: 'temperature changes too fast',
}

/** The worst of a stretch beyond a limit, as it was. */
export function worstSaid(limit: LimitKey, value: number, imperial: boolean): string {
  if (limit === 'humidityChange') return `${percent(value)} within 24 h`
  if (limit === 'celsiusChange') return `${span(value, imperial)} within 24 h`
  return limit.startsWith('humidity') ? percent(value) : degrees(value, imperial)
}

/** `4 min`, `3.5 h`, `2 days 4 h`. */
export function lasting(seconds: number): string {
  if (seconds < 3600) return `${Math.round(seconds / 60)} min`
  const hours = seconds / 3600
  if (hours < 48) return `${Number(hours.toFixed(1))} h`
  return `${Math.floor(hours / 24)} days ${Math.round(hours % 24)} h`
}

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
