/** Whether a show fits, and what could hang where. */
import type { sequenceArea } from '../../../src/contract/areas/sequence.ts'
import { anyId, type ExamplesOf } from './types.ts'

const best = { order: 1, balance: 1, light: 1, rhythm: 1 }

export const sequenceExamples: ExamplesOf<keyof typeof sequenceArea> = {
  'sequence.walls': {
    answered: [
      {
        about: 'the walls on the visitor’s way, with what stays on them',
        first: known => [
          ['route.set', { exhibition: known.show, order: { was: [], to: [known.northFace] } }],
          ['placement.hold', { placements: [known.pansPlace], held: true }],
        ],
        input: known => ({ exhibition: known.show }),
        output: known => ({
          ordered: true,
          walls: [
            {
              face: known.northFace,
              room: 'Room 1',
              name: 'north',
              length: 9140,
              height: 3450,
              centreLine: 1480,
              openings: [],
              works: [
                { entry: known.pansEntry, x: 1140, y: 1480, stays: true, rule: 'face', own: null },
                { entry: known.causewayEntry, x: 2367, y: 1480, stays: false, rule: 'face', own: null },
              ],
            },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'a show that is not there',
        input: known => ({ exhibition: known.room }),
        code: 'not-found',
        field: 'exhibition',
      },
    ],
  },
  'sequence.take': {
    answered: [
      {
        about: 'that one hangs where it is proposed, and the other came off its wall',
        input: known => ({
          exhibition: known.show,
          faces: [{ face: known.northFace, works: [{ entry: known.causewayEntry, x: 4570, was: known.northFace }] }],
        }),
        output: () => ({ placed: 1, off: 1 }),
      },
    ],
    refused: [
      {
        about: 'a work that somebody moved meanwhile',
        input: known => ({
          exhibition: known.show,
          faces: [{ face: known.northFace, works: [{ entry: known.pansEntry, x: 4570, was: null }] }],
        }),
        code: 'changed-meanwhile',
        field: 'faces.0.works.0.entry',
      },
      {
        about: 'a work given twice',
        input: known => ({
          exhibition: known.show,
          faces: [
            {
              face: known.northFace,
              works: [
                { entry: known.pansEntry, x: 1000, was: known.northFace },
                { entry: known.pansEntry, x: 3000, was: known.northFace },
              ],
            },
          ],
        }),
        code: 'work-twice',
        field: 'faces.0.works.1.entry',
      },
    ],
  },
  'sequence.capacity': {
    answered: [
      {
        about: 'what the works want and the walls give',
        input: known => ({ exhibition: known.show }),
        // A panel of 600, works of 620, 710 and 400, and after each 60 + 159 + 40 for a label. Both ends of six
        // stretches keep 150 free, and the last label needs no more.
        output: known => ({
          there: 27_014,
          needed: 600 + 620 + 710 + 400 + 4 * 259,
          short: 0,
          gap: 259,
          labels: 3,
          panels: 1,
          stretches: 6,
          sections: [
            { section: known.shore, title: 'The shore', works: 3, unsized: 0, needed: 3366, from: 0, short: 0 },
          ],
          tooWide: [],
          says: 'The works want 3.4 m of 27.0 m: 23.6 m are left over.',
        }),
      },
    ],
    refused: [
      {
        about: 'a show that is not there',
        input: known => ({ exhibition: known.room }),
        code: 'not-found',
        field: 'exhibition',
      },
    ],
  },
  'sequence.propose': {
    answered: [
      {
        about: 'three works on six stretches: in order, and the best of all, both proved',
        input: known => ({ exhibition: known.show, seed: 3, steps: 0 }),
        output: known => ({
          works: 3,
          stays: 0,
          stretches: 6,
          unsized: [],
          bound: { quality: 0.932178, terms: { ...best, evenness: 0.69369, sight: 0.899381 } },
          today: {
            quality: 0.72419,
            terms: { ...best, balance: 0.603915, evenness: 0.308307, sight: 0.43292 },
            works: 2,
          },
          proposals: [
            {
              way: 'in order',
              quality: 0.909317,
              gap: 2.286153,
              proved: true,
              terms: { ...best, evenness: 0.69369, sight: 0.762211 },
              faces: [
                { face: known.northFace, works: [{ entry: anyId, x: 6855 }] },
                { face: anyId, works: [{ entry: anyId, x: 4570 }] },
                { face: anyId, works: [{ entry: anyId, x: 2600 }] },
              ],
              out: [],
            },
            {
              way: 'freer',
              quality: 0.92832,
              gap: 0.385851,
              proved: true,
              terms: { ...best, evenness: 0.670539, sight: 0.899381 },
              faces: [
                { face: known.northFace, works: [{ entry: anyId, x: 6855 }] },
                { face: anyId, works: [{ entry: anyId, x: 4570 }] },
                { face: anyId, works: [{ entry: anyId, x: 2600 }] },
              ],
              out: [],
            },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'a show that is not there',
        input: known => ({ exhibition: known.room }),
        code: 'not-found',
        field: 'exhibition',
      },
    ],
  },
}
