/** Movements written into the record, and set right in it. Nothing here changes or removes a row. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { Finding } from '../../../src/contract/shared.ts'
import { lastLink } from '../../database/chain.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { chainHash, type MovedRow, type MovementRow } from '../../database/record-chain.ts'
import { notFound } from '../change.ts'
import { dateAt } from '../days.ts'
import type { Reading, Writing } from '../service.ts'
import { partIdsOf } from '../sets/figures.ts'
import { insert, row, rows, value } from '../sql.ts'
import { readerOf } from '../works/findings.ts'
import type { Carried } from './carried.ts'
import { type Carry, carryOf } from './carry.ts'
import { refuseStruck } from './damage/stays.ts'
import { notesOf } from './notes.ts'
import { type Fulfilled, fulfilledBy, plannedMoves } from './planned-rows.ts'
import { standingOf } from './standing.ts'
import { hungUnrecorded } from './unrecorded.ts'

export function check(reading: Reading, input: Received<'movement.check'>): Output<'movement.check'> {
  return { notes: notesOf(reading.db, carryOf(reading, input), readerOf(reading.person, undefined)) }
}

/** A record has a name: as it was given, else of the person at the desk. Refuses `no-name`. */
export function signed({ person }: Writing, by: string | undefined): string {
  const name = by ?? person?.name ?? ''
  if (name.trim() !== '') return name
  throw new Refusal('no-name', 'A record has a name: say who is at this desk, or who records it.', { field: 'by' })
}

type Said = Pick<Received<'movement.add'>, 'method' | 'people' | 'reason' | 'condition'>

/** Writes one movement with all it carried, joined to the one before. */
function write(
  writing: Writing,
  carry: Carry,
  said: Said,
  by: string,
  plans: Fulfilled,
  right: { readonly corrects: string | null; readonly struck: boolean } = { corrects: null, struck: false },
): string {
  const { db } = writing
  const { to, at } = carry
  const movement: MovementRow = {
    id: writing.newId(),
    at,
    place: to.place,
    place_kind: to.kind === 'room' || to.kind === 'face' ? to.kind : 'location',
    place_words: to.words,
    location: to.location?.id ?? null,
    spot: carry.spot,
    method: said.method ?? '',
    people: said.people ?? '',
    reason: said.reason ?? '',
    condition: said.condition ?? '',
    corrects: right.corrects,
    struck: right.struck ? 1 : 0,
    recorded_at: writing.now(),
    recorded_by: by,
  }
  const moved = carry.things.map(
    (thing): MovedRow => ({
      id: writing.newId(),
      work: thing.kind === 'work' ? thing.id : null,
      crate: thing.kind === 'crate' ? thing.id : null,
      at,
      place: to.place,
      from_place: thing.from?.place ?? '',
      from_words: thing.fromWords,
      part_of: thing.partOf,
      condition: thing.condition,
      plan: plans.get(thing.id)?.plan ?? '',
      plan_words: plans.get(thing.id)?.words ?? '',
    }),
  )
  insert(db, 'movement', { ...movement, hash: chainHash(lastLink(db, 'movement'), movement, moved) })
  for (const each of moved) insert(db, 'moved', { ...each, movement: movement.id })
  return movement.id
}

export function add(writing: Writing, input: Received<'movement.add'>): Output<'movement.add'> {
  const by = signed(writing, input.by)
  const carry = carryOf(writing, input)
  const notes = notesOf(writing.db, carry, readerOf(writing.person, undefined))
  const plans = plansOf(writing, carry, input.plans ?? [])
  return {
    id: write(writing, carry, { ...input, reason: reasonOf(input.reason ?? '', input.despite, notes) }, by, plans),
    notes,
  }
}

/** What the movement fulfils. Refuses a plan that is not there, is done already, or is of what was not carried. */
function plansOf({ db }: Writing, carry: Carry, named: readonly string[]): Fulfilled {
  const all = named.length === 0 ? [] : plannedMoves(db)
  for (const [index, id] of named.entries()) {
    const field = `plans.${index}`
    const plan = all.find(each => each.id === id)
    if (plan === undefined) throw notFound('planned movement', field)
    if (plan.movement !== null) {
      throw new Refusal('done-already', 'A movement on record fulfils this plan already. Record this one without it.', {
        field,
        details: { movement: plan.movement },
      })
    }
    if (carry.things.some(thing => thing.id === plan.thing)) continue
    throw new Refusal('not-carried', 'This plan is of what was not carried. Carry it, or leave its plan open.', {
      field,
    })
  }
  return fulfilledBy(db, carry, dateAt(carry.at), named)
}

/** What by the plan does not pass is recorded with how it went all the same. Refuses `does-not-pass`. */
function reasonOf(reason: string, despite = '', notes: readonly Finding[]): string {
  const stuck = notes.find(({ code }) => code === 'does-not-pass')
  if (stuck === undefined) return reason
  if (despite.trim() === '') {
    const sentence = `${stuck.text} If it went all the same, say how it did, and it is recorded.`
    throw new Refusal('does-not-pass', sentence, { field: 'despite' })
  }
  return [reason, `does not pass by the plan: ${despite.trim()}`].filter(each => each !== '').join('; ')
}

interface Wrong {
  readonly id: string
  readonly at: string
  readonly place: string
  readonly words: string
  readonly spot: string
  readonly method: string
  readonly people: string
  readonly condition: string
  readonly later: string | null
  readonly kind: 'room' | 'face' | 'location'
  readonly struck: number
  readonly location: string | null
}

export function correct(writing: Writing, input: Received<'movement.correct'>): Output<'movement.correct'> {
  const { db } = writing
  const by = signed(writing, input.by)
  const wrong = row<Wrong>(
    db,
    `SELECT movement.id, movement.at, place, place_words AS words, spot, method, people, condition, place_kind AS kind,
      struck, location, (SELECT id FROM movement AS later WHERE later.corrects = movement.id) AS later
     FROM movement WHERE id = :id`,
    { id: input.movement },
  )
  if (wrong === undefined) throw notFound('movement', 'movement')
  if (wrong.later !== null) {
    throw new Refusal('corrected-already', 'This movement was set right already. Correct the newer record instead.', {
      field: 'movement',
      details: { movement: wrong.later },
    })
  }
  const said = {
    method: input.method ?? wrong.method,
    people: input.people ?? wrong.people,
    condition: input.condition ?? wrong.condition,
    reason: input.why,
  }
  if (input.struck === true) {
    refuseStruck(db, wrong)
    const to = {
      place: wrong.place,
      kind: wrong.kind === 'location' ? ('place' as const) : wrong.kind,
      words: wrong.words,
      room: null,
      location: null,
    }
    const carry: Carry = { things: [], to, at: wrong.at, spot: wrong.spot }
    return { id: write(writing, carry, said, by, new Map(), { corrects: wrong.id, struck: true }), notes: [] }
  }
  if (wrong.struck === 1) {
    throw new Refusal('corrected-already', 'What this struck carries nothing any more. Record the movement anew.', {
      field: 'movement',
    })
  }
  const again = rows<Omit<Carried, 'field'>>(
    db,
    `SELECT iif(work IS NULL, 'crate', 'work') AS kind, coalesce(work, crate) AS id, part_of AS partOf, condition
     FROM moved WHERE movement = :id ORDER BY rowid`,
    { id: wrong.id },
  ).map(each => ({ ...each, field: 'movement' }))
  const asked = {
    again,
    arrived: input.arrived,
    to: input.to ?? wrong.place,
    at: input.at ?? wrong.at,
    spot: input.spot ?? wrong.spot,
  }
  const carry = carryOf(writing, asked, wrong.id)
  const notes = notesOf(db, carry, readerOf(writing.person, undefined))
  // Of what only says otherwise who carried it, how it went is said already.
  const otherWay = carry.to.place !== wrong.place || carry.at !== wrong.at
  const told = { ...said, reason: otherWay ? reasonOf(input.why, input.despite, notes) : input.why }
  // Where it still went there, it still fulfils what it did.
  const kept = carry.to.place === wrong.place ? plansKept(db, wrong.id) : []
  const plans = fulfilledBy(db, carry, dateAt(carry.at), kept, wrong.id)
  return { id: write(writing, carry, told, by, plans, { corrects: wrong.id, struck: false }), notes }
}

const plansKept = (db: ReadHandle, movement: string) =>
  rows<{ plan: string }>(db, "SELECT plan FROM moved WHERE movement = :movement AND plan <> ''", { movement }).map(
    each => each.plan,
  )

export function takeHung(writing: Writing, input: Received<'movement.takeHung'>): Output<'movement.takeHung'> {
  const { db } = writing
  const by = signed(writing, input.by)
  if (value(db, 'SELECT id FROM exhibition WHERE id = :id', { id: input.exhibition }) === undefined) {
    throw notFound('exhibition', 'exhibition')
  }
  const wanted = input.works === undefined ? null : new Set(input.works)
  const hung = hungUnrecorded(db, input.exhibition, writing.now())
    .filter(({ work, later }) => !later && (wanted === null || wanted.has(work)))
    .map(each => ({ ...each, ...movedSince(writing, each) }))
    .filter(({ parts, staying }) => parts === 0 || staying.length < parts)
  if (hung.length === 0) {
    throw new Refusal(
      'nothing-to-record',
      'No work that hangs is missing from the record. Tick what hangs on its wall.',
    )
  }
  for (const each of hung) {
    const { work, staying, face: to, at, spot } = each
    const carry = carryOf(writing, { works: [work], staying, to, at, spot })
    const plans = plansOf(writing, carry, [])
    const notes = notesOf(db, carry, readerOf(writing.person, undefined))
    const reason = reasonOf('hung', input.despite, notes)
    write(writing, carry, { people: each.by, reason, method: '' }, by, plans)
  }
  return { recorded: hung.length }
}

/** A part of a set that the record has moved since the tick does not hang with it. */
function movedSince({ db, now }: Writing, { work, at }: { readonly work: string; readonly at: string }) {
  const parts = partIdsOf(db, work)
  const staying = parts.filter(part => (standingOf(db, 'work', part, now())?.at ?? '') >= at)
  return { parts: parts.length, staying }
}
