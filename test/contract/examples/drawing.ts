/** Plans from drawings: the drawings are written by hand in dxf-files.ts, so that each length below is known. */
import { expect } from 'vitest'
import { dxfOf, oneRoom, oneRoomWords } from '../dxf-files.ts'
import { anyId, type ExamplesOf } from './types.ts'

const inMillimetres = { name: 'east.dxf', bytes: dxfOf(oneRoom, oneRoomWords) }
const withoutUnit = { name: 'east.dxf', bytes: dxfOf(oneRoom, oneRoomWords, null) }

const wall = (from: [number, number], to: [number, number], length: number) => ({
  from,
  to,
  length,
  angle: 90,
  thickness: 200,
  openings: [],
})

/** 5.4 by 4.4 of each unit: metres and feet make a house, and so do the millimetres that it is in. */
const house = (unit: string, mm: number) => ({ unit, width: 5400 * mm, height: 4400 * mm, house: true })
const sizes = [
  house('mm', 1),
  house('cm', 10),
  house('dm', 100),
  house('in', 25.4),
  { ...house('m', 1000), house: false },
  { ...house('ft', 304.8), house: false },
]

const layers = (length: number | null) => [
  // 2 × (5 + 4) m inside, 2 × (5.4 + 4.4) m outside.
  { name: 'A-WALL', lines: 8, length: length && 37_600, words: 0, off: false, chosen: true },
  { name: 'A-FURN', lines: 4, length: length && 3200, words: 0, off: false, chosen: false },
  { name: 'WORDS', lines: 0, length: length && 0, words: 2, off: false, chosen: false },
  { name: '0', lines: 0, length: length && 0, words: 0, off: false, chosen: false },
]

export const drawingExamples: ExamplesOf<'drawing.read' | 'drawing.take'> = {
  'drawing.read': {
    answered: [
      {
        about: 'the room within the inner lines, named by the words in it, as thick as the lines are apart',
        files: [inMillimetres],
        input: () => ({ handle: '$1' }),
        output: () => ({
          name: 'east.dxf',
          version: 'AC1015',
          statedUnit: 'mm',
          unit: 'mm',
          sizes,
          layers: layers(1),
          box: [0, 0, 5400, 4400],
          lines: [
            {
              layer: 0,
              ends: [
                ...[200, 4200, 5200, 4200, 5200, 4200, 5200, 200, 5200, 200, 200, 200, 200, 200, 200, 4200],
                ...[0, 4400, 5400, 4400, 5400, 4400, 5400, 0, 5400, 0, 0, 0, 0, 0, 0, 4400],
              ],
            },
            {
              layer: 1,
              ends: [1200, 3200, 2100, 3200, 2100, 3200, 2100, 2500, 2100, 2500, 1200, 2500, 1200, 2500, 1200, 3200],
            },
          ],
          notDrawn: 0,
          outlines: [
            {
              key: '1',
              name: 'East Cabinet',
              number: '104',
              area: 20,
              about: false,
              refused: '',
              walls: [
                wall([200, 200], [5200, 200], 5000),
                wall([5200, 200], [5200, 4200], 4000),
                wall([5200, 4200], [200, 4200], 5000),
                wall([200, 4200], [200, 200], 4000),
              ],
            },
          ],
          ask: '',
          remarks: [],
        }),
      },
      {
        about: 'what the whole would be in each unit, where the drawing says none',
        files: [withoutUnit],
        input: () => ({ handle: '$1' }),
        output: () =>
          expect.objectContaining({
            statedUnit: null,
            unit: null,
            ask: 'unit',
            outlines: [],
            sizes,
            layers: layers(null),
          }),
      },
    ],
    refused: [
      {
        about: 'a file that is no drawing',
        files: [{ name: 'letter.dxf', bytes: new TextEncoder().encode('Dear Sir,\nhere is the plan.\n') }],
        input: () => ({ handle: '$1' }),
        code: 'not-dxf',
        field: 'handle',
      },
      {
        about: 'a binary DXF',
        files: [{ name: 'plan.dxf', bytes: new TextEncoder().encode('AutoCAD Binary DXF\r\n\u001a\0\0\0SECTION') }],
        input: () => ({ handle: '$1' }),
        code: 'binary-dxf',
        field: 'handle',
      },
      {
        about: 'a drawing that ends in the middle',
        files: [{ name: 'plan.dxf', bytes: dxfOf(oneRoom).slice(0, 300) }],
        input: () => ({ handle: '$1' }),
        code: 'damaged-dxf',
        field: 'handle',
      },
      {
        about: 'a drawing without a line',
        files: [{ name: 'plan.dxf', bytes: dxfOf([], oneRoomWords) }],
        input: () => ({ handle: '$1' }),
        code: 'no-lines',
        field: 'handle',
      },
      {
        about: 'a layer that it does not have',
        files: [inMillimetres],
        input: () => ({ handle: '$1', layers: ['A-WALL', 'GHOST'] }),
        code: 'not-found',
        field: 'layers.1',
      },
    ],
  },
  'drawing.take': {
    answered: [
      {
        about: 'the room as it was made',
        files: [inMillimetres],
        input: () => ({ handle: '$1', rooms: [{ outline: '1', name: 'East Cabinet', number: '104' }], height: 3200 }),
        output: () => ({ rooms: [{ id: anyId, name: 'East Cabinet' }], openings: 0, doorways: 0 }),
      },
    ],
    refused: [
      {
        about: 'a drawing whose unit nobody has said',
        files: [withoutUnit],
        input: () => ({ handle: '$1', rooms: [{ outline: '1', name: 'East Cabinet' }], height: 3200 }),
        code: 'unit-unknown',
        field: 'unit',
      },
      {
        about: 'an outline that is not there',
        files: [inMillimetres],
        input: () => ({ handle: '$1', rooms: [{ outline: '7', name: 'East Cabinet' }], height: 3200 }),
        code: 'not-found',
        field: 'rooms.0.outline',
      },
    ],
  },
}
