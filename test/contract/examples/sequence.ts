/** Whether a show fits, and what could hang where. */
import type { sequenceArea } from '../../../src/contract/areas/sequence.ts'
import { anyId, type ExamplesOf } from './types.ts'

const best = { order: 1, balance: 1, light: 1, rhythm: 1 }

/** Whom the line of a wall serves: 1,480 as it is, 1,228 at best. */
const linesOf = (face: unknown) => ({
  face,
  now: { y: 1480, least: 0.865841, served: [{ kind: 'standing', share: 0.865841 }] },
  best: { y: 1228, least: 0.999999, served: [{ kind: 'standing', share: 0.999999 }] },
})

/** How a section hangs that nobody has asked otherwise. */
const inRow = {
  hang: 'row' as const,
  rows: 2,
  columns: 4,
  align: 'axis' as const,
  gapDown: 80,
  gapAcross: 80,
  alike: 50,
  lowest: null,
  highest: null,
  house: { lowest: 700, highest: 2300 },
  units: [],
  outside: [],
}

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
              rule: 'centre',
              centreLine: 1480,
              eyeFraction: 0.5,
              ramp: [],
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
      {
        about: 'that one hangs where it is proposed, and the other is let stay',
        input: known => ({
          exhibition: known.show,
          faces: [
            {
              face: known.northFace,
              others: 'stay',
              works: [{ entry: known.causewayEntry, x: 4570, was: known.northFace }],
            },
          ],
        }),
        output: () => ({ placed: 1, off: 0 }),
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
  'sequence.sections': {
    answered: [
      {
        about: 'a section that hangs in one row',
        input: known => ({ exhibition: known.show }),
        // Works of 620, 710 and 400, and after each 60 + 159 + 40 for a label.
        output: known => ({
          sections: [
            { ...inRow, section: known.shore, title: 'The shore', works: 3, wants: 2507, inRow: 2507 },
            { ...inRow, section: known.boats, title: 'Boats', works: 0, wants: 0, inRow: 0 },
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
  'sequence.capacity': {
    answered: [
      {
        about: 'what the works want and the walls give',
        input: known => ({ exhibition: known.show }),
        // A panel of 600, works of 620, 710 and 400, and after each 60 + 159 + 40 for a label. Both ends of six
        // stretches keep 150 free, and the last label needs no more.
        output: known => ({
          there: 26_186,
          needed: 600 + 620 + 710 + 400 + 4 * 259,
          short: 0,
          gap: 259,
          labels: 3,
          stacked: 0,
          panels: 1,
          stretches: 6,
          sections: [
            { section: known.shore, title: 'The shore', works: 3, unsized: 0, needed: 3366, from: 0, short: 0 },
          ],
          tooWide: [],
          says: 'The works want 3.4 m of 26.2 m: 22.8 m are left over.',
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
          // The best is proved, so nothing is better.
          bound: { quality: 0.92832, terms: { ...best, evenness: 0.69369, sight: 0.899381 } },
          today: {
            quality: 0.719361,
            terms: { ...best, balance: 0.57494, evenness: 0.308307, sight: 0.43292 },
            works: 2,
          },
          proposals: [
            {
              way: 'in order',
              quality: 0.909317,
              gap: 1.900302,
              proved: true,
              terms: { ...best, evenness: 0.69369, sight: 0.762211 },
              faces: [
                { face: known.northFace, works: [{ entry: anyId, x: 6855 }] },
                { face: anyId, works: [{ entry: anyId, x: 4570 }] },
                { face: anyId, works: [{ entry: anyId, x: 2600 }] },
              ],
              lines: [linesOf(known.northFace), linesOf(anyId), linesOf(anyId)],
              out: [],
              outOfOrder: [],
              keeps: [],
            },
            {
              way: 'freer',
              quality: 0.92832,
              gap: 0,
              proved: true,
              terms: { ...best, evenness: 0.670539, sight: 0.899381 },
              faces: [
                { face: known.northFace, works: [{ entry: anyId, x: 6855 }] },
                { face: anyId, works: [{ entry: anyId, x: 4570 }] },
                { face: anyId, works: [{ entry: anyId, x: 2600 }] },
              ],
              lines: [linesOf(known.northFace), linesOf(anyId), linesOf(anyId)],
              out: [],
              outOfOrder: [anyId],
              keeps: [],
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
  'sequence.explain': {
    answered: [
      {
        about: 'a work: why here, and the next best place with its price',
        input: known => ({ exhibition: known.show, of: { entry: known.pansEntry } }),
        // The quality is that of today where its works stand; with the work there, what changes in equal gaps, it is 0.792359.
        output: known => {
          const there = {
            face: anyId,
            x: 2600,
            swapped: null,
            price: -7.299809,
            lost: { order: 0, balance: -1.52877, evenness: -3.179261, light: 0, sight: -2.591778, rhythm: 0 },
          }
          return {
            quality: 0.719361,
            works: 2,
            work: {
              entry: known.pansEntry,
              face: known.northFace,
              stays: false,
              unit: null,
              served: { here: 0.865841, most: 0.865841 },
              axes: [],
              light: { limit: null, planned: null, beside: [{ entry: known.causewayEntry, limit: null }] },
              stretches: 6,
              barred: { tooWide: 0, tooMuchLight: 0, tooHigh: 0, tooLow: 0, byRule: 0 },
              rules: [],
              next: there,
              elsewhere: there,
              looked: 7,
            },
            wall: null,
          }
        },
      },
      {
        about: 'a wall of a hang that is given',
        input: known => ({
          exhibition: known.show,
          faces: [{ face: known.northFace, works: [{ entry: known.causewayEntry, x: 6855 }] }],
          weights: { order: 1, balance: 2, evenness: 1, light: 1, sight: 1, rhythm: 0 },
          of: { face: known.northFace },
        }),
        // Ends of 150 each: 4,150 and 4,570 leave 3,850 and, beside the work of 710, 3,560.
        output: known => ({
          quality: 0.557595,
          works: 1,
          work: null,
          wall: {
            face: known.northFace,
            lost: { order: 0, balance: 0, evenness: 3.291645, light: 0, sight: 0.558997, rhythm: 0 },
            stretches: [
              { from: 0, to: 4150, works: 0, width: 0, share: 263.37124, left: 3712, off: 0, served: null, axes: [] },
              {
                ...{ from: 4570, to: 9140, works: 1, width: 710, share: 290.025679, left: 3422, off: 0 },
                ...{ served: 0.865841, axes: [] },
              },
            ],
            drop: null,
            longer: { by: 400, gain: 0.200616, fits: [] },
            cleared: { label: 'thermostat', from: 0, to: 9140, gives: 9140, was: 4570, gain: 2.70929 },
            partition: null,
          },
        }),
      },
    ],
    refused: [
      {
        about: 'a work that is not in the show',
        input: known => ({ exhibition: known.show, of: { entry: known.room } }),
        code: 'not-found',
        field: 'of.entry',
      },
      {
        about: 'a wall that is not there',
        input: known => ({ exhibition: known.show, of: { face: known.room } }),
        code: 'not-found',
        field: 'of.face',
      },
    ],
  },
}
