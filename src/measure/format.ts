/**
 * Lengths as print: 1 220 mm, 62.2 cm, 70 11/16 in, 5 ft 4 1/2 in. The rule it keeps: what is printed reads back as
 * the same value, to the step it was rounded to, and every fraction is reduced and in plain characters.
 */
import { halfAway, type InchParts } from './rounding.ts'
import { fromMillimetres } from './units.ts'

export type PrintUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft-in'

export interface LengthFormat {
  readonly unit: PrintUnit
  /** The finest part of an inch, 16 if not said. */
  readonly fraction?: InchParts
  /** Most decimals of a metric length; 1 for mm, 2 for cm, 3 for m if not said. Zeros at the end are not printed. */
  readonly decimals?: 0 | 1 | 2 | 3 | 4 | 5 | 6
  /** What parts thousands; a thin space if not said. */
  readonly thousands?: string
  /** Leave the unit out where a heading says it already. */
  readonly bare?: boolean
}

export const THIN_SPACE = '\u2009'
export const MINUS = '\u2212'

/** A length of `mm` millimetres as it is printed. A value that is not finite gives an empty text. */
export function formatLength(mm: number, format: LengthFormat): string {
  if (!Number.isFinite(mm)) return ''
  const thousands = format.thousands ?? THIN_SPACE
  if (format.unit === 'in' || format.unit === 'ft-in') {
    const parts = format.fraction ?? 16
    return inches(halfAway((mm * parts * 5) / 127), parts, format.unit, thousands, format.bare === true)
  }
  const decimals = format.decimals ?? { mm: 1, cm: 2, m: 3 }[format.unit]
  const text = decimal(fromMillimetres(mm, format.unit), decimals, thousands)
  return format.bare === true ? text : `${text} ${format.unit}`
}

/** The length in the unit of the sheet and, in the other system, beside it. */
export function formatBoth(
  mm: number,
  format: LengthFormat,
): { readonly main: string; readonly other: string; readonly text: string } {
  const imperial = format.unit === 'in' || format.unit === 'ft-in'
  const main = formatLength(mm, format)
  const other = formatLength(mm, {
    unit: imperial ? 'mm' : 'in',
    decimals: 0,
    ...(format.fraction === undefined ? {} : { fraction: format.fraction }),
    ...(format.thousands === undefined ? {} : { thousands: format.thousands }),
  })
  return { main, other, text: `${main} (${other})` }
}

/** A whole count of parts of an inch as `70 11/16`, without its unit. */
export function formatInchCount(count: number, parts: InchParts, thousands: string = THIN_SPACE): string {
  return inches(count, parts, 'in', thousands, true)
}

/** A decimal number with at most `decimals` places, zeros at the end dropped, thousands parted. */
export function decimal(value: number, decimals: number, thousands: string): string {
  const scale = 10 ** decimals
  const count = halfAway(value * scale)
  if (!Number.isSafeInteger(count)) return hugeDecimal(value, decimals, thousands)
  // Whole counts are cut into their digits by whole arithmetic: a show's marks write some 20,000 figures.
  const size = Math.abs(count)
  let rest = size % scale
  const whole = group(String((size - rest) / scale), thousands)
  const sign = count < 0 ? MINUS : ''
  if (rest === 0) return `${sign}${whole}`
  let places = decimals
  while (rest % 10 === 0) {
    rest /= 10
    places -= 1
  }
  return `${sign}${whole}.${String(rest).padStart(places, '0')}`
}

/** Beyond 2^53 counts there are no halves left to round, and `toFixed` writes every digit that there is. */
function hugeDecimal(value: number, decimals: number, thousands: string): string {
  const fixed = Math.abs(value).toFixed(decimals)
  if (!Number.isFinite(value) || fixed.includes('e')) return String(value)
  const [whole = '0', rest = ''] = fixed.split('.')
  const kept = rest.replace(/0+$/, '')
  return `${value < 0 ? MINUS : ''}${group(whole, thousands)}${kept === '' ? '' : `.${kept}`}`
}

function inches(count: number, parts: number, unit: 'in' | 'ft-in', thousands: string, bare: boolean): string {
  const sign = count < 0 ? MINUS : ''
  const size = Math.abs(count)
  if (!Number.isSafeInteger(size)) return `${sign}${decimal(size / parts, 0, thousands)}${bare ? '' : ' in'}`
  const whole = Math.floor(size / parts)
  const rest = reduced(size % parts, parts)
  if (unit === 'ft-in' && whole >= 12) {
    const feet = Math.floor(whole / 12)
    const left = mixed(whole % 12, rest, thousands)
    return `${sign}${group(String(feet), thousands)} ft${left === '0' ? '' : ` ${left} in`}`
  }
  const text = `${sign}${mixed(whole, rest, thousands)}`
  return bare && unit === 'in' ? text : `${text} in`
}

function mixed(whole: number, rest: string, thousands: string): string {
  if (rest === '') return group(String(whole), thousands)
  return whole === 0 ? rest : `${group(String(whole), thousands)} ${rest}`
}

function reduced(num: number, den: number): string {
  if (num === 0) return ''
  let [top, bottom] = [num, den]
  while (top % 2 === 0 && bottom % 2 === 0) {
    top /= 2
    bottom /= 2
  }
  return `${top}/${bottom}`
}

/** Whole digits, parted in threes from the right. */
function group(digits: string, thousands: string): string {
  let parted = digits
  for (let at = digits.length - 3; at > 0; at -= 3) parted = `${parted.slice(0, at)}${thousands}${parted.slice(at)}`
  return parted
}
