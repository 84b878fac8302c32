/** Rooms of one storey that lie over one another on the plan of the building: told until one is placed anew. */
import type { RoomRow } from '../../../src/contract/areas/rooms.ts'
import type { Finding } from '../../../src/contract/shared.ts'
import { overlapDepth } from '../../../src/plan/overlap.ts'
import { toBuilding } from '../../../src/plan/place.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { ruleNumber } from '../rules.ts'
import { rows } from '../sql.ts'

interface Placed {
  readonly id: string
  readonly storey: string
  readonly x: number
  readonly y: number
  readonly turn: number
}

export function overlapFindings(
  db: ReadHandle,
  rooms: readonly (Pick<RoomRow, 'id' | 'name' | 'walls'> & { readonly closed: boolean })[],
  say: (mm: number) => string,
): Finding[] {
  const least = ruleNumber(db, 'closesWithin')
  const places = new Map(
    rows<Placed>(
      db,
      'SELECT id, storey, at_x AS x, at_y AS y, turn FROM room WHERE at_x IS NOT NULL AND at_y IS NOT NULL ORDER BY id',
    ).map(place => [place.id, place]),
  )
  const standing = rooms.flatMap(room => {
    const place = places.get(room.id)
    if (place === undefined || !room.closed) return []
    const corners = room.walls.map(({ from }) => toBuilding({ at: [place.x, place.y], turn: place.turn }, from))
    return [{ ...room, storey: place.storey, corners }]
  })
  return standing.flatMap((room, at) =>
    standing.slice(at + 1).flatMap((other): Finding[] => {
      if (other.storey !== room.storey) return []
      const depth = overlapDepth(room.corners, other.corners)
      // Nearer than what measures may be off they only touch.
      if (depth !== null && depth <= least) return []
      const by = depth === null ? 'across it' : `by ${say(depth)}`
      return [
        {
          severity: 'settle',
          code: 'rooms-overlap',
          subject: { kind: 'room', id: room.id },
          text: `${room.name} lies over ${other.name} on the plan, ${by}. Place one of them anew, or on a storey of its own.`,
          figures: { other: other.id, ...(depth === null ? {} : { depth }) },
        },
      ]
    }),
  )
}
