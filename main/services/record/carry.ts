/** What is carried in one movement, settled before anything is recorded: things, place, time, and where each comes from. */
import type { Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { insideItself } from '../../../src/record/nested.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import type { Reading } from '../service.ts'
import { sheetTime } from '../sheets/wishes.ts'
import { rows, value } from '../sql.ts'
import { workName } from '../works/facts.ts'
import { type Carried, carriedOf } from './carried.ts'
import { refuseDamaged } from './damage/stays.ts'
import { locationOf, moves, type NamedPlace, placeNamed, placeOf } from './places.ts'
import { inForce, type Stood, standingCrates, standingWithout } from './standing.ts'

export interface Thing {
  readonly kind: 'work' | 'crate'
  readonly id: string
  readonly name: string
  /** Where the record has it just before; undefined where this is its first movement. */
  readonly from: Stood | undefined
  readonly fromWords: string
  /** The field that named it. */
  readonly field: string
  /** The set that it is carried in. */
  readonly partOf: string | null
  /** Of itself, as it arrived. */
  readonly condition: string
}

export interface Carry {
  readonly things: readonly Thing[]
  readonly to: NamedPlace
  readonly at: string
  readonly spot: string
}

type Asked = Pick<Received<'movement.add'>, 'works' | 'crates' | 'staying' | 'arrived' | 'to' | 'at' | 'spot'> & {
  /** Exactly these, as an earlier record has them; no part is added. */
  readonly again?: readonly Carried[]
}

/** A clock that is a minute ahead of another is no movement in the future. */
const clockSlack = 60_000

/** `ignoring`: a movement that this one sets right. Refuses what cannot have been. */
export function carryOf({ db, now }: Pick<Reading, 'db' | 'now'>, asked: Asked, ignoring?: string): Carry {
  const today = now()
  // One form for all, so that texts sort as moments do.
  const at = asked.at === undefined ? today : new Date(asked.at).toISOString()
  if (Date.parse(at) > Date.parse(today) + clockSlack) {
    throw new Refusal(
      'in-the-future',
      `It is ${sheetTime(today)} now: a movement of ${sheetTime(at)} has not been yet. Record it when it is done.`,
      { field: 'at' },
    )
  }
  const to = placeNamed(db, asked.to, 'to')
  if (to.kind === 'lift') {
    throw new Refusal('bad-input', `${to.words} is a lift: say where it went, the lift is on the way.`, { field: 'to' })
  }
  const carried = asked.again ?? carriedOf(db, asked, to.place, at)
  if (carried.length === 0) {
    throw new Refusal('bad-input', 'Say what was moved: a work, several, or a crate with all in it.', {
      field: 'works',
    })
  }
  const arrived = arrivedAs(asked.arrived ?? [], carried)
  const things = carried.map((each): Thing => {
    return { ...thingOf(db, each, at, ignoring), ...each, condition: arrived.get(each.id) ?? each.condition }
  })
  for (const thing of things) if (thing.kind === 'crate') refuseInside(db, thing, to, at)
  refuseDamaged(db, { things, to, at }, ignoring)
  return { things, to, at, spot: asked.spot ?? '' }
}

/** By id. Refuses what was said of a thing that was not carried. */
function arrivedAs(
  arrived: NonNullable<Asked['arrived']>,
  carried: readonly Pick<Thing, 'id'>[],
): ReadonlyMap<string, string> {
  for (const [index, { id }] of arrived.entries()) {
    if (carried.some(each => each.id === id)) continue
    const sentence = 'A condition on arrival is said of what was not carried. Say it of what was moved.'
    throw new Refusal('not-carried', sentence, { field: `arrived.${index}.id` })
  }
  return new Map(arrived.map(({ id, condition }) => [id, condition]))
}

function thingOf(
  db: ReadHandle,
  { kind, id, field }: Carried,
  at: string,
  ignoring: string | undefined,
): Pick<Thing, 'name' | 'from' | 'fromWords'> {
  const name = nameOf(db, kind, id, field)
  const other = rows<{ at: string; movement: string; words: string }>(
    db,
    `SELECT moved.at, moved.movement, movement.place_words AS words FROM moved JOIN movement ON movement.id = moved.movement
     WHERE moved.${kind} = :id AND ${inForce} AND moved.movement IS NOT :ignoring ORDER BY moved.at LIMIT 1`,
    { id, ignoring: ignoring ?? null },
  )[0]
  // What sets the arrival right may well be before it.
  if (other !== undefined && at < other.at) {
    const first = value<string>(
      db,
      `SELECT moved.movement FROM moved WHERE moved.${kind} = :id AND ${inForce} ORDER BY moved.at, moved.movement LIMIT 1`,
      { id },
    )
    if (first !== ignoring) {
      throw new Refusal(
        'before-arrival',
        `${name} arrived on ${sheetTime(other.at)} at ${other.words}: nothing of ${sheetTime(at)} can be recorded before. If it came earlier, correct its arrival.`,
        { field: 'at', details: { movement: other.movement } },
      )
    }
  }
  const same = value<string>(
    db,
    `SELECT movement.place_words FROM moved JOIN movement ON movement.id = moved.movement
     WHERE moved.${kind} = :id AND moved.at = :at AND ${inForce} AND moved.movement IS NOT :ignoring`,
    { id, at, ignoring: ignoring ?? null },
  )
  if (same !== undefined) {
    throw new Refusal(
      'two-places',
      `${name} was put down at ${same} at that very moment. It cannot be in two places.`,
      {
        field: 'at',
      },
    )
  }
  const from = standingWithout(db, kind, id, at, ignoring)
  return { name, from, fromWords: from === undefined ? '' : wordsOf(db, from) }
}

export function wordsOf(db: ReadHandle, { place, movement }: Pick<Stood, 'place' | 'movement'>): string {
  return (
    placeOf(db, place)?.words ??
    value<string>(db, 'SELECT place_words FROM movement WHERE id = :movement', { movement }) ??
    ''
  )
}

/** Refuses `not-found`, and what is no thing that moves. */
export function nameOf(db: ReadHandle, kind: Thing['kind'], id: string, field: string): string {
  if (kind === 'work') {
    if (value(db, 'SELECT id FROM work WHERE id = :id', { id }) === undefined) throw notFound('work', field)
    return workName(db, id)
  }
  const crate = locationOf(db, id)
  if (crate === undefined) throw notFound('crate', field)
  if (!moves(crate.kind)) {
    throw new Refusal('bad-input', `${crate.name} is no crate and no vehicle: it stays where it is.`, { field })
  }
  return crate.name
}

/** At its own moment and at every later one at which another crate moved: an entry made late may close a ring. */
function refuseInside(db: ReadHandle, crate: Thing, to: NamedPlace, at: string): void {
  const later = rows<{ at: string }>(
    db,
    `SELECT DISTINCT moved.at FROM moved WHERE moved.crate IS NOT NULL AND moved.at > :at AND ${inForce} ORDER BY moved.at`,
    { at },
  )
  for (const moment of [at, ...later.map(each => each.at)]) {
    const standing = standingCrates(db, moment)
    // From its next movement on this one says nothing of where it is.
    if ((standing.get(crate.id)?.at ?? at) > at) return
    if (
      insideItself(crate.id, to.place, new Map<string, { place: string }>(standing).set(crate.id, { place: to.place }))
    ) {
      throw new Refusal('inside-itself', `${crate.name} cannot be put into itself: ${to.words} is, or lies in, it.`, {
        field: 'to',
      })
    }
  }
}
