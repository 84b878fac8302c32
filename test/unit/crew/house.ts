/** The house rules of lifting as they are without anybody's change. */
import type { HandlingRules } from '../../../src/crew/handling.ts'
import { crewRules } from '../../../src/model/crew-rules.ts'
import { houseRules } from '../../../src/model/house-rules.ts'

export const handlingRules: HandlingRules = {
  aloneKg: crewRules.aloneKg.value,
  aloneSide: crewRules.aloneSide.value,
  onePersonKg: houseRules.onePersonKg.value,
  onePersonSize: houseRules.onePersonSize.value,
  liftKg: crewRules.liftKg.value,
  liftLongSide: crewRules.liftLongSide.value,
  liftShortSide: crewRules.liftShortSide.value,
  hoistKg: crewRules.hoistKg.value,
  stepsReach: crewRules.stepsReach.value,
  platformReach: crewRules.platformReach.value,
}
