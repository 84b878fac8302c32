/**
 * Partitions of a show. They are walls with two faces and two corners of their own, which no outline knows; a move
 * changes the corners alone, so that works keep their distance from the left end of their face.
 */
import type { PartitionRow } from '../../../src/contract/areas/partitions.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { Finding } from '../../../src/contract/shared.ts'
import { formatLength } from '../../../src/measure/format.ts'
import { angleOf, type Ends, endBy, lengthOf } from '../../../src/plan/partition.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { type Clash, changeFields, notFound, same } from '../change.ts'
import { openExhibition } from '../exhibitions/open.ts'
import { nextPosition, orderedRows } from '../order.ts'
import type { Reading, Writing } from '../service.ts'
import { insert, row, rows, update, value } from '../sql.ts'
import { findingsOfFace } from '../walls/findings.ts'
import { readerOf } from '../works/findings.ts'
import { dropPartition, refuseIfUsed } from './drop.ts'
import { openingsOf } from './read.ts'

interface Stored extends Omit<PartitionRow, 'faces' | 'ends' | 'angle' | 'openings'> {
  readonly a: string
  readonly b: string
  readonly fromX: number
  readonly fromY: number
  readonly toX: number
  readonly toY: number
}

const select = `SELECT wall.id, wall.room, wall.exhibition, wall.name, wall.length, wall.height, wall.thickness,
  wall.wall_type AS wallType, a.id AS a, b.id AS b, begins.x AS fromX, begins.y AS fromY, ends.x AS toX, ends.y AS toY,
  (SELECT count(*) FROM placement WHERE face IN (a.id, b.id)) AS works
  FROM wall JOIN face AS a ON a.wall = wall.id AND a.side = 'a' JOIN face AS b ON b.wall = wall.id AND b.side = 'b'
  JOIN corner AS begins ON begins.id = wall.from_corner JOIN corner AS ends ON ends.id = wall.to_corner
  JOIN room ON room.id = wall.room`

function asPartition(db: ReadHandle, { a, b, fromX, fromY, toX, toY, ...rest }: Stored): PartitionRow {
  const ends: PartitionRow['ends'] = [
    [fromX, fromY],
    [toX, toY],
  ]
  return { ...rest, faces: { a, b }, ends, angle: angleOf(ends), openings: openingsOf(db, rest.id) }
}

export function partitionsOf(db: ReadHandle, exhibition: string | null): PartitionRow[] {
  return rows<Stored>(
    db,
    `${select} WHERE wall.exhibition = :exhibition ORDER BY room.position, room.id, wall.position, wall.id`,
    { exhibition },
  ).map(each => asPartition(db, each))
}

function partitionOf(db: ReadHandle, id: string): PartitionRow {
  const stored = row<Stored>(db, `${select} WHERE wall.id = :id AND wall.exhibition IS NOT NULL`, { id })
  if (stored === undefined) throw notFound('partition')
  return asPartition(db, stored)
}

export function list({ db }: Reading, { exhibition }: Received<'partition.list'>): Output<'partition.list'> {
  if (value(db, 'SELECT 1 FROM exhibition WHERE id = :exhibition', { exhibition }) === undefined)
    throw notFound('exhibition', 'exhibition')
  return { partitions: partitionsOf(db, exhibition) }
}

/** Partitions come after the walls of their room, however many it gets. */
const afterWalls = 1e6
/** Studs with a board on both sides; common practice, no source. */
const usualThickness = 100
/** Shorter is a slip of the hand. mm */
const shortest = 10

function checkEnds(ends: Ends, field: string): void {
  const length = lengthOf(ends)
  if (length >= shortest) return
  const told = formatLength(length, { unit: 'mm' })
  throw new Refusal('no-length', `Its two ends are ${told} apart. Give them ${shortest} mm at least.`, {
    field,
    details: { length, least: shortest },
  })
}

function roomOf(db: ReadHandle, id: string, field: string): { readonly name: string; readonly height: number | null } {
  const room = row<{ name: string; height: number | null }>(db, 'SELECT name, height FROM room WHERE id = :id', { id })
  if (room === undefined) throw notFound('room', field)
  return room
}

export function add(writing: Writing, input: Received<'partition.add'>): Output<'partition.add'> {
  const { db } = writing
  openExhibition(db, input.exhibition)
  const room = roomOf(db, input.room, 'room')
  const { from, length } = input
  const to = input.to ?? (length === undefined ? undefined : endBy(from, length, input.angle ?? 0))
  if (to === undefined) {
    throw new Refusal('end-missing', 'Give its other end, or its length and angle.', { field: 'to' })
  }
  if (input.to !== undefined && (length !== undefined || input.angle !== undefined)) {
    throw new Refusal('end-twice', 'Give its other end or its length and angle, not both.', { field: 'length' })
  }
  checkEnds([from, to], input.to === undefined ? 'length' : 'to')
  const others = orderedRows(db, 'wall', 'room = :room AND exhibition = :exhibition', {
    room: input.room,
    exhibition: input.exhibition,
  })
  const name = input.name ?? `partition ${others.length + 1}`
  writing.label(`Add ${name} to ${room.name}`)
  const corners = [from, to].map(([x, y]) => {
    const id = writing.newId()
    insert(db, 'corner', { id, room: input.room, position: afterWalls, x, y, angle: null, angle_text: '' })
    return id
  })
  const id = writing.newId()
  insert(db, 'wall', {
    id,
    room: input.room,
    exhibition: input.exhibition,
    position: others.length === 0 ? afterWalls : nextPosition(others),
    from_corner: corners[0] ?? '',
    to_corner: corners[1] ?? '',
    name,
    length: lengthOf([from, to]),
    height: input.height ?? room.height ?? 3000,
    thickness: input.thickness ?? usualThickness,
    wall_type: input.wallType ?? 'other',
    measured_at: writing.now(),
    measured_by: writing.person?.name ?? '',
  })
  const [a, b] = (['a', 'b'] as const).map(side => {
    const face = writing.newId()
    insert(db, 'face', { id: face, wall: id, side, name: `side ${side}` })
    return face
  })
  return { id, faces: { a: a ?? '', b: b ?? '' } }
}

/** What stops a hand on its faces. */
function stopsOn({ db, person }: Pick<Writing, 'db' | 'person'>, { exhibition, faces }: PartitionRow): Finding[] {
  const reader = readerOf(person, undefined)
  return [faces.a, faces.b].flatMap(face =>
    findingsOfFace(db, exhibition, face, reader).filter(({ severity }) => severity === 'stop'),
  )
}

const columns = { name: 'name', height: 'height', thickness: 'thickness', wallType: 'wall_type' }

export function change(writing: Writing, { id, changes }: Received<'partition.update'>): Output<'partition.update'> {
  const { db } = writing
  const before = partitionOf(db, id)
  openExhibition(db, before.exhibition, 'id')
  const { ends, room, ...facts } = changes
  if (ends !== undefined) checkEnds(ends.to, 'changes.ends.to')
  if (room !== undefined) roomOf(db, room.to, 'changes.room.to')
  writing.label(`${ends === undefined && room === undefined ? 'Change' : 'Move'} ${before.name}`)
  const stopped = new Set(stopsOn(writing, before).map(keyOf))
  const changed = changeFields(writing, 'wall', id, facts, columns, 'partition')
  const saved = [...changed.saved]
  const clashes: Clash[] = [...changed.clashes]
  if (ends !== undefined) {
    if (same(before.ends, ends.was) || same(before.ends, ends.to)) {
      saved.push('ends')
      putEnds(writing, id, ends.to)
    } else clashes.push({ code: 'clash', id, field: 'ends', was: ends.was, yours: ends.to, theirs: before.ends })
  }
  if (room !== undefined) {
    if (before.room === room.was || before.room === room.to) {
      saved.push('room')
      update(db, 'wall', id, { room: room.to })
      for (const corner of cornersOf(db, id)) update(db, 'corner', corner, { room: room.to })
    } else clashes.push({ code: 'clash', id, field: 'room', was: room.was, yours: room.to, theirs: before.room })
  }
  const after = partitionOf(db, id)
  const noLongerFits = named(
    db,
    after,
    stopsOn(writing, after).filter(found => !stopped.has(keyOf(found))),
  )
  return { saved, clashes, noLongerFits }
}

/** Each with the work that it is about and the side it hangs on; a number alone says little to who moved the partition. */
function named(db: ReadHandle, { faces }: PartitionRow, found: readonly Finding[]): Finding[] {
  const works = rows<{ placement: string; work: string; title: string; side: string }>(
    db,
    `SELECT placement.id AS placement, work.id AS work, work.title, face.name AS side
     FROM placement JOIN face ON face.id = placement.face JOIN entry ON entry.id = placement.entry
     JOIN work ON work.id = entry.work WHERE placement.face IN (:a, :b)`,
    faces,
  )
  return found.map(finding => {
    const about = works.find(({ placement, work }) => placement === finding.subject.id || work === finding.subject.id)
    return about === undefined ? finding : { ...finding, text: `“${about.title}”, ${about.side}: ${finding.text}` }
  })
}

/** A finding that grew worse is the same one. */
function keyOf({ code, subject }: Finding): string {
  return `${code} ${subject.kind} ${subject.id}`
}

function cornersOf(db: ReadHandle, wall: string): readonly [string, string] {
  const found = row<{ from: string; to: string }>(
    db,
    'SELECT from_corner AS "from", to_corner AS "to" FROM wall WHERE id = :wall',
    { wall },
  )
  return [found?.from ?? '', found?.to ?? '']
}

function putEnds(writing: Writing, wall: string, ends: Ends): void {
  const corners = cornersOf(writing.db, wall)
  for (const [at, [x, y]] of ends.entries()) update(writing.db, 'corner', corners[at] ?? '', { x, y })
  update(writing.db, 'wall', wall, {
    length: lengthOf(ends),
    measured_at: writing.now(),
    measured_by: writing.person?.name ?? '',
  })
}

export function remove(writing: Writing, { id }: Received<'partition.remove'>): Output<'partition.remove'> {
  const { db } = writing
  const { name, exhibition } = partitionOf(db, id)
  openExhibition(db, exhibition, 'id')
  refuseIfUsed(db, id, 'id')
  writing.label(`Remove ${name}`)
  dropPartition(writing, id)
  return { done: true }
}
