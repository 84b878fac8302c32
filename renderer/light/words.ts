/** How light is said: thin spaces in thousands, days in words. */
import type { LitFor } from '../../src/light/hours.ts'

const whole = new Intl.NumberFormat('en', { maximumFractionDigits: 0 })
const tenth = new Intl.NumberFormat('en', { maximumFractionDigits: 1 })
const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' })
const thin = (text: string) => text.replaceAll(',', '\u2009')

export const luxHours = (value: number) => thin(whole.format(value))
export const level = (value: number) => thin(tenth.format(value))
export const onDay = (date: string) => day.format(new Date(`${date}T00:00:00Z`))
export const hoursSaid = (value: number) => `${level(value)} h`

export const litWords: Readonly<Record<LitFor, string>> = {
  open: 'open',
  cleaning: 'cleaning',
  installing: 'installing',
  event: 'an event',
  closed: 'closed',
}

const short = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const
export const weekdayWords = short

/** `Mon–Sat`, `every day`, `Tue, Thu`. */
export function weekdaysSaid(bits: number): string {
  if (bits === 127) return 'every day'
  const on = short.map((_, at) => at).filter(at => (bits & (1 << at)) !== 0)
  const [first = 0] = on
  const last = on.at(-1) ?? 0
  const run = on.length > 2 && last - first === on.length - 1
  return run ? `${short[first]}–${short[last]}` : on.map(at => short[at]).join(', ')
}

interface Spent {
  readonly budget: { readonly luxHours: number | null; readonly sensitivity: string }
  readonly ends: string | null
  readonly endsIfLonger: string | null
  readonly most: number
  readonly unknownHours: number
}

/** No hour lit is known of it, so that nothing is known of its budget either. */
export const nothingKnown = ({ most, unknownHours }: Pick<Spent, 'most' | 'unknownHours'>): boolean =>
  most === 0 && unknownHours === 0

/** When the budget ends, as a sentence. */
export function endSaid(spent: Spent): string {
  const { budget, ends, endsIfLonger } = spent
  if (budget.sensitivity === 'none') return 'not sensitive'
  if (budget.luxHours === null) return 'nobody said how sensitive it is'
  if (nothingKnown(spent)) return 'no hours lit are known yet'
  if (ends !== null) return `ends on ${onDay(ends)}`
  if (endsIfLonger !== null) return `holds; a longer show would end it on ${onDay(endsIfLonger)}`
  return 'holds'
}
