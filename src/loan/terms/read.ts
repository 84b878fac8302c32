/**
 * A figure of a term as typed, in the unit of its kind or in the other one: 50 lx, 5 fc, 15 000 lx h, 75 µW/lm, 55 %,
 * 68 °F, 1200 mm, 18 kg. The rule it keeps: what can be read in two ways is a problem with a sentence.
 */

import { THIN_SPACE } from '../../measure/format.ts'
import type { LengthResult } from '../../measure/length.ts'
import { FOOTCANDLE, parseLux } from '../../measure/lux.ts'
import { formatMass, parseMass } from '../../measure/mass.ts'
import { readNumber, skipBlanks } from '../../measure/number.ts'
import { celsius, fahrenheit } from '../../measure/temperature.ts'
import type { MassUnit } from '../../measure/units.ts'
import type { Say } from './said.ts'
import type { TermKind } from './term.ts'

export type FigureRead =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly message: string }

const wrong = (message: string): FigureRead => ({ ok: false, message })

const lengths = new Set<TermKind>(['height', 'barrier', 'hung-width', 'hung-height', 'hung-depth'])

/** By kind: what may stand behind the number, and an example. */
const behind: Partial<Readonly<Record<TermKind, { readonly unit: RegExp; readonly like: string }>>> = {
  dose: {
    unit: /^(?:k?(?:lx|lux)[\s·.-]*(?:h|hours?|hrs?)?(?:\s*(?:a|per|\/)\s*(?:year|a))?)?$/iu,
    like: '15 000 lx h',
  },
  uv: { unit: /^(?:[µμu]W\s*(?:\/|per)\s*(?:lm|lumen))?$/iu, like: '75 µW/lm' },
  humidity: { unit: /^(?:%|per\s?cent)?(?:\s*rh)?$/iu, like: '55 %' },
  temperature: { unit: /^(?:°|º|degrees?)?\s*(?:c|f|celsius|fahrenheit)?$/iu, like: '20 °C' },
}

/**
 * Reads one figure into the unit that terms are kept in. `length` reads a length in the reader's own unit; `warm` and
 * `mass` are the reader's units of temperature and mass.
 */
export function readTermFigure(
  kind: TermKind,
  text: string,
  length: (text: string) => LengthResult,
  warm: '°C' | '°F',
  mass: MassUnit = warm === '°F' ? 'lb' : 'kg',
): FigureRead {
  if (kind === 'light') {
    const read = parseLux(text)
    return read.ok ? { ok: true, value: read.lux } : wrong(read.message)
  }
  if (kind === 'hung-mass') {
    const read = parseMass(text, mass)
    return read.ok ? { ok: true, value: read.kg } : wrong(read.message)
  }
  if (lengths.has(kind)) {
    const read = length(text)
    return read.ok ? { ok: true, value: read.mm } : wrong(read.message)
  }
  const known = behind[kind]
  if (known === undefined) return wrong('This term has no figure.')
  const sign = /^\s*[-−]/u.test(text)
  const start = skipBlanks(text, 0) + (sign ? 1 : 0)
  const read = readNumber(text, skipBlanks(text, start))
  const whole = text.trim()
  if (read === undefined) return wrong(`“${whole}” is no figure. Write it like ${known.like}.`)
  if (read.doubt !== undefined) return wrong(`“${whole}” may have thousands or decimals. Write it without a mark.`)
  const unit = text.slice(read.end).trim()
  if (!known.unit.test(unit)) return wrong(`“${unit}” does not belong to this figure. Write it like ${known.like}.`)
  const value = ((sign ? -1 : 1) * read.num) / read.den
  if (kind === 'dose') return { ok: true, value: /^k/iu.test(unit) ? value * 1000 : value }
  if (kind !== 'temperature') return { ok: true, value }
  const inF = /f/iu.test(unit) || (warm === '°F' && !/c/iu.test(unit))
  return { ok: true, value: inF ? Math.round(celsius(value) * 100) / 100 : value }
}

const tenth = (value: number) =>
  (Math.round(value * 10) / 10).toString().replace(/\B(?=(?:\d{3})+(?:\.|$))/gu, THIN_SPACE)

/** A figure as it is shown, in a form that `readTermFigure` reads back; lengths by `say`. */
export function termFigure(kind: TermKind, value: number, say: Say, imperial: boolean): string {
  switch (kind) {
    case 'light':
      return imperial ? `${tenth(value / FOOTCANDLE)} fc` : `${tenth(value)} lx`
    case 'dose':
      return `${tenth(value)} lx h`
    case 'uv':
      return `${tenth(value)} µW/lm`
    case 'humidity':
      return `${tenth(value)} %`
    case 'temperature':
      return imperial ? `${tenth(fahrenheit(value))} °F` : `${tenth(value)} °C`
    case 'hung-mass':
      return formatMass(value, { unit: imperial ? 'lb' : 'kg' })
    default:
      return say(value)
  }
}
