/** House rules of the record: when two findings of two condition reports are one, when an owner is told of damage. */
import type { HouseRule } from './house-rules.ts'

export const recordRules = {
  conditionNear: {
    group: 'Condition',
    says: 'Findings of two reports with the same word are one and the same within this distance.',
    reason: 'Two hands never mark the same spot twice in the same place; farther apart it may be another.',
    value: 20,
    unit: 'mm',
    least: 0,
    most: 500,
    source: 'from memory',
  },
  conditionGrown: {
    group: 'Condition',
    says: 'A finding that is larger than before by more than this has grown.',
    reason: 'Less is only drawn or measured otherwise; more is told to the lender.',
    value: 3,
    unit: 'mm',
    least: 0,
    most: 100,
    source: 'from memory',
  },
  damageOwnerHours: {
    group: 'Condition',
    says: 'The owner of a work is told of damage within this time from when it was found.',
    reason: 'Nothing is treated without the owner’s leave, and who hears of it late trusts the next loan less.',
    value: 24,
    unit: 'h',
    least: 0.5,
    most: 720,
    source: 'common practice, no source',
  },
} as const satisfies Readonly<Record<string, HouseRule>>
