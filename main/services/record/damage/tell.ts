/** Records of damage told: all that are asked for, one whole. */
import type { DamageHead, DamageTold } from '../../../../src/contract/areas/damage.ts'
import type { Output, Received } from '../../../../src/contract/contract.ts'
import {
  closedAt,
  damageLacks,
  inForce,
  movedBeforePhotograph,
  ownerToldAt,
  waitOf,
} from '../../../../src/record/damage/damage.ts'
import { nextReference } from '../../../../src/record/damage/reference.ts'
import type { ReadHandle } from '../../../database/handles.ts'
import { notFound } from '../../change.ts'
import { ruleNumber } from '../../rules.ts'
import type { Reading } from '../../service.ts'
import { showTitle } from '../../sheets/tables.ts'
import { row, rows, value } from '../../sql.ts'
import { photosOf, reportOf } from '../condition/rows.ts'
import { firstMoved } from './moved.ts'
import { type DamageOf, damageColumns, damageOf, damageOfWorks, isOpen, type WordRow, wordsOf } from './rows.ts'

/** Its condition reports by key, in the order in which they were linked. */
export function reportsOf({ report }: DamageOf, words: readonly WordRow[]): string[] {
  return [...new Set([report, ...inForce(words).map(word => word.report)].filter(each => each !== null))]
}

/** What is missing before it can be closed. */
export function lacksOf(db: ReadHandle, damage: DamageOf, words: readonly WordRow[]): DamageHead['lacks'] {
  const reports = reportsOf(damage, words)
  const photographs = reports.reduce((sum, report) => sum + photosOf(db, report).length, 0)
  const drafts = reports.filter(report => reportOf(db, report).completeAt === null).length
  return [...damageLacks({ lent: damage.lent === 1, reports: reports.length, drafts, photographs, words })]
}

function headOf(db: ReadHandle, damage: DamageOf, words: readonly WordRow[], now: string): DamageHead {
  const { report: _, lent, ...said } = damage
  const within = ruleNumber(db, 'damageOwnerHours')
  const closed = closedAt(words)
  return {
    ...said,
    lent: lent === 1,
    closedAt: closed,
    clock: lent === 1 ? { ...waitOf(damage.foundAt, ownerToldAt(words), within, now), within } : null,
    lacks: closed === null ? lacksOf(db, damage, words) : [],
  }
}

/** The reference that goes on from the last one. */
export function nextOf(db: ReadHandle): string {
  return nextReference(
    rows<{ reference: string }>(db, 'SELECT reference FROM damage ORDER BY rowid').map(({ reference }) => reference),
  )
}

const pageOf = 200

export function list({ db, now }: Reading, input: Received<'damage.list'>): Output<'damage.list'> {
  const { work = null, exhibition = null, state = null, words = '', offset = 0, limit = pageOf } = input
  if (work !== null && value(db, 'SELECT id FROM work WHERE id = :work', { work }) === undefined) {
    throw notFound('work', 'work')
  }
  if (exhibition !== null) showTitle(db, exhibition)
  const asked = `(:work IS NULL OR damage.work = :work)
    AND (:exhibition IS NULL OR damage.work IN (SELECT work FROM entry WHERE exhibition = :exhibition))
    AND NOT EXISTS (SELECT 1 FROM json_each(:words) WHERE instr(lower(damage.reference || ' ' || work.title || ' '
      || work.numbers || ' ' || coalesce(party.name, '') || ' ' || damage.how || ' ' || damage.circumstances), lower(value)) = 0)`
  const given = { work, exhibition, words: JSON.stringify(words.split(/\s+/u).filter(each => each !== '')) }
  const inState = `(:state IS NULL OR (${isOpen}) = (:state = 'open'))`
  const found = rows<DamageOf>(
    db,
    `SELECT ${damageColumns} FROM ${damageOfWorks} WHERE ${asked} AND ${inState}
     ORDER BY NOT (${isOpen}), damage.found_at DESC, damage.id DESC LIMIT :limit OFFSET :offset`,
    { ...given, state, limit, offset },
  )
  const counted = row<{ total: number; open: number }>(
    db,
    `SELECT count(*) FILTER (WHERE ${inState}) AS total, count(*) FILTER (WHERE ${isOpen}) AS open
     FROM ${damageOfWorks} WHERE ${asked}`,
    { ...given, state },
  )
  return {
    lines: found.map(each => headOf(db, each, wordsOf(db, each.id), now())),
    total: counted?.total ?? 0,
    open: counted?.open ?? 0,
    next: nextOf(db),
  }
}

export function get({ db, now }: Reading, { id }: Received<'damage.get'>): Output<'damage.get'> {
  const damage = damageOf(db, id)
  const words = wordsOf(db, id)
  const reports = reportsOf(damage, words).map((each): DamageTold['reports'][number] => {
    const { kind, examinedAt, completeAt } = reportOf(db, each)
    return { id: each, kind, examinedAt, complete: completeAt !== null, photos: photosOf(db, each) }
  })
  const photos = reports.flatMap(each => each.photos)
  const moved = firstMoved(db, damage.work, damage.foundAt)
  return {
    ...headOf(db, damage, words, now()),
    words: words.map(word => {
      const later = words.find(each => each.strikes === word.id)
      return { ...word, struck: later === undefined ? null : { why: later.said, by: later.recordedBy } }
    }),
    reports,
    movedFirst: movedBeforePhotograph(damage.foundAt, photos, moved === null ? [] : [moved]),
  }
}
