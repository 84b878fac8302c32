/** Marks that were made, locks, late changes. The causeway hangs on D-rings: its holes are at 2 067 and 2 667, 1 809 high. */
import { expect } from 'vitest'
import type { marksArea } from '../../../src/contract/areas/marks.ts'
import type { Name } from '../../../src/contract/contract.ts'
import type { Known } from '../fixture.ts'
import { anyId, anyMoment, type ExamplesOf } from './types.ts'

type First = readonly (readonly [Name, unknown])[]

const near = (value: number) => expect.closeTo(value, 6) as unknown

const marksOf = (known: Known, ...slots: readonly string[]) => ({
  exhibition: known.show,
  face: known.northFace,
  marks: slots.map(slot => ({ placement: known.causewayPlace, slot })),
})

const looked = (known: Known): First => [['mark.services', { ...marksOf(known, 'left', 'right'), checked: true }]]
const drilled = (known: Known): First => [
  ...looked(known),
  ['mark.set', { ...marksOf(known, 'left', 'right'), to: 'drilled' }],
]
/** The causeway leaves the wall: its two holes serve nothing. */
const dropped = (known: Known): First => [
  ...drilled(known),
  [
    'late.take',
    { exhibition: known.show, change: { kind: 'drop', entry: known.causewayEntry }, key: 'leave-gap', moves: [] },
  ],
  ['mark.ofFace', { exhibition: known.show, face: known.northFace }],
]

const tick = { at: anyMoment, by: '' }

const pencil = (known: Known, slot: 'left' | 'right') => ({
  id: anyId,
  placement: known.causewayPlace,
  slot,
  x: slot === 'left' ? 2067 : 2667,
  y: 1809,
  bearingY: 1795,
  fixing: 'two-nail hook, 50 lb',
  kind: 'hook',
  state: 'marked',
  services: tick,
  marked: tick,
  drilled: null,
  filled: null,
  note: '',
})

/** Ids of the holes that serve nothing, as the last of the calls before said. */
function dead(earlier: readonly unknown[]): string[] {
  const last = earlier.at(-1) as { readonly dead: readonly { readonly id: string }[] } // mark.ofFace
  return last.dead.map(mark => mark.id)
}

export const marksExamples: ExamplesOf<keyof typeof marksArea> = {
  'mark.ofFace': {
    answered: [
      {
        about: 'one work marked and looked at, one whose back nobody has measured',
        first: looked,
        input: known => ({ exhibition: known.show, face: known.northFace }),
        output: known => ({
          marks: (['left', 'right'] as const).map(slot => ({
            placement: known.causewayPlace,
            entry: known.causewayEntry,
            name: 'L-1.2',
            slot,
            called: slot,
            planned: { x: slot === 'left' ? 2067 : 2667, y: 1809 },
            state: 'marked',
            made: pencil(known, slot),
            away: 0,
          })),
          dead: [],
          filled: [],
          problems: [
            {
              placement: known.pansPlace,
              name: 'L-1.1',
              text: 'Nobody has measured its back yet. Turn it over: how does it hang, and what are the drops?',
            },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'a wall that is not there',
        input: known => ({ exhibition: known.show, face: 'zzzzzz' }),
        code: 'not-found',
        field: 'face',
      },
    ],
  },
  'mark.set': {
    answered: [
      {
        about: 'two marks in pencil',
        input: known => ({ ...marksOf(known, 'left', 'right'), to: 'marked' }),
        output: () => ({ changed: 2 }),
      },
      {
        about: 'a tick by mistake taken back with its reason',
        first: drilled,
        input: known => ({ ...marksOf(known, 'left'), to: 'marked', reason: 'ticked on the wrong work' }),
        output: () => ({ changed: 1 }),
      },
    ],
    refused: [
      {
        about: 'drilled before anybody looked for services',
        input: known => ({ ...marksOf(known, 'left'), to: 'drilled' }),
        code: 'services-not-checked',
        field: 'marks.0',
      },
      {
        about: 'a hole made undone without a reason',
        first: drilled,
        input: known => ({ ...marksOf(known, 'left'), to: 'planned' }),
        code: 'drilled-stays',
        field: 'reason',
      },
      {
        about: 'a work whose back is not measured',
        input: known => ({ ...marksOf(known), marks: [{ placement: known.pansPlace, slot: 'left' }], to: 'marked' }),
        code: 'no-marks',
        field: 'marks.0.placement',
      },
      {
        about: 'a mark that the method does not have',
        input: known => ({ ...marksOf(known, 'lock'), to: 'marked' }),
        code: 'not-found',
        field: 'marks.0.slot',
      },
    ],
  },
  'mark.services': {
    answered: [
      {
        about: 'two marks looked at',
        input: known => ({ ...marksOf(known, 'left', 'right'), checked: true }),
        output: () => ({ changed: 2 }),
      },
    ],
    refused: [
      {
        about: 'taken back after drilling',
        first: drilled,
        input: known => ({ ...marksOf(known, 'left'), checked: false }),
        code: 'drilled-stays',
        field: 'marks.0',
      },
    ],
  },
  'mark.fill': {
    answered: [
      {
        about: 'the holes of a work that left',
        first: dropped,
        input: (_, earlier) => ({ marks: dead(earlier), filled: true }),
        output: () => ({ changed: 2 }),
      },
    ],
    refused: [
      {
        about: 'a hole that is not there',
        input: () => ({ marks: ['zzzzzz'], filled: true }),
        code: 'not-found',
        field: 'marks.0',
      },
    ],
  },
  'mark.note': {
    answered: [
      {
        about: 'what was found behind a dead hole',
        first: dropped,
        input: (_, earlier) => ({ id: dead(earlier)[0] ?? '', note: 'soft plaster, filled twice' }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a mark that is not there',
        input: () => ({ id: 'zzzzzz', note: 'x' }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
  'lock.list': {
    answered: [
      {
        about: 'a show without locks',
        input: known => ({ exhibition: known.show }),
        output: () => ({ locks: [] }),
      },
    ],
    refused: [{ about: 'no show', input: () => ({}), code: 'bad-input', field: 'exhibition' }],
  },
  'late.offer': {
    answered: [
      {
        about: 'a frame 52 mm wider on drilled marks, its rings as far from the edges as before',
        first: drilled,
        input: known => ({
          exhibition: known.show,
          change: { kind: 'different', entry: known.causewayEntry, width: 762, height: 910 },
        }),
        output: () => ({
          offers: expect.arrayContaining([
            expect.objectContaining({
              key: 'centre',
              moves: [],
              off: [],
              cost: {
                hungMoved: 0,
                moved: 0,
                newHoles: expect.any(Number),
                deadHoles: expect.any(Number),
                labels: 0,
                gapSpread: 0,
                ends: near(26),
                offLine: 0,
              },
            }),
          ]),
          problem: '',
          voids: [],
        }),
      },
      {
        about: 'a work dropped from a drilled wall',
        first: drilled,
        input: known => ({ exhibition: known.show, change: { kind: 'drop', entry: known.causewayEntry } }),
        output: known => ({
          offers: expect.arrayContaining([
            {
              key: 'leave-gap',
              says: ['Leave its place empty; nothing moves.'],
              cost: {
                hungMoved: 0,
                moved: 0,
                newHoles: 0,
                deadHoles: 2,
                labels: 0,
                gapSpread: 0,
                ends: near(1342),
                offLine: 0,
              },
              price: near(40 + 134.2),
              moves: [],
              off: [{ entry: known.causewayEntry, placement: known.causewayPlace, name: 'L-1.2' }],
              newHoles: [],
              deadHoles: [
                { face: known.northFace, mark: anyId, x: 2067, y: 1809 },
                { face: known.northFace, mark: anyId, x: 2667, y: 1809 },
              ],
            },
          ]),
          problem: '',
          voids: [],
        }),
      },
    ],
    refused: [
      {
        about: 'a work that is not on a wall',
        input: known => ({ exhibition: known.show, change: { kind: 'drop', entry: known.rakingEntry } }),
        code: 'not-found',
        field: 'change.entry',
      },
    ],
  },
  'late.take': {
    answered: [
      {
        about: 'a work taken off the wall',
        input: known => ({
          exhibition: known.show,
          change: { kind: 'drop', entry: known.causewayEntry },
          key: 'leave-gap',
          moves: [],
        }),
        output: () => ({ moved: 0, taken: 1 }),
      },
      {
        about: 'both works of a wall 50 mm lower',
        input: known => ({
          exhibition: known.show,
          change: { kind: 'lower', by: 50, faces: [known.northFace] },
          key: 'lower-free',
          moves: [
            { entry: known.pansEntry, x: 1140, y: 1430 },
            { entry: known.causewayEntry, x: 2367, y: 1430 },
          ],
        }),
        output: () => ({ moved: 2, taken: 0 }),
      },
    ],
    refused: [
      {
        about: 'a way out that was not offered',
        input: known => ({
          exhibition: known.show,
          change: { kind: 'drop', entry: known.causewayEntry },
          key: 'leave-gap',
          moves: [{ entry: known.pansEntry, x: 5, y: 5 }],
        }),
        code: 'offer-gone',
        field: 'key',
      },
    ],
  },
}
