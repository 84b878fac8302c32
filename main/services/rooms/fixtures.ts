/** What is fixed on a wall: openings, and what works must keep clear of. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { beginsBehind, swingBehind } from '../../../src/plan/seen-from-behind.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { type Columns, changeFields, notFound, same, yesNoColumn } from '../change.ts'
import { openExhibition } from '../exhibitions/open.ts'
import type { Writing } from '../service.ts'
import { insert, remove, row, update, value } from '../sql.ts'

interface Bearer {
  readonly wall: string
  readonly room: string
  readonly name: string
  readonly exhibition: string | null
  readonly length: number
}

/** The wall that something is fixed on. Refuses a partition of a closed show. */
function bearer(db: ReadHandle, wall: string, field: string): Bearer {
  const found = row<Bearer>(
    db,
    `SELECT wall.id AS wall, wall.room, room.name || ' ' || wall.name AS name, wall.exhibition, wall.length
     FROM wall JOIN room ON room.id = wall.room WHERE wall.id = :wall`,
    { wall },
  )
  if (found === undefined) throw notFound('wall', field)
  if (found.exhibition !== null) openExhibition(db, found.exhibition, field)
  return found
}

/** Only a partition has a face b. */
function refuseSide(on: Bearer, side: 'a' | 'b' | undefined): void {
  if (side !== 'b' || on.exhibition !== null) return
  throw new Refusal('one-face', 'A wall of a room has one face; only a partition has another.', { field: 'side' })
}

function fixed({ db }: Writing, table: 'opening' | 'keep_clear', id: string): Bearer & { readonly kind: string } {
  const found = row<{ kind: string; wall: string }>(db, `SELECT kind, wall FROM ${table} WHERE id = :id`, { id })
  if (found === undefined) throw notFound(table === 'opening' ? 'opening' : 'thing on a wall')
  return { ...bearer(db, found.wall, 'id'), kind: found.kind }
}

/** A door leads to another room of the building. */
function refuseLead(db: ReadHandle, { room }: Bearer, leadsTo: string | null | undefined, field: string): void {
  if (leadsTo === null || leadsTo === undefined) return
  if (leadsTo === room) throw new Refusal('leads-nowhere', 'An opening leads to another room than its own.', { field })
  if (value(db, 'SELECT 1 FROM room WHERE id = :leadsTo', { leadsTo }) === undefined) throw notFound('room', field)
}

const place = { kind: 'kind', x: 'x', y: 'y', width: 'width', height: 'height', label: 'label' }

const openingColumns = { ...place, swing: 'swing', leadsTo: 'leads_to', depth: 'depth' }
const fixtureColumns = {
  ...place,
  margin: 'margin',
  reason: 'reason',
  depth: 'depth',
  reachable: yesNoColumn('reachable'),
}

export function addOpening(writing: Writing, input: Received<'opening.add'>): Output<'opening.add'> {
  const { db } = writing
  const { side, leadsTo = null, label = '', swing = '', depth = null, ...given } = input
  const on = bearer(db, input.wall, 'wall')
  refuseSide(on, side)
  refuseLead(db, on, leadsTo, 'leadsTo')
  writing.label(`Add a ${input.kind} to ${on.name}`)
  const id = writing.newId()
  const seen =
    side === 'b' ? { x: beginsBehind(given.x, given.width, on.length), swing: swingBehind(swing) } : { swing }
  insert(db, 'opening', { id, ...given, ...seen, label, leads_to: leadsTo, depth })
  return { id }
}

type OpeningChanges = Received<'opening.update'>['changes']

/** As face b sees it: what is written there is turned over, and so is the answer to a clash. */
function seenOnB({ db }: Writing, id: string, length: number, changes: OpeningChanges) {
  const stored = row<{ x: number; width: number }>(db, 'SELECT x, width FROM opening WHERE id = :id', { id })
  const { x = 0, width = 0 } = stored ?? {}
  const goes = changes.width !== undefined && (same(width, changes.width.was) || same(width, changes.width.to))
  const wide = goes ? changes.width?.to : undefined
  const columns: Columns = {
    ...openingColumns,
    x: {
      column: 'x',
      read: at => beginsBehind(Number(at), width, length),
      write: at => beginsBehind(Number(at), wide ?? width, length),
    },
    swing: { column: 'swing', read: one => swingBehind(String(one)), write: one => swingBehind(String(one)) },
  }
  const begins = beginsBehind(x, width, length)
  // Its left end there stays while it grows, and that is its right end here.
  const held = changes.x === undefined && wide !== undefined ? { x: { was: begins, to: begins } } : {}
  return { columns, changes: { ...changes, ...held } }
}

export function changeOpening(
  writing: Writing,
  { id, side, changes }: Received<'opening.update'>,
): Output<'opening.update'> {
  const on = fixed(writing, 'opening', id)
  refuseSide(on, side)
  refuseLead(writing.db, on, changes.leadsTo?.to, 'changes.leadsTo.to')
  writing.label(`Change a ${on.kind} of ${on.name}`)
  const seen = side === 'b' ? seenOnB(writing, id, on.length, changes) : { columns: openingColumns, changes }
  const { saved, clashes, values } = changeFields(writing, 'opening', id, seen.changes, seen.columns, 'opening')
  // What leads elsewhere is no longer the hole that another room's wall has.
  if (values.leadsTo !== undefined) partFromOther(writing, id, values.leadsTo)
  return { saved: saved.filter(field => field in changes), clashes }
}

function otherOf({ db }: Writing, id: string): { readonly other: string; readonly room: string } | undefined {
  return row(
    db,
    `SELECT opening.other, wall.room FROM opening JOIN opening AS next ON next.id = opening.other
     JOIN wall ON wall.id = next.wall WHERE opening.id = :id`,
    { id },
  )
}

/** Loosens a pair, unless its other side is in the room that is named. */
function partFromOther(writing: Writing, id: string, unless: unknown = null): void {
  const now = otherOf(writing, id)
  if (now === undefined || now.room === unless) return
  update(writing.db, 'opening', id, { other: null })
  update(writing.db, 'opening', now.other, { other: null })
}

export function pairOpenings(writing: Writing, { id, other }: Received<'opening.pair'>): Output<'opening.pair'> {
  const { db } = writing
  const here = fixed(writing, 'opening', id)
  if (other === null) {
    writing.label(`Part a ${here.kind} of ${here.name} from the next room's`)
    partFromOther(writing, id)
    return { done: true }
  }
  const there = fixed(writing, 'opening', other)
  if (here.room === there.room) {
    throw new Refusal('same-room', 'One hole is in the walls of two rooms; these are both in one.', { field: 'other' })
  }
  writing.label(`Make one ${here.kind} of ${here.name} and ${there.name}`)
  partFromOther(writing, id)
  partFromOther(writing, other)
  update(db, 'opening', id, { other, leads_to: there.room })
  update(db, 'opening', other, { other: id, leads_to: here.room })
  return { done: true }
}

export function removeOpening(writing: Writing, { id }: Received<'opening.remove'>): Output<'opening.remove'> {
  const { kind, name } = fixed(writing, 'opening', id)
  writing.label(`Remove a ${kind} of ${name}`)
  partFromOther(writing, id)
  remove(writing.db, 'opening', id)
  return { done: true }
}

export function addKeepClear(writing: Writing, input: Received<'keepClear.add'>): Output<'keepClear.add'> {
  const { label = '', reason = '', side = 'a', depth = null, reachable = false, ...given } = input
  const on = bearer(writing.db, input.wall, 'wall')
  refuseSide(on, side)
  writing.label(`Add a ${input.kind} to ${on.name}`)
  const id = writing.newId()
  insert(writing.db, 'keep_clear', { id, ...given, label, reason, side, depth, reachable: reachable ? 1 : 0 })
  return { id }
}

export function changeKeepClear(
  writing: Writing,
  { id, changes }: Received<'keepClear.update'>,
): Output<'keepClear.update'> {
  const { kind, name } = fixed(writing, 'keep_clear', id)
  writing.label(`Change a ${kind} of ${name}`)
  const { saved, clashes } = changeFields(writing, 'keep_clear', id, changes, fixtureColumns, 'thing on a wall')
  return { saved, clashes }
}

export function removeKeepClear(writing: Writing, { id }: Received<'keepClear.remove'>): Output<'keepClear.remove'> {
  const { kind, name } = fixed(writing, 'keep_clear', id)
  writing.label(`Remove a ${kind} of ${name}`)
  remove(writing.db, 'keep_clear', id)
  return { done: true }
}
