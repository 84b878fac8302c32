/** How light is said: thin spaces in thousands, days in words. */
import type { LightBudget } from '../../src/contract/areas/light.ts'
import type { LitFor } from '../../src/light/hours.ts'
import { FOOTCANDLE, parseLux } from '../../src/measure/lux.ts'
import { desk } from '../host/desk.svelte.ts'
import type { Kind } from '../rooms/reading.ts'

const whole = new Intl.NumberFormat('en', { maximumFractionDigits: 0 })
const tenth = new Intl.NumberFormat('en', { maximumFractionDigits: 1 })
const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' })
const thin = (text: string) => text.replaceAll(',', '\u2009')

export const luxHours = (value: number) => thin(whole.format(value))
export const level = (value: number) => thin(tenth.format(value))
/** In the unit of the day; in footcandles beside lux. */
export const levelSaid = (lux: number) =>
  desk.imperial ? `${level(lux / FOOTCANDLE)} fc (${level(lux)} lx)` : `${level(lux)} lx`
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
  readonly budgets: readonly LightBudget[]
  readonly sensitivity: string
  readonly most: number
  readonly unknownHours: number
}

/** No hour lit is known of it, so that nothing is known of its budget either. */
export const nothingKnown = ({ most, unknownHours }: Pick<Spent, 'most' | 'unknownHours'>): boolean =>
  most === 0 && unknownHours === 0

/** When a budget ends, as a sentence. */
export function endOf({ ends, endsIfLonger }: LightBudget): string {
  if (ends !== null) return `ends on ${onDay(ends)}`
  return endsIfLonger === null ? 'holds' : `holds; a longer show would end it on ${onDay(endsIfLonger)}`
}

/** The same of the strictest budget of a work, or why there is none. */
export function endSaid(spent: Spent): string {
  const [holding] = spent.budgets
  if (holding === undefined) return spent.sensitivity === 'none' ? 'not sensitive' : 'nobody said how sensitive it is'
  return nothingKnown(spent) ? 'no hours lit are known yet' : endOf(holding)
}

/** What house asks by itself. */
export const houseWords = (sensitivity: string): string =>
  sensitivity === '' ? 'the house' : `the house, ${sensitivity} sensitivity`

/** Hours of a day in a cell. */
export const hoursKind: Kind<number> = {
  show: value => (value === 0 ? '' : String(value)),
  read(text) {
    const to = Number(text.trim().replace(',', '.').replace(/\s*h$/u, ''))
    return text.trim() !== '' && Number.isFinite(to)
      ? { ok: true, to }
      : { ok: false, message: 'Type how many hours a day it is lit, such as 8 or 9.5.' }
  },
}

/** A level of its own in a cell; empty where it is the level that works have anyhow. */
export const levelKind: Kind<number | null> = {
  show: value => (value === null ? '' : `${level(value)} lx`),
  read(text) {
    if (text.trim() === '') return { ok: true, to: null }
    const read = parseLux(text)
    return read.ok ? { ok: true, to: read.lux } : read
  },
}
