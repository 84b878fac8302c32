/**
 * A wall moved or turned with its neighbours, all else where it stands; one that two rooms share with both its sides,
 * unless this one alone was asked for. What is on the walls keeps its distance from their left ends, as when lengths are
 * typed. Nobody has measured the new lengths: they count as drawn. What was measured and says otherwise is set aside,
 * when that was agreed to, and stays with its date.
 */
import type { WallRow } from '../../../src/contract/areas/rooms.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { clean } from '../../../src/geometry/clean.ts'
import { facing } from '../../../src/plan/back-to-back.ts'
import { atOdds, type BendWall, type Bent, bendable, bentWalls } from '../../../src/plan/bend.ts'
import { bendSide, type Deed, followed, otherDeed, type Side, sideAlone } from '../../../src/plan/bend-both.ts'
import { origin, toBuilding } from '../../../src/plan/place.ts'
import { surveyRoom } from '../../../src/plan/room-survey.ts'
import { measureName } from '../../../src/plan/survey.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { takeAxes } from '../rooms/new-axes.ts'
import { wallsOf } from '../rooms/read.ts'
import type { Writing } from '../service.ts'
import { row, update } from '../sql.ts'
import { makeOneWall, pairedThrough, partWalls } from './share.ts'
import { redraw } from './survey.ts'
import { sidesOf, surveyRowsOf, surveyRulesOf } from './survey-read.ts'

interface How {
  readonly setAside?: boolean | undefined
  readonly alone?: boolean | undefined
}

export function shift(writing: Writing, { id, by, ...how }: Received<'wall.shift'>): Output<'wall.shift'> {
  const called = bend(writing, id, { is: 'shift', by }, how)
  writing.label(`Move ${called} ${by < 0 ? 'into the room' : 'outwards'} by ${Math.round(Math.abs(by))} mm`)
  return { done: true }
}

export function turn(writing: Writing, { id, about, by, ...how }: Received<'wall.turn'>): Output<'wall.turn'> {
  const called = bend(writing, id, { is: 'turn', about, by }, how)
  const pivot = about === 'middle' ? 'its middle' : `its ${about} end`
  writing.label(`Turn ${called} about ${pivot} by ${Math.round(by * 10) / 10}°`)
  return { done: true }
}

/** @returns the room's and the wall's name, with those of the other side where it went too. */
function bend(writing: Writing, id: string, deed: Deed, { setAside, alone }: How): string {
  const { db } = writing
  const own = faceOf(db, id)
  if (own === undefined) throw notFound('wall')
  const other = own.backs === null ? undefined : faceOf(db, own.backs)
  const bent = bentOf(own, deed)
  if (other === undefined || alone === true) {
    agree(writing, [{ face: own, bent }], setAside ?? false)
    if (other !== undefined) leaveOther(writing, own, other, deed)
    write(writing, own, bent)
    return other === undefined ? own.called : `${own.called}, this side alone,`
  }
  const theirs = otherDeed(own, other, deed)
  if (!theirs.ok)
    throw new Refusal('other-side', `${theirs.problem} Place both, or move this side alone.`, { field: 'by' })
  const there = bentOf(other, theirs.deed)
  agree(
    writing,
    [
      { face: own, bent },
      { face: other, bent: there },
    ],
    setAside ?? false,
  )
  const before = [own, other] as const
  write(writing, own, bent)
  write(writing, other, there)
  holdDoorways(writing, before, [after(own, bent), after(other, there)])
  return `${own.called} and ${other.called}`
}

interface Face extends Side<WallRow> {
  readonly id: string
  readonly room: string
  readonly called: string
  readonly roomName: string
  readonly thickness: number | null
  readonly backs: string | null
}

interface Stored extends Omit<Face, 'walls' | 'index' | 'placed'> {
  readonly x: number | null
  readonly y: number | null
  readonly turn: number
}

/** A wall in its room, in the building's coordinates where the room has a place. */
function faceOf(db: ReadHandle, id: string): Face | undefined {
  const stored = row<Stored>(
    db,
    `SELECT wall.id, wall.room, room.name || ' ' || wall.name AS called, room.name AS roomName, wall.thickness,
      wall.backs, room.at_x AS x, room.at_y AS y, room.turn
     FROM wall JOIN room ON room.id = wall.room WHERE wall.id = :id AND wall.exhibition IS NULL`,
    { id },
  )
  if (stored === undefined) return undefined
  const { x, y, turn: turned, ...rest } = stored
  const place = x === null || y === null ? origin : { at: [x, y] as const, turn: turned }
  const walls = wallsOf(db, rest.room).map(wall => ({
    ...wall,
    from: [...toBuilding(place, wall.from)] as [number, number],
    to: [...toBuilding(place, wall.to)] as [number, number],
  }))
  return { ...rest, walls, index: walls.findIndex(wall => wall.id === id), placed: place !== origin }
}

type Well = Bent & { readonly ok: true }

function bentOf(face: Face, deed: Deed): Well {
  const bent = bendSide(face, deed)
  if (!bent.ok) throw new Refusal('no-room', bent.problem, { field: 'by' })
  return bent
}

/** What was measured and says otherwise is named, in both rooms, unless it may be set aside. */
function agree({ db }: Writing, rooms: readonly { readonly face: Face; readonly bent: Well }[], agreed: boolean): void {
  const odds = rooms.flatMap(({ face, bent }, at) =>
    saysOtherwise(db, face, bent).map(one => ({
      key: one.key,
      name: at === 0 ? measureName(one) : `${measureName(one)} of ${face.roomName}`,
    })),
  )
  if (odds.length === 0 || agreed) return
  const names = odds.map(({ name }) => name)
  const list = names.length === 1 ? names[0] : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
  throw new Refusal(
    'measured-otherwise',
    `Measured otherwise: ${list}. Agree to set that aside, or leave the wall where it was measured.`,
    { field: 'setAside', details: { keys: odds.map(({ key }) => key) } },
  )
}

function saysOtherwise(db: ReadHandle, { room, walls }: Face, bent: Well) {
  const { measures } = surveyRoom(sidesOf(db, room), surveyRowsOf(db, room), surveyRulesOf(db))
  const counted = measures.map(one => ({
    ...one,
    how: one.standing === 'measured' ? ('measured' as const) : ('drawn' as const),
    used: true,
  }))
  return atOdds(counted, bendable(walls), bent)
}

function write(writing: Writing, face: Face, bent: Well): void {
  const walls = bendable(face.walls)
  const anew = (of: readonly number[], was: (wall: BendWall) => number) =>
    walls.map((wall, at) => (of[at] === was(wall) ? null : (of[at] ?? null)))
  const [lengths, angles] = [anew(bent.lengths, wall => wall.length), anew(bent.angles, wall => wall.angle)]
  const diagonals = saysOtherwise(writing.db, face, bent).filter(({ kind }) => kind === 'diagonal')
  redraw(
    writing,
    face.room,
    lengths,
    angles,
    diagonals.map(({ key }) => key),
  )
  takeAxes(writing, face.room, { at: bent.origin, turn: bent.turn })
}

/** One side alone has gone: the wall between is another then, or none. */
function leaveOther(writing: Writing, own: Face, other: Face, deed: Deed): void {
  const [here, there] = [wallOf(own), wallOf(other)]
  const apart = own.placed && other.placed ? (facing(here, there)?.apart ?? null) : null
  const is = sideAlone(here.length, own.thickness, apart, deed)
  if (is.is === 'through') {
    const left =
      is.left < 0 ? 'It would come through the other side.' : `Only ${Math.round(is.left)} mm of wall would be left.`
    throw new Refusal('through-wall', `${left} Move it less far, or both sides.`, { field: 'by' })
  }
  if (is.is === 'shared') makeOneWall(writing, own.id, other.id, is.thickness)
  else {
    partWalls(writing, own.id, other.id)
    for (const { id } of [own, other]) update(writing.db, 'wall', id, { thickness: null })
  }
}

const after = (face: Face, bent: Well): Face => ({ ...face, walls: [...bentWalls(face.walls, face.index, bent)] })

function wallOf({ walls, index }: Face): WallRow {
  const wall = walls[index]
  if (wall === undefined) throw notFound('wall')
  return wall
}

/** A doorway through both is one hole still, though the ends of the two sides go differently. */
function holdDoorways(
  { db }: Writing,
  [own, other]: readonly [Face, Face],
  [ownNow, otherNow]: readonly [Face, Face],
): void {
  if (!own.placed || !other.placed) return
  for (const { mine, their } of pairedThrough(db, own.id, other.id)) {
    const [here, there] = [
      wallOf(own).openings.find(({ id }) => id === mine),
      wallOf(other).openings.find(({ id }) => id === their),
    ]
    if (here === undefined || there === undefined) continue
    const on = (face: Face, hole: typeof here) => ({ wall: wallOf(face), at: hole.x + hole.width / 2 })
    const by = followed([on(own, here), on(other, there)], [on(ownNow, here), on(otherNow, there)])
    const x = clean(Math.round((there.x + by) * 1e3) / 1e3)
    if (Math.abs(x - there.x) < 0.01) continue
    if (x < 0 || x + there.width > wallOf(otherNow).length) {
      throw new Refusal(
        'no-room',
        `The ${there.kind} through both would not fit into ${other.called}. Move it less far.`,
        {
          field: 'by',
        },
      )
    }
    update(db, 'opening', their, { x })
  }
}
