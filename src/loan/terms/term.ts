/**
 * Terms of a loan: what a lender asks of how a work is shown, as figures a test can hold against the plan, beside the
 * words of the agreement. The kinds are those that loan agreements usually have (common practice, no source).
 */
import { methodKeys } from '../../hang/method-keys.ts'
import { decimal, THIN_SPACE } from '../../measure/format.ts'
import { isMoneyTerm, moneyProblem, moneySaid } from './money.ts'

export const termKinds = [
  'light',
  'dose',
  'uv',
  'humidity',
  'temperature',
  'glazing',
  'fixing',
  'framing',
  'height',
  'barrier',
  'apart',
  'handling',
  'security',
  'credit',
  'indemnity',
  'vehicle',
  'journey',
] as const
export type TermKind = (typeof termKinds)[number]

/** Held against what loggers of a room showed, not against a plan. */
export const ofAir = (kind: TermKind): boolean => kind === 'humidity' || kind === 'temperature'

/**
 * Kinds whose choice is one of a few. Glazing: `any` is whatever glazing. Fixing: empty is any that locks, else a hanging
 * method. Framing: empty is in its frame. Security: in a case, or there or behind a barrier.
 */
export const termChoices: Partial<Readonly<Record<TermKind, readonly string[]>>> = {
  glazing: ['any', 'glass', 'acrylic', 'laminated', 'none'],
  fixing: ['', ...methodKeys],
  framing: ['', 'none'],
  security: ['case', 'out-of-reach'],
}

export interface Term {
  readonly kind: TermKind
  /** The least: mm, per cent, °C; null where the kind has none or nobody set it. */
  readonly low: number | null
  /** The most: lx, lx h in any 365 days, µW/lm, per cent, °C, mm; of money whole minor units. */
  readonly high: number | null
  /** One of `termChoices`, what it may not hang beside, who may handle it, a credit line; of money its currency. */
  readonly choice: string
  /** In the words of the agreement; may be empty. */
  readonly said: string
}

/** What each kind is made of; `band`: the least, the most or both; `words`: names or a sentence. */
export const termParts: Readonly<Record<TermKind, 'most' | 'least' | 'band' | 'choice' | 'words' | 'money'>> = {
  light: 'most',
  dose: 'most',
  uv: 'most',
  humidity: 'band',
  temperature: 'band',
  glazing: 'choice',
  fixing: 'choice',
  framing: 'choice',
  height: 'band',
  barrier: 'least',
  apart: 'words',
  handling: 'words',
  security: 'choice',
  credit: 'words',
  indemnity: 'money',
  vehicle: 'money',
  journey: 'money',
}

/** The widest that a figure can be meant: outside it a finger slipped. lx, lx h, µW/lm, %, °C, mm. */
const bounds: Partial<Readonly<Record<TermKind, readonly [number, number]>>> = {
  light: [1, 100_000],
  dose: [1, 100_000_000],
  uv: [0, 10_000],
  humidity: [0, 100],
  temperature: [-30, 60],
  height: [0, 20_000],
  barrier: [1, 20_000],
}

export interface TermProblem {
  readonly code: 'no-figure' | 'reversed' | 'out-of-range' | 'no-words'
  readonly field: 'low' | 'high' | 'choice'
  readonly message: string
}

/** What is wrong with a term by itself; null where it can be held against a plan. */
export function termProblem({ kind, low, high, choice }: Omit<Term, 'said'>): TermProblem | null {
  const parts = termParts[kind]
  const field = parts === 'least' ? 'low' : 'high'
  if ((parts === 'most' && high === null) || (parts === 'least' && low === null))
    return {
      code: 'no-figure',
      field,
      message: `A term of ${termWords[kind]} needs a figure. Write it as the agreement has it.`,
    }
  if (parts === 'band' && low === null && high === null)
    return {
      code: 'no-figure',
      field: 'low',
      message: `A term of ${termWords[kind]} needs the least, the most or both.`,
    }
  if (isMoneyTerm(kind)) {
    const wrong = moneyProblem(high, choice)
    return wrong === null ? null : { code: 'no-figure', ...wrong }
  }
  if (parts === 'words' && choice.trim() === '')
    return { code: 'no-words', field: 'choice', message: `Say ${asked[kind] ?? 'what is asked'}.` }
  const choices = termChoices[kind]
  if (choices !== undefined && !choices.includes(choice))
    return {
      code: 'no-words',
      field: 'choice',
      message: `“${choice}” is no choice of ${termWords[kind]}: choose ${choices.filter(each => each !== '').join(', ')}.`,
    }
  const [least, most] = bounds[kind] ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  for (const [name, value] of [
    ['low', low],
    ['high', high],
  ] as const) {
    if (value !== null && (value < least || value > most))
      return {
        code: 'out-of-range',
        field: name,
        message: `${termWords[kind]} can be from ${least} to ${most} ${units[kind] ?? ''}. Look at the figure.`,
      }
  }
  if (low !== null && high !== null && low > high)
    return {
      code: 'reversed',
      field: 'high',
      message: `The most, ${high}, is below the least, ${low}. Put them in order.`,
    }
  return null
}

export const termWords: Readonly<Record<TermKind, string>> = {
  light: 'light',
  dose: 'light in a year',
  uv: 'ultraviolet',
  humidity: 'relative humidity',
  temperature: 'temperature',
  glazing: 'glazing',
  fixing: 'fixing',
  framing: 'framing',
  height: 'height above the floor',
  barrier: 'a barrier',
  apart: 'what it may not hang beside',
  handling: 'who may handle it',
  security: 'security',
  credit: 'the credit line',
  indemnity: 'the indemnity',
  vehicle: 'value in one vehicle',
  journey: 'value on one journey',
}

const units: Partial<Readonly<Record<TermKind, string>>> = {
  light: 'lx',
  dose: 'lx h',
  uv: 'µW/lm',
  humidity: '%',
  temperature: '°C',
  height: 'mm',
  barrier: 'mm',
}

const asked: Partial<Readonly<Record<TermKind, string>>> = {
  credit: 'the credit line',
  apart: 'what it may not hang beside',
  handling: 'who may handle it, names parted by commas',
}

/** A length in the reader's unit. */
export type Say = (mm: number) => string

/** The term in words of ours, where the agreement's are not written down. */
export function termSaid({ kind, low, high, choice, said }: Term, say: Say): string {
  if (said.trim() !== '') return said.trim()
  const band = (write: (value: number) => string) =>
    low === null
      ? `at most ${write(high ?? 0)}`
      : high === null
        ? `at least ${write(low)}`
        : `${write(low)} to ${write(high)}`
  switch (kind) {
    case 'light':
      return `at most ${high ?? 0} lx`
    case 'dose':
      return `at most ${decimal(high ?? 0, 0, THIN_SPACE)} lx h in a year`
    case 'uv':
      return `at most ${high ?? 0} µW/lm of ultraviolet`
    case 'humidity':
      return `relative humidity ${band(value => `${value} %`)}`
    case 'temperature':
      return `temperature ${band(value => `${value} °C`)}`
    case 'glazing':
      return choice === 'none' ? 'no glazing' : choice === 'any' ? 'glazed' : `glazed with ${choice}`
    case 'fixing':
      return choice === '' ? 'on a locked fixing' : `hung by ${choice.replaceAll('-', ' ')}`
    case 'framing':
      return choice === 'none' ? 'without a frame' : 'in its frame'
    case 'height':
      return `${low === null ? '' : `lower edge at least ${say(low)} above the floor`}${low !== null && high !== null ? ', ' : ''}${high === null ? '' : `upper edge at most ${say(high)} above it`}`
    case 'barrier':
      return `a barrier at least ${say(low ?? 0)} before it`
    case 'apart':
      return `not beside ${choice}`
    case 'handling':
      return `handled by ${choice} alone`
    case 'security':
      return choice === 'case' ? 'in a closed case' : 'out of reach: in a case or behind a barrier'
    case 'credit':
      return `credited as “${choice}”`
    default:
      return moneySaid(kind, high ?? 0, choice)
  }
}
