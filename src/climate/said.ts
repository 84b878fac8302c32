/** How the air of a room is said, on the screen and on paper: a figure with its unit, a time as people say it. */
import { FAHRENHEIT_IN_KELVIN, fahrenheit } from '../measure/temperature.ts'
import type { LimitKey } from './limits.ts'

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
