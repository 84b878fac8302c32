/** House rules of the plan: what must stay free on the floor. */
import type { HouseRule } from './house-rules.ts'

export const planRules = {
  clearBefore: {
    group: 'Measures and sheets',
    says: 'So much floor stays free before doors, passages and what must stay reachable.',
    reason: 'A person with a frame, a trolley or a chair has to get there. Local codes may want more.',
    value: 915,
    unit: 'mm',
    least: 0,
    most: 5000,
    source: 'a walkway of 36 in; common practice, no source',
  },
} as const satisfies Readonly<Record<string, HouseRule>>
