/** House rules of the air of rooms: what it is held to where a room has no limits of its own. */
import type { HouseRule } from './house-rules.ts'

const reason = 'Where a lender asks for more, give the room limits of its own.'
const bizot = 'Bizot Green Protocol, 2014; from memory'

export const climateRules = {
  climateJoin: {
    group: 'Climate',
    says: 'Times beyond a limit are told as one where no more than so many readings’ time lies between them.',
    reason: 'A value that trembles about a limit leaves it hundreds of times. How long it was beyond stays exact.',
    value: 2,
    unit: '',
    least: 0,
    most: 100,
    source: 'two usual steps of the logger; common practice, no source',
  },
  climateHumidityLow: {
    group: 'Climate',
    says: 'Relative humidity of a room is not below this.',
    reason,
    value: 40,
    unit: '%',
    least: 0,
    most: 100,
    source: bizot,
  },
  climateHumidityHigh: {
    group: 'Climate',
    says: 'Relative humidity of a room is not above this.',
    reason,
    value: 60,
    unit: '%',
    least: 0,
    most: 100,
    source: bizot,
  },
  climateHumidityChange: {
    group: 'Climate',
    says: 'Within any 24 hours relative humidity spans no more than this.',
    reason,
    value: 20,
    unit: '%',
    least: 1,
    most: 100,
    source: '±10 % in 24 hours, of the Bizot Green Protocol, 2014; from memory',
  },
  climateCelsiusLow: {
    group: 'Climate',
    says: 'Temperature of a room is not below this.',
    reason,
    value: 16,
    unit: '°C',
    least: -40,
    most: 80,
    source: bizot,
  },
  climateCelsiusHigh: {
    group: 'Climate',
    says: 'Temperature of a room is not above this.',
    reason,
    value: 25,
    unit: '°C',
    least: -40,
    most: 80,
    source: bizot,
  },
  climateCelsiusChange: {
    group: 'Climate',
    says: 'Within any 24 hours temperature spans no more than this.',
    reason,
    value: 4,
    unit: '°C',
    least: 0.5,
    most: 50,
    source: '±2 K, short fluctuations of class AA of the ASHRAE handbook’s museum chapter; from memory',
  },
} as const satisfies Readonly<Record<string, HouseRule>>
