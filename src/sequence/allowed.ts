/** Whether works may stand on a bay as they do: each by itself, side by side, at its ends, on its axes. */
import { at, centresIn, type Hang, leftOver, type Problem } from './problem.ts'

/** What holds within one bay; whether they fit is asked apart. An empty bay is allowed. */
export function allowedOn(problem: Problem, bay: number, hung: readonly number[]): boolean {
  if (hung.length === 0) return true
  const { works, rules, bays } = problem
  if (hung.some(work => at(works, work).served[bay] === null)) return false
  if (rules.first.some(work => hung.includes(work) && hung[0] !== work)) return false
  if (rules.last.some(work => hung.includes(work) && hung.at(-1) !== work)) return false
  const { leftOf, rightOf } = at(bays, bay)
  if (rules.notBeside.length > 0) {
    const row = [leftOf, ...hung, rightOf].flatMap(work => (work === null ? [] : [work]))
    const beside = (one: number, other: number) =>
      row.some((work, index) => {
        const next = row[index + 1]
        return (work === one && next === other) || (work === other && next === one)
      })
    if (rules.notBeside.some(([one, other]) => beside(one, other))) return false
  }
  if (!rules.together.every(group => keptTogether(group, hung))) return false
  const own = rules.onAxis.filter(({ work }) => hung.includes(work))
  if (own.length === 0) return true
  const centres = centresIn(problem, bay, hung)
  return own.every(({ work, bay: wanted, x }) => {
    const centre = centres[hung.indexOf(work)] ?? Number.NaN
    return wanted === bay && Math.abs(centre - x) <= at(works, work).width / 2
  })
}

/** All of a group or none, side by side in its order. */
function keptTogether(group: readonly number[], hung: readonly number[]): boolean {
  const first = group[0]
  if (first === undefined || !group.some(work => hung.includes(work))) return true
  const from = hung.indexOf(first)
  return from >= 0 && group.every((work, index) => hung[from + index] === work)
}

/** Whether a whole hang keeps every rule: each bay by itself, and what faces what. */
export function allowed(problem: Problem, hang: Hang): boolean {
  const bays = hang.every((works, bay) => leftOver(problem, bay, works) >= -1e-6 && allowedOn(problem, bay, works))
  return bays && !facesForbidden(problem, hang)
}

/** Whether works that must not face one another do. */
export function facesForbidden({ rules, facing }: Problem, hang: Hang): boolean {
  if (rules.notFacing.length === 0) return false
  const on = new Map(hang.flatMap((works, bay) => works.map(work => [work, bay] as const)))
  const face = (one: number | undefined, other: number | undefined) =>
    facing.some(([a, b]) => (a === one && b === other) || (a === other && b === one))
  return rules.notFacing.some(([one, other]) => face(on.get(one), on.get(other)))
}
