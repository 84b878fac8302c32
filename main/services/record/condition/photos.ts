/** Photographs of a condition report: brought, said what they show, put in order, taken off; none of a complete one. */
import type { Output, Received } from '../../../../src/contract/contract.ts'
import { Refusal } from '../../../../src/contract/refusal.ts'
import type { ReadHandle } from '../../../database/handles.ts'
import { lookAt, notShown } from '../../../files/photograph.ts'
import { changeFields, jsonColumn, notFound } from '../../change.ts'
import { moveBefore, nextPosition, orderedRows } from '../../order.ts'
import type { Job, Writing } from '../../service.ts'
import { insert, remove as removeRow, rows, update, value } from '../../sql.ts'
import { namedReport } from './draft.ts'
import { draftOf, findingsOf, type ReportRow } from './rows.ts'

const ordered = (writing: Writing, report: string) =>
  orderedRows(writing.db, 'condition_photo', 'report = :report', { report })

function refuseTwice(db: ReadHandle, report: string, hash: string, name: string): void {
  const there = value<string>(db, 'SELECT name FROM condition_photo WHERE report = :report AND hash = :hash', {
    report,
    hash,
  })
  if (there === undefined) return
  const sentence = `${name} is in this report already${there === name ? '' : `, as ${there}`}: the two are the same to the last byte.`
  throw new Refusal('same-photograph', sentence, { field: 'handle' })
}

export async function addPhoto(
  job: Job,
  { report, handle, changedAt }: Received<'condition.addPhoto'>,
): Promise<Output<'condition.addPhoto'>> {
  draftOf(job.db, report, 'report')
  try {
    return await takeIn(job, { report, handle, changedAt })
  } finally {
    // Kept or not, what was brought is of no more use, and a card of photographs fills a disk twice.
    job.handles.drop(handle)
  }
}

async function takeIn(
  job: Job,
  { report, handle, changedAt }: Received<'condition.addPhoto'>,
): Promise<Output<'condition.addPhoto'>> {
  const name = job.handles.name(handle)
  const path = job.handles.path(handle)
  job.progress(0, 2, `Reading ${name}`)
  const { takenAt, partial } = await lookAt(path, name)
  job.signal.throwIfAborted()
  job.progress(1, 2, `Keeping ${name}`)
  const { hash, mime, widthPx, heightPx } = await job.store.addPicture(path)
  if (widthPx === null || heightPx === null) throw notShown(name)
  const id = job.newId()
  const from = takenAt !== null ? 'camera' : changedAt !== undefined ? 'file' : ''
  const taken = takenAt ?? (changedAt === undefined ? null : new Date(changedAt).toISOString())
  return job.write(writing => {
    const draft = draftOf(writing.db, report, 'report')
    refuseTwice(writing.db, report, hash, name)
    writing.label(`Add a photograph to ${namedReport(writing.db, draft)}`)
    insert(writing.db, 'condition_photo', {
      id,
      report,
      position: nextPosition(ordered(writing, report)),
      hash,
      mime,
      name,
      width_px: widthPx,
      height_px: heightPx,
      taken_at: taken,
      taken_from: from,
      taken_by: writing.person?.name ?? '',
    })
    return { id, hash, widthPx, heightPx, takenAt: taken, takenFrom: from, partial }
  })
}

function draftOfPhoto(db: ReadHandle, id: string): ReportRow {
  const report = value<string>(db, 'SELECT report FROM condition_photo WHERE id = :id', { id })
  if (report === undefined) throw notFound('photograph')
  return draftOf(db, report)
}

const columns = {
  shows: 'shows',
  takenAt: 'taken_at',
  takenBy: 'taken_by',
  findings: jsonColumn('findings', []),
} as const

export function changePhoto(
  writing: Writing,
  { id, changes }: Received<'condition.updatePhoto'>,
): Output<'condition.updatePhoto'> {
  const { db } = writing
  const report = draftOfPhoto(db, id)
  const known = new Set(findingsOf(db, report.id).map(each => each.id))
  if (changes.findings?.to.some(each => !known.has(each))) throw notFound('finding', 'changes.findings.to')
  writing.label(`Change a photograph of ${namedReport(db, report)}`)
  const { saved, clashes, values } = changeFields(writing, 'condition_photo', id, changes, columns, 'photograph')
  if (saved.includes('takenAt')) {
    update(db, 'condition_photo', id, { taken_from: values.takenAt === null ? '' : 'person' })
  }
  return { saved, clashes }
}

export function movePhoto(
  writing: Writing,
  { id, before }: Received<'condition.movePhoto'>,
): Output<'condition.movePhoto'> {
  const report = draftOfPhoto(writing.db, id)
  const order = ordered(writing, report.id)
  if (before !== null && !order.some(each => each.id === before)) throw notFound('photograph', 'before')
  writing.label(`Put the photographs of ${namedReport(writing.db, report)} in order`)
  if (before !== id) moveBefore(writing.db, 'condition_photo', order, [id], before)
  return { done: true }
}

export function removePhoto(
  writing: Writing,
  { id }: Received<'condition.removePhoto'>,
): Output<'condition.removePhoto'> {
  const report = draftOfPhoto(writing.db, id)
  const drawnOn = value(writing.db, 'SELECT 1 FROM condition_photo WHERE id = :id AND hash = :back', {
    id,
    back: report.backPicture,
  })
  if (drawnOn !== undefined) update(writing.db, 'condition_report', report.id, { back_picture: null })
  writing.label(`Take a photograph off ${namedReport(writing.db, report)}`)
  removeRow(writing.db, 'condition_photo', id)
  return { done: true }
}

/** No photograph of the report says any more that it shows this finding. */
export function forgetFinding({ db }: Writing, report: string, finding: string): void {
  const named = rows<{ id: string; findings: string }>(
    db,
    `SELECT id, findings FROM condition_photo
     WHERE report = :report AND EXISTS (SELECT 1 FROM json_each(findings) WHERE value = :finding)`,
    { report, finding },
  )
  for (const { id, findings } of named) {
    const left = (JSON.parse(findings) as string[]).filter(each => each !== finding) // as it was written
    update(db, 'condition_photo', id, { findings: JSON.stringify(left) })
  }
}
