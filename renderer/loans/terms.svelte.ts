/** Terms as the screen says and reads them, in the unit of the day. */
import { type FigureRead, readTermFigure, termFigure } from '../../src/loan/terms/read.ts'
import { type TermKind, termParts } from '../../src/loan/terms/term.ts'
import { desk } from '../host/desk.svelte.ts'

/** What a term is of, as its row and its choice are headed. */
export const kindWords: Readonly<Record<TermKind, string>> = {
  light: 'light',
  dose: 'light in a year',
  uv: 'ultraviolet',
  humidity: 'relative humidity',
  temperature: 'temperature',
  glazing: 'glazing',
  fixing: 'locked fixing',
  framing: 'in its frame',
  height: 'height above the floor',
  barrier: 'barrier before it',
  apart: 'not beside',
  handling: 'handled by',
}

export const examples: Partial<Readonly<Record<TermKind, string>>> = {
  light: '50 lx',
  dose: '15 000 lx h',
  uv: '75 µW/lm',
  humidity: '45 %',
  temperature: '18 °C',
  height: '1200 mm',
  barrier: '600 mm',
  apart: 'a number, title, maker',
  handling: 'names, parted by commas',
}

export const glazings = [
  ['any', 'whatever glazing'],
  ['glass', 'glass'],
  ['acrylic', 'acrylic'],
  ['laminated', 'laminated glass'],
  ['none', 'none'],
] as const

export const hasLeast = (kind: TermKind) => termParts[kind] === 'least' || termParts[kind] === 'band'
export const hasMost = (kind: TermKind) => termParts[kind] === 'most' || termParts[kind] === 'band'

export function shown(kind: TermKind, value: number | null): string {
  return value === null ? '' : termFigure(kind, value, mm => `${desk.length(mm)} ${desk.unit}`, desk.imperial)
}

/** An empty field is no figure. */
export function read(kind: TermKind, text: string): FigureRead | { readonly ok: true; readonly value: null } {
  if (text.trim() === '') return { ok: true, value: null }
  return readTermFigure(kind, text, each => desk.parseLength(each), desk.imperial ? '°F' : '°C')
}
