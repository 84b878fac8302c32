/** Signed, complete, and set right by another: what is only ever added of a condition report. */
import type { Output, Received } from '../../../../src/contract/contract.ts'
import { Refusal } from '../../../../src/contract/refusal.ts'
import { isSlip } from '../../../../src/record/condition/pen.ts'
import { type Lack, lacksOf, lacksSignatures } from '../../../../src/record/condition/report.ts'
import { lastLink } from '../../../database/chain.ts'
import { contentHash, type SealRow, sealHash } from '../../../database/condition-chain.ts'
import type { Writing } from '../../service.ts'
import { insert, row, rows, type Value } from '../../sql.ts'
import { namedReport } from './draft.ts'
import { draftOf, findingsOf, reportOf, signaturesOf } from './rows.ts'

function refuseLacking([first, ...more]: readonly Lack[]): void {
  if (first === undefined) return
  const others = more.length === 0 ? '' : ` And ${more.length} more.`
  throw new Refusal('incomplete', `${first.text}${others}`, {
    field: 'report',
    details: { lacks: [first, ...more].map(({ code, text }) => ({ code, text })) },
  })
}

export function sign(writing: Writing, input: Received<'condition.sign'>): Output<'condition.sign'> {
  const { db } = writing
  const { strokes } = input
  const report = draftOf(db, input.report, 'report')
  refuseLacking(lacksOf(report, findingsOf(db, report.id)))
  if (strokes.some(stroke => stroke.length % 2 === 1)) {
    throw new Refusal('bad-input', 'Each point of a stroke is two figures, across and down.', { field: 'strokes' })
  }
  if (isSlip(strokes)) {
    throw new Refusal('bad-input', 'That is a dot, not a signature: draw it with the pen or the mouse.', {
      field: 'strokes',
    })
  }
  const id = writing.newId()
  writing.label(`Sign ${namedReport(db, report)} as ${input.role}`)
  insert(db, 'condition_signature', {
    id,
    report: report.id,
    role: input.role,
    name: input.name,
    strokes: JSON.stringify(strokes),
    content: contentHash(db, report.id),
    at: writing.now(),
  })
  return { id }
}

export function complete(writing: Writing, input: Received<'condition.complete'>): Output<'condition.complete'> {
  const { db } = writing
  const report = draftOf(db, input.report, 'report')
  const content = contentHash(db, report.id)
  const unsigned = lacksSignatures(signaturesOf(db, report.id), content)
  refuseLacking([...lacksOf(report, findingsOf(db, report.id)), ...(unsigned === null ? [] : [unsigned])])
  writing.label(`Complete ${namedReport(db, report)}`)
  const seal: SealRow = { id: writing.newId(), report: report.id, content, at: writing.now() }
  insert(db, 'condition_seal', { ...seal, hash: sealHash(db, lastLink(db, 'condition_seal'), seal) })
  return { done: true }
}

export function correct(writing: Writing, input: Received<'condition.correct'>): Output<'condition.correct'> {
  const { db } = writing
  const wrong = reportOf(db, input.report, 'report')
  if (wrong.completeAt === null) {
    throw new Refusal('not-complete', 'This report is a draft: change it, nothing has to be corrected by another.', {
      field: 'report',
    })
  }
  if (wrong.correctedBy !== null) {
    const sentence = 'Another report sets this one right already. Go on with that one.'
    throw new Refusal('corrected-already', sentence, { field: 'report', details: { report: wrong.correctedBy } })
  }
  const id = writing.newId()
  writing.label(`Correct ${namedReport(db, wrong)}`)
  const stored = row<Record<string, Value>>(db, 'SELECT * FROM condition_report WHERE id = :id', { id: wrong.id })
  insert(db, 'condition_report', { ...stored, id, corrects: wrong.id, why: input.why })
  const copies = new Map<string, string>()
  for (const each of rows<Record<string, Value>>(
    db,
    'SELECT * FROM condition_finding WHERE report = :id ORDER BY position, id',
    { id: wrong.id },
  )) {
    const copy = writing.newId()
    copies.set(String(each.id), copy)
    insert(db, 'condition_finding', { ...each, id: copy, report: id })
  }
  for (const each of rows<Record<string, Value>>(
    db,
    'SELECT * FROM condition_photo WHERE report = :id ORDER BY position, id',
    { id: wrong.id },
  )) {
    const shown = (JSON.parse(String(each.findings)) as string[]).flatMap(old => copies.get(old) ?? []) // as it was written
    insert(db, 'condition_photo', { ...each, id: writing.newId(), report: id, findings: JSON.stringify(shown) })
  }
  return { id }
}
