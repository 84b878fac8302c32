/** Condition reports as they are written: begun, changed, taken away, and the findings marked on them. */
import type { Output, Received } from '../../../../src/contract/contract.ts'
import { Refusal } from '../../../../src/contract/refusal.ts'
import { type Face, isPlaced, type Shape, type Side } from '../../../../src/record/condition/shape.ts'
import { faceOfSide, needsDepth, onSide } from '../../../../src/record/condition/sides.ts'
import type { ReadHandle } from '../../../database/handles.ts'
import { type Changed, changeFields, notFound, same } from '../../change.ts'
import type { Writing } from '../../service.ts'
import { sheetTime } from '../../sheets/wishes.ts'
import { insert, remove as removeRow, row, rows, update, value } from '../../sql.ts'
import { workName } from '../../works/facts.ts'
import { depthOf } from './depth.ts'
import { forgetFinding } from './photos.ts'
import { draftOf, findingsOf, type ReportRow, signaturesOf } from './rows.ts'
import { wordOf } from './words.ts'

/** A clock that is a minute ahead of another is no report from the future. */
const clockSlack = 60_000

function examined(now: string, at: string | undefined, field: string): string {
  const moment = new Date(at ?? now).toISOString()
  if (Date.parse(moment) <= Date.parse(now) + clockSlack) return moment
  const sentence = `It is ${sheetTime(now)} now: nobody has examined it on ${sheetTime(moment)} yet.`
  throw new Refusal('in-the-future', sentence, { field })
}

export const namedReport = (db: ReadHandle, { work, kind }: Pick<ReportRow, 'work' | 'kind'>) =>
  `the ${kind} report of ${workName(db, work)}`

export function add(writing: Writing, input: Received<'condition.add'>): Output<'condition.add'> {
  const { db } = writing
  const work = row<{ picture: string | null; width: number | null; height: number | null; depth: number | null }>(
    db,
    `SELECT picture, hang_depth AS depth, coalesce(hang_width, hang_diameter) AS width, coalesce(hang_height, hang_diameter) AS height
     FROM work WHERE id = :id`,
    { id: input.work },
  )
  if (work === undefined) throw notFound('work', 'work')
  const { picture, width, height, depth } = work
  if (width === null || height === null) {
    const sentence = `Nobody has said how large ${workName(db, input.work)} is, so no finding could be measured on it. Give it a size first.`
    throw new Refusal('no-size', sentence, { field: 'work' })
  }
  const id = writing.newId()
  writing.label(`Begin ${namedReport(db, input)}`)
  insert(db, 'condition_report', {
    id,
    work: input.work,
    kind: input.kind,
    examined_at: examined(writing.now(), input.examinedAt, 'examinedAt'),
    place: input.place ?? '',
    examiner: input.examiner ?? writing.person?.name ?? '',
    picture,
    width,
    height,
    depth,
  })
  return { id }
}

const columns = {
  kind: 'kind',
  examinedAt: 'examined_at',
  place: 'place',
  examiner: 'examiner',
  packing: 'packing',
  note: 'note',
  backPicture: 'back_picture',
} as const

export function change(writing: Writing, input: Received<'condition.update'>): Output<'condition.update'> {
  const report = draftOf(writing.db, input.id)
  const { examinedAt, ...more } = input.changes
  const at =
    examinedAt === undefined
      ? undefined
      : { ...examinedAt, to: examined(writing.now(), examinedAt.to, 'changes.examinedAt.to') }
  checkBack(writing.db, report, input.changes.backPicture?.to)
  writing.label(`Change ${namedReport(writing.db, report)}`)
  const changes = { ...more, ...(at === undefined ? {} : { examinedAt: at }) }
  const { saved, clashes } = changeFields(writing, 'condition_report', input.id, changes, columns, 'condition report')
  return { saved, clashes }
}

/** The back is drawn on a photograph of the report or a picture of the work, not on any file that is kept. */
function checkBack(db: ReadHandle, report: ReportRow, hash: string | null | undefined): void {
  if (hash === null || hash === undefined) return
  const there = value<number>(
    db,
    `SELECT EXISTS (SELECT 1 FROM condition_photo WHERE report = :report AND hash = :hash)
       OR EXISTS (SELECT 1 FROM picture WHERE work = :work AND hash = :hash)`,
    { report: report.id, work: report.work, hash },
  )
  if (there === 1) return
  const sentence = 'That is no picture of this report or this work: add the photograph of the back to the report first.'
  throw new Refusal('bad-input', sentence, { field: 'changes.backPicture.to' })
}

export function remove(writing: Writing, { id }: Received<'condition.remove'>): Output<'condition.remove'> {
  const { db } = writing
  const report = draftOf(db, id)
  if (signaturesOf(db, id).length > 0) {
    throw new Refusal(
      'recorded',
      'Somebody has signed this report, so it stays. It can still be changed and signed anew.',
      {
        field: 'id',
      },
    )
  }
  const damage = value<string>(
    db,
    `SELECT reference FROM damage WHERE report = :id OR id IN (SELECT damage FROM damage_word WHERE report = :id) LIMIT 1`,
    { id },
  )
  if (damage !== undefined) {
    const sentence = `The record of damage ${damage} names this report, so it stays. It can still be changed.`
    throw new Refusal('recorded', sentence, { field: 'id' })
  }
  writing.label(`Take ${namedReport(db, report)} away`)
  for (const table of ['condition_finding', 'condition_photo']) {
    for (const each of rows<{ id: string }>(db, `SELECT id FROM ${table} WHERE report = :id`, { id })) {
      removeRow(db, table, each.id)
    }
  }
  removeRow(db, 'condition_report', id)
  return { done: true }
}

function refuseBeside(shape: Pick<Shape, 'form' | 'points'>, face: Face, field: string): void {
  if (isPlaced(shape, face)) return
  const beside = shape.points.some(({ x, y }) => x > face.width || y > face.height)
  const needs = {
    mark: 'A mark is one point.',
    outline: 'An outline has two points or more.',
    area: 'An area has three points or more.',
  }
  throw new Refusal(
    'bad-input',
    beside ? 'That lies beside the work: a finding is marked on its face.' : needs[shape.form],
    { field },
  )
}

/** Refuses `no-depth`. */
function faceFor(db: ReadHandle, report: ReportRow, side: Side): Face {
  const face = faceOfSide({ ...report, depth: depthOf(db, report) }, side)
  if (face !== null) return face
  const sentence = `Nobody has measured how deep ${workName(db, report.work)} is, so nothing could be measured ${onSide[side]}. Give it a depth first.`
  throw new Refusal('no-depth', sentence, { field: 'side' })
}

/** What it goes on from stands in a complete report of the same work, or it could be taken away under it. */
function checkFollows(db: ReadHandle, follows: string | null | undefined, report: ReportRow, field: string): void {
  if (follows === null || follows === undefined) return
  const found = row<{ work: string; report: string; sealed: number }>(
    db,
    `SELECT report.work, report.id AS report, EXISTS (SELECT 1 FROM condition_seal WHERE condition_seal.report = report.id) AS sealed
     FROM condition_finding AS finding JOIN condition_report AS report ON report.id = finding.report WHERE finding.id = :follows`,
    { follows },
  )
  if (found === undefined) throw notFound('finding', field)
  if (found.work !== report.work) {
    throw new Refusal('bad-input', 'It goes on from a finding of another work: only those of this work can go on.', {
      field,
    })
  }
  if (found.sealed === 0) {
    throw new Refusal('bad-input', 'It goes on from a finding of a draft: make that report complete first.', { field })
  }
}

export function addFinding(writing: Writing, input: Received<'condition.addFinding'>): Output<'condition.addFinding'> {
  const { db } = writing
  const report = draftOf(db, input.report, 'report')
  const side = input.side ?? 'front'
  refuseBeside(input, faceFor(db, report, side), 'points')
  checkFollows(db, input.follows, report, 'follows')
  const word = wordOf(db, input.term ?? '', 'term')
  const last = value<number>(db, 'SELECT max(position) FROM condition_finding WHERE report = :id', { id: report.id })
  // What its side is measured by is fixed with the first finding on it.
  if (needsDepth(side) && report.depth === null) {
    update(db, 'condition_report', report.id, { depth: depthOf(db, report) })
  }
  const id = writing.newId()
  writing.label(`Mark ${word === '' ? 'a finding' : word} in ${namedReport(db, report)}`)
  insert(db, 'condition_finding', {
    id,
    report: report.id,
    position: (last ?? 0) + 1,
    side: side === 'back' ? side : 'front',
    face: side === 'front' || side === 'back' ? '' : side,
    term: input.term ?? '',
    word,
    form: input.form,
    points: JSON.stringify(input.points),
    across: input.across ?? null,
    age: input.age ?? '',
    severity: input.severity ?? '',
    stable: input.stable ?? '',
    note: input.note ?? '',
    follows: input.follows ?? null,
  })
  return { id }
}

function ofDraft(db: ReadHandle, id: string): ReportRow {
  const report = value<string>(db, 'SELECT report FROM condition_finding WHERE id = :id', { id })
  if (report === undefined) throw notFound('finding')
  return draftOf(db, report)
}

const plain = {
  term: 'term',
  age: 'age',
  severity: 'severity',
  stable: 'stable',
  note: 'note',
  across: 'across',
  follows: 'follows',
} as const

export function changeFinding(
  writing: Writing,
  { id, changes }: Received<'condition.updateFinding'>,
): Output<'condition.updateFinding'> {
  const { db } = writing
  const report = ofDraft(db, id)
  const { shape, ...more } = changes
  checkFollows(db, more.follows?.to, report, 'changes.follows.to')
  const word = wordOf(db, more.term?.to ?? '', 'changes.term.to')
  const finding = findingsOf(db, report.id).find(each => each.id === id)
  if (finding === undefined) throw notFound('finding')
  if (shape !== undefined) refuseBeside(shape.to, faceFor(db, report, finding.side), 'changes.shape.to')
  writing.label(`Change ${finding.number} in ${namedReport(db, report)}`)
  const changed = changeFields(writing, 'condition_finding', id, more, plain, 'finding')
  if (changed.saved.includes('term')) update(db, 'condition_finding', id, { word })
  const placed = shape === undefined ? { saved: [], clashes: [] } : changeShape(writing, id, shape, finding)
  return { saved: [...changed.saved, ...placed.saved], clashes: [...changed.clashes, ...placed.clashes] }
}

type Placed = Pick<Shape, 'form' | 'points'>

/** Form and points are one field: half of one and half of another would be nobody's. */
function changeShape(
  writing: Writing,
  id: string,
  { was, to }: { readonly was: Placed; readonly to: Placed },
  { form, points }: Placed,
): Pick<Changed, 'saved' | 'clashes'> {
  const asJson = (shape: Placed) => ({ form: shape.form, points: shape.points.map(({ x, y }) => ({ x, y })) })
  const theirs = asJson({ form, points })
  if (!same(theirs, asJson(was)) && !same(theirs, asJson(to))) {
    return { saved: [], clashes: [{ code: 'clash', id, field: 'shape', was: asJson(was), yours: asJson(to), theirs }] }
  }
  update(writing.db, 'condition_finding', id, { form: to.form, points: JSON.stringify(to.points) })
  return { saved: ['shape'], clashes: [] }
}

export function removeFinding(
  writing: Writing,
  { id }: Received<'condition.removeFinding'>,
): Output<'condition.removeFinding'> {
  const report = ofDraft(writing.db, id)
  const number = findingsOf(writing.db, report.id).find(each => each.id === id)?.number
  writing.label(`Take ${number} off ${namedReport(writing.db, report)}`)
  removeRow(writing.db, 'condition_finding', id)
  forgetFinding(writing, report.id, id)
  return { done: true }
}
