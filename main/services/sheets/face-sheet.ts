/**
 * A wall sheet as it would be printed now, and how that stands to what has been printed. The rule it keeps: a revision
 * is told by what the sheet says, not by its paper, unit or time.
 */
import { createHash } from 'node:crypto'
import type { Elevation } from '../../../src/contract/areas/walls.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { Finding } from '../../../src/contract/shared.ts'
import { defaultSteps } from '../../../src/hang/printing.ts'
import { mixedDatums } from '../../../src/model/datum-mixed.ts'
import { faceFindings, unsettled } from '../../../src/model/face-findings.ts'
import { datumOf, marksOfFace } from '../../../src/model/marks-of-face.ts'
import type { WallSheetQuestion } from '../../../src/sheets/wall-question.ts'
import { wallSheetContent } from '../../../src/sheets/wall-sheet.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { ruleNumber } from '../rules.ts'
import { rows } from '../sql.ts'
import { elevationOf } from '../walls/elevation.ts'
import { findingsWithParts } from '../works/findings.ts'
import type { Style } from './wishes.ts'

export const kind = 'wall sheet'

interface Print {
  readonly revision: number
  readonly hash: string
  readonly at: string
  readonly by: string
}

export interface FaceSheet {
  readonly elevation: Elevation
  /** Hash of what the sheet says now. */
  readonly hash: string
  readonly last: Print | null
  readonly upToDate: boolean
  /** The revision that printing now would give. */
  readonly next: number
  /** Revisions that are no longer good; `next` itself is never among them. */
  readonly voids: readonly number[]
}

function findingsOf(db: ReadHandle, elevation: Elevation, style: Pick<Style, 'unit' | 'steps'>): readonly Finding[] {
  const ids = elevation.works.map(({ work }) => work)
  const works = findingsWithParts(db, ids, style)
  return unsettled([...faceFindings(elevation, style), ...works], elevation.settled)
}

function partsOf(db: ReadHandle, elevation: Elevation, style: Pick<Style, 'unit' | 'steps'>) {
  return {
    elevation,
    marks: marksOfFace(elevation, style),
    datum: datumOf(elevation),
    findings: findingsOf(db, elevation, style),
    unit: style.unit,
    steps: style.steps,
  }
}

/** Prints of one face, newest last. */
function printsOf(db: ReadHandle, exhibition: string, face: string): readonly Print[] {
  return rows<Print>(
    db,
    `SELECT revision, hash, at, "by" FROM sheet_print
     WHERE exhibition = :exhibition AND face = :face AND kind = :kind ORDER BY revision, at, id`,
    { exhibition, face, kind },
  )
}

export function faceSheet(db: ReadHandle, exhibition: string, face: string): FaceSheet {
  const elevation = elevationOf(db, exhibition, face)
  // The same for every paper, unit and person.
  const steps = { mm: ruleNumber(db, 'sheetStepMm'), fraction: defaultSteps.fraction }
  const hash = createHash('sha256')
    .update(wallSheetContent(partsOf(db, elevation, { unit: 'mm', steps })))
    .digest('hex')
  const prints = printsOf(db, exhibition, face)
  const last = prints.at(-1) ?? null
  const upToDate = last?.hash === hash
  const next = upToDate ? last.revision : (last?.revision ?? 0) + 1
  const voids = [...new Set(prints.map(print => print.revision))].filter(revision => revision < next)
  return { elevation, hash, last, upToDate, next, voids }
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
