/** Wall sheets made for the tests with the real faces. */
import { openFaces } from '../../../main/fonts/faces.ts'
import type { Elevation } from '../../../src/contract/areas/walls.ts'
import { defaultSteps } from '../../../src/hang/printing.ts'
import { faceFindings } from '../../../src/model/face-findings.ts'
import { datumOf, marksOfFace } from '../../../src/model/marks-of-face.ts'
import type { WallSheetQuestion } from '../../../src/sheets/wall-question.ts'
import { type WallSheet, wallSheet } from '../../../src/sheets/wall-sheet.ts'

export function question(elevation: Elevation, more: Partial<WallSheetQuestion> = {}): WallSheetQuestion {
  const style = { unit: more.unit ?? 'mm', steps: more.steps ?? defaultSteps }
  return {
    elevation,
    marks: marksOfFace(elevation, style),
    datum: datumOf(elevation),
    findings: faceFindings(elevation, style),
    paper: 'A4',
    revision: 4,
    voids: [1, 2, 3],
    time: '14 March 2031, 16:20',
    by: 'Tamsin Oake',
    ...style,
    ...more,
  }
}

export async function sheetOf(elevation: Elevation, more: Partial<WallSheetQuestion> = {}): Promise<WallSheet> {
  return wallSheet(question(elevation, more), await openFaces())
}
