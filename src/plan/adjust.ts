/**
 * A room's outline as the least-squares fit of everything measured of it: lengths between any two corners and angles, in
 * any order. Each measure is told by how much it differs from the fit, how well the others check it, and which one most
 * likely was misread (data snooping after Baarda: the residual over its own deviation). Where two cannot be told apart
 * both are named. Whatever is typed, an outline of finite numbers comes back; what is wrong is said in `problems`.
 */
import { type Fitted, fitCorners, perDegree } from './adjust-fit.ts'
import { misfit, type Observation, observe } from './adjust-model.ts'
import { type Candidate, candidatesOf, nextToCheck, nextToFix, UNCHECKED } from './adjust-next.ts'
import { countable, impossible, type Problem } from './adjust-problems.ts'
import { product, type Rank, rankOf } from './adjust-rank.ts'
import { sumOf } from './adjust-solve.ts'
import { type Suspect, suspectsOf } from './adjust-suspect.ts'
import { crossing } from './outline-shape.ts'
import { deviationOf, type Measure, type Point, type SurveyRules } from './survey.ts'

export interface Adjusted {
  /** One a corner, the first at 0, 0 and the first wall to the right, clockwise on the page. */
  readonly corners: readonly Point[]
  readonly fitted: readonly Fitted[]
  /** Measures more than the outline needs. */
  readonly redundancy: number
  /** Ways that the measured values leave the outline to move; 0 when it is fixed. */
  readonly open: number
  /**
   * By how much the measures fail to close, mm: the least that one of them would have to change by to fit; where none
   * stands out, the most that a checked one differs from what the others make of it. Angles along their shorter side.
   */
  readonly gap: number
  readonly closes: boolean
  /** Deviation of the measures as they turned out, over what the rules expect of them; null without redundancy. */
  readonly spread: number | null
  /** Most likely first; more than one where the measures cannot tell which. Empty where nothing stands out. */
  readonly suspects: readonly Suspect[]
  /** The first suspect is likelier than the rest only because corners nobody measured would be square then. */
  readonly bySquare: boolean
  readonly next: Candidate | null
  readonly problems: readonly Problem[]
}

/**
 * @param count corners of the room, three or more.
 * @param measures in any order; a value that no room can have is left out and told.
 */
export function adjust(count: number, measures: readonly Measure[], rules: SurveyRules): Adjusted {
  const { sound, problems } = countable(count, measures)
  const observations = sound.map(measure => observe(measure, rules))
  const { corners, converged } = fitCorners(count, observations)
  const firm = observations.filter(({ measure }) => measure.standing !== 'taken')
  const rank = rankOf(firm, corners)
  const rows = new Map(firm.map(({ measure, weight }) => [measure, rank.rowOf(measure, weight)]))
  const fitted = observations.map(each => fittedOf(each, corners, rows.get(each.measure), rules))
  const redundancy = firm.length - (2 * count - 3 - rank.open)
  const apart = gapOf(sound, fitted, corners)
  const { suspects, bySquare } = suspectsOf({ count, observations, fitted, closes: apart <= rules.closesWithin })
  const [first] = suspects
  const gap = first === undefined ? apart : first.gap
  return {
    corners,
    fitted,
    redundancy,
    open: rank.open,
    gap,
    closes: gap <= rules.closesWithin,
    spread: redundancy > 0 ? Math.sqrt(sumOf(firm, corners) / redundancy) : null,
    suspects,
    bySquare,
    next: suspects.length === 1 || bySquare ? null : nextOf({ corners, sound, rank, rows, fitted, suspects, rules }),
    problems: [
      ...problems,
      ...impossible(count, sound, rules),
      ...crossed(corners),
      ...(converged ? [] : [{ code: 'unsettled' as const }]),
    ],
  }
}

function crossed(corners: readonly Point[]): readonly Problem[] {
  const sides = crossing(corners)
  return sides === null ? [] : [{ code: 'crosses', sides }]
}

function fittedOf(
  { measure, value, weight }: Observation,
  corners: readonly Point[],
  row: Float64Array | undefined,
  rules: SurveyRules,
): Fitted {
  const unit = measure.kind === 'angle' ? 180 / Math.PI : 1
  const residual = misfit({ measure, value, weight }, corners) * unit
  const checked = row === undefined ? 0 : Math.min(1, Math.max(0, 1 - product(row, row)))
  const standardised = checked < 1e-4 ? null : residual / (deviationOf(measure, rules) * Math.sqrt(checked))
  return { key: measure.key, fitted: measure.value - residual, residual, standardised, checked }
}

/** An angle's part is what it moves the end of the shorter of its two sides by. */
function gapOf(measures: readonly Measure[], fitted: readonly Fitted[], corners: readonly Point[]): number {
  return measures.reduce((most, measure, index) => {
    const one = fitted[index]
    if (one === undefined || measure.standing !== 'measured' || one.checked < UNCHECKED) return most
    const alone = Math.abs(one.residual) / one.checked
    return Math.max(most, measure.kind === 'angle' ? alone * perDegree(measure.from, corners) : alone)
  }, 0)
}

interface Known {
  readonly corners: readonly Point[]
  readonly sound: readonly Measure[]
  readonly rank: Rank
  readonly rows: ReadonlyMap<Measure, Float64Array>
  readonly fitted: readonly Fitted[]
  readonly suspects: readonly Suspect[]
  readonly rules: SurveyRules
}

function nextOf({ corners, sound, rank, rows, fitted, suspects, rules }: Known): Candidate | null {
  const candidates = candidatesOf(corners, sound)
  if (rank.open > 0) return nextToFix(candidates, rank, rules)
  const doubted = sound.flatMap((measure, index) => {
    const row = rows.get(measure)
    const one = fitted[index]
    if (row === undefined || one === undefined || measure.standing !== 'measured') return []
    const asked = suspects.length > 0 ? suspects.some(({ key }) => key === measure.key) : one.checked < UNCHECKED
    return asked ? [row] : []
  })
  return nextToCheck(candidates, rank, doubted, rules)
}
