/**
 * What a tape and an angle gauge give of a room: lengths between any two of its corners and interior angles, in any
 * order, some missing, some twice. Corners are counted from 0 at the left end of the first wall, to the right as seen
 * from inside, and people call them A, B, C. Millimetres and degrees.
 */
import type { Point } from '../drawing/room-plan.ts'

export type { Point }

export const measureKinds = ['side', 'diagonal', 'angle'] as const
export type MeasureKind = (typeof measureKinds)[number]

export interface Measure {
  /** Whatever the caller knows it by. */
  readonly key: string
  readonly kind: MeasureKind
  /** Its two corners; an angle has its one corner twice. */
  readonly from: number
  readonly to: number
  /** Millimetres, or degrees of an angle. */
  readonly value: number
  /**
   * `measured` counts; `taken` is drawn or presumed and only decides what nothing measured does; `straight` joins two
   * parts of one wall and holds like a measure that nobody can have misread.
   */
  readonly standing: 'measured' | 'taken' | 'straight'
  /** Standard deviation of this one measure; the rules' where left out. */
  readonly deviation?: number
}

/** Standard deviations of single measures, and the gap that a house lets pass. */
export interface SurveyRules {
  /** Of a taped length: so many mm, and so many more for each metre of it. */
  readonly tape: number
  readonly tapePerMetre: number
  /** Of an angle, degrees. */
  readonly angle: number
  readonly closesWithin: number
}

/** A part of a wall stays in line with the next to within this, degrees; a builder's string, from memory. */
const STRAIGHT = 0.05

/** Standard deviation of a measure, in millimetres or degrees. */
export function deviationOf(measure: Measure, rules: SurveyRules): number {
  if (measure.deviation !== undefined) return measure.deviation
  if (measure.standing === 'straight') return STRAIGHT
  if (measure.kind === 'angle') return rules.angle
  return rules.tape + (rules.tapePerMetre * measure.value) / 1000
}

/** A to Z, then AA, AB …, as columns of a table are lettered. */
export function cornerLetter(at: number): string {
  const first = Math.floor(at / 26)
  return (first === 0 ? '' : cornerLetter(first - 1)) + String.fromCharCode(65 + (at % 26))
}

/** The place of a corner by its letters, in either case; null where it is no letter of the alphabet's. */
export function cornerAt(letters: string): number | null {
  if (!/^[a-z]{1,2}$/i.test(letters)) return null
  let at = 0
  for (const letter of letters.toUpperCase()) at = at * 26 + letter.charCodeAt(0) - 64
  return at - 1
}

/** `B–D`, or `corner C` for an angle. */
export function measureName({ kind, from, to }: Pick<Measure, 'kind' | 'from' | 'to'>): string {
  return kind === 'angle' ? `corner ${cornerLetter(from)}` : `${cornerLetter(from)}–${cornerLetter(to)}`
}
