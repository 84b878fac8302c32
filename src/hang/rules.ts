/** House rules of hanging with their defaults. Each default is common practice and may be replaced by the house's own. */
import { houseRules } from '../model/house-rules.ts'
import type { HangRules } from './method.ts'

export const defaultHangRules: HangRules = {
  houseFactor: houseRules.houseFactor.value,
  leastWireAngle: 30,
  measureTolerance: 1,
  dropTolerance: 2,
  nailsIn: 1 / 3,
  markFromEnd: houseRules.markFromEnd.value,
}
