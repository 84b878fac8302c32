/**
 * Terms of a loan: what a lender asks of how a work is shown, as figures a test can hold against the plan, beside the
 * words of the agreement. The kinds are those that loan agreements usually have (common practice, no source).
 */
import { methodKeys } from '../../hang/method-keys.ts'
import type { TermWord } from './asked.ts'
import { isMoneyTerm, moneyProblem } from './money.ts'

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
  'courier',
  'hung-width',
  'hung-height',
  'hung-depth',
  'hung-mass',
  'credit',
  'indemnity',
  'vehicle',
  'journey',
] as const
export type TermKind = (typeof termKinds)[number]

/** Held against what loggers of a room showed, not against a plan. */
export const ofAir = (kind: TermKind): boolean => kind === 'humidity' || kind === 'temperature'

/** Held against the people of a loan and who is on record with its works. */
export const ofPeople = (kind: TermKind): boolean => kind === 'handling' || kind === 'courier'

/**
 * Kinds whose choice is one of a few. Glazing: `any` is whatever glazing. Fixing: empty is any that locks, else a hanging
 * method. Framing: empty is in its frame. Security: in a case, or there or behind a barrier. Courier: when the lender's
 * courier is there.
 */
export const termChoices: Partial<Readonly<Record<TermKind, readonly string[]>>> = {
  glazing: ['any', 'glass', 'acrylic', 'laminated', 'none'],
  fixing: ['', ...methodKeys],
  framing: ['', 'none', 'frame-stays', 'glazing-stays'],
  security: ['case', 'out-of-reach', 'locked', 'watched', 'alarm', 'locked-room'],
  courier: ['hanging', 'taking-down'],
}

export interface Term {
  readonly kind: TermKind
  /** The least: mm, per cent, °C; null where the kind has none or nobody set it. */
  readonly low: number | null
  /** The most: lx, lx h in any 365 days, µW/lm, per cent, °C, mm, kg; of money whole minor units. */
  readonly high: number | null
  /** One of `termChoices`, what it may not hang beside, who may handle it, a credit line; of money its currency. */
  readonly choice: string
  /** In the words of the agreement; may be empty. */
  readonly said: string
  /** Null where nobody said anything, or nobody is asked. */
  readonly confirmed: TermWord | null
}

/** A term before anybody was asked. */
export type TermAsked = Omit<Term, 'said' | 'confirmed'>

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
  courier: 'choice',
  'hung-width': 'most',
  'hung-height': 'most',
  'hung-depth': 'most',
  'hung-mass': 'most',
  credit: 'words',
  indemnity: 'money',
  vehicle: 'money',
  journey: 'money',
}

/** The widest that a figure can be meant: outside it a finger slipped. lx, lx h, µW/lm, %, °C, mm, kg. */
const bounds: Partial<Readonly<Record<TermKind, readonly [number, number]>>> = {
  light: [1, 100_000],
  dose: [1, 100_000_000],
  uv: [0, 10_000],
  humidity: [0, 100],
  temperature: [-30, 60],
  height: [0, 20_000],
  barrier: [1, 20_000],
  'hung-width': [1, 50_000],
  'hung-height': [1, 50_000],
  'hung-depth': [1, 20_000],
  'hung-mass': [0.01, 20_000],
}

export interface TermProblem {
  readonly code: 'no-figure' | 'reversed' | 'out-of-range' | 'no-words'
  readonly field: 'low' | 'high' | 'choice'
  readonly message: string
}

/** What is wrong with a term by itself; null where it can be held against a plan. */
export function termProblem({ kind, low, high, choice }: TermAsked): TermProblem | null {
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
  courier: 'the lender’s courier',
  'hung-width': 'width as hung',
  'hung-height': 'height as hung',
  'hung-depth': 'depth as hung',
  'hung-mass': 'mass as hung',
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
  'hung-width': 'mm',
  'hung-height': 'mm',
  'hung-depth': 'mm',
  'hung-mass': 'kg',
}

const asked: Partial<Readonly<Record<TermKind, string>>> = {
  credit: 'the credit line',
  apart: 'what it may not hang beside',
  handling: 'who may handle it, names or roles of people of the loan, parted by commas',
}
