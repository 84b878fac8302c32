/** House rules of visual weight: how much lightness, colour and detail count beside area. */
import type { HouseRule } from './house-rules.ts'

const source = 'that they count is common practice; the figure has no source'

export const weightRules = {
  weightLightness: {
    group: 'Visual weight',
    says: 'How much a work weighs more where it is as far from its wall in lightness as black from white: 1 is as much again.',
    reason: 'A dark work on a white wall pulls more than a pale one of its size.',
    value: 1,
    unit: '×',
    least: 0,
    most: 5,
    source,
  },
  weightColour: {
    group: 'Visual weight',
    says: 'The same for colour: what a distance of 100 in CIELAB a* and b* from the wall adds.',
    reason: 'A strong red pulls more than a grey of its lightness.',
    value: 0.5,
    unit: '×',
    least: 0,
    most: 5,
    source,
  },
  weightDetail: {
    group: 'Visual weight',
    says: 'The same for detail: what a work that is restless all over adds to one that is even.',
    reason: 'The eye stays where there is much to see.',
    value: 0.5,
    unit: '×',
    least: 0,
    most: 5,
    source,
  },
} as const satisfies Readonly<Record<string, HouseRule>>
