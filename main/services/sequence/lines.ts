/** Of a proposal’s walls, the centre line that would serve the least served of their viewers best. */
import type { Output } from '../../../src/contract/contract.ts'
import { bestLine, type Line, servedAt } from '../../../src/sequence/best-line.ts'
import { at, type Hang } from '../../../src/sequence/problem.ts'
import { viewersOf } from '../../../src/sequence/served-on.ts'
import type { Asked, Known } from './question.ts'
import { short } from './told.ts'

type Lines = Output<'sequence.propose'>['proposals'][number]['lines']

/** Walls that works would hang on by their centre, on one level line; whose works fit at no height are left out. */
export function linesOf({ question, sight, usual }: Known, { members, stretches }: Asked, hang: Hang): Lines {
  const tall = new Map(question.works.map(({ entry, height }) => [entry, height ?? 0] as const))
  return question.walls.flatMap(({ wall, plan, rules }) => {
    const hung = hang.flatMap((works, bay) =>
      at(stretches, bay).elevation.wall.face === wall.face ? works.flatMap(work => at(members, work)) : [],
    )
    if (plan.rule !== 'centre' || plan.ramp.length > 0 || hung.length === 0) return []
    const asked = {
      heights: hung.map(({ entry }) => tall.get(entry) ?? 0),
      above: hung.map(({ dy }) => dy ?? 0),
      kinds: viewersOf(plan),
      distance: plan.viewingDistance ?? usual,
      sight,
      bottom: wall.skirting ?? 0,
      top: wall.height - rules.liftOn,
    }
    const best = bestLine(asked, plan.centreLine)
    if (best === null) return []
    return [{ face: wall.face, now: told(servedAt(plan.centreLine, asked)), best: told(best) }]
  })
}

function told({ y, least, served }: Line) {
  return { y, least: short(least), served: served.map(({ kind, share }) => ({ kind, share: short(share) })) }
}
