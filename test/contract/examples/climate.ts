/** Loggers' files, limits of rooms, and where they were left. */
import { expect } from 'vitest'
import type { climateArea } from '../../../src/contract/areas/climate.ts'
import type { Known } from '../fixture.ts'
import { anyId, anyMoment, type ExamplesOf, unknownField } from './types.ts'

const nowhere = 'zzzzzz'
const by = 'Tamsin Oake'
const bytes = (text: string) => new TextEncoder().encode(text)

const logged =
  'Logger 7\nTime,Temp °C,RH %\n2031-03-10 11:00,20,50\n2031-03-10 11:05,20.5,62\n2031-03-10 11:10,20,900\n'
const log = { name: 'east.csv', bytes: bytes(logged) }
const ask = { handle: '$1', zone: '+00:00' }
const take = (known: Known) => ['climate.takeFile', { ...ask, room: known.room, logger: 'L7', by }] as const
const bring = (known: Known) => ({ ...ask, room: known.room ?? '', logger: 'L7', by })

const told = ['1 row could not be read and is left out.', 'A reading every 5 minutes.']
const at = (minute: number) => `2031-03-10T11:0${minute}:00.000Z`
const columns = [
  { column: 1, letters: 'A', heading: 'Time', is: 'moment', sample: '2031-03-10 11:00' },
  { column: 2, letters: 'B', heading: 'Temp °C', is: 'temperature', sample: '20' },
  { column: 3, letters: 'C', heading: 'RH %', is: 'humidity', sample: '50' },
]
const rules = {
  ...{ humidityLow: 40, humidityHigh: 60, humidityChange: 20 },
  ...{ celsiusLow: 16, celsiusHigh: 25, celsiusChange: 4 },
}
const unsaid = {
  ...{ humidityLow: null, humidityHigh: null, humidityChange: null },
  ...{ celsiusLow: null, celsiusHigh: null, celsiusChange: null },
}
const bad = (about: string, text: string, code: string) => ({
  about,
  files: [{ name: 'east.csv', bytes: bytes(text) }],
  input: () => ask,
  code,
  field: 'handle',
})
/** What the first call answered. */
const made = (earlier: readonly unknown[]) => (earlier[0] as { id: string }).id // it answers with the id it made

export const climateExamples: ExamplesOf<keyof typeof climateArea> = {
  'climate.readFile': {
    answered: [
      {
        about: 'its columns, what was left out, and nothing to settle',
        files: [log],
        input: () => ask,
        output: () => ({
          ...{ name: 'east.csv', headingRow: 2, columns, order: 'month first', unit: '°C', asks: [], count: 2 },
          ...{ first: at(0), last: at(5), told },
          bad: [{ row: 5, words: 'a relative humidity of 900 % cannot be' }],
        }),
      },
      {
        about: 'what is to settle: the order, the unit and the clock',
        files: [{ name: 'east.csv', bytes: bytes('Time,Temp\n03/04/2031 11:00,20\n') }],
        input: () => ({ handle: '$1' }),
        output: () => ({
          ...{ name: 'east.csv', headingRow: 1, order: null, unit: null, count: 0, first: null, last: null },
          ...{ bad: [], told: [] },
          columns: [
            { column: 1, letters: 'A', heading: 'Time', is: 'moment', sample: '03/04/2031 11:00' },
            { column: 2, letters: 'B', heading: 'Temp', is: 'temperature', sample: '20' },
          ],
          asks: [
            {
              code: 'order',
              words: 'Every date of the file could be day and month or month and day. Say which comes first.',
            },
            { code: 'unit', words: 'No heading says whether temperatures are °C or °F. Say which.' },
            {
              code: 'zone',
              words: 'No time of the file says how far it is ahead of UTC. Say which clock the logger keeps.',
            },
          ],
        }),
      },
    ],
    refused: [
      bad('rubbish', 'a,b\n\u0001\u0002,§§§\n', 'no-readings'),
      bad('nothing at all', '', 'empty-file'),
      bad('torn figures', 'Time,Temp,RH\n2031-03-10 11:00,20,1,51,2\n', 'decimal-commas'),
      {
        about: 'a clock that nobody keeps',
        files: [log],
        input: () => ({ handle: '$1', zone: 'Moon/Tranquillity' }),
        code: 'no-zone',
        field: 'zone',
      },
    ],
  },
  'climate.takeFile': {
    answered: [
      {
        about: 'how many readings, and what was left out',
        files: [log],
        input: bring,
        output: () => ({ id: anyId, count: 2, told }),
      },
    ],
    refused: [
      {
        about: 'the same file twice',
        files: [log],
        first: known => [take(known)],
        input: bring,
        code: 'brought-in-already',
        field: 'handle',
      },
      {
        about: 'what is still to settle',
        files: [log],
        input: known => ({ handle: '$1', room: known.room, logger: 'L7', by }),
        code: 'to-settle',
        field: 'zone',
      },
      {
        about: 'a file of one row that cannot be read',
        files: [{ name: 'east.csv', bytes: bytes('Time,RH\n2031-03-10 11:00,900\n') }],
        input: bring,
        code: 'to-settle',
        field: 'handle',
      },
      {
        about: 'a room that there is not',
        files: [log],
        input: known => ({ ...bring(known), room: nowhere }),
        code: 'not-found',
        field: 'room',
      },
    ],
  },
  'climate.withdrawFile': {
    answered: [
      {
        about: 'that it counts no more',
        files: [log],
        first: known => [take(known)],
        input: (_, earlier) => ({ file: made(earlier), why: 'of the west room', by }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a file that there is not',
        input: () => ({ file: nowhere, why: 'x', by }),
        code: 'not-found',
        field: 'file',
      },
    ],
  },
  'climate.setLimits': {
    answered: [
      {
        about: 'a lender’s band',
        input: known => ({
          room: known.room ?? '',
          changes: { humidityLow: { was: null, to: 45 }, why: { was: '', to: 'the lender of 4' } },
        }),
        output: () => ({ saved: ['humidityLow', 'why'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'a lowest above the highest of the house',
        input: known => ({ room: known.room ?? '', changes: { humidityLow: { was: null, to: 70 } } }),
        code: 'limits-cross',
        field: 'changes',
      },
    ],
  },
  'climate.rooms': {
    answered: [
      {
        about: 'rooms, of whose air nothing is known yet',
        input: () => ({}),
        output: known => ({
          rooms: [{ id: known.room, name: 'Room 1', number: '', count: 0, first: null, last: null }],
        }),
      },
    ],
    refused: [unknownField],
  },
  'climate.room': {
    answered: [
      {
        // By hand: a reading stands for 5 minutes; the one of 62 % is 2 beyond, and the mean of both is 56.
        about: 'the house rules, the file, and 5 minutes beyond',
        files: [log],
        first: known => [take(known)],
        input: known => ({ room: known.room ?? '' }),
        output: () => ({
          own: { ...unsaid, why: '' },
          inForce: rules,
          files: [
            {
              ...{ id: anyId, name: 'east.csv', logger: 'L7', count: 2, first: at(0), last: at(5), told },
              ...{ recordedAt: anyMoment, recordedBy: by, withdrawn: null },
            },
          ],
          loggers: [
            {
              ...{ logger: 'L7', count: 2, first: at(0), last: at(5) },
              humidity: { least: 50, leastAt: at(0), most: 62, mostAt: at(5), mean: 56 },
              celsius: { least: 20, leastAt: at(0), most: 20.5, mostAt: at(5), mean: 20.25 },
              ...{ dewPoint: expect.closeTo(11.22, 1), water: expect.closeTo(9.8, 1) },
              ...{ hoursKnown: expect.closeTo(10 / 60, 9), hoursOut: expect.closeTo(5 / 60, 9) },
              out: [
                {
                  limit: 'humidityHigh',
                  from: at(5),
                  until: '2031-03-10T11:10:00.000Z',
                  worst: 62,
                  worstAt: at(5),
                  times: 1,
                  hoursBeyond: expect.closeTo(5 / 60, 9),
                },
              ],
              ...{ outCount: 1, outApart: 1, gaps: [], gapCount: 0 },
            },
          ],
        }),
      },
    ],
    refused: [
      { about: 'a room that there is not', input: () => ({ room: nowhere }), code: 'not-found', field: 'room' },
    ],
  },
  'climate.readings': {
    answered: [
      {
        about: 'what was read, packed',
        files: [log],
        first: known => [take(known)],
        input: known => ({ room: known.room ?? '' }),
        output: () => ({
          loggers: [
            { logger: 'L7', days: [{ day: 22_348, seconds: '39600 300', celsius: '2000 50', humidity: '5000 1200' }] },
          ],
        }),
      },
    ],
    refused: [
      { about: 'a room that there is not', input: () => ({ room: nowhere }), code: 'not-found', field: 'room' },
    ],
  },
}
