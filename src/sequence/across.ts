/** What rules hold between bays: not facing, one wall, first and last. Works that are left out break nothing. */
import { at, type Hang, type Leads, type Problem } from './problem.ts'

/** Two works that can't both hang on those bays, or, where they are alike, a work that can't hang on one of them. */
export interface Broken {
  readonly one: number
  readonly other: number
  /** Bays that `one` hangs on one of, and `other`: in no hang that keeps the rule are both so. */
  readonly oneOn: readonly number[]
  readonly otherOn: readonly number[]
  /** False where they could both hang there with others between: then it is no proof that one of them must not. */
  readonly sure: boolean
}

/** Whether any rule holds between bays at all. */
export function holdsAcross({ rules, chains = [] }: Pick<Problem, 'rules' | 'chains'>): boolean {
  if (chains.length > 0 && rules.notBeside.length > 0) return true
  return rules.notFacing.length + rules.oneWall.length + rules.first.length + rules.last.length > 0
}

/** What is asked of a problem: its works only by their number. */
export type AskedAcross = Pick<Problem, 'rules' | 'facing' | 'chains'> & {
  readonly bays: readonly { readonly face: string }[]
  readonly works: { readonly length: number }
}

/** The first rule that a hang breaks between its bays; null where it keeps them. */
export function broken(problem: AskedAcross, hang: Hang): Broken | null {
  if (!holdsAcross(problem)) return null
  const { rules, facing, bays } = problem
  const on = new Int32Array(problem.works.length).fill(-1)
  for (const [bay, works] of hang.entries()) for (const work of works) on[work] = bay
  const bayOf = (work: number) => on[work] ?? -1
  for (const [one, other] of rules.notFacing) {
    const [here, there] = [bayOf(one), bayOf(other)]
    if (here < 0 || there < 0) continue
    if (facing.some(([a, b]) => (a === here && b === there) || (a === there && b === here)))
      return { one, other, oneOn: [here], otherOn: [there], sure: true }
  }
  const ofWall = (bay: number) => bays.flatMap(({ face }, index) => (face === at(bays, bay).face ? [index] : []))
  for (const group of rules.oneWall) {
    const hung = group.filter(work => bayOf(work) >= 0)
    const first = hung[0]
    const other = hung.find(work => at(bays, bayOf(work)).face !== at(bays, bayOf(first ?? work)).face)
    if (first !== undefined && other !== undefined)
      return { one: first, other, oneOn: ofWall(bayOf(first)), otherOn: ofWall(bayOf(other)), sure: true }
  }
  for (const [leads, way] of [
    ...rules.first.map(each => [each, 1] as const),
    ...rules.last.map(each => [each, -1] as const),
  ]) {
    const rival = metSooner(problem, hang, leads, bayOf, way)
    if (rival !== null)
      return { one: leads.work, other: rival, oneOn: [bayOf(leads.work)], otherOn: [bayOf(rival)], sure: true }
  }
  return besideAcross(problem, hang)
}

/** Two that must not be neighbours, at the ends of two bays that only what is kept clear parts. */
function besideAcross({ rules, chains = [] }: AskedAcross, hang: Hang): Broken | null {
  for (const chain of chains) {
    let [last, lastBay] = [-1, -1]
    for (const bay of chain) {
      const row = at(hang, bay)
      const [first] = row
      if (first === undefined) continue
      if (rules.notBeside.some(pair => pair.includes(last) && pair.includes(first)))
        return { one: last, other: first, oneOn: [lastBay], otherOn: [bay], sure: false }
      last = at(row, row.length - 1)
      lastBay = bay
    }
  }
  return null
}

/** A work that is met before the one that leads, going forward (1) or backward (-1). */
function metSooner(
  { bays }: AskedAcross,
  hang: Hang,
  { work, among, bays: within, sameWall }: Leads,
  bayOf: (work: number) => number,
  way: 1 | -1,
): number | null {
  const here = bayOf(work)
  if (here < 0) return null
  const counts = (bay: number) =>
    (within === null || within.includes(bay)) && (!sameWall || at(bays, bay).face === at(bays, here).face)
  const row = at(hang, here)
  const own = row.indexOf(work)
  const sooner = (other: number) => {
    const there = bayOf(other)
    if (there < 0 || other === work || !counts(there)) return false
    return there === here ? (row.indexOf(other) - own) * way < 0 : (there - here) * way < 0
  }
  if (among !== null) return among.find(sooner) ?? null
  const beside = way === 1 ? row[own - 1] : row[own + 1]
  if (beside !== undefined) return beside
  for (let bay = way === 1 ? 0 : hang.length - 1; bay !== here; bay += way) {
    const [other] = at(hang, bay)
    if (other !== undefined && counts(bay)) return other
  }
  return null
}
