/**
 * What stands in the rooms of the building for a show, in the building's coordinates where its room is placed: a room's
 * partitions with what is on their two faces, its furniture and columns, its ceiling tracks.
 */
import type { PlanPartitionRow, PlanRoomRow } from '../../../src/contract/areas/plan.ts'
import { type Place, toBuilding, wholeTurn } from '../../../src/plan/place.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { partitionsOf } from '../rooms/partitions.ts'
import { thingsOf } from '../rooms/standing.ts'
import { tracksOf } from '../rooms/tracks.ts'
import { rows } from '../sql.ts'

type Stands = Pick<PlanRoomRow, 'partitions' | 'things' | 'tracks'>
type Face = PlanPartitionRow['sides'][number]

/** What is on walls, by wall or face. */
export interface OnWalls {
  readonly openings: ReadonlyMap<string, PlanPartitionRow['openings']>
  readonly works: ReadonlyMap<string, Face['works']>
}

/** Stands of a room; `place` is null while the room is not placed. */
export function standsIn(
  db: ReadHandle,
  exhibition: string | null,
  on: OnWalls,
): (room: string, place: Place | null) => Stands {
  const partitions = Map.groupBy(partitionsOf(db, exhibition), ({ room }) => room)
  const things = Map.groupBy(thingsOf(db, exhibition), ({ room }) => room)
  const tracks = Map.groupBy(tracksOf(db), ({ room }) => room)
  const fixtures = fixturesBySide(db, exhibition)
  return (room, place) => {
    const put = (point: readonly [number, number]): [number, number] =>
      place === null ? [...point] : [...toBuilding(place, point)]
    const turned = (turn: number) => (place === null ? turn : wholeTurn(place.turn + turn))
    return {
      partitions: (partitions.get(room) ?? []).map(
        ({ id, name, ends, length, angle, height, thickness, wallType, faces }) => ({
          id,
          name,
          from: put(ends[0]),
          to: put(ends[1]),
          length,
          angle: turned(angle),
          height,
          thickness,
          wallType,
          openings: on.openings.get(id) ?? [],
          sides: (['a', 'b'] as const).map(side => ({
            side,
            face: faces[side],
            fixtures: fixtures.get(`${id} ${side}`) ?? [],
            works: on.works.get(faces[side]) ?? [],
          })),
        }),
      ),
      things: (things.get(room) ?? []).map(({ room: _, at, turn, ...thing }) => ({
        ...thing,
        at: put(at),
        turn: turned(turn),
      })),
      tracks: (tracks.get(room) ?? []).map(({ room: _, ends: [from, to], ...track }) => ({
        ...track,
        from: put(from),
        to: put(to),
      })),
    }
  }
}

function fixturesBySide(db: ReadHandle, exhibition: string | null): Map<string, Face['fixtures']> {
  const found = new Map<string, Face['fixtures']>()
  for (const { wall, side, reachable, ...fixture } of rows<
    Omit<Face['fixtures'][number], 'reachable'> & { wall: string; side: string; reachable: number }
  >(
    db,
    `SELECT keep_clear.wall, keep_clear.side, keep_clear.id, keep_clear.kind, keep_clear.x, keep_clear.y,
      keep_clear.width, keep_clear.height, keep_clear.margin, keep_clear.label, keep_clear.depth, keep_clear.reachable
     FROM keep_clear JOIN wall ON wall.id = keep_clear.wall WHERE wall.exhibition = :exhibition
     ORDER BY keep_clear.x, keep_clear.id`,
    { exhibition },
  )) {
    const key = `${wall} ${side}`
    const own = found.get(key) ?? []
    found.set(key, own)
    own.push({ ...fixture, reachable: reachable === 1 })
  }
  return found
}
