/**
 * Which measure was most likely misread, and by how much: the one whose standardised residual is greatest, with what
 * the fit without it makes of it. Measures that explain the misfit as well cannot be told from it and are named too.
 * Among these the corners that nobody measured may speak: rooms are seldom far from square.
 */
import { type Fitted, fitCorners, perDegree, STANDS_OUT } from './adjust-fit.ts'
import { computed, misfit, type Observation } from './adjust-model.ts'

export interface Suspect {
  readonly key: string
  /** What all the others make of it; millimetres or degrees. */
  readonly should: number
  /** Read so much too long or too wide; below 0 too short or too narrow. */
  readonly over: number
  /** The same without its sign in mm; of an angle what it makes at the end of its shorter side. */
  readonly gap: number
}

interface Asked {
  readonly count: number
  readonly observations: readonly Observation[]
  readonly fitted: readonly Fitted[]
  readonly closes: boolean
}

/** Two explanations whose weighted squares differ by less than this are one as good as the other (χ², one in twenty). */
const AS_GOOD = 3.84
/** And so are two whose residuals differ by less than this share, since the rules' deviations are round figures. */
const ALIKE = 0.95
/** Built corners are square to about this, degrees; from memory. */
const SQUARE_WITHIN = 2

export function suspectsOf({ count, observations, fitted, closes }: Asked): {
  readonly suspects: readonly Suspect[]
  readonly bySquare: boolean
} {
  const rated = observations.flatMap(({ measure }, index) => {
    const rating = Math.abs(fitted[index]?.standardised ?? 0)
    return measure.standing === 'measured' && rating > 0 ? [{ index, rating }] : []
  })
  rated.sort((a, b) => b.rating - a.rating)
  const worst = rated[0]
  if (worst === undefined || (worst.rating <= STANDS_OUT && closes)) return { suspects: [], bySquare: false }
  const group = rated.filter(
    ({ rating }) => worst.rating ** 2 - rating ** 2 < AS_GOOD || rating >= ALIKE * worst.rating,
  )
  const explained = group.map(({ index }) => without(count, observations, index))
  explained.sort((a, b) => a.square - b.square)
  const [first, second] = explained
  // Only what no measure tells is left to the corners; what neither tells stands by the smaller mistake.
  const bySquare = first !== undefined && second !== undefined && second.square - first.square > AS_GOOD
  if (!bySquare) explained.sort((a, b) => a.suspect.gap - b.suspect.gap)
  return { suspects: explained.map(({ suspect }) => suspect), bySquare }

  function without(corners: number, all: readonly Observation[], index: number) {
    const rest = all.filter((_, at) => at !== index)
    const fit = fitCorners(corners, rest).corners
    const left = all[index]
    if (left === undefined) return { suspect: { key: '', should: 0, over: 0, gap: 0 }, square: 0 }
    const unit = left.measure.kind === 'angle' ? 180 / Math.PI : 1
    const over = misfit(left, fit) * unit
    const square = rest.reduce(
      (sum, { measure, value, weight }) =>
        measure.standing === 'taken' && measure.kind === 'angle'
          ? sum + ((misfit({ measure, value, weight }, fit) * 180) / Math.PI / SQUARE_WITHIN) ** 2
          : sum,
      0,
    )
    const gap = Math.abs(over) * (left.measure.kind === 'angle' ? perDegree(left.measure.from, fit) : 1)
    return { suspect: { key: left.measure.key, should: computed(left.measure, fit) * unit, over, gap }, square }
  }
}
