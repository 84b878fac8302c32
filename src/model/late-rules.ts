/**
 * House rules of late changes: how much each consequence weighs when ways out are put in order. Only their order
 * matters; a way that moves a hung work stands below every other whatever it weighs.
 */
import type { Prices } from '../late/late-shape.ts'
import type { HouseRule } from './house-rules.ts'

const source = 'common practice, no source'

export const lateRules = {
  lateHungMoved: {
    group: 'Late changes',
    says: 'Points for each work moved that hangs already.',
    reason: 'It is taken down, carried and hung again; a work that hangs is moved last of all.',
    value: 1000,
    unit: '',
    least: 0,
    most: 100_000,
    source,
  },
  lateNewHole: {
    group: 'Late changes',
    says: 'Points for each hole that must be drilled anew.',
    reason: 'Measured, drilled and cleaned up, in front of works that hang.',
    value: 30,
    unit: '',
    least: 0,
    most: 10_000,
    source,
  },
  lateDeadHole: {
    group: 'Late changes',
    says: 'Points for each hole that nothing hangs on any more.',
    reason: 'It is filled and painted, and shows until the paint is dry.',
    value: 20,
    unit: '',
    least: 0,
    most: 10_000,
    source,
  },
  lateMoved: {
    group: 'Late changes',
    says: 'Points for each work moved that does not hang yet.',
    reason: 'Its marks are made anew.',
    value: 10,
    unit: '',
    least: 0,
    most: 10_000,
    source,
  },
  lateLabel: {
    group: 'Late changes',
    says: 'Points for each label that comes to another place.',
    reason: 'A label peeled off is often a label printed again.',
    value: 5,
    unit: '',
    least: 0,
    most: 10_000,
    source,
  },
  lateGapSpread: {
    group: 'Late changes',
    says: 'Points for each millimetre between the widest and the narrowest gap of the row.',
    reason: 'An uneven row is seen, but less than a hole.',
    value: 0.2,
    unit: '',
    least: 0,
    most: 1000,
    source,
  },
  lateEnds: {
    group: 'Late changes',
    says: 'Points for each millimetre that the row’s outer edges move.',
    reason: 'Margins against a corner are seen too.',
    value: 0.1,
    unit: '',
    least: 0,
    most: 1000,
    source,
  },
  lateOffLine: {
    group: 'Late changes',
    says: 'Points for each millimetre that a work hangs off its own line.',
    reason: 'A work off the line is seen at once.',
    value: 0.5,
    unit: '',
    least: 0,
    most: 1000,
    source,
  },
} as const satisfies Readonly<Record<string, HouseRule>>

/** The prices as a house has them. */
export function latePricesFrom(read: (key: keyof typeof lateRules) => number): Prices {
  return {
    hungMoved: read('lateHungMoved'),
    newHole: read('lateNewHole'),
    deadHole: read('lateDeadHole'),
    moved: read('lateMoved'),
    label: read('lateLabel'),
    gapSpreadPerMm: read('lateGapSpread'),
    endsPerMm: read('lateEnds'),
    offLinePerMm: read('lateOffLine'),
  }
}
