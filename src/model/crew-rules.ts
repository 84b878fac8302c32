/** House rules of the crew: who lifts what, with what, how long a day is, how much is spare. All can be replaced. */
import type { HouseRule } from './house-rules.ts'

export const crewRules = {
  crewTeams: {
    says: 'Teams of two that hang at the same time, where a show does not say.',
    value: 2,
    unit: '',
    source: 'from memory',
  },
  crewHours: {
    says: 'Productive hours of a working day, where a show does not say.',
    value: 6,
    unit: 'h',
    source: 'about 6; from memory',
  },
  crewContingency: {
    says: 'Part of the estimate that is set aside on top of it: 1 is as much again.',
    value: 1,
    unit: '×',
    source: 'set aside twice the first estimate; common practice, no source',
  },
  hardwareSpare: {
    says: 'Part of the hardware that is taken along as spare, where a show does not say.',
    value: 0.125,
    unit: '×',
    source: '10 to 15 %; from memory',
  },
  aloneKg: {
    says: 'One person alone lifts a work up to this.',
    value: 7,
    unit: 'kg',
    source: 'guideline figure for arm’s length, elbow to shoulder, L23 (HSE); from memory',
  },
  aloneSide: {
    says: 'One person alone lifts a work with no side longer.',
    value: 1000,
    unit: 'mm',
    source: 'from memory',
  },
  handKg: {
    says: 'Up to this a work is lifted by hand.',
    value: 30,
    unit: 'kg',
    source: 'about 30 kg and 1.5 m square; common practice, no source',
  },
  handSide: {
    says: 'A work with no side longer is lifted by hand.',
    value: 1500,
    unit: 'mm',
    source: 'about 30 kg and 1.5 m square; common practice, no source',
  },
  liftKg: {
    says: 'Up to this a work goes up with a stacker lift and three people at least.',
    value: 150,
    unit: 'kg',
    source: 'up to 150 kg and about 3.5 × 3 m; common practice, no source',
  },
  liftLongSide: {
    says: 'The longer side of a work that a stacker lift takes.',
    value: 3500,
    unit: 'mm',
    source: 'up to 150 kg and about 3.5 × 3 m; common practice, no source',
  },
  liftShortSide: {
    says: 'The shorter side of a work that a stacker lift takes.',
    value: 3000,
    unit: 'mm',
    source: 'up to 150 kg and about 3.5 × 3 m; common practice, no source',
  },
  hoistKg: {
    says: 'Up to this a work goes up with a hoist; above it only by a competent person’s lifting plan.',
    value: 400,
    unit: 'kg',
    source: 'common practice, no source',
  },
  stepsReach: {
    says: 'Up to this height fixings are reached from folding steps, above it from a platform.',
    value: 2000,
    unit: 'mm',
    source: 'from memory',
  },
  platformReach: {
    says: 'Up to this height fixings are reached from a platform, above it from a lift.',
    value: 3500,
    unit: 'mm',
    source: 'from memory',
  },
  lockRoom: {
    says: 'Free height that a lock’s tool needs below the work.',
    value: 300,
    unit: 'mm',
    source: 'from memory',
  },
  patchSide: {
    says: 'Side of the square that is painted over a filled hole.',
    value: 150,
    unit: 'mm',
    source: 'from memory',
  },
} as const satisfies Readonly<Record<string, HouseRule>>
