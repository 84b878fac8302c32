/** What a registrar is told about a movement: whether it fits through, whether a crate may be open, what is entered late. */
import type { Finding } from '../../../src/contract/shared.ts'
import type { Reader } from '../../../src/model/work-findings.ts'
import { opensAt } from '../../../src/record/hold.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { sheetTime } from '../sheets/wishes.ts'
import { row } from '../sql.ts'
import { type Carry, type Thing, wordsOf } from './carry.ts'
import { partNotes } from './part-notes.ts'
import { locationOf } from './places.ts'
import { inForce, standingCrates } from './standing.ts'
import { wayTeller } from './ways.ts'

/** `tell`: of many at once, so that the plan is read once. */
export function notesOf(db: ReadHandle, carry: Carry, reader: Reader, tell = wayTeller(db, reader)): Finding[] {
  const carried = new Set(carry.things.map(({ id }) => id))
  return [
    ...partNotes(db, carry),
    ...carry.things.flatMap(thing => {
      // What is late or opened early of a set is said once; through a door each part goes by itself.
      const inSet = thing.partOf !== null && carried.has(thing.partOf)
      const isSet = carry.things.some(({ partOf }) => partOf === thing.id)
      return [
        ...(inSet ? [] : lateNotes(db, thing, carry)),
        ...(isSet ? [] : fitNotes(thing, carry, tell)),
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

const codes = {
  turned: 'passes-turned',
  tipped: 'passes-tipped',
  leaning: 'passes-leaning',
  no: 'does-not-pass',
} as const

/** What goes upright needs no word. */
function fitNotes(thing: Thing, { to, at }: Carry, tell: ReturnType<typeof wayTeller>): Finding[] {
  const { fit, text, through, tightest } = tell(thing, thing.from?.place ?? null, to.place, at)
  if (fit === null || fit === 'upright' || tightest === null) return []
  return [settle(codes[fit], thing, text, { through, tightest })]
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
