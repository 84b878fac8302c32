/**
 * A wall moved or turned with its neighbours, all else where it stands. What is on the walls keeps its distance from
 * their left ends, as when lengths are typed. Nobody has measured the new lengths: they count as drawn. What was measured
 * and says otherwise is set aside, when that was agreed to, and stays with its date.
 */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { atOdds, type BendWall, type Bent, bendable } from '../../../src/plan/bend.ts'
import { surveyRoom } from '../../../src/plan/room-survey.ts'
import { shiftWall } from '../../../src/plan/shift-wall.ts'
import { measureName } from '../../../src/plan/survey.ts'
import { turnWall } from '../../../src/plan/turn-wall.ts'
import { notFound } from '../change.ts'
import { takeAxes } from '../rooms/new-axes.ts'
import { wallsOf } from '../rooms/read.ts'
import type { Writing } from '../service.ts'
import { row } from '../sql.ts'
import { redraw } from './survey.ts'
import { sidesOf, surveyRowsOf, surveyRulesOf } from './survey-read.ts'

interface Stored {
  readonly room: string
  readonly called: string
}

type Bend = (walls: readonly BendWall[], index: number) => Bent

export function shift(writing: Writing, { id, by, setAside }: Received<'wall.shift'>): Output<'wall.shift'> {
  const called = bend(writing, id, setAside ?? false, (walls, index) => shiftWall(walls, index, by))
  writing.label(`Move ${called} ${by < 0 ? 'into the room' : 'outwards'} by ${Math.round(Math.abs(by))} mm`)
  return { done: true }
}

export function turn(writing: Writing, { id, about, by, setAside }: Received<'wall.turn'>): Output<'wall.turn'> {
  const called = bend(writing, id, setAside ?? false, (walls, index) => turnWall(walls, index, about, by))
  const pivot = about === 'middle' ? 'its middle' : `its ${about} end`
  writing.label(`Turn ${called} about ${pivot} by ${Math.round(by * 10) / 10}°`)
  return { done: true }
}

/** @returns the room's and the wall's name. */
function bend(writing: Writing, id: string, agreed: boolean, way: Bend): string {
  const { db } = writing
  const stored = row<Stored>(
    db,
    `SELECT wall.room, room.name || ' ' || wall.name AS called
     FROM wall JOIN room ON room.id = wall.room WHERE wall.id = :id AND wall.exhibition IS NULL`,
    { id },
  )
  if (stored === undefined) throw notFound('wall')
  const { room, called } = stored
  const walls = bendable(wallsOf(db, room))
  const index = sidesOf(db, room).findIndex(wall => wall.id === id)
  const bent = way(walls, index)
  if (!bent.ok) throw new Refusal('no-room', bent.problem, { field: 'by' })
  const setAside = saysOtherwise(writing, room, walls, bent)
  if (setAside.length > 0 && !agreed) {
    const names = setAside.map(measureName)
    const list = names.length === 1 ? names[0] : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
    throw new Refusal(
      'measured-otherwise',
      `Measured otherwise: ${list}. Agree to set that aside, or leave the wall where it was measured.`,
      { field: 'setAside', details: { keys: setAside.map(({ key }) => key) } },
    )
  }
  const anew = (of: readonly number[], was: (wall: BendWall) => number) =>
    walls.map((wall, at) => (of[at] === was(wall) ? null : (of[at] ?? null)))
  const [lengths, angles] = [anew(bent.lengths, wall => wall.length), anew(bent.angles, wall => wall.angle)]
  redraw(
    writing,
    room,
    lengths,
    angles,
    setAside.filter(({ kind }) => kind === 'diagonal').map(({ key }) => key),
  )
  takeAxes(writing, room, { at: bent.origin, turn: bent.turn })
  return called
}

function saysOtherwise({ db }: Writing, room: string, walls: readonly BendWall[], bent: Bent & { readonly ok: true }) {
  const { measures } = surveyRoom(sidesOf(db, room), surveyRowsOf(db, room), surveyRulesOf(db))
  const counted = measures.map(one => ({
    ...one,
    how: one.standing === 'measured' ? ('measured' as const) : ('drawn' as const),
    used: true,
  }))
  return atOdds(counted, walls, bent)
}
