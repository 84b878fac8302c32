/** Terms as the screen says and reads them, in the unit of the day. */
import { type FigureRead, readTermFigure, termFigure } from '../../src/loan/terms/read.ts'
import { choiceWords } from '../../src/loan/terms/said.ts'
import { type TermKind, termChoices, termParts } from '../../src/loan/terms/term.ts'
import { desk } from '../host/desk.svelte.ts'

/** What a term is of, as its row and its choice are headed. */
export const kindWords: Readonly<Record<TermKind, string>> = {
  light: 'light',
  dose: 'light in a year',
  uv: 'ultraviolet',
  humidity: 'relative humidity',
  temperature: 'temperature',
  glazing: 'glazing',
  fixing: 'fixing',
  framing: 'framing',
  height: 'height above the floor',
  barrier: 'barrier before it',
  apart: 'not beside',
  handling: 'handled by',
  security: 'security',
  courier: 'lender’s courier',
  'hung-width': 'width as hung',
  'hung-height': 'height as hung',
  'hung-depth': 'depth as hung',
  'hung-mass': 'mass as hung',
  credit: 'credit line',
  indemnity: 'indemnity, together',
  vehicle: 'value in one vehicle',
  journey: 'value on one journey',
}

export const examples: Partial<Readonly<Record<TermKind, string>>> = {
  light: '50 lx',
  dose: '15 000 lx h',
  uv: '75 µW/lm',
  humidity: '45 %',
  temperature: '18 °C',
  height: '1200 mm',
  barrier: '600 mm',
  'hung-width': '1500 mm',
  'hung-height': '1200 mm',
  'hung-depth': '90 mm',
  'hung-mass': '25 kg',
  apart: 'a number, title, maker',
  handling: 'names, or a role: courier',
  credit: 'as labels shall say it',
  indemnity: 'EUR 5 million',
  vehicle: 'EUR 2 million',
  journey: 'EUR 4 million',
}

/** Of kinds whose words are typed: what is asked. */
export const askedFor: Partial<Readonly<Record<TermKind, string>>> = {
  apart: 'what',
  handling: 'whom',
  credit: 'which',
}

const glazings: Readonly<Record<string, string>> = { any: 'whatever glazing', laminated: 'laminated glass' }

/** A choice in words. */
export function choiceSaid(kind: TermKind, choice: string): string {
  if (kind === 'glazing') return glazings[choice] ?? choice
  if (kind === 'fixing' && choice === '') return 'any that locks'
  return choiceWords[kind]?.[choice] ?? choice.replaceAll('-', ' ')
}

/** What may be chosen of a kind, with its words. */
export const choicesOf = (kind: TermKind) =>
  (termChoices[kind] ?? []).map(choice => [choice, choiceSaid(kind, choice)] as const)

export const hasLeast = (kind: TermKind) => termParts[kind] === 'least' || termParts[kind] === 'band'
export const hasMost = (kind: TermKind) => termParts[kind] === 'most' || termParts[kind] === 'band'
export const isMoney = (kind: TermKind) => termParts[kind] === 'money'

export function shown(kind: TermKind, value: number | null): string {
  return value === null ? '' : termFigure(kind, value, mm => `${desk.length(mm)} ${desk.unit}`, desk.imperial)
}

/** An empty field is no figure. */
export function read(kind: TermKind, text: string): FigureRead | { readonly ok: true; readonly value: null } {
  if (text.trim() === '') return { ok: true, value: null }
  return readTermFigure(kind, text, each => desk.parseLength(each), desk.imperial ? '°F' : '°C')
}
