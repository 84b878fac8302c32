/** The wall sheets that outside readers are given: every paper and unit, letters of many scripts, one page and many. */
import { writePdf } from '../../../main/files/pdf/writer.ts'
import { openFaces } from '../../../main/fonts/faces.ts'
import type { Elevation } from '../../../src/contract/areas/walls.ts'
import type { LengthUnit } from '../../../src/sheets/figures.ts'
import type { Paper } from '../../../src/sheets/shapes.ts'
import type { WallSheet } from '../../../src/sheets/wall-sheet.ts'
import { sheetOf } from './made.ts'
import { placed, rowOfWorks, six, wallOf } from './wall.ts'

const at = '2031-03-14T16:20:00.000Z'

export interface Case {
  readonly name: string
  readonly elevation: Elevation
  readonly paper: Paper
  readonly unit: LengthUnit
}

const titles = ['Łódź, evening', 'Кама и Волга', 'Γιάννης', 'Wave 波', 'Tide — “cloth”', 'Việt Nam']
const lettered = wallOf(six.map((given, index) => placed({ ...given, title: titles[index] ?? '' }, index)))
const [first, second, third] = six
if (first === undefined || second === undefined || third === undefined) throw new Error('no works')
const lock = { kind: 'lock', name: 'lock screw', holeOffset: 0, ratedKg: null, tool: 'hex key' } as const
const plainFixing = placed(first, 0).fixing
if (plainFixing === null) throw new Error('no fixing')

/** One on a rail, one locked and drilled, one on a plinth, and a hole that nothing hangs on. */
export const mixed: Elevation = {
  ...wallOf(
    [
      placed(first, 0, {
        fixing: { ...plainFixing, kind: 'rail-hook', name: 'rail hook', holeOffset: 0 },
        back: {
          method: 'picture-rail',
          seenFrom: 'front',
          data: {
            left: { drop: 95, inset: 40 },
            right: { drop: 95, inset: 40 },
            way: 'upright',
            by: { with: 'cable', hook: 18 },
          },
        },
      }),
      placed(second, 1, {
        state: 'locked',
        fixing: { ...plainFixing, kind: 'plate', name: 'hanger plate', holeOffset: -6 },
        keeper: { ...plainFixing, ...lock },
        back: {
          method: 'security-hangers',
          seenFrom: 'front',
          data: {
            left: { drop: 140, inset: 55 },
            right: { drop: 140, inset: 55 },
            lock: { up: 26, left: 355 },
            head: 'upright',
            tool: 'hex-key',
            toolFrom: 'below',
          },
        },
      }),
      placed(third, 2, {
        fixing: null,
        rule: 'hand',
        centreY: 940 + third.height / 2,
        back: {
          method: 'plinth',
          seenFrom: 'front',
          data: { base: { height: 940, width: 660, depth: 660, mass: 26 }, floor: 400 },
        },
      }),
    ],
    6000,
    {
      rail: [
        [0, 2710],
        [6000, 2716],
      ],
      railKgPerMetre: 60,
      ceiling: [
        [0, 3450],
        [6000, 3400],
      ],
    },
  ),
  made: [
    {
      id: 'm1',
      placement: null,
      slot: 'left',
      x: 5000,
      y: 1600,
      bearingY: 1586,
      fixing: 'nail hook',
      kind: 'hook',
      state: 'drilled',
      services: null,
      marked: null,
      drilled: { at, by: 'Tamsin Oake' },
      filled: null,
      note: '',
    },
  ],
}

export const cases: readonly Case[] = [
  { name: 'mixed-A4-mm', elevation: mixed, paper: 'A4', unit: 'mm' },
  { name: 'mixed-Letter-in', elevation: mixed, paper: 'Letter', unit: 'in' },
  { name: 'six-A4-mm', elevation: lettered, paper: 'A4', unit: 'mm' },
  { name: 'six-Letter-in', elevation: lettered, paper: 'Letter', unit: 'in' },
  { name: 'many-A3-in', elevation: rowOfWorks(25), paper: 'A3', unit: 'in' },
  { name: 'many-Tabloid-cm', elevation: rowOfWorks(25), paper: 'Tabloid', unit: 'cm' },
]

/** Writes the sheet's PDF and gives its model. */
export async function writeCase(one: Case, path: string): Promise<WallSheet> {
  const sheet = await sheetOf(one.elevation, { paper: one.paper, unit: one.unit })
  await writePdf(
    path,
    { title: sheet.title, language: 'en', at, pages: sheet.pages, picture: () => null },
    await openFaces(),
  )
  return sheet
}
