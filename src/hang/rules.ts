/**
 * House rules of hanging: which of the house's rules a method and its marks read, with their defaults. The rule it
 * keeps: a limit of hanging stands once, among the house rules, and reaches marks through here.
 */
import type { NumberRuleKey } from '../model/house-rules.ts'
import { houseRules } from '../model/house-rules.ts'
import type { HangRules } from './method.ts'

/** A rule of hanging is a house rule with a figure, under the same key. */
export type HangRuleKey = keyof HangRules & NumberRuleKey

/** The rules of hanging as something tells them by their keys: a catalogue, the answer of `rule.list`, the defaults. */
export function hangRulesFrom(read: (key: HangRuleKey) => number): HangRules {
  return {
    houseFactor: read('houseFactor'),
    leastWireAngle: read('leastWireAngle'),
    hookHidden: read('hookHidden'),
    measureTolerance: read('measureTolerance'),
    dropTolerance: read('dropTolerance'),
    nailsIn: read('nailsIn'),
    clearOfBrace: read('clearOfBrace'),
    cleatShorter: read('cleatShorter'),
    screwsApart: read('screwsApart'),
    markFromEnd: read('markFromEnd'),
    besideService: read('besideService'),
    boardFace: read('boardFace'),
    plasterFace: read('plasterFace'),
    leastBehind: read('leastBehind'),
    onePersonKg: read('onePersonKg'),
    onePersonSize: read('onePersonSize'),
    liftingPlanKg: read('liftingPlanKg'),
  }
}

export const defaultHangRules: HangRules = hangRulesFrom(key => houseRules[key].value)
