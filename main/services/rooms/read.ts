/** The building as it is stored: rooms, walls with what is fixed on them, and the plan. */
import type { RoomRow, WallRow } from '../../../src/contract/areas/rooms.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { halfTyped } from '../../../src/model/outline.ts'
import { keyPlaces } from '../../../src/plan/key-plan.ts'
import type { RoomOutline } from '../../../src/plan/room-survey.ts'
import { seenFromBehind } from '../../../src/plan/seen-from-behind.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { outlineIn, surveyRulesOf } from '../plan/survey-read.ts'
import type { Reading } from '../service.ts'
import { row, rows } from '../sql.ts'
import { wallCalled } from './called.ts'

/** Lists that are stored as JSON text. */
type Behind = 'studs' | 'joints' | 'ceiling' | 'rail'

interface StoredWall extends Omit<WallRow, 'from' | 'to' | 'openings' | 'keepClears' | 'floor' | Behind> {
  readonly room: string
  readonly floor: string | null
  readonly studs: string | null
  readonly joints: string | null
  readonly ceiling: string | null
  readonly rail: string | null
  readonly fromX: number
  readonly fromY: number
  readonly toX: number
  readonly toY: number
}

const wallSelect = `SELECT wall.id, face.id AS face, face.side, wall.exhibition, wall.thickness,
  wall.room, ${wallCalled} AS name, wall.length, wall.length_text AS lengthText,
  wall.height, wall.height_text AS heightText, wall.wall_type AS wallType, wall.stud_first AS studFirst,
  wall.stud_spacing AS studSpacing, wall.backing_from AS backingFrom, wall.backing_to AS backingTo, wall.skirting,
  wall.datum, wall.datum_by AS datumBy, wall.floor, wall.studs, wall.joints, wall.ceiling, wall.rail,
  wall.rail_rated AS railKgPerMetre, wall.behind_seen AS behindSeen, ends.angle AS angle,
  begins.x AS fromX, begins.y AS fromY, ends.x AS toX, ends.y AS toY
  FROM wall JOIN face ON face.wall = wall.id
  JOIN corner AS begins ON begins.id = wall.from_corner JOIN corner AS ends ON ends.id = wall.to_corner`

interface StoredFixture extends Omit<WallRow['keepClears'][number], 'reachable'> {
  readonly reachable: number
}

/** What goes through a wall, from the left end of its face a. */
export function openingsOf(db: ReadHandle, wall: string): WallRow['openings'] {
  return rows(
    db,
    `SELECT id, kind, x, y, width, height, label, swing, leads_to AS leadsTo, other, depth FROM opening
     WHERE wall = :wall ORDER BY x, id`,
    { wall },
  )
}

function asWall(db: ReadHandle, stored: StoredWall): WallRow {
  const { room: _, floor, studs, joints, ceiling, rail, fromX, fromY, toX, toY, ...rest } = stored
  const wall: WallRow = {
    ...rest,
    floor: listOf(floor),
    studs: listOf(studs),
    joints: listOf(joints),
    ceiling: listOf(ceiling),
    rail: listOf(rail),
    from: [fromX, fromY],
    to: [toX, toY],
    openings: openingsOf(db, rest.id),
    keepClears: rows<StoredFixture>(
      db,
      `SELECT id, kind, x, y, width, height, margin, label, reason, depth, reachable FROM keep_clear
       WHERE wall = :wall AND side = :side ORDER BY x, id`,
      { wall: rest.id, side: rest.side },
    ).map(one => ({ ...one, reachable: one.reachable === 1 })),
  }
  return wall.side === 'a' ? wall : { ...seenFromBehind(wall), from: wall.to, to: wall.from }
}

/** Nothing measured is an empty list. */
function listOf<T>(stored: string | null): T[] {
  return stored === null ? [] : JSON.parse(stored)
}

/** The walls of a room's outline, in order. */
export function wallsOf(db: ReadHandle, room: string): WallRow[] {
  return rows<StoredWall>(
    db,
    `${wallSelect} WHERE wall.room = :room AND wall.exhibition IS NULL AND face.side = 'a' ORDER BY wall.position, wall.id`,
    { room },
  ).map(wall => asWall(db, wall))
}

/** The faces of the partitions that a show has in a room, both of one after another. */
export function partitionFaces(db: ReadHandle, exhibition: string | null, room: string): WallRow[] {
  return rows<StoredWall>(
    db,
    `${wallSelect} WHERE wall.exhibition = :exhibition AND wall.room = :room ORDER BY wall.position, wall.id, face.side`,
    { exhibition, room },
  ).map(wall => asWall(db, wall))
}

interface FacedRoom {
  readonly id: string
  readonly name: string
  readonly labelLine: number | null
}

/** The wall behind a face, with its room. */
export function wallOfFace(
  db: ReadHandle,
  face: string,
): { readonly wall: WallRow; readonly room: FacedRoom } | undefined {
  const stored = row<StoredWall>(db, `${wallSelect} WHERE face.id = :face`, { face })
  if (stored === undefined) return undefined
  const room = row<FacedRoom>(db, 'SELECT id, name, label_line AS labelLine FROM room WHERE id = :id', {
    id: stored.room,
  })
  return { wall: asWall(db, stored), room: room ?? { id: stored.room, name: '', labelLine: null } }
}

/** A room typed by half is drawn as its measures are: sharing its gap over the walls would bend what is known. */
function asTyped(walls: WallRow[]): WallRow[] {
  const corners = halfTyped(walls)
  if (corners === null) return walls
  return walls.map((wall, at) => {
    const [from, to] = [corners[at], corners[at + 1]]
    return from === undefined || to === undefined ? wall : { ...wall, from: [...from], to: [...to] }
  })
}

/** All rooms with their walls and how their outlines close. */
export function roomsOf(db: ReadHandle): (RoomRow & { readonly outline: RoomOutline })[] {
  const rules = surveyRulesOf(db)
  return rows<Omit<RoomRow, 'walls' | 'closure' | 'area'>>(
    db,
    'SELECT id, name, number, height, label_line AS labelLine FROM room ORDER BY position, id',
  ).map(room => {
    const outline = outlineIn(db, room.id, rules)
    const { closes, gap, note, way, area } = outline
    const stored = wallsOf(db, room.id)
    const walls = way === 'walked' ? asTyped(stored) : stored
    return { ...room, walls, closure: { closes, gap, note, way }, area, outline }
  })
}

export function list({ db }: Reading): Output<'room.list'> {
  const building = row<{ id: string; name: string }>(db, 'SELECT id, name FROM building ORDER BY id LIMIT 1')
  return { building: building ?? null, rooms: roomsOf(db).map(({ outline: _, ...room }) => room) }
}

/** Counts of findings by face, for the marks on the key plan. */
export type FaceCounts = (face: string) => { readonly settle: number; readonly stop: number }

export function plan(
  { db }: Reading,
  { exhibition }: Received<'room.plan'>,
  countsOf: FaceCounts,
): Output<'room.plan'> {
  const all = roomsOf(db)
  const placed = new Map(
    rows<{ id: string; x: number; y: number; turn: number; storey: string }>(
      db,
      'SELECT id, at_x AS x, at_y AS y, turn, storey FROM room WHERE at_x IS NOT NULL AND at_y IS NOT NULL',
    ).map(({ id, x, y, turn, storey }) => [id, { place: { at: [x, y] as const, turn }, storey }]),
  )
  const puts = keyPlaces(
    all.map(({ id, walls }) => ({
      ...(placed.get(id) ?? { place: null, storey: '' }),
      corners: walls.flatMap(wall => [wall.from, wall.to]),
    })),
    600,
  )
  const shows = new Map(
    rows<{ face: string; works: number; widths: number }>(
      db,
      `SELECT placement.face, count(*) AS works, coalesce(sum(work.hang_width), 0.0) AS widths
       FROM placement JOIN entry ON entry.id = placement.entry JOIN work ON work.id = entry.work
       WHERE placement.exhibition = :exhibition GROUP BY placement.face`,
      { exhibition },
    ).map(each => [each.face, each]),
  )
  const orders = new Map(
    rows<{ face: string; visitor_order: number | null }>(
      db,
      'SELECT face, visitor_order FROM face_plan WHERE exhibition = :exhibition',
      { exhibition },
    ).map(each => [each.face, each.visitor_order]),
  )
  return {
    rooms: all.map((room, index) => {
      const put = (point: readonly [number, number]): [number, number] => [...(puts[index]?.(point) ?? point)]
      return {
        id: room.id,
        name: room.name,
        number: room.number,
        walls: [...room.walls, ...partitionFaces(db, exhibition, room.id)].map(wall => ({
          id: wall.id,
          face: wall.face,
          name: wall.name,
          from: put(wall.from),
          to: put(wall.to),
          length: wall.length,
          partition: wall.exhibition !== null,
          openings: wall.openings.map(({ kind, x, width }) => ({ kind, x, width })),
          works: shows.get(wall.face)?.works ?? 0,
          filled: (shows.get(wall.face)?.widths ?? 0) / wall.length,
          ...(exhibition === null ? { settle: 0, stop: 0 } : countsOf(wall.face)),
          order: orders.get(wall.face) ?? null,
        })),
      }
    }),
  }
}
