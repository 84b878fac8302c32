/** How high a work hangs on a face: by its own rule and height where it has them, else by its face's. */
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import { centreFromRule, type HeightRuleName } from '../hang/height.ts'
import { floorAt } from '../hang/wall.ts'

/** Height of the centre of a placement at `x`, above the floor at x = 0. mm; `height` is the work's own. */
export function centreOnFace(
  placement: { readonly rule: PlacedWork['rule']; readonly y: number | null; readonly x: number },
  plan: Pick<Elevation['plan'], 'centreLine' | 'rule' | 'eyeFraction' | 'ramp'>,
  height: number,
): number {
  const rule: HeightRuleName = placement.rule === 'face' ? plan.rule : placement.rule
  return centreFromRule(
    { rule, y: placement.y ?? plan.centreLine + floorAt(plan.ramp, placement.x), eyeFraction: plan.eyeFraction },
    height,
  )
}
