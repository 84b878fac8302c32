/** What the air of a room is held to. What is null is not asked. */
export const limitKeys = [
  'humidityLow',
  'humidityHigh',
  'humidityChange',
  'celsiusLow',
  'celsiusHigh',
  'celsiusChange',
] as const
export type LimitKey = (typeof limitKeys)[number]
/** Per cent of relative humidity and °C; a change is the span within any 24 hours. */
export type Limits = { readonly [K in LimitKey]: number | null }

/** What is wrong with them, in a sentence; empty where nothing is. */
export function limitsWrong({ humidityLow, humidityHigh, celsiusLow, celsiusHigh }: Limits): string {
  if (humidityLow !== null && humidityHigh !== null && humidityLow >= humidityHigh) {
    return `The lowest humidity, ${humidityLow} %, is not below the highest, ${humidityHigh} %.`
  }
  if (celsiusLow !== null && celsiusHigh !== null && celsiusLow >= celsiusHigh) {
    return `The lowest temperature, ${celsiusLow} °C, is not below the highest, ${celsiusHigh} °C.`
  }
  return ''
}
