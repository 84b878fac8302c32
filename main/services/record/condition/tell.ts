/** Condition reports told: all of a work, one whole, two compared. */
import type { ReportHead } from '../../../../src/contract/areas/condition-shape.ts'
import type { Output, Received } from '../../../../src/contract/contract.ts'
import { Refusal } from '../../../../src/contract/refusal.ts'
import { formatLength } from '../../../../src/measure/format.ts'
import type { Reader } from '../../../../src/model/work-findings.ts'
import { type Behind, behindOf } from '../../../../src/record/condition/behind.ts'
import { type CompareLine, compareReports } from '../../../../src/record/condition/compare.ts'
import { lacksOf, lacksSignatures, overall, signaturesInForce } from '../../../../src/record/condition/report.ts'
import { extentOf, thirdOf } from '../../../../src/record/condition/shape.ts'
import { faceOfSide, type Opening, onSide, openingOf } from '../../../../src/record/condition/sides.ts'
import { contentHash } from '../../../database/condition-chain.ts'
import type { ReadHandle } from '../../../database/handles.ts'
import { notFound } from '../../change.ts'
import { ruleNumber } from '../../rules.ts'
import type { Reading } from '../../service.ts'
import { showTitle } from '../../sheets/tables.ts'
import { row, rows, value } from '../../sql.ts'
import { firstNumber } from '../../works/figures.ts'
import { readerOf } from '../../works/findings.ts'
import { depthOf } from './depth.ts'
import { type FindingRow, findingsOf, photosOf, type ReportRow, reportColumns, reportOf, signaturesOf } from './rows.ts'

function headOf(db: ReadHandle, report: ReportRow): ReportHead {
  const { picture: _, width: __, height: ___, depth: ____, ...said } = report
  const work = row<{ title: string; number: string | null }>(
    db,
    `SELECT title, ${firstNumber} AS number FROM work WHERE id = :id`,
    { id: report.work },
  )
  const findings = findingsOf(db, report.id)
  const content = contentHash(db, report.id)
  return {
    ...said,
    workTitle: work?.title ?? '',
    workNumber: work?.number ?? '',
    findings: findings.length,
    overall: overall(findings),
    signedBy: signaturesInForce(signaturesOf(db, report.id), content).map(({ role, name }) => ({ role, name })),
  }
}

/** The back as it is measured now, as seen from behind; null where nobody measured it. */
function behindNow(db: ReadHandle, { work, width, height }: ReportRow): Behind | null {
  const back = row<{ method: string; seenFrom: 'front' | 'back'; data: string }>(
    db,
    `SELECT method, seen_from AS seenFrom, data FROM work_back WHERE work = :work ORDER BY at DESC, id DESC LIMIT 1`,
    { work },
  )
  return back === undefined ? null : behindOf({ ...back, data: JSON.parse(back.data) }, { width, height })
}

/** The picture in its frame as both are measured now; null where one of them is not. */
function openingNow(db: ReadHandle, report: ReportRow): Opening | null {
  const picture = row<{ width: number; height: number }>(
    db,
    `SELECT width, height FROM work_size WHERE work = :work AND part IN ('sight', 'support', 'sheet', 'image')
       AND width IS NOT NULL AND height IS NOT NULL
     ORDER BY part = 'sight' DESC, chosen DESC, kind = 'measured' DESC, at DESC, id DESC LIMIT 1`,
    { work: report.work },
  )
  return openingOf(report, picture ?? null)
}

const pageOf = 200

export function list({ db }: Reading, input: Received<'condition.list'>): Output<'condition.list'> {
  const { work = null, exhibition = null, kind = null, state = null, words = '' } = input
  const { sort = 'examined', turned = false, offset = 0, limit = pageOf } = input
  if (work !== null && value(db, 'SELECT id FROM work WHERE id = :work', { work }) === undefined) {
    throw notFound('work', 'work')
  }
  if (exhibition !== null) showTitle(db, exhibition)
  const asked = `condition_report AS report JOIN work ON work.id = report.work LEFT JOIN party ON party.id = work.lender
    WHERE (:work IS NULL OR report.work = :work)
    AND (:exhibition IS NULL OR report.work IN (SELECT work FROM entry WHERE exhibition = :exhibition))
    AND (:kind IS NULL OR report.kind = :kind)
    AND NOT EXISTS (SELECT 1 FROM json_each(:words) WHERE instr(lower(work.title || ' ' || work.maker || ' '
      || work.numbers || ' ' || coalesce(party.name, '')), lower(value)) = 0)`
  const given = { work, exhibition, kind, words: JSON.stringify(words.split(/\s+/u).filter(each => each !== '')) }
  const isDraft = 'report.id NOT IN (SELECT condition_seal.report FROM condition_seal)'
  const inState = `(:state IS NULL OR (${isDraft}) = (:state = 'draft'))`
  const by = (sort === 'examined') === turned ? '' : 'DESC'
  const order =
    sort === 'examined'
      ? `report.examined_at ${by}, report.id ${by}`
      : `work.sort_number ${by}, work.id ${by}, report.examined_at DESC, report.id DESC`
  const reports = rows<ReportRow>(
    db,
    `SELECT ${reportColumns} FROM ${asked} AND ${inState} ORDER BY ${order} LIMIT :limit OFFSET :offset`,
    { ...given, state, limit, offset },
  )
  const counted = row<{ total: number; drafts: number }>(
    db,
    `SELECT count(*) FILTER (WHERE ${inState}) AS total, count(*) FILTER (WHERE ${isDraft}) AS drafts
     FROM ${asked}`,
    { ...given, state },
  )
  return {
    reports: reports.map(each => headOf(db, each)),
    total: counted?.total ?? 0,
    drafts: counted?.drafts ?? 0,
  }
}

export function get({ db }: Reading, { id }: Received<'condition.get'>): Output<'condition.get'> {
  const stored = reportOf(db, id)
  const report = { ...stored, depth: depthOf(db, stored) }
  const findings = findingsOf(db, id)
  const content = contentHash(db, id)
  const signatures = signaturesOf(db, id)
  const inForce = signaturesInForce(signatures, content)
  const unsigned = lacksSignatures(signatures, content)
  return {
    ...headOf(db, report),
    picture: report.picture,
    width: report.width,
    height: report.height,
    depth: report.depth,
    opening: openingNow(db, report),
    behind: behindNow(db, report),
    findings: findings.map(each => ({
      ...each,
      points: [...each.points],
      third: thirdOf(each, faceOfSide(report, each.side) ?? report),
      ...extentOf(each),
    })),
    photos: photosOf(db, id),
    content,
    signatures: signatures.map(({ content: _, ...each }) => ({
      ...each,
      counts: inForce.some(other => other.id === each.id),
    })),
    lacks: report.completeAt === null ? [...lacksOf(report, findings), ...(unsigned === null ? [] : [unsigned])] : [],
  }
}

export function compare({ db, person }: Reading, input: Received<'condition.compare'>): Output<'condition.compare'> {
  return comparedFor(db, input, readerOf(person, undefined))
}

/** @param reader who reads the figures: the person at the desk, or whom a paper is for */
export function comparedFor(
  db: ReadHandle,
  input: Received<'condition.compare'>,
  { unit, steps }: Reader,
): Output<'condition.compare'> {
  const [before, after] = [reportOf(db, input.before, 'before'), reportOf(db, input.after, 'after')]
  if (before.work !== after.work) {
    throw new Refusal('bad-input', 'These are reports of two works: only reports of one work can be compared.', {
      field: 'after',
    })
  }
  if (before.id === after.id || before.examinedAt > after.examinedAt) {
    const sentence =
      before.id === after.id
        ? 'A report is compared with another one, not with itself.'
        : 'The later report is named first: turn the two round.'
    throw new Refusal(before.id === after.id ? 'bad-input' : 'dates-reversed', sentence, { field: 'after' })
  }
  const rules = { near: ruleNumber(db, 'conditionNear'), grown: ruleNumber(db, 'conditionGrown') }
  // As the list of findings says it: a hand's line is no truer than a millimetre.
  const format = { unit, fraction: steps.fraction, decimals: unit === 'cm' ? 1 : 0 } as const
  const length = (mm: number) => formatLength(mm, format)
  const lines = compareReports(findingsOf(db, before.id), findingsOf(db, after.id), rules)
  const count = (outcome: CompareLine['outcome']) => lines.filter(each => each.outcome === outcome).length
  return {
    lines: lines.map(each => ({
      outcome: each.outcome,
      before: each.before?.id ?? null,
      after: each.after?.id ?? null,
      by: each.by,
      remarks: [...each.remarks],
      text: textOf(each, length),
    })),
    counts: { same: count('same'), grown: count('grown'), new: count('new'), notSeen: count('not seen') },
    ...rules,
  }
}

const measured = (finding: FindingRow, length: (mm: number) => string) => {
  const { reach, along } = extentOf(finding)
  const mm = finding.form === 'outline' ? along : reach
  return mm === null ? 'no size taken' : length(mm)
}

/** One line as a person reads it out. */
function textOf({ outcome, before, after, remarks }: CompareLine<FindingRow>, length: (mm: number) => string): string {
  const one = after ?? before
  if (one === null) return ''
  const word = `${one.word === '' ? 'a finding without a word' : one.word} ${onSide[one.side]}`.trim()
  if (after === null) return `${word}, ${measured(one, length)}: stood in the earlier report, not seen now.`
  if (before === null) return `${word}, ${measured(one, length)}: stands in no earlier report.`
  const said = {
    larger: `larger: ${measured(before, length)} before, ${measured(after, length)} now`,
    smaller: `measured smaller: ${measured(before, length)} before, ${measured(after, length)} now`,
    'more serious': `more serious: ${before.severity} before, ${after.severity} now`,
    'called new': `called new, yet it lies where ${before.number} of the earlier report does`,
    'size not taken': 'its size was not taken both times, so nobody can tell whether it has grown',
  }
  const told = remarks.map(remark => said[remark])
  return `${word}: ${told.length === 0 ? `as before, ${measured(after, length)}` : told.join('; ')}${outcome === 'same' && told.length > 0 ? '; otherwise as before' : ''}.`
}
