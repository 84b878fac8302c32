/** The end of a show: what the records say of each of its works, and of the crates that they came in. */

import type { LeavingLine } from '../../../src/contract/areas/leaving.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { compareReports } from '../../../src/record/condition/compare.ts'
import { closedAt } from '../../../src/record/damage/damage.ts'
import { cratesReckoned, type LeavingFacts, leavingOf } from '../../../src/record/leaving.ts'
import { aroundWords, placesAround } from '../../../src/record/nested.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { dateAt } from '../days.ts'
import { standingsOfWork } from '../receipts/rows.ts'
import { ruleNumber } from '../rules.ts'
import type { Reading } from '../service.ts'
import { row, rows } from '../sql.ts'
import { firstNumber } from '../works/figures.ts'
import { findingsOf } from './condition/rows.ts'
import { wordsOf } from './damage/rows.ts'
import { collator, namer } from './places.ts'
import { inForce, standingCrates, standingWorks } from './standing.ts'
import { hungUnrecorded } from './unrecorded.ts'

interface Entry {
  readonly id: string
  readonly number: string
  readonly title: string
  readonly running: string
  readonly lender: string
  readonly lent: number
  readonly status: string
  readonly state: string | null
  readonly face: string | null
}

interface Period {
  readonly opens: string
  readonly closes: string
}

interface ReportHead {
  readonly id: string
  readonly at: string
  readonly complete: number
}

export function leaving({ db, now }: Reading, { exhibition }: Received<'leaving.list'>): Output<'leaving.list'> {
  const show = row<Period>(db, 'SELECT opens, closes FROM exhibition WHERE id = :exhibition', { exhibition })
  if (show === undefined) throw notFound('exhibition', 'exhibition')
  const at = now()
  const crates = standingCrates(db, at)
  const stood = new Map(standingWorks(db, at, exhibition).map(each => [each.thing, each]))
  const movedOn = new Set(hungUnrecorded(db, exhibition, at).flatMap(({ work, later }) => (later ? [work] : [])))
  const kinds = new Map(
    rows<{ id: string; kind: string }>(db, 'SELECT id, kind FROM location').map(each => [each.id, each.kind]),
  )
  const cameIn = cratesOfArrival(db, exhibition)
  const name = namer(db)
  const rules = { near: ruleNumber(db, 'conditionNear'), grown: ruleNumber(db, 'conditionGrown') }
  const damages = damagesOf(db, exhibition)
  const told = entriesOf(db, exhibition).map(entry => {
    const place = stood.get(entry.id)?.place
    const around = place === undefined ? [] : placesAround(place, crates)
    const isOf = (kind: string) => around.find(each => kinds.get(each) === kind) ?? null
    const incoming = lastReport(db, entry.id, 'incoming', true)
    const outgoing = lastReport(db, entry.id, 'outgoing', false)
    const liesIn = isOf('crate')
    const damage = damages.filter(each => each.work === entry.id)
    const facts: LeavingFacts = {
      lent: entry.lent === 1,
      hangs: (entry.state ?? 'planned') !== 'planned' && !movedOn.has(entry.id),
      locked: entry.state === 'locked' || entry.state === 'checked',
      cameAt: incoming?.at ?? null,
      outgoing: outgoing === undefined ? null : { at: outgoing.at, complete: outgoing.complete === 1 },
      found: incoming === undefined || outgoing === undefined ? null : foundBetween(db, incoming, outgoing, rules),
      damage: damage.filter(each => each.closedAt === null).map(({ reference }) => reference),
      settled: damage
        .filter(({ closedAt }) => closedAt !== null && outgoing !== undefined && closedAt >= outgoing.at)
        .map(({ reference }) => reference),
      cameIn: cameIn.get(entry.id) ?? null,
      liesIn,
      place:
        place === undefined
          ? 'nowhere'
          : isOf('elsewhere') !== null
            ? 'outside'
            : isOf('vehicle') !== null
              ? 'on the way'
              : 'here',
      acknowledged: acknowledgedOf(db, entry, show, dateAt(at)),
    }
    const line: LeavingLine = {
      id: entry.id,
      number: entry.number,
      title: entry.title,
      running: entry.running,
      lender: entry.lender,
      lent: entry.lent === 1,
      where: aroundWords(around, each => name(each) ?? ''),
      cameIn: facts.cameIn === null ? '' : (name(facts.cameIn) ?? ''),
      report: outgoing?.id ?? null,
      damage: damage.filter(each => each.closedAt === null).map(({ id, reference }) => ({ id, reference })),
      ...leavingCopied(facts),
    }
    return { line, facts }
  })
  const byId = new Map(told.map(({ line: { id, number, title } }) => [id, { id, number, title }]))
  const works = (ids: readonly string[]) => ids.flatMap(id => byId.get(id) ?? [])
  const reckoned = cratesReckoned(told.map(({ line, facts }) => ({ ...facts, work: line.id })))
  return {
    lines: told.map(({ line }) => line),
    crates: reckoned
      .map(({ crate, inIt, missing, strange }) => ({
        id: crate,
        name: name(crate) ?? '',
        where: aroundWords(placesAround(crate, crates).slice(1), each => name(each) ?? ''),
        inIt: works(inIt),
        missing: works(missing),
        strange: works(strange),
      }))
      .sort((a, b) => collator.compare(a.name, b.name)),
  }
}

function leavingCopied(facts: LeavingFacts): Pick<LeavingLine, 'steps' | 'next' | 'lacks'> {
  const { steps, next, lacks } = leavingOf(facts)
  return { steps: [...steps], next, lacks: [...lacks] }
}

/** In the order of the show. A lender's work is one of an owner that is not the house. */
function entriesOf(db: ReadHandle, exhibition: string): Entry[] {
  return rows<Entry>(
    db,
    `SELECT work.id, coalesce(${firstNumber}, '') AS number, work.title, entry.running, coalesce(party.name, '') AS lender,
      coalesce(party.kind <> 'house', 0) AS lent, entry.status, placement.state, placement.face
     FROM entry JOIN work ON work.id = entry.work LEFT JOIN party ON party.id = work.lender
     LEFT JOIN placement ON placement.entry = entry.id LEFT JOIN section ON section.id = entry.section
     WHERE entry.exhibition = :exhibition
     ORDER BY section.position IS NULL, section.position, entry.position, entry.id`,
    { exhibition },
  )
}

/** By the receipts of the loans that it is here by while the show is; the entry's status speaks where no loan is known. */
function acknowledgedOf(db: ReadHandle, { id, status }: Entry, { opens, closes }: Period, today: string): boolean {
  const loans = standingsOfWork(db, id, today).filter(
    ({ first, last }) =>
      (first === '' || closes === '' || first <= closes) && (last === '' || opens === '' || last >= opens),
  )
  if (loans.length === 0) return status === 'receipt back'
  // A loan that was closed without a receipt is no acknowledgement.
  return loans.every(({ standing }) => standing.state === 'settled' && standing.receipt !== null)
}

/** For each work the crate that it lay in first since it was last at an address outside. */
function cratesOfArrival(db: ReadHandle, exhibition: string): ReadonlyMap<string, string> {
  const ways = rows<{ work: string; place: string; kind: string }>(
    db,
    `SELECT moved.work, moved.place, location.kind FROM entry JOIN moved ON moved.work = entry.work
     JOIN location ON location.id = moved.place
     WHERE entry.exhibition = :exhibition AND location.kind IN ('crate', 'elsewhere') AND ${inForce}
     ORDER BY moved.at, moved.movement`,
    { exhibition },
  )
  const first = new Map<string, string>()
  for (const { work, place, kind } of ways) {
    if (kind === 'elsewhere') first.delete(work)
    else if (!first.has(work)) first.set(work, place)
  }
  return first
}

/** Every record of damage of works of the show and of their parts, the first found first. */
function damagesOf(db: ReadHandle, exhibition: string) {
  return rows<{ id: string; work: string; reference: string }>(
    db,
    `SELECT damage.id, entry.work, damage.reference FROM damage JOIN work ON work.id = damage.work
     JOIN entry ON entry.work IN (work.id, work.parent)
     WHERE entry.exhibition = :exhibition ORDER BY damage.found_at, damage.id`,
    { exhibition },
  ).map(each => ({ ...each, closedAt: closedAt(wordsOf(db, each.id)) }))
}

/** The last of its kind that no later one sets right. */
function lastReport(db: ReadHandle, work: string, kind: string, complete: boolean): ReportHead | undefined {
  return row<ReportHead>(
    db,
    `SELECT report.id, report.examined_at AS at, seal.id IS NOT NULL AS complete FROM condition_report AS report
     LEFT JOIN condition_seal AS seal ON seal.report = report.id
     WHERE report.work = :work AND report.kind = :kind AND (seal.id IS NOT NULL OR :complete = 0)
      AND NOT EXISTS (SELECT 1 FROM condition_report AS later JOIN condition_seal ON condition_seal.report = later.id
        WHERE later.corrects = report.id)
     ORDER BY report.examined_at DESC, report.id DESC LIMIT 1`,
    { work, kind, complete: complete ? 1 : 0 },
  )
}

/** What the later one found, whether or not it is signed: what is seen is seen. */
function foundBetween(
  db: ReadHandle,
  before: ReportHead,
  after: ReportHead,
  rules: { readonly near: number; readonly grown: number },
): LeavingFacts['found'] {
  const lines = compareReports(findingsOf(db, before.id), findingsOf(db, after.id), rules)
  const count = (outcome: string) => lines.filter(each => each.outcome === outcome).length
  return { new: count('new'), grown: count('grown') }
}
