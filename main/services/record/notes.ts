/** What a registrar is told about a movement: whether it fits through, whether a crate may be open, what is entered late. */
import type { Finding } from '../../../src/contract/shared.ts'
import { sayIn } from '../../../src/hang/marks.ts'
import type { Reader } from '../../../src/model/work-findings.ts'
import {
  type Box,
  bestFit,
  type Doorway,
  type Fit,
  fitsDoorway,
  fitsLift,
  overDoorway,
  overLift,
} from '../../../src/record/fit.ts'
import { opensAt } from '../../../src/record/hold.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { sheetTime } from '../sheets/wishes.ts'
import { row, rows, value } from '../sql.ts'
import { type Carry, type Thing, wordsOf } from './carry.ts'
import { partNotes } from './part-notes.ts'
import { locationOf, placeOf } from './places.ts'
import { inForce, standingCrates } from './standing.ts'

export function notesOf(db: ReadHandle, carry: Carry, reader: Reader): Finding[] {
  const carried = new Set(carry.things.map(({ id }) => id))
  return [
    ...partNotes(db, carry),
    ...carry.things.flatMap(thing => {
      // What is late or opened early of a set is said once; through a door each part goes by itself.
      const inSet = thing.partOf !== null && carried.has(thing.partOf)
      const isSet = carry.things.some(({ partOf }) => partOf === thing.id)
      return [
        ...(inSet ? [] : lateNotes(db, thing, carry)),
        ...(isSet ? [] : fitNotes(db, thing, carry, reader)),
        ...(inSet ? [] : holdNotes(db, thing, carry)),
      ]
    }),
  ]
}

const settle = (code: string, { kind, id }: Thing, text: string, figures: Finding['figures']): Finding => ({
  severity: 'settle',
  code,
  subject: { kind, id },
  text,
  figures,
})

function lateNotes(db: ReadHandle, thing: Thing, { at }: Carry): Finding[] {
  const later = row<{ at: string; place: string; movement: string; from: string }>(
    db,
    `SELECT moved.at, moved.place, moved.movement, moved.from_words AS "from" FROM moved
     WHERE moved.${thing.kind} = :id AND moved.at > :at AND ${inForce} ORDER BY moved.at, moved.movement LIMIT 1`,
    { id: thing.id, at },
  )
  if (later === undefined) return []
  const left = later.from === '' ? 'from nowhere' : `from ${later.from}`
  const text = `Entered late: ${thing.name} was taken ${left} to ${wordsOf(db, later)} on ${sheetTime(later.at)}. Where it is now does not change.`
  return [settle('late-entry', thing, text, { at, later: later.at })]
}

interface Sized extends Doorway {
  readonly label: string
}

/** The room that a place is in, through crates and vehicles, at that moment. */
function roomAround(db: ReadHandle, place: string, at: string): string | null {
  const crates = standingCrates(db, at)
  const seen = new Set<string>()
  for (let each = place; !seen.has(each); ) {
    seen.add(each)
    const room = placeOf(db, each)?.room ?? null
    if (room !== null) return room
    each = crates.get(each)?.place ?? each
  }
  return null
}

function boxOf(db: ReadHandle, { kind, id }: Thing): Box | null {
  const found = row<{ width: number | null; height: number | null; depth: number | null }>(
    db,
    kind === 'crate'
      ? 'SELECT width, height, depth FROM location WHERE id = :id'
      : `SELECT coalesce(hang_width, hang_diameter) AS width, coalesce(hang_height, hang_diameter) AS height,
         coalesce(hang_depth, 0) AS depth FROM work WHERE id = :id`,
    { id },
  )
  if (found === undefined || found.width === null || found.height === null || found.depth === null) return null
  return { width: found.width, height: found.height, depth: found.depth }
}

const doorways = `SELECT opening.width, opening.height, opening.label FROM opening JOIN wall ON wall.id = opening.wall
  WHERE wall.room = :room AND opening.kind IN ('door', 'passage')`

function fitNotes(db: ReadHandle, thing: Thing, { to, at }: Carry, reader: Reader): Finding[] {
  const box = boxOf(db, thing)
  if (box === null) return []
  const from = thing.from === undefined ? null : roomAround(db, thing.from.place, at)
  const into = roomAround(db, to.place, at)
  if (from === into) return []
  const length = sayIn(reader.unit, reader.steps)
  const said = ({ width, height, depth }: Box) =>
    `${length(height)} × ${length(width)}${depth === 0 ? '' : ` × ${length(depth)}`}`
  const passed = [from, into].flatMap(room => {
    if (room === null) return []
    const best = bestFit(
      rows<Sized>(db, doorways, { room }),
      door => fitsDoorway(box, door),
      door => overDoorway(box, door),
    )
    if (best === null || best.fit === 'upright') return []
    const called = placeOf(db, room)?.words ?? ''
    const { width, height } = best.way
    const door = `the best doorway of ${called}, ${length(height)} high and ${length(width)} wide`
    const figures = { ...box, doorWidth: width, doorHeight: height, over: best.over, room }
    const text = `${thing.name}, ${said(box)}, ${wayOf(best.fit)} through ${door}${overSaid(best, length)}.`
    return [settle(codeOf(best.fit), thing, text, figures)]
  })
  return [...passed, ...liftNotes(db, thing, box, [from, into], said, length)]
}

const codes = {
  upright: 'passes',
  turned: 'passes-turned',
  tipped: 'passes-tipped',
  leaning: 'passes-leaning',
  no: 'does-not-pass',
} as const
const codeOf = (fit: Fit) => codes[fit]

function wayOf(fit: Fit): string {
  if (fit === 'no') return 'does not pass'
  return fit === 'leaning' ? 'passes only slantwise, from corner to corner,' : 'passes only laid on a side'
}

const overSaid = ({ fit, over }: { readonly fit: Fit; readonly over: number }, length: (mm: number) => string) =>
  fit === 'no' ? `: ${length(over)} too large` : ''

/** Into a lift: what stands upright and straight needs no word. */
const intoLift: Readonly<Record<Exclude<Fit, 'upright'>, string>> = {
  turned: 'stands only on the diagonal of the floor in',
  tipped: 'lies only on a side in',
  leaning: 'goes only slantwise, from corner to corner, into',
  no: 'does not stand in',
}

function liftNotes(
  db: ReadHandle,
  thing: Thing,
  box: Box,
  [from, into]: readonly (string | null)[],
  said: (box: Box) => string,
  length: (mm: number) => string,
): Finding[] {
  const storeyOf = (room: string | null | undefined) =>
    value<string>(db, 'SELECT storey FROM room WHERE id = :room', { room: room ?? '' })
  const [below, above] = [storeyOf(from), storeyOf(into)]
  if (below === undefined || above === undefined || below === above) return []
  const lifts = rows<Box & { readonly name: string }>(
    db,
    `SELECT name, width, height, depth FROM location WHERE kind = 'lift' AND width IS NOT NULL AND height IS NOT NULL
     AND depth IS NOT NULL ORDER BY name`,
  )
  const best = bestFit(
    lifts,
    lift => fitsLift(box, lift),
    lift => overLift(box, lift),
  )
  if (best === null || best.fit === 'upright') return []
  const { name, width, height, depth } = best.way
  const cabin = `${name}, ${said({ width, height, depth })}`
  const figures = { ...box, cabinWidth: width, cabinHeight: height, cabinDepth: depth, over: best.over }
  const text = `${thing.name}, ${said(box)}, ${intoLift[best.fit]} ${cabin}${overSaid(best, length)}.`
  return [settle(codeOf(best.fit), thing, text, figures)]
}

/** Taken out of a crate that is to stay shut a while after its last move (house or lender says how long). */
function holdNotes(db: ReadHandle, thing: Thing, { to, at }: Carry): Finding[] {
  if (thing.from === undefined || thing.from.place === to.place) return []
  const crate = locationOf(db, thing.from.place)
  if (crate?.kind !== 'crate' || crate.holdHours === null || crate.holdHours === 0) return []
  const came = standingCrates(db, at).get(crate.id)
  if (came === undefined) return []
  const opens = opensAt(came.at, crate.holdHours)
  if (at >= opens) return []
  const text = `${crate.name} stays shut for ${crate.holdHours} hours after a move: it came on ${sheetTime(came.at)}, so it opens from ${sheetTime(opens)}. ${thing.name} left it before.`
  return [settle('opened-early', thing, text, { holdHours: crate.holdHours, came: came.at, opens })]
}
