/** Whether works may stand on a bay as they do: each by itself, side by side, at its ends, on its axes. */
import { broken } from './across.ts'
import { at, centresIn, type Hang, leftOver, type Problem } from './problem.ts'

/** What holds within one bay; whether they fit is asked apart. An empty bay is allowed. */
export function allowedOn(problem: Problem, bay: number, hung: readonly number[]): boolean {
  if (hung.length === 0) return true
  const { works, rules, bays } = problem
  if (hung.some(work => at(works, work).served[bay] === null)) return false
  const { leftOf, rightOf } = at(bays, bay)
  const row = () => [leftOf, ...hung, rightOf].flatMap(work => (work === null ? [] : [work]))
  if (rules.notBeside.length > 0) {
    const all = row()
    const beside = (one: number, other: number) =>
      all.some((work, index) => {
        const next = all[index + 1]
        return (work === one && next === other) || (work === other && next === one)
      })
    if (rules.notBeside.some(([one, other]) => beside(one, other))) return false
  }
  const stays = (work: number) => at(works, work).stays !== null
  if (!rules.together.every(group => keptTogether(group, hung, row, stays, true))) return false
  if (!rules.beside.every(group => keptTogether(group, hung, row, stays, false))) return false
  const own = rules.onAxis.filter(({ work }) => hung.includes(work))
  if (own.length === 0) return true
  const centres = centresIn(problem, bay, hung)
  return own.every(({ work, at: axes }) => {
    const centre = centres[hung.indexOf(work)] ?? Number.NaN
    return axes.some(({ bay: wanted, x }) => wanted === bay && Math.abs(centre - x) <= at(works, work).width / 2)
  })
}

/**
 * All of a group or none, side by side. Where some of it stays, the rest stands on beside that, to its left, its right
 * or both: then those here must reach the end of the bay at which one of the group stays.
 */
function keptTogether(
  group: readonly number[],
  hung: readonly number[],
  row: () => readonly number[],
  stays: (work: number) => boolean,
  ordered: boolean,
): boolean {
  if (!group.some(work => hung.includes(work))) return true
  const all = row()
  const places = all.flatMap((work, index) => (group.includes(work) ? [index] : []))
  const from = at(places, 0)
  if (at(places, places.length - 1) - from !== places.length - 1) return false
  const kept = places.map(place => at(all, place))
  if (ordered) {
    const first = group.indexOf(at(kept, 0))
    if (kept.some((work, index) => group[first + index] !== work)) return false
  }
  return group.every(work => kept.includes(work)) || (group.some(stays) && kept.some(stays))
}

/** Whether a whole hang keeps every rule: each bay by itself, and what is held between bays. */
export function allowed(problem: Problem, hang: Hang): boolean {
  const bays = hang.every((works, bay) => leftOver(problem, bay, works) >= -1e-6 && allowedOn(problem, bay, works))
  return bays && broken(problem, hang) === null
}
