/**
 * A wall cut at a place along it. The left part stays the wall that it was, with its printed sheets; the right part is a
 * new wall, in line with it, and has what has its centre there. A wall between two rooms is cut on both its sides.
 */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { formatLength } from '../../../src/measure/format.ts'
import { type HoleInTheWay, inTheWay } from '../../../src/plan/cut-place.ts'
import { cutSaid, LEAST_PART, otherCut } from '../../../src/plan/split-both.ts'
import { splitFacts } from '../../../src/plan/wall-parts.ts'
import { notFound } from '../change.ts'
import { moveBefore, orderedRows } from '../order.ts'
import { plan } from '../plan/get.ts'
import { makeOneWall } from '../plan/share.ts'
import { splitMeasures } from '../plan/survey-parts.ts'
import { rulesOfParts } from '../sequence/rules-follow.ts'
import type { Writing } from '../service.ts'
import { insert, rows, update } from '../sql.ts'
import { roomName } from './called.ts'
import { drawRoom } from './draw.ts'
import { moveAlong } from './move-along.ts'
import { columnsOf, faceOf, factsOf, linesFromLeftEnd, type StoredWall, storedWall } from './wall-facts.ts'

const mm = (length: number) => formatLength(length, { unit: 'mm' })

export function splitWall(writing: Writing, { id, x, name, alone }: Received<'wall.split'>): Output<'wall.split'> {
  const { db } = writing
  const before = storedWall(writing, id)
  if (before === undefined) throw notFound('wall')
  if (before.exhibition !== null) {
    throw new Refusal('partition', 'This is a partition, no wall of the room’s outline.', { field: 'id' })
  }
  const length = Number(before.length)
  if (x < LEAST_PART || x > length - LEAST_PART) {
    throw new Refusal('off-the-wall', `A wall of ${mm(length)} is split between its ends, not at ${mm(x)}.`, {
      field: 'x',
      details: { length },
    })
  }
  const hole = inTheWay(openingsOf(writing, id), x)
  if (hole !== null) refuseAcross(hole, `At ${mm(x)}`)
  const other = before.backs === null ? null : otherCut(plan(writing, { exhibition: null }).rooms, id, x)
  if (other === null || other.is === 'whole' || alone === true) {
    writing.label(`Split ${roomName(db, before.room)} ${before.name} at ${mm(x)}`)
    const part = cut(writing, before, x, name)
    if (other?.keeps === 'right') {
      update(db, 'wall', id, { backs: null })
      makeOneWall(writing, part, other.wall.id, other.wall.thickness)
    }
    return { id: part }
  }
  const otherCalled = `${other.room.name} ${other.wall.name}`
  if (other.is === 'unknown') {
    throw new Refusal('other-side', `${cutSaid(other, mm).not} Place both, or split this side alone.`, { field: 'x' })
  }
  if (other.is === 'hole') refuseAcross(other.hole, `At ${mm(other.at)} of ${otherCalled}, its other side,`)
  const behind = storedWall(writing, other.wall.id)
  if (behind === undefined) throw notFound('wall')
  writing.label(`Split ${roomName(db, before.room)} ${before.name} at ${mm(x)}, with ${otherCalled}`)
  const part = cut(writing, before, x, name)
  const otherPart = cut(writing, behind, other.at, undefined)
  // Seen from the other room, left is right.
  makeOneWall(writing, id, otherPart, other.wall.thickness)
  makeOneWall(writing, part, other.wall.id, other.wall.thickness)
  return { id: part }
}

/** @returns the new wall at the right. */
function cut(writing: Writing, before: StoredWall, x: number, name: string | undefined): string {
  const { db, newId } = writing
  const { id } = before
  linesFromLeftEnd(writing, before)
  // Read again, with its lines as they are told now.
  const wall = storedWall(writing, id) ?? before
  const { left, right, rise } = splitFacts(factsOf(wall), x)
  const [part, corner, face] = [newId(), newId(), newId()]
  insert(db, 'corner', { id: corner, room: wall.room, position: 0, x: 0, y: 0, angle: 180, angle_text: '' })
  const ordered = orderedRows(db, 'wall', 'room = :room AND exhibition IS NULL', { room: wall.room })
  const datum = typeof wall.datum === 'number' ? wall.datum - (wall.datum_by === 'ramp' ? 0 : rise) : null
  insert(db, 'wall', {
    ...wall,
    ...columnsOf(right),
    id: part,
    name: name ?? `${wall.name}, right part`,
    length_text: '',
    height_text: '',
    from_corner: corner,
    backs: null,
    datum,
  })
  insert(db, 'face', { id: face, wall: part, side: 'a', name: '' })
  const text = { length_text: '', to_corner: corner }
  update(db, 'wall', id, { ...columnsOf(left), ...text })
  const at = ordered.findIndex(one => one.id === id)
  moveBefore(db, 'wall', ordered, [part], ordered[at + 1]?.id ?? null)
  splitMeasures(writing, before)
  const fromFace = faceOf(writing, id)
  copyPlans(writing, fromFace, face, wall.datum_by === 'ramp' ? 0 : rise)
  moveAlong(writing, {
    fromWall: id,
    toWall: part,
    fromFace,
    toFace: face,
    x: -x,
    y: -rise,
    goes: centre => centre >= x,
  })
  rulesOfParts(writing, fromFace, face)
  drawRoom(writing, wall.room)
  return part
}

function openingsOf({ db }: Writing, wall: string) {
  return rows<{ kind: string; x: number; width: number; label: string }>(
    db,
    'SELECT kind, x, width, label FROM opening WHERE wall = :wall ORDER BY x, id',
    { wall },
  )
}

/** A hole cannot be cut in two. */
function refuseAcross({ called, from, to }: HoleInTheWay, where: string): never {
  throw new Refusal(
    'opening-across',
    `${where} ${called} is in the way; it reaches from ${mm(from)} to ${mm(to)}. Split beside it.`,
    { field: 'x', details: { from, to } },
  )
}

/** What shows plan for the wall holds for both its parts; in the visitor's order the right part comes next. */
function copyPlans({ db, newId }: Writing, from: string, to: string, rise: number): void {
  type Plan = Record<string, string | number | null> & { centre_line: number | null; visitor_order: number | null }
  for (const plan of rows<Plan>(db, 'SELECT * FROM face_plan WHERE face = :from ORDER BY id', { from })) {
    const order = plan.visitor_order === null ? null : plan.visitor_order + 0.5
    const line = plan.centre_line === null ? null : plan.centre_line - rise
    insert(db, 'face_plan', { ...plan, id: newId(), face: to, centre_line: line, visitor_order: order })
  }
}
