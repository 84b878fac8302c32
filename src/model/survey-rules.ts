/** House rules of surveying a room: how sure a single measure is, and when a drawn figure and a measured one part. */
import type { HouseRule } from './house-rules.ts'

export const surveyRules = {
  tapeWithin: {
    group: 'Measures and sheets',
    says: 'A length is taped to about this: two readings in three are nearer.',
    reason: 'How far a misclosure is shared over the lengths, and when one of them stands out.',
    value: 3,
    unit: 'mm',
    least: 0.5,
    most: 50,
    source: 'from memory',
  },
  tapePerMetre: {
    group: 'Measures and sheets',
    says: 'And to so much more for each metre of it.',
    reason: 'A long tape sags and is pulled less evenly.',
    value: 0.3,
    unit: 'mm',
    least: 0,
    most: 10,
    source: 'about class II of the European measuring instruments directive, 0.2 mm a metre, and the hand; from memory',
  },
  angleWithin: {
    group: 'Measures and sheets',
    says: 'The angle of a corner is read to about this: two readings in three are nearer.',
    reason: 'An angle gauge in a corner of plaster says less of a room than a tape across it.',
    value: 0.5,
    unit: '°',
    least: 0.05,
    most: 10,
    source: 'from memory',
  },
  drawnWithin: {
    group: 'Measures and sheets',
    says: 'A wall measured further than this from its drawing is a finding.',
    reason: 'Walls are rarely as drawn. Who planned by the drawing must hear of it.',
    value: 20,
    unit: 'mm',
    least: 0,
    most: 2000,
    source: 'common practice, no source',
  },
} as const satisfies Readonly<Record<string, HouseRule>>
