/** Pictures under the plan: one pixel wide and high, so that every figure is known. */
import { onePixel } from '../fixture.ts'
import { anyId, type ExamplesOf, type Refused, unknownField } from './types.ts'

const files = [{ name: 'ground-floor.png', bytes: onePixel }]
const first = () => [['underlay.add', { handle: '$1', at: [1000, 500], mmPerPx: 10 }]] as const
const idOf = (earlier: readonly unknown[]) => (earlier[0] as { id: string }).id // what underlay.add answered
const row = (known: { pansPictureHash: string }, more: object = {}) => ({
  id: anyId,
  storey: '',
  name: 'ground-floor.png',
  hash: known.pansPictureHash,
  widthPx: 1,
  heightPx: 1,
  at: [1000, 500],
  turn: 0,
  mmPerPx: 10,
  shown: true,
  ...more,
})
const nowhere: Refused = {
  about: 'a picture that is not there',
  input: () => ({ id: 'nowhere' }),
  code: 'not-found',
  field: 'id',
}

export const underlayExamples: ExamplesOf<
  'underlay.list' | 'underlay.add' | 'underlay.update' | 'underlay.scale' | 'underlay.remove'
> = {
  'underlay.list': {
    answered: [
      { about: 'nothing under the plan', input: () => ({}), output: () => ({ underlays: [] }) },
      {
        about: 'the picture, its place and its scale',
        files,
        first,
        input: () => ({}),
        output: known => ({ underlays: [row(known)] }),
      },
    ],
    refused: [unknownField],
  },
  'underlay.add': {
    answered: [
      {
        about: 'a picture as it lies: 20 m wide until somebody scales it',
        files,
        input: () => ({ handle: '$1', storey: 'first floor' }),
        output: known => row(known, { storey: 'first floor', at: [0, 0], mmPerPx: 1000 }),
      },
    ],
    refused: [
      {
        about: 'a file that is no picture',
        files: [{ name: 'plan.png', bytes: new TextEncoder().encode('a plan') }],
        input: () => ({ handle: '$1' }),
        code: 'no-picture',
        field: 'handle',
      },
    ],
  },
  'underlay.update': {
    answered: [
      {
        about: 'it moved, turned and hidden',
        files,
        first,
        input: (_, earlier) => ({
          id: idOf(earlier),
          changes: {
            at: { was: [1000, 500], to: [0, 0] },
            turn: { was: 0, to: -90 },
            shown: { was: true, to: false },
          },
        }),
        output: () => ({ saved: ['shown', 'turn', 'at'], clashes: [] }),
      },
    ],
    refused: [{ ...nowhere, input: () => ({ id: 'nowhere', changes: {} }) }],
  },
  'underlay.scale': {
    answered: [
      {
        // 200 mm on the plan are 500 in the house: each pixel 25 mm; the first point, 10 px in, stays at 1,100.
        about: 'two and a half times as large about the first point',
        files,
        first,
        input: (_, earlier) => ({ id: idOf(earlier), from: [1100, 500], to: [1300, 500], distance: 500 }),
        output: known => row(known, { at: [850, 500], mmPerPx: 25 }),
      },
    ],
    refused: [
      {
        about: 'one point twice',
        files,
        first,
        input: (_, earlier) => ({ id: idOf(earlier), from: [1100, 500], to: [1100, 500], distance: 500 }),
        code: 'no-scale',
        field: 'to',
      },
    ],
  },
  'underlay.remove': {
    answered: [
      {
        about: 'that it is off',
        files,
        first,
        input: (_, earlier) => ({ id: idOf(earlier) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [nowhere],
  },
}
