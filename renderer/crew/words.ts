/** How the crew's screen says times, and what is typed in its cells. Lengths, masses and times in the reader's units. */
import { desk } from '../host/desk.svelte.ts'
import type { Kind } from '../rooms/reading.ts'

const count = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 1 })

/** `2:07` into something. */
export function clock(minutes: number): string {
  const whole = Math.round(minutes)
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`
}

/** `1 h 30 min`, `45 min`. */
export function lasting(minutes: number): string {
  const whole = Math.round(minutes)
  const [hours, rest] = [Math.floor(whole / 60), whole % 60]
  if (hours === 0) return `${rest} min`
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`
}

export const figure = (value: number) => count.format(value)
export const plural = (value: number, one: string, many = `${one}s`) => `${figure(value)} ${value === 1 ? one : many}`

/** `team 2`, `teams 1 and 2`. */
export function teamWords(teams: readonly number[]): string {
  if (teams.length <= 1) return `team ${teams[0] ?? '?'}`
  return `teams ${teams.slice(0, -1).join(', ')} and ${teams.at(-1)}`
}

export const day = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'short',
  hour: '2-digit',
  minute: '2-digit',
})

/** A number typed with a comma or a point, from `least` to `most`. */
function readNumber(text: string, least: number, most: number, whole: boolean) {
  const value = Number(text.replace(',', '.').replace(/\s/g, ''))
  if (text.trim() === '' || !Number.isFinite(value) || (whole && !Number.isInteger(value))) {
    return { ok: false, message: `“${text}” is no ${whole ? 'whole number' : 'number'}.` } as const
  }
  if (value < least || value > most) return { ok: false, message: `It can be ${least} to ${most}.` } as const
  return { ok: true, to: value } as const
}

export function wholeNumber(least: number, most: number): Kind<number> {
  return { show: value => String(value), read: text => readNumber(text, least, most, true) }
}

/** A number that may be left empty: the house rule stands then, or nobody has counted. */
export function maybeNumber(least: number, most: number, whole = false): Kind<number | null> {
  return {
    show: value => (value === null ? '' : String(value)),
    read: text => (text === '' ? { ok: true, to: null } : readNumber(text, least, most, whole)),
  }
}

/** A part of the whole, typed in per cent. */
export const maybePercent: Kind<number | null> = {
  show: value => (value === null ? '' : percent(value)),
  read(text) {
    if (text === '') return { ok: true, to: null }
    const read = readNumber(text.replace('%', ''), 0, 500, false)
    return read.ok ? { ok: true, to: read.to / 100 } : read
  },
}

export const percent = (part: number) => figure(part * 100)

export const maybeMass: Kind<number | null> = {
  show: kg => (kg === null ? '' : desk.mass(kg)),
  read(text) {
    if (text === '') return { ok: true, to: null }
    const read = desk.parseMass(text)
    return read.ok ? { ok: true, to: read.kg } : { ok: false, message: read.message }
  },
}
