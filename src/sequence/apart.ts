/** A hang without works that break a rule: what a search may begin with. */
import { broken } from './across.ts'
import { allowedOn } from './allowed.ts'
import type { Hang, Problem } from './problem.ts'
import type { Unit } from './units.ts'

export interface Begun {
  readonly hang: Hang
  readonly out: readonly number[]
}

/** As given, without works that break a rule between bays, and what then is not allowed on their own. */
export function apart(
  problem: Problem,
  from: Begun,
  units: ReadonlyMap<number, Unit>,
): { readonly hang: number[][]; readonly out: number[] } {
  let hang = from.hang.map(works => [...works])
  const out = [...from.out]
  for (;;) {
    const across = broken(problem, hang)
    const bay = hang.findIndex((works, index) => !allowedOn(problem, index, works))
    const gone = across?.other ?? hang[bay]?.at(-1)
    if (gone === undefined) return { hang, out }
    const all = units.get(gone)?.works ?? [gone]
    hang = hang.map(works => works.filter(work => !all.includes(work)))
    out.push(...all)
  }
}
