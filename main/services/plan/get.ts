/**
 * The building's plan as one answer. A house of 60 rooms has 600 walls and thousands of things on them, so each table is
 * read once and sorted to its wall here, not asked for wall by wall.
 */
import type { PlanRoomRow, PlanWallRow } from '../../../src/contract/areas/plan.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { nicheOf } from '../../../src/hang/niche.ts'
import { halfTyped } from '../../../src/model/outline.ts'
import { toBuilding } from '../../../src/plan/place.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { wallOfFace } from '../rooms/read.ts'
import { zonesOf } from '../rooms/zones.ts'

import type { Reading } from '../service.ts'
import { row, rows } from '../sql.ts'
import { facePlanOf, placedOn } from '../walls/elevation.ts'
import { firstNumber } from '../works/figures.ts'
import { type OnWalls, standsIn } from './stands.ts'
import { outlineIn, surveyRulesOf } from './survey-read.ts'

type Opening = PlanWallRow['openings'][number]
type Fixture = PlanWallRow['fixtures'][number]
type Work = PlanWallRow['works'][number]

interface StoredWall extends Omit<PlanWallRow, 'from' | 'to' | 'openings' | 'fixtures' | 'works'> {
  readonly room: string
  readonly fromX: number
  readonly fromY: number
  readonly toX: number
  readonly toY: number
}

type Stands = ReturnType<ReturnType<typeof standsIn>>

interface StoredRoom
  extends Omit<PlanRoomRow, 'at' | 'closed' | 'closes' | 'gap' | 'note' | 'area' | 'walls' | keyof Stands> {
  readonly atX: number | null
  readonly atY: number | null
}

export function plan({ db }: Reading, { exhibition }: Received<'plan.get'>): Output<'plan.get'> {
  if (exhibition !== null && row(db, 'SELECT id FROM exhibition WHERE id = :exhibition', { exhibition }) === undefined)
    throw notFound('exhibition', 'exhibition')
  const building = row<NonNullable<Output<'plan.get'>['building']>>(
    db,
    'SELECT id, name, north FROM building ORDER BY id LIMIT 1',
  )
  const rooms = roomsOf(db, exhibition)
  return {
    building: building ?? null,
    storeys: [...new Set(rooms.map(room => room.storey))],
    rooms,
    zones: zonesOf(db),
  }
}

function roomsOf(db: ReadHandle, exhibition: string | null): PlanRoomRow[] {
  const rules = surveyRulesOf(db)
  const on = onWalls(db, exhibition)
  const walls = wallsByRoom(db, on)
  const stands = standsIn(db, exhibition, on)
  return rows<StoredRoom>(
    db,
    `SELECT id, name, number, height, at_x AS atX, at_y AS atY, turn, storey, floor_level AS floorLevel
     FROM room ORDER BY position, id`,
  ).map(({ atX, atY, ...room }) => {
    const own = walls.get(room.id) ?? []
    const place = atX === null || atY === null ? null : { at: [atX, atY] as [number, number], turn: room.turn }
    const { closed, closes, gap, note, way, area } = outlineIn(db, room.id, rules)
    const half = way === 'walked' ? halfTyped(own) : null
    const put = (point: readonly [number, number]): [number, number] =>
      place === null ? [...point] : [...toBuilding(place, point)]
    return {
      ...room,
      at: place?.at ?? null,
      closed: closed && half === null,
      closes,
      gap,
      note,
      area,
      walls: own.map((wall, at) => ({
        ...wall,
        from: put(half?.[at] ?? wall.from),
        to: put(half?.[at + 1] ?? wall.to),
      })),
      ...stands(room.id, place),
    }
  })
}

/** What is on all walls: holes by wall, works by face. */
function onWalls(db: ReadHandle, exhibition: string | null): OnWalls {
  const works = new Map<string, Work[]>()
  const niches = exhibition === null ? new Map<string, string>() : hungInNiches(db, exhibition)
  for (const { face, number, ...work } of rows<
    Omit<Work, 'number' | 'niche'> & { face: string; number: string | null }
  >(
    db,
    `SELECT placement.face, placement.id AS placement, work.id AS work, ${firstNumber} AS number, work.title,
      placement.x, work.hang_width AS width, work.hang_depth AS depth
     FROM placement JOIN entry ON entry.id = placement.entry JOIN work ON work.id = entry.work
     WHERE placement.exhibition = :exhibition ORDER BY placement.x, placement.id`,
    { exhibition },
  )) {
    const own = works.get(face) ?? []
    works.set(face, own)
    own.push({ ...work, number: number ?? '', niche: niches.get(work.placement) ?? null })
  }
  return {
    openings: byWall<Opening>(
      db,
      `SELECT wall, id, kind, x, y, width, height, label, swing, depth, leads_to AS leadsTo, other
       FROM opening ORDER BY x, id`,
    ),
    works,
  }
}

/** The niches that works of a show hang in, by placement. Heights are asked only of faces that have a niche. */
function hungInNiches(db: ReadHandle, exhibition: string): Map<string, string> {
  const faces = rows<{ face: string }>(
    db,
    `SELECT DISTINCT placement.face FROM placement JOIN face ON face.id = placement.face
     JOIN opening ON opening.wall = face.wall AND opening.kind = 'niche' WHERE placement.exhibition = :exhibition`,
    { exhibition },
  )
  return new Map(
    faces.flatMap(({ face }) => {
      const found = wallOfFace(db, face)
      if (found === undefined) return []
      return placedOn(db, exhibition, face, facePlanOf(db, exhibition, face)).flatMap(
        ({ placement, x, centreY, size }): [string, string][] => {
          if (size === null) return []
          const { width, height } = size
          const rect = { x: x - width / 2, y: centreY - height / 2, width, height }
          const niche = nicheOf(rect, found.wall)
          return niche === null ? [] : [[placement, niche.id]]
        },
      )
    }),
  )
}

/** The walls of outlines; a show's partitions have two faces and stand by themselves. */
function wallsByRoom(db: ReadHandle, { openings, works }: OnWalls): Map<string, PlanWallRow[]> {
  const fixtures = byWall<Omit<Fixture, 'reachable'> & { readonly reachable: number }>(
    db,
    'SELECT wall, id, kind, x, y, width, height, margin, label, depth, reachable FROM keep_clear ORDER BY x, id',
  )
  const found = new Map<string, PlanWallRow[]>()
  const stored = rows<StoredWall>(
    db,
    `SELECT wall.id, face.id AS face, wall.room, wall.name, wall.length, wall.height, ends.angle,
      wall.wall_type AS wallType, wall.thickness, wall.backs,
      begins.x AS fromX, begins.y AS fromY, ends.x AS toX, ends.y AS toY
     FROM wall JOIN face ON face.wall = wall.id AND face.side = 'a'
     JOIN corner AS begins ON begins.id = wall.from_corner JOIN corner AS ends ON ends.id = wall.to_corner
     WHERE wall.exhibition IS NULL ORDER BY wall.position, wall.id`,
  )
  for (const { room, fromX, fromY, toX, toY, ...wall } of stored) {
    const own = found.get(room) ?? []
    found.set(room, own)
    own.push({
      ...wall,
      from: [fromX, fromY],
      to: [toX, toY],
      openings: openings.get(wall.id) ?? [],
      fixtures: (fixtures.get(wall.id) ?? []).map(each => ({ ...each, reachable: each.reachable === 1 })),
      works: works.get(wall.face) ?? [],
    })
  }
  return found
}

/** Rows by the wall that their select calls `wall`. */
function byWall<R>(db: ReadHandle, sql: string): Map<string, R[]> {
  const found = new Map<string, R[]>()
  for (const { wall, ...rest } of rows<R & { readonly wall: string }>(db, sql)) {
    const own = found.get(wall) ?? []
    found.set(wall, own)
    own.push(rest as R) // the row without its key
  }
  return found
}
