/**
 * The value of a house rule as a person types and reads it: 1/3 of its width, 58 in, 30°, 66 lb. The rule it keeps: what
 * is shown can be typed back and means the same, and a value beyond the rule's bounds is refused with the bounds.
 */
import { formatLength, type LengthFormat } from '../measure/format.ts'
import { parseLength } from '../measure/length.ts'
import { formatMass, parseMass } from '../measure/mass.ts'
import { readNumber, skipBlanks } from '../measure/number.ts'
import type { RuleUnit } from './house-rules.ts'

/** What of a rule decides how its value is read: a figure within bounds, or one of some choices. */
export interface RuleShape {
  readonly value: unknown
  readonly unit: RuleUnit
  readonly least?: number | null
  readonly most?: number | null
  readonly choices?: readonly { readonly value: string; readonly label: string }[]
}

/** The reader's units. */
export interface RuleStyle {
  readonly length: LengthFormat
  readonly mass: 'kg' | 'lb'
}

export const saidInMillimetres: RuleStyle = { length: { unit: 'mm' }, mass: 'kg' }

export type RuleRead =
  | { readonly ok: true; readonly value: number | string }
  | { readonly ok: false; readonly message: string }

/** With its unit: `1 480 mm`, `1/3 of its width`, `30°`, `4 ×`, `its centre`. */
export function sayRule(rule: RuleShape, value: unknown, style: RuleStyle): string {
  if (typeof value !== 'number') return rule.choices?.find(choice => choice.value === value)?.label ?? String(value)
  switch (rule.unit) {
    case 'mm':
      return formatLength(value, { ...style.length, ...finer(value, style.length) })
    case 'kg':
      return formatMass(value, { unit: style.mass })
    case '°':
      return `${value}°`
    case 'of its width':
    case 'of its height':
      return `${fractionOf(value)} ${rule.unit}`
    default:
      return rule.unit === '' ? String(value) : `${value} ${rule.unit}`
  }
}

/** As many decimals as the value needs, up to three: half a millimetre is not shown as 1 mm. */
function finer(mm: number, { unit, decimals = 0 }: LengthFormat): Partial<LengthFormat> {
  if (unit === 'in' || unit === 'ft-in') return {}
  const shown = unit === 'cm' ? mm / 10 : unit === 'm' ? mm / 1000 : mm
  const needed = ([0, 1, 2, 3] as const).find(n => Math.abs(shown * 10 ** n - Math.round(shown * 10 ** n)) < 1e-6) ?? 3
  return needed > decimals ? { decimals: needed } : {}
}

/** A common fraction up to twelfths as one writes it, else up to three decimals. */
function fractionOf(value: number): string {
  for (let over = 2; over <= 12; over += 1) {
    const parts = Math.round(value * over)
    if (parts > 0 && parts < over && Math.abs(value - parts / over) < 1e-9) return `${parts}/${over}`
  }
  return String(Number(value.toFixed(3)))
}

/** Reads what was typed for a rule, lengths and masses in any unit; the reader's own where none is written. */
export function readRule(rule: RuleShape, text: string, style: RuleStyle): RuleRead {
  const typed = text.trim()
  if (typeof rule.value === 'string') return checked(rule, typed, style)
  if (rule.unit === 'mm') {
    const { unit } = style.length
    const read = parseLength(typed, unit === 'ft-in' ? 'ft' : unit)
    return read.ok ? checked(rule, read.mm, style) : read
  }
  if (rule.unit === 'kg') {
    const read = parseMass(typed, style.mass)
    return read.ok ? checked(rule, read.kg, style) : read
  }
  return readFigure(rule, typed, style)
}

/** A plain figure or fraction, with the rule's unit or a per cent sign behind it where one likes. */
function readFigure(rule: RuleShape, typed: string, style: RuleStyle): RuleRead {
  const read = readNumber(typed, skipBlanks(typed, 0))
  if (read === undefined || read.badFraction) return { ok: false, message: `“${typed}” is no figure.` }
  const rest = typed.slice(read.end).trim().toLowerCase()
  const share = rule.unit === 'of its width' || rule.unit === 'of its height'
  const units: Readonly<Record<string, readonly string[]>> = {
    '°': ['°', 'deg', 'degrees'],
    '×': ['×', 'x', 'times'],
    h: ['h', 'hours'],
    'µW/lm': ['µw/lm', 'μw/lm', 'uw/lm'],
    'lx h': ['lx h', 'lux-hours', 'lux hours'],
    '%': ['%', '% rh'],
    '°C': ['°c', 'c', 'k'],
    'of its width': ['of its width', 'of the width'],
    'of its height': ['of its height', 'of the height'],
  }
  const value = read.num / read.den
  if (share && rest === '%') return checked(rule, value / 100, style)
  if (rest !== '' && !units[rule.unit]?.includes(rest)) {
    return { ok: false, message: `“${rest}” does not belong to this figure.` }
  }
  return checked(rule, value, style)
}

function checked(rule: RuleShape, value: number | string, style: RuleStyle): RuleRead {
  const message = ruleProblem(rule, value, style)
  return message === null ? { ok: true, value } : { ok: false, message }
}

/** Why a value cannot be this rule's, in a sentence with the bounds; null where it can. Bounds in the style's units. */
export function ruleProblem(rule: RuleShape, value: unknown, style: RuleStyle = saidInMillimetres): string | null {
  if (typeof rule.value === 'string') {
    const choices = rule.choices ?? []
    if (choices.some(choice => choice.value === value)) return null
    return `This rule is one of these: ${choices.map(choice => choice.value).join(', ')}.`
  }
  const { least, most } = rule
  if (typeof value === 'number' && Number.isFinite(value) && value >= (least ?? value) && value <= (most ?? value)) {
    return null
  }
  const bound = (at: number | null | undefined) => sayRule(rule, at ?? 0, style)
  return `This rule takes a figure from ${bound(least)} to ${bound(most)}.`
}
