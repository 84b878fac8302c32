/**
 * Works that are being moved, and the place that the catalogue is asked for in the end. A work that follows its wall's
 * height goes on following it while it is only moved along; lifted off, it stands where the hand put its centre.
 */
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import { centreFromRule, ruleFromCentre } from '../hang/height.ts'
import { climb, floorAt } from '../hang/wall.ts'

export interface Spot {
  readonly x: number
  readonly centreY: number
}

export type Place = Pick<PlacedWork, 'x' | 'rule' | 'y'>

const SAME = 1e-6

/** The height of a work's centre if it follows its wall; along a ramp it rises with the floor. mm. */
export function faceCentre(plan: Elevation['plan'], height: number, x: number): number {
  const y = plan.centreLine + floorAt(plan.ramp, x)
  return centreFromRule({ rule: plan.rule, y, eyeFraction: plan.eyeFraction }, height)
}

/** Where a work comes to that is only moved along its wall: along a ramp it climbs with the floor. mm. */
export function alongTo(work: Pick<PlacedWork, 'x' | 'centreY'>, ramp: Elevation['plan']['ramp'], x: number): Spot {
  return { x, centreY: work.centreY + climb(ramp, work.x, x) }
}

/** Where a work that comes to `spot` stands, by which rule. */
export function placeAt(work: PlacedWork, plan: Elevation['plan'], spot: Spot): Place {
  const height = work.size?.height ?? 0
  const same = Math.abs(spot.centreY - work.centreY) < SAME
  if (same && work.rule !== 'face') return { x: spot.x, rule: work.rule, y: work.y }
  if (Math.abs(spot.centreY - faceCentre(plan, height, spot.x)) < SAME) return { x: spot.x, rule: 'face', y: null }
  const rule = work.rule === 'face' ? 'hand' : work.rule
  return { x: spot.x, rule, y: ruleFromCentre(rule, spot.centreY, height, plan.eyeFraction).y }
}

/** The same height of the centre, said by another rule. */
export function ruledAs(work: PlacedWork, plan: Elevation['plan'], rule: PlacedWork['rule']): Place {
  if (rule === 'face') return { x: work.x, rule, y: null }
  return { x: work.x, rule, y: ruleFromCentre(rule, work.centreY, work.size?.height ?? 0, plan.eyeFraction).y }
}

/** The works as they would stand; those that do not move are the same objects. */
export function withSpots(
  works: readonly PlacedWork[],
  plan: Elevation['plan'],
  spots: ReadonlyMap<string, Spot>,
): readonly PlacedWork[] {
  if (spots.size === 0) return works
  return works.map(work => {
    const spot = spots.get(work.placement)
    return spot === undefined ? work : { ...work, ...placeAt(work, plan, spot), centreY: spot.centreY }
  })
}

/** Whether a work may be moved at all. */
export function staysPut(work: Pick<PlacedWork, 'held' | 'state'>): boolean {
  return work.held || work.state !== 'planned'
}
