/**
 * A wall sheet as it would be printed now, and how that stands to what has been printed. The rule it keeps: a revision
 * is told by what the sheet says, not by its paper, unit or time.
 */
import type { Elevation } from '../../../src/contract/areas/walls.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { defaultSteps } from '../../../src/hang/printing.ts'
import { isOffSheet } from '../../../src/loan/terms/findings.ts'
import { mixedDatums } from '../../../src/model/datum-mixed.ts'
import { datumOf, marksOfFace } from '../../../src/model/marks-of-face.ts'
import type { WallSheetQuestion } from '../../../src/sheets/wall-question.ts'
import { wallSheetContent } from '../../../src/sheets/wall-sheet.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { ruleNumber } from '../rules.ts'
import { elevationOf } from '../walls/elevation.ts'
import { findingsOn } from '../walls/findings.ts'
import { type Standing, standingOf } from './prints.ts'
import type { Style } from './wishes.ts'

export const kind = 'wall sheet'

export interface FaceSheet extends Standing {
  readonly elevation: Elevation
}

function partsOf(db: ReadHandle, elevation: Elevation, style: Pick<Style, 'unit' | 'steps'>) {
  return {
    elevation,
    marks: marksOfFace(elevation, style),
    datum: datumOf(elevation),
    // Each logger's file and each word of a person would void the sheet.
    findings: findingsOn(db, elevation, style).filter(each => !isOffSheet(each)),
    unit: style.unit,
    steps: style.steps,
  }
}

export function faceSheet(db: ReadHandle, exhibition: string, face: string): FaceSheet {
  const elevation = elevationOf(db, exhibition, face)
  // The same for every paper, unit and person.
  const steps = { mm: ruleNumber(db, 'sheetStepMm'), fraction: defaultSteps.fraction }
  const content = wallSheetContent(partsOf(db, elevation, { unit: 'mm', steps }))
  return { elevation, ...standingOf(db, { exhibition, face, kind }, content) }
}

/** Refuses a wall with two datums: one of its numbers would be measured from the wrong floor. */
export function refuseMixed(elevation: Elevation, style: Style, field: string): void {
  const mixed = mixedDatums(elevation, style)
  if (mixed === null) return
  const details = { face: elevation.wall.face, placements: mixed.works.map(work => work.placement) }
  throw new Refusal('datum-mixed', mixed.text, { field, details })
}

/** What the drawing of the sheet is asked with. */
export function questionOf(
  db: ReadHandle,
  sheet: FaceSheet,
  style: Style,
  stamp: { readonly time: string; readonly by: string },
): WallSheetQuestion {
  return {
    ...partsOf(db, sheet.elevation, style),
    paper: style.paper,
    revision: sheet.next,
    voids: sheet.voids,
    ...stamp,
  }
}
