/** The rows of condition reports, read into what `src/record` computes with. */
import type { ReportPhoto } from '../../../../src/contract/areas/condition-shape.ts'
import { Refusal } from '../../../../src/contract/refusal.ts'
import type { ConditionFinding, ReportKind, Signature } from '../../../../src/record/condition/report.ts'
import type { Spot } from '../../../../src/record/condition/shape.ts'
import type { ReadHandle } from '../../../database/handles.ts'
import { rawMime } from '../../../files/camera-raw.ts'
import { phoneMime } from '../../../files/sniff.ts'
import { notFound } from '../../change.ts'
import { row, rows } from '../../sql.ts'

export interface ReportRow {
  readonly id: string
  readonly work: string
  readonly kind: ReportKind
  readonly examinedAt: string
  readonly place: string
  readonly examiner: string
  readonly packing: string
  readonly note: string
  readonly picture: string | null
  readonly backPicture: string | null
  readonly width: number
  readonly height: number
  readonly depth: number | null
  readonly corrects: string | null
  readonly why: string
  readonly completeAt: string | null
  readonly correctedBy: string | null
}

export const reportColumns = `report.id, report.work, report.kind, report.examined_at AS examinedAt, report.place,
  report.examiner, report.packing, report.note, report.picture, report.back_picture AS backPicture, report.width, report.height, report.depth, report.corrects, report.why,
  (SELECT at FROM condition_seal WHERE condition_seal.report = report.id) AS completeAt,
  (SELECT id FROM condition_report AS later WHERE later.corrects = report.id) AS correctedBy`

export function reportOf(db: ReadHandle, id: string, field = 'id'): ReportRow {
  const found = row<ReportRow>(db, `SELECT ${reportColumns} FROM condition_report AS report WHERE id = :id`, { id })
  if (found === undefined) throw notFound('condition report', field)
  return found
}

/** Refuses `complete`: what two people have signed stays as it is. */
export function draftOf(db: ReadHandle, id: string, field = 'id'): ReportRow {
  const found = reportOf(db, id, field)
  if (found.completeAt === null) return found
  throw new Refusal(
    'complete',
    'This report is complete: two people signed it, and it stays as it is. Correct it by another that refers to it.',
    { field },
  )
}

export interface FindingRow extends ConditionFinding {
  readonly note: string
}

export function findingsOf(db: ReadHandle, report: string): FindingRow[] {
  const stored = rows<Omit<FindingRow, 'number' | 'points'> & { readonly points: string }>(
    db,
    `SELECT id, iif(face = '', side, face) AS side, term, word, form, points, across, age, severity, stable, note, follows FROM condition_finding
     WHERE report = :report ORDER BY position, id`,
    { report },
  )
  return stored.map((each, index) => ({ ...each, number: index + 1, points: JSON.parse(each.points) as Spot[] })) // as it was written
}

export function photosOf(db: ReadHandle, report: string): ReportPhoto[] {
  const stored = rows<Omit<ReportPhoto, 'findings' | 'preview'> & { readonly findings: string; readonly mime: string }>(
    db,
    `SELECT id, hash, mime, name, width_px AS widthPx, height_px AS heightPx, shows, findings, taken_at AS takenAt,
       taken_from AS takenFrom, taken_by AS takenBy
     FROM condition_photo WHERE report = :report ORDER BY position, id`,
    { report },
  )
  // What undo has taken away meanwhile may come back, so its id stays in the row.
  const there = new Set(findingsOf(db, report).map(each => each.id))
  return stored.map(({ mime, ...each }) => ({
    ...each,
    preview: mime === phoneMime || mime === rawMime,
    findings: (JSON.parse(each.findings) as string[]).filter(id => there.has(id)), // as it was written
  }))
}

export interface SignatureRow extends Signature {
  readonly id: string
  readonly at: string
  readonly strokes: number[][]
}

export function signaturesOf(db: ReadHandle, report: string): SignatureRow[] {
  const stored = rows<Omit<SignatureRow, 'strokes'> & { readonly strokes: string }>(
    db,
    'SELECT id, role, name, content, at, strokes FROM condition_signature WHERE report = :report ORDER BY rowid',
    { report },
  )
  return stored.map(each => ({ ...each, strokes: JSON.parse(each.strokes) as number[][] })) // as it was written
}
