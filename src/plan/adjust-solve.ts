/**
 * Least squares by Gauss-Newton with the damping of Levenberg and Marquardt: corners move until the weighted squares of
 * what is left over are least. What the measures leave open stays as the start has it, since no step leads there.
 */
import { misfit, type Observation, type Slope, slopeOf, unknownOf, unknownsOf } from './adjust-model.ts'
import type { Point } from './survey.ts'

/** A symmetric matrix, row by row. */
export interface Normal {
  readonly size: number
  readonly cells: Float64Array
}

export interface Solved {
  readonly corners: readonly Point[]
  /** Weighted sum of squares. */
  readonly sum: number
  readonly converged: boolean
}

const ROUNDS = 200
/** Corners that move less than this, mm, have come to rest. */
const REST = 1e-8

export function solve(observations: readonly Observation[], start: readonly Point[]): Solved {
  let corners = start
  let sum = sumOf(observations, corners)
  let damping = 1e-3
  for (let round = 0; round < ROUNDS; round += 1) {
    const slopes = observations.map(({ measure }) => slopeOf(measure, corners))
    const normal = normalOf(observations, slopes, unknownsOf(corners.length))
    const pull = pullOf(observations, slopes, corners)
    let moved = 0
    let better = false
    while (!better && damping < 1e12) {
      const step = damped(normal, pull, damping)
      if (step === null) {
        damping = Math.max(damping * 10, 1e-9)
        continue
      }
      const next = stepped(corners, step)
      const nextSum = sumOf(observations, next)
      moved = step.reduce((most, one) => Math.max(most, Math.abs(one)), 0)
      if (nextSum <= sum) {
        better = true
        corners = next
        sum = nextSum
        damping = Math.max(damping / 20, 1e-12)
      } else if (moved < REST) return { corners, sum, converged: true }
      else damping = Math.max(damping * 10, 1e-9)
    }
    if (!better) return { corners, sum, converged: false }
    if (moved < REST) return { corners, sum, converged: true }
  }
  return { corners, sum, converged: false }
}

export function sumOf(observations: readonly Observation[], corners: readonly Point[]): number {
  return observations.reduce((sum, each) => sum + each.weight * misfit(each, corners) ** 2, 0)
}

function stepped(corners: readonly Point[], step: Float64Array): readonly Point[] {
  return corners.map(([x, y], at): Point => {
    const [ofX, ofY] = [unknownOf(at, 0), unknownOf(at, 1)]
    return [ofX < 0 ? x : x + (step[ofX] ?? 0), ofY < 0 ? y : y + (step[ofY] ?? 0)]
  })
}

export function normalOf(observations: readonly Observation[], slopes: readonly Slope[], size: number): Normal {
  const cells = new Float64Array(size * size)
  for (const [index, { weight }] of observations.entries()) {
    const { at, by } = slopes[index] ?? { at: [], by: [] }
    for (const [i, row] of at.entries()) {
      for (const [j, column] of at.entries()) {
        const cell = row * size + column
        cells[cell] = (cells[cell] ?? 0) + weight * (by[i] ?? 0) * (by[j] ?? 0)
      }
    }
  }
  return { size, cells }
}

function pullOf(observations: readonly Observation[], slopes: readonly Slope[], corners: readonly Point[]) {
  const pull = new Float64Array(unknownsOf(corners.length))
  for (const [index, each] of observations.entries()) {
    const off = each.weight * misfit(each, corners)
    const { at, by } = slopes[index] ?? { at: [], by: [] }
    for (const [i, unknown] of at.entries()) pull[unknown] = (pull[unknown] ?? 0) + off * (by[i] ?? 0)
  }
  return pull
}

/** The damped step, by Cholesky; null where the matrix is not positive. All unknowns are mm, so all are damped alike. */
function damped({ size, cells }: Normal, pull: Float64Array, damping: number): Float64Array | null {
  let most = 0
  for (let i = 0; i < size; i += 1) most = Math.max(most, cells[i * size + i] ?? 0)
  if (most === 0) return new Float64Array(size)
  const lower = new Float64Array(size * size)
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let left = (cells[i * size + j] ?? 0) + (i === j ? damping * most : 0)
      for (let k = 0; k < j; k += 1) left -= (lower[i * size + k] ?? 0) * (lower[j * size + k] ?? 0)
      if (i === j) {
        if (left <= most * 1e-15) return null
        lower[i * size + i] = Math.sqrt(left)
      } else lower[i * size + j] = left / (lower[j * size + j] ?? 1)
    }
  }
  const step = Float64Array.from(pull)
  for (let i = 0; i < size; i += 1) {
    for (let k = 0; k < i; k += 1) step[i] = (step[i] ?? 0) - (lower[i * size + k] ?? 0) * (step[k] ?? 0)
    step[i] = (step[i] ?? 0) / (lower[i * size + i] ?? 1)
  }
  for (let i = size - 1; i >= 0; i -= 1) {
    for (let k = i + 1; k < size; k += 1) step[i] = (step[i] ?? 0) - (lower[k * size + i] ?? 0) * (step[k] ?? 0)
    step[i] = (step[i] ?? 0) / (lower[i * size + i] ?? 1)
  }
  return step
}
