/**
 * A room as it was surveyed: its walls with the figures in force, every row that was measured or drawn, and the outline
 * that follows. Without a diagonal nothing is redundant but the closure itself, and the gap is shared over the walls by
 * the compass rule, as ever; from the first diagonal on the corners are the least-squares fit of all that was measured.
 */
import { clean } from '../geometry/clean.ts'
import { halfTyped, outlineOf } from '../model/outline.ts'
import { type Adjusted, adjust } from './adjust.ts'
import type { Candidate } from './adjust-next.ts'
import type { Problem } from './adjust-problems.ts'
import type { Suspect } from './adjust-suspect.ts'
import { areaOf } from './outline-shape.ts'
import { fittedTo, type Measured, measuresOf } from './room-measures.ts'
import type { Measure, Point, SurveyRules } from './survey.ts'
import { surveyNote } from './survey-said.ts'

export interface SurveyedWall {
  readonly id: string
  readonly name: string
  /** In force. */
  readonly length: number
  /** At its right end, in force; null where nobody said. */
  readonly angle: number | null
  /** The corner at its left end, and at its right. */
  readonly from: string
  readonly to: string
}

export interface SurveyRow {
  readonly id: string
  readonly kind: 'side' | 'diagonal' | 'angle'
  readonly wall: string | null
  /** Corners; of an angle `from` alone counts, of a side its wall. */
  readonly from: string | null
  readonly to: string | null
  readonly value: number
  readonly how: 'drawn' | 'measured'
  readonly used: boolean
}

/** The outline that is drawn, and how it closes. */
export interface RoomOutline {
  /** As many as walls; one more while it is open. Room-local. */
  readonly corners: readonly Point[]
  readonly closed: boolean
  readonly closes: boolean
  readonly gap: number
  /** Square metres; 0 while it is open. */
  readonly area: number
  readonly note: string
  /** `walked`: by the compass rule; `fitted`: by least squares. */
  readonly way: 'walked' | 'fitted'
  readonly suspects: readonly Suspect[]
  readonly problems: readonly Problem[]
}

export interface RoomSurvey extends RoomOutline {
  readonly measures: readonly Measured[]
  readonly redundancy: number
  /** Ways that the measures leave the outline to move; what is drawn or taken as square decides those. */
  readonly open: number
  readonly spread: number | null
  readonly bySquare: boolean
  readonly next: Candidate | null
}

type Say = (mm: number) => string

/** A length along walls in line says nothing of the corners that those walls do not say. */
function measuredAcross(measures: readonly Measure[], count: number): boolean {
  const straight = new Set(measures.flatMap(({ standing, from }) => (standing === 'straight' ? [from] : [])))
  const along = (from: number, to: number): boolean => {
    const next = (from + 1) % count
    return next === to || (straight.has(next) && along(next, to))
  }
  return measures.some(
    ({ kind, standing, from, to }) =>
      kind === 'diagonal' && standing === 'measured' && !along(from, to) && !along(to, from),
  )
}

/**
 * The outline alone: quick, since a room without diagonals is only walked round.
 *
 * @param walls in order from left to right; one or two make no room.
 * @param say writes a length for the note; millimetres where left out.
 */
export function outlineOfRoom(
  walls: readonly SurveyedWall[],
  rows: readonly SurveyRow[],
  rules: SurveyRules,
  say?: Say,
): RoomOutline {
  const measures = walls.length < 3 ? [] : measuresOf(walls, rows)
  if (measuredAcross(measures, walls.length))
    return fittedOutline(walls, measures, adjust(walls.length, measures, rules), say)
  return walkedOutline(walls, measures, rules, say)
}

function walkedOutline(
  walls: readonly SurveyedWall[],
  measures: readonly Measure[],
  rules: SurveyRules,
  say?: Say,
): RoomOutline {
  const { suspects, crosses, ...walked } = outlineOf(walls, rules.closesWithin, say)
  const problems: readonly Problem[] = crosses === null ? [] : [{ code: 'crosses', sides: crosses }]
  return { ...walked, way: 'walked', suspects: alongTheGap(walls, suspects, measures), problems }
}

function fittedOutline(
  walls: readonly SurveyedWall[],
  measures: readonly Measure[],
  fit: Adjusted,
  say?: Say,
): RoomOutline {
  return {
    corners: fit.corners.map(([x, y]): Point => [clean(x), clean(y)]),
    closed: true,
    closes: fit.closes && fit.problems.length === 0,
    gap: fit.gap,
    area: Math.abs(areaOf(fit.corners)) / 1e6,
    note: surveyNote({ ...fit, measures, walls: walls.map(({ name }) => name) }, say),
    way: 'fitted',
    suspects: fit.suspects,
    problems: fit.problems,
  }
}

/** The outline with all that is told of each measure, and what to measure next. */
export function surveyRoom(
  walls: readonly SurveyedWall[],
  rows: readonly SurveyRow[],
  rules: SurveyRules,
  say?: Say,
): RoomSurvey {
  const measures = walls.length < 3 ? [] : measuresOf(walls, rows)
  const across = measuredAcross(measures, walls.length)
  if (walls.length < 3 || (!across && halfTyped(walls) !== null)) {
    const outline = walkedOutline(walls, measures, rules, say)
    const nothing = { redundancy: 0, open: 0, spread: null, bySquare: false, next: null }
    return { ...outline, suspects: [], measures: fittedTo(measures, outline.corners, null), ...nothing }
  }
  const fit = adjust(walls.length, measures, rules)
  const outline = across ? fittedOutline(walls, measures, fit, say) : walkedOutline(walls, measures, rules, say)
  return {
    ...outline,
    measures: fittedTo(measures, outline.corners, fit),
    redundancy: fit.redundancy,
    open: fit.open,
    spread: fit.spread,
    bySquare: across && fit.bySquare,
    next: fit.next,
    problems: across
      ? fit.problems
      : [...outline.problems, ...fit.problems.filter(({ code }) => code !== 'crosses' && code !== 'unsettled')],
  }
}

/** Walls that run along the gap, as suspects: each by itself would close the room. */
function alongTheGap(
  walls: readonly SurveyedWall[],
  suspects: readonly { readonly wall: number; readonly over: number }[],
  measures: readonly Measure[],
): readonly Suspect[] {
  return suspects.flatMap(({ wall, over }) => {
    const side = measures.find(({ kind, from }) => kind === 'side' && from === wall)
    const length = walls[wall]?.length ?? 0
    return side === undefined ? [] : [{ key: side.key, should: length - over, over, gap: Math.abs(over) }]
  })
}
