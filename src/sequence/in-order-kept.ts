/**
 * The best hang in an order that also keeps what rules hold between bays: where one pass breaks such a rule, two
 * questions are asked in its stead, each of which bars one of the two works from where it broke it; no hang that keeps
 * the rule is lost by that, and the best answer of all that keep every rule is the best there is.
 */
import { broken } from './across.ts'
import { apart } from './apart.ts'
import { hangInOrder, type InOrder } from './in-order.ts'
import { at, type Problem } from './problem.ts'
import { type Scale, scaleOf } from './terms.ts'
import { unitsOf } from './units.ts'

/** @returns with `proved` false where more than `most` questions would have to be asked: works that break a rule are left out then */
export function hangInOrderKept(
  problem: Problem,
  order: readonly number[],
  scale: Scale = scaleOf(problem),
  most = 40,
): Omit<InOrder, 'worth'> & { readonly proved: boolean } {
  const ask = (works: Problem['works']) => ({ works, found: hangInOrder({ ...problem, works }, order, scale) })
  const open = [ask(problem.works)]
  let sure = true
  for (let asked = 1; ; ) {
    open.sort((a, b) => b.found.worth - a.found.worth)
    const { works, found } = at(open, 0)
    const breaks = broken(problem, found.hang)
    if (breaks === null) return { hang: found.hang, out: found.out, proved: sure }
    if (asked + 2 > most) return { ...apart(problem, found, unitsOf(problem)), proved: false }
    asked += 2
    sure &&= breaks.sure
    open.shift()
    open.push(ask(barred(works, breaks.one, breaks.oneOn)), ask(barred(works, breaks.other, breaks.otherOn)))
  }
}

function barred(works: Problem['works'], work: number, bays: readonly number[]): Problem['works'] {
  return works.map((each, index) =>
    index === work ? { ...each, served: each.served.map((share, bay) => (bays.includes(bay) ? null : share)) } : each,
  )
}
