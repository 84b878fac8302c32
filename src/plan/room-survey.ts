/**
 * A room as it was surveyed: its walls with the figures in force, every row that was measured or drawn, and the outline
 * that follows. Without a diagonal nothing is redundant but the closure itself, and the gap is shared over the walls by
 * the compass rule, as ever; from the first diagonal on the corners are the least-squares fit of all that was measured.
 */
import { halfTyped, outlineOf } from '../model/outline.ts'
import { adjust } from './adjust.ts'
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

export interface RoomSurvey {
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
  readonly measures: readonly Measured[]
  readonly redundancy: number
  /** Ways that the measures leave the outline to move; what is drawn or taken as square decides those. */
  readonly open: number
  readonly spread: number | null
  readonly suspects: readonly Suspect[]
  readonly bySquare: boolean
  readonly next: Candidate | null
  readonly problems: readonly Problem[]
}

/**
 * @param walls in order from left to right; one or two make no room.
 * @param say writes a length for the note; millimetres where left out.
 */
export function surveyRoom(
  walls: readonly SurveyedWall[],
  rows: readonly SurveyRow[],
  rules: SurveyRules,
  say?: (mm: number) => string,
): RoomSurvey {
  const walked = outlineOf(walls, rules.closesWithin, say)
  const { corners, closed, closes, gap, area, note } = walked
  const nothing = { redundancy: 0, open: 0, spread: null, suspects: [], bySquare: false, next: null, problems: [] }
  if (walls.length < 3) return { corners, closed, closes, gap, area, note, way: 'walked', measures: [], ...nothing }
  const measures = measuresOf(walls, rows)
  const diagonal = measures.some(({ kind, standing }) => kind === 'diagonal' && standing === 'measured')
  if (!diagonal && halfTyped(walls) !== null) {
    const drawn = fittedTo(measures, corners, null)
    return { corners, closed, closes, gap, area, note, way: 'walked', measures: drawn, ...nothing }
  }
  const fit = adjust(walls.length, measures, rules)
  const { redundancy, open, spread, next } = fit
  const shared = { closed: true, redundancy, open, spread, next } as const
  if (diagonal) {
    const note = surveyNote({ ...fit, measures, walls: walls.map(({ name }) => name) }, say)
    return {
      ...shared,
      corners: fit.corners.map(clean),
      closes: fit.closes && fit.problems.length === 0,
      gap: fit.gap,
      area: Math.abs(areaOf(fit.corners)) / 1e6,
      note,
      way: 'fitted',
      measures: fittedTo(measures, fit.corners, fit),
      suspects: fit.suspects,
      bySquare: fit.bySquare,
      problems: fit.problems,
    }
  }
  return {
    ...shared,
    corners,
    closes,
    gap,
    area,
    note,
    way: 'walked',
    measures: fittedTo(measures, corners, fit),
    suspects: alongTheGap(walls, walked.suspects, measures),
    bySquare: false,
    problems: fit.problems.filter(({ code }) => code !== 'crosses' && code !== 'unsettled'),
  }
}

/** Walls that run along the gap, as suspects: each by itself would close the room. */
function alongTheGap(
  walls: readonly SurveyedWall[],
  suspects: readonly { readonly wall: number; readonly over: number }[],
  measures: readonly Measure[],
): readonly Suspect[] {
  return suspects.flatMap(({ wall, over }) => {
    const side = measures.find(
      ({ kind, from }) => kind === 'side' && from === wall,
    )
    const length = walls[wall]?.length ?? 0
    return side === undefined ? [] : [{ key: side.key, should: length - over, over, gap: Math.abs(over) }]
  })
}

/** To a millionth of a millimetre. */
function clean([x, y]: Point): Point {
  return [Math.round(x * 1e6) / 1e6 + 0, Math.round(y * 1e6) / 1e6 + 0]
}
