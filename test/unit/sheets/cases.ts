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
export const cases: readonly Case[] = [
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
