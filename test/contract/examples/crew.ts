/** The crew: what people lift, who hangs what when, hardware, the order up and down. */
import { expect } from 'vitest'
import type { crewArea } from '../../../src/contract/areas/crew.ts'
import type { Known } from '../fixture.ts'
import { anyId, type ExamplesOf, type Refused } from './types.ts'

const noShow: Refused = {
  about: 'an exhibition that is not there',
  input: () => ({ exhibition: 'zzzzzz' }),
  code: 'not-found',
  field: 'exhibition',
}

const crew = {
  teams: 2,
  teamsFrom: 'house rule',
  hours: 6,
  hoursFrom: 'house rule',
  spare: 0.125,
  spareFrom: 'house rule',
  contingency: 1,
}

const pans = (known: Known) => ({
  placement: known.pansPlace,
  entry: known.pansEntry,
  work: known.pans,
  running: '',
  number: 'L-1.1',
  title: 'Salt pans',
  face: known.northFace,
  faceName: 'Room 1, north',
})
const causeway = (known: Known) => ({
  placement: known.causewayPlace,
  entry: known.causewayEntry,
  work: known.causeway,
  running: '',
  number: 'L-1.2',
  title: 'Causeway',
  face: known.northFace,
  faceName: 'Room 1, north',
})

const task = (known: Known, kind: string, placement: string | null, start: number, end: number, teams: number[]) => ({
  kind,
  face: known.northFace,
  faceName: 'Room 1, north',
  placement,
  minutes: end - start,
  start,
  end,
  teams,
})

/** One lift of a day; how its index comes about is in the unit tests. */
const day = (placement: string, team: number, minutes: number) => ({
  day: 1,
  team,
  lifts: 1,
  covered: 1,
  perMinute: 1 / minutes,
  duration: 'short',
  most: { placement, index: expect.any(Number) },
  beyond: [],
})

const lift = { name: 'stacker lift', carriesKg: 150, reaches: 3200, people: 2 }
const patches = {
  made: 0,
  planned: 2,
  filled: 0,
  count: 2,
  // Two holes of 6 by 35 mm with as much again, two squares of 150 mm, two minutes each.
  fillerMl: expect.closeTo(3.958, 3),
  paintM2: expect.closeTo(0.045, 9),
  minutes: 4,
}

export const crewExamples: ExamplesOf<keyof typeof crewArea> = {
  'crew.lifting': {
    answered: [
      {
        about: 'two people at the best place: 23 kg each, two thirds of the sum',
        input: () => ({ mass: 32, origin: { horizontal: 250, vertical: 750 }, people: 2, coupling: 'good' }),
        output: () => {
          const multipliers = { horizontal: 1, vertical: 1, distance: 1, asymmetry: 1, frequency: 1, coupling: 1 }
          const point = { multipliers, limit: 23, limitKg: 23 }
          return {
            origin: point,
            destination: point,
            limitKg: 23,
            teamFactor: expect.closeTo(2 / 3, 12),
            teamSource: expect.stringContaining('L23'),
            teamLimitKg: expect.closeTo(30.667, 3),
            index: expect.closeTo(1.0435, 4),
            within: false,
            peopleNeeded: 3,
            cautions: expect.arrayContaining([expect.stringContaining('house rule')]),
          }
        },
      },
    ],
    refused: [
      {
        about: 'hands of which nobody knows where they are',
        input: () => ({ mass: 5, origin: { vertical: 750 } }),
        code: 'bad-input',
        field: 'origin.horizontal',
      },
      {
        about: 'a load that reaches out too far, by the estimate',
        input: () => ({ mass: 5, origin: { reach: 900, vertical: 750 } }),
        code: 'lift-out-of-range',
        field: 'origin.horizontal',
      },
      {
        about: 'hands too far in front',
        input: () => ({ mass: 5, origin: { horizontal: 640, vertical: 750 } }),
        code: 'lift-out-of-range',
        field: 'origin.horizontal',
      },
      {
        about: 'five people at one work',
        input: () => ({ mass: 60, origin: { horizontal: 250, vertical: 750 }, people: 5 }),
        code: 'team-too-large',
        field: 'people',
      },
      {
        about: 'a mass of nothing',
        input: () => ({ mass: 0, origin: { horizontal: 250, vertical: 750 } }),
        code: 'bad-input',
        field: 'mass',
      },
    ],
  },
  'crew.plan': {
    answered: [
      {
        about: 'two works on one wall: set out, hang, label, light',
        input: known => ({ exhibition: known.show }),
        output: known => ({
          crew,
          times: expect.arrayContaining([
            {
              key: 'd-rings',
              label: expect.any(String),
              minutes: 17.5,
              least: 15,
              most: 20,
              source: 'from memory',
              own: false,
            },
          ]),
          equipment: [],
          works: [
            {
              ...pans(known),
              tag: 1,
              state: 'planned',
              mass: 4.2,
              method: null,
              class: 'alone',
              why: [],
              people: 1,
              equipment: null,
              access: null,
              minutes: 25,
              start: 10,
              end: 35,
              teams: [1],
              after: [],
            },
            {
              ...causeway(known),
              tag: 2,
              state: 'planned',
              mass: 9.5,
              method: 'd-rings',
              class: 'by hand',
              why: ['heavier than 7\u00a0kg'],
              people: 2,
              equipment: null,
              // Its bearing points are at 1 480 + 910 / 2 − 140 = 1 795, the holes 14 above.
              access: 'steps',
              minutes: 17.5,
              start: 10,
              end: 27.5,
              teams: [2],
              after: [],
            },
          ],
          tasks: [
            task(known, 'set out', null, 0, 10, [1]),
            task(known, 'hang', known.pansPlace, 10, 35, [1]),
            task(known, 'hang', known.causewayPlace, 10, 27.5, [2]),
            task(known, 'labels', null, 35, 43, [1]),
            task(known, 'light', null, 43, 58, [1]),
          ],
          lifting: [
            { ...day(known.pansPlace, 1, 25), index: expect.any(Number) },
            { ...day(known.causewayPlace ?? '', 2, 17.5), index: expect.any(Number) },
          ],
          makespan: 58,
          idle: 40.5,
          idleByTeam: [0, 40.5],
          teamMinutes: 75.5,
          allHandsMinutes: 0,
          plainMinutes: 37.75,
          leastMinutes: 28,
          mostMinutes: 47.5,
          elapsedMinutes: 75.5,
          days: expect.closeTo(75.5 / 360, 9),
          findings: [],
        }),
      },
      {
        about: 'a show with nothing on its walls takes no time',
        input: known => ({ exhibition: known.other }),
        output: () => ({
          crew,
          times: expect.any(Array),
          equipment: [],
          works: [],
          tasks: [],
          lifting: [],
          makespan: 0,
          idle: 0,
          idleByTeam: [0, 0],
          teamMinutes: 0,
          allHandsMinutes: 0,
          plainMinutes: 0,
          leastMinutes: 0,
          mostMinutes: 0,
          elapsedMinutes: 0,
          days: 0,
          findings: [],
        }),
      },
    ],
    refused: [noShow],
  },
  'crew.hardware': {
    answered: [
      {
        about: 'hooks and pads of the work that was measured; four hooks are in stock',
        first: known => [['fixing.stock', { id: known.hook, changes: { inStock: { was: null, to: 4 } } }]],
        input: known => ({ exhibition: known.show }),
        output: known => ({
          spare: 0.125,
          lines: [
            {
              what: 'two-nail hook, 50 lb',
              fixing: known.hook,
              needed: 2,
              spare: 1,
              per: 'work',
              inStock: 4,
              toGet: 0,
              bit: '',
              tool: '',
              chosen: true,
              secondCount: null,
            },
            {
              what: 'bottom pad',
              fixing: null,
              needed: 2,
              spare: 1,
              per: 'work',
              inStock: null,
              toGet: 3,
              bit: '',
              tool: '',
              chosen: true,
              secondCount: null,
            },
          ],
          boxes: [
            {
              face: known.northFace,
              faceName: 'Room 1, north',
              lines: [
                { what: 'two-nail hook, 50 lb', count: 2, works: 1 },
                { what: 'bottom pad', count: 2, works: 1 },
              ],
            },
          ],
          bits: [],
          locks: { byWorks: 0, byMarks: 0, agree: true },
          unknown: [{ ...pans(known), why: expect.stringContaining('back') }],
          findings: [
            {
              severity: 'settle',
              code: 'hardware-unknown',
              subject: { kind: 'placement', id: known.pansPlace },
              text: expect.stringContaining('L-1.1'),
              figures: {},
            },
          ],
        }),
      },
    ],
    refused: [noShow],
  },
  'crew.orders': {
    answered: [
      {
        about: 'the order with tags, turned round to come down, and what is patched',
        input: known => ({ exhibition: known.show }),
        output: known => ({
          hanging: [
            {
              ...pans(known),
              parts: [],
              tag: 1,
              people: 1,
              class: 'alone',
              equipment: '',
              access: null,
              after: [],
              state: 'planned',
            },
            {
              ...causeway(known),
              parts: [],
              tag: 2,
              people: 2,
              class: 'by hand',
              equipment: '',
              access: 'steps',
              after: [],
              state: 'planned',
            },
          ],
          down: [
            {
              ...causeway(known),
              parts: [],
              tag: 2,
              people: 2,
              equipment: '',
              after: [],
              method: 'D-rings',
              locks: 0,
              tool: '',
              steps: expect.arrayContaining([expect.stringContaining('Two people')]),
            },
            {
              ...pans(known),
              parts: [],
              tag: 1,
              people: 1,
              equipment: '',
              after: [],
              method: '',
              locks: 0,
              tool: '',
              steps: [],
            },
          ],
          patches: [{ face: known.northFace, faceName: 'Room 1, north', ...patches }],
          total: patches,
          findings: [],
        }),
      },
    ],
    refused: [noShow],
  },
  'crew.set': {
    answered: [
      {
        about: 'what was saved, and a clash with what somebody else has set',
        input: known => ({
          exhibition: known.show,
          changes: { teams: { was: null, to: 3 }, hours: { was: 7, to: 5 } },
        }),
        output: known => ({
          saved: ['teams'],
          clashes: [{ code: 'clash', id: known.show, field: 'hours', was: 7, yours: 5, theirs: null }],
        }),
      },
    ],
    refused: [
      {
        about: 'half a team',
        input: known => ({ exhibition: known.show, changes: { teams: { was: null, to: 1.5 } } }),
        code: 'bad-input',
        field: 'changes.teams.to',
      },
      {
        about: 'a closed exhibition',
        input: known => ({ exhibition: known.closed, changes: {} }),
        code: 'exhibition-closed',
        field: 'exhibition',
      },
    ],
  },
  'crew.setMinutes': {
    answered: [
      {
        about: 'that the house’s own time is set',
        input: () => ({ key: 'd-rings', was: null, to: 22, source: 'timed in March' }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'something that nobody times',
        input: () => ({ key: 'lunch', was: null, to: 30 }),
        code: 'not-found',
        field: 'key',
      },
      {
        about: 'a time that somebody else has set',
        first: () => [['crew.setMinutes', { key: 'wire', was: null, to: 20 }]],
        input: () => ({ key: 'wire', was: null, to: 18 }),
        code: 'clash',
        field: 'to',
      },
    ],
  },
  'equipment.list': {
    answered: [
      {
        about: 'equipment with what its plate says',
        first: () => [['equipment.add', lift]],
        input: () => ({}),
        output: () => ({ equipment: [{ id: anyId, ...lift, count: 1, note: '' }] }),
      },
    ],
    refused: [
      { about: 'a field that it does not know', input: () => ({ nonsense: 1 }), code: 'bad-input', field: 'nonsense' },
    ],
  },
  'equipment.add': {
    answered: [{ about: 'the new lift', input: () => lift, output: () => ({ id: anyId }) }],
    refused: [
      {
        about: 'a lift that carries less than nothing',
        input: () => ({ ...lift, carriesKg: -1 }),
        code: 'bad-input',
        field: 'carriesKg',
      },
      { about: 'one without a name', input: () => ({ name: ' ' }), code: 'bad-input', field: 'name' },
    ],
  },
  'equipment.update': {
    answered: [
      {
        about: 'that there are two now',
        first: () => [['equipment.add', lift]],
        input: (_, earlier) => ({ id: idOf(earlier[0]), changes: { count: { was: 1, to: 2 } } }),
        output: () => ({ saved: ['count'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'equipment that is not there',
        input: () => ({ id: 'zzzzzz', changes: {} }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
  'equipment.remove': {
    answered: [
      {
        about: 'that it is gone',
        first: () => [['equipment.add', lift]],
        input: (_, earlier) => ({ id: idOf(earlier[0]) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      { about: 'equipment that is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' },
    ],
  },
  'fixing.stock': {
    answered: [
      {
        about: 'that they were counted',
        input: known => ({ id: known.hook, changes: { inStock: { was: null, to: 24 } } }),
        output: () => ({ saved: ['inStock'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'half a hook',
        input: known => ({ id: known.hook, changes: { inStock: { was: null, to: 1.5 } } }),
        code: 'bad-input',
        field: 'changes.inStock.to',
      },
      {
        about: 'a fixing that is not there',
        input: () => ({ id: 'zzzzzz', changes: {} }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
}

function idOf(answered: unknown): string {
  return (answered as { id: string }).id // what equipment.add answers
}
