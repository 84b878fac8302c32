/**
 * What stands in where nobody has chosen a fixing: the bearing point is known then, the hole is not, and it carries no
 * rating, so that nothing passes by it.
 */
import type { Fixing } from './method.ts'

export function standIn(kind: Fixing['kind']): Fixing {
  return { name: `a ${kind} that is not chosen yet`, kind, holeOffset: 0, ratedKg: null }
}

export function isStandIn(fixing: Fixing): boolean {
  return fixing.ratedKg === null && fixing.name === standIn(fixing.kind).name
}
