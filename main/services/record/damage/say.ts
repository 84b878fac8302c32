/** Records of damage as they are written: found, told, done, closed. Nothing here changes or removes a row. */
import type { Output, Received } from '../../../../src/contract/contract.ts'
import { Refusal } from '../../../../src/contract/refusal.ts'
import {
  canBeStruck,
  closedAt,
  type FactKind,
  turnedSince,
  type WordKind,
} from '../../../../src/record/damage/damage.ts'
import { wordTitles } from '../../../../src/record/damage/say.ts'
import { lastLink } from '../../../database/chain.ts'
import { type DamageRow, type DamageWordRow, damageHash } from '../../../database/damage-chain.ts'
import type { ReadHandle } from '../../../database/handles.ts'
import { notFound } from '../../change.ts'
import type { Writing } from '../../service.ts'
import { sheetTime } from '../../sheets/wishes.ts'
import { insert, row, value } from '../../sql.ts'
import { reportOf } from '../condition/rows.ts'
import { signed } from '../record.ts'
import { type DamageOf, damageOf, wordsOf } from './rows.ts'
import { lacksOf, nextOf, reportsOf } from './tell.ts'

/** A clock that is a minute ahead of another is no word from the future. */
const clockSlack = 60_000

/** In one form, so that texts sort as moments do. Refuses what has not been yet. */
function been({ now }: Writing, at: string | undefined, field: string, sentence: string): string {
  const today = now()
  const moment = new Date(at ?? today).toISOString()
  if (Date.parse(moment) <= Date.parse(today) + clockSlack) return moment
  throw new Refusal('in-the-future', `It is ${sheetTime(today)} now: ${sentence} ${sheetTime(moment)} yet.`, { field })
}

/** A report of the same work: what another one shows proves nothing here. */
function checkReport(db: ReadHandle, work: string, report: string): void {
  if (reportOf(db, report, 'report').work === work) return
  throw new Refusal('bad-input', 'That is a condition report of another work: link one of this work.', {
    field: 'report',
  })
}

export function add(writing: Writing, input: Received<'damage.add'>): Output<'damage.add'> {
  const { db } = writing
  const by = signed(writing, input.by)
  const { work, report = null } = input
  if (value(db, 'SELECT id FROM work WHERE id = :work', { work }) === undefined) throw notFound('work', 'work')
  const found = been(writing, input.foundAt, 'foundAt', 'nothing was found on')
  const reported = been(writing, input.reportedAt, 'reportedAt', 'nobody has reported it on')
  if (reported < found) {
    const sentence = `It was found on ${sheetTime(found)}: nobody can have reported it on ${sheetTime(reported)}. Set one of the two right.`
    throw new Refusal('dates-reversed', sentence, { field: 'reportedAt' })
  }
  if (report !== null) checkReport(db, work, report)
  const reference = input.reference ?? nextOf(db)
  if (value(db, 'SELECT id FROM damage WHERE reference = :reference', { reference }) !== undefined) {
    const sentence = `There is a record of damage ${reference} already, and no reference is used twice. The next one is ${nextOf(db)}.`
    throw new Refusal('same-reference', sentence, { field: 'reference' })
  }
  const damage: DamageRow = {
    id: writing.newId(),
    reference,
    work,
    found_at: found,
    reported_at: reported,
    reporter: input.reporter ?? by,
    how: input.how ?? '',
    circumstances: input.circumstances ?? '',
    report,
    recorded_at: writing.now(),
    recorded_by: by,
  }
  insert(db, 'damage', { ...damage, hash: damageHash('damage', lastLink(db, 'damage'), damage) })
  return { id: damage.id, reference }
}

type Said = Partial<Pick<DamageWordRow, 'at' | 'whom' | 'how' | 'said' | 'report' | 'strikes'>>

function write(writing: Writing, damage: string, kind: WordKind, by: string, said: Said): string {
  const { db } = writing
  const now = writing.now()
  const word: DamageWordRow = {
    id: writing.newId(),
    damage,
    kind,
    at: said.at ?? now,
    whom: said.whom ?? '',
    how: said.how ?? '',
    said: said.said ?? '',
    report: said.report ?? null,
    strikes: said.strikes ?? null,
    recorded_at: now,
    recorded_by: by,
  }
  insert(db, 'damage_word', { ...word, hash: damageHash('damage_word', lastLink(db, 'damage_word'), word) })
  return word.id
}

/** Refuses `closed`: what is said of a closed record is said once it is open again. */
function openOne(db: ReadHandle, id: string, field: string): DamageOf {
  const damage = damageOf(db, id, field)
  if (closedAt(wordsOf(db, id)) === null) return damage
  throw new Refusal('closed', `Damage ${damage.reference} is closed. Open it again first, and say why.`, { field })
}

/** What an entry of each kind cannot be without. */
const needs: Readonly<Record<FactKind, { readonly field: 'whom' | 'said' | 'report'; readonly sentence: string }>> = {
  'owner told': { field: 'whom', sentence: 'Say who of its owner was told.' },
  'insurer told': { field: 'whom', sentence: 'Say who of the insurer was told.' },
  action: { field: 'said', sentence: 'Say what was done.' },
  report: { field: 'report', sentence: 'Say which condition report belongs to it.' },
  note: { field: 'said', sentence: 'Write the note.' },
}

export function say(writing: Writing, input: Received<'damage.say'>): Output<'damage.say'> {
  const { db } = writing
  const by = signed(writing, input.by)
  const damage = openOne(db, input.damage, 'damage')
  const { kind, whom = '', how = '', said = '', report } = input
  const { field, sentence } = needs[kind]
  if ((input[field] ?? '').trim() === '') throw new Refusal('bad-input', sentence, { field })
  if (report !== undefined) {
    if (kind !== 'report') {
      const one = 'A condition report is linked by an entry of its own.'
      throw new Refusal('bad-input', one, { field: 'report' })
    }
    checkReport(db, damage.work, report)
    if (reportsOf(damage, wordsOf(db, damage.id)).includes(report)) {
      throw new Refusal('linked-already', `This report belongs to damage ${damage.reference} already.`, {
        field: 'report',
      })
    }
  }
  const at = been(writing, input.at, 'at', 'that has not been on')
  if (at < damage.foundAt) {
    const early = `Damage ${damage.reference} was found on ${sheetTime(damage.foundAt)}: this cannot have been on ${sheetTime(at)}.`
    throw new Refusal('dates-reversed', early, { field: 'at' })
  }
  return { id: write(writing, damage.id, kind, by, { at, whom, how, said, report: report ?? null }) }
}

export function strike(writing: Writing, input: Received<'damage.strike'>): Output<'damage.strike'> {
  const { db } = writing
  const by = signed(writing, input.by)
  const wrong = row<{ damage: string; kind: WordKind; struck: number }>(
    db,
    `SELECT damage, kind, EXISTS (SELECT 1 FROM damage_word AS later WHERE later.strikes = damage_word.id) AS struck
     FROM damage_word WHERE id = :id`,
    { id: input.word },
  )
  if (wrong === undefined) throw notFound('entry', 'word')
  openOne(db, wrong.damage, 'word')
  if (wrong.struck === 1) {
    throw new Refusal('corrected-already', 'This entry was struck already. Record what is right.', { field: 'word' })
  }
  if (!canBeStruck(wrong)) {
    const sentence = 'This entry says how the record stands, not what was done: close it or open it again instead.'
    throw new Refusal('bad-input', sentence, { field: 'word' })
  }
  return { id: write(writing, wrong.damage, 'struck', by, { said: input.why, strikes: input.word }) }
}

/** When it was closed or opened again. Refuses `in-the-future`, `dates-reversed`: nothing is done before what led to it. */
function turnedAt(writing: Writing, damage: DamageOf, given: string | undefined, to: 'closed' | 'reopened'): string {
  const done = to === 'closed' ? 'closed' : 'opened again'
  const at = been(writing, given, 'at', `it cannot have been ${done} on`)
  if (given === undefined) return at
  const last = turnedSince(wordsOf(writing.db, damage.id), to)
  const [since, what] =
    last === null ? [damage.foundAt, 'it was found'] : [last.at, `the entry “${wordTitles[last.kind]}” is`]
  if (at >= since) return at
  const sentence = `Damage ${damage.reference}: ${what} on ${sheetTime(since)}, so it cannot have been ${done} on ${sheetTime(at)}. Set the time right.`
  throw new Refusal('dates-reversed', sentence, { field: 'at' })
}

export function close(writing: Writing, input: Received<'damage.close'>): Output<'damage.close'> {
  const { db } = writing
  const by = signed(writing, input.by)
  const damage = openOne(db, input.damage, 'damage')
  const lacks = lacksOf(db, damage, wordsOf(db, damage.id))
  if (lacks.length > 0) {
    const sentence = `Damage ${damage.reference} cannot be closed yet. ${lacks.map(({ text }) => text).join(' ')}`
    throw new Refusal('incomplete', sentence, { field: 'damage', details: { lacks } })
  }
  const at = turnedAt(writing, damage, input.at, 'closed')
  return { id: write(writing, damage.id, 'closed', by, { said: input.why, at }) }
}

export function reopen(writing: Writing, input: Received<'damage.reopen'>): Output<'damage.reopen'> {
  const { db } = writing
  const by = signed(writing, input.by)
  const damage = damageOf(db, input.damage, 'damage')
  if (closedAt(wordsOf(db, damage.id)) === null) {
    throw new Refusal('open', `Damage ${damage.reference} is open: nothing has to be opened again.`, {
      field: 'damage',
    })
  }
  const at = turnedAt(writing, damage, input.at, 'reopened')
  return { id: write(writing, damage.id, 'reopened', by, { said: input.why, at }) }
}
