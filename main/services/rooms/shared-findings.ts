/** Walls that two rooms share, whose sides do not lie to one another as one wall's do: told until somebody settles it. */
import type { Finding } from '../../../src/contract/shared.ts'
import { toBuilding } from '../../../src/plan/place.ts'
import { lieSaid, sharedLie } from '../../../src/plan/shared-lie.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { ruleNumber } from '../rules.ts'
import { rows } from '../sql.ts'

interface Stored {
  readonly id: string
  readonly called: string
  readonly backs: string
  readonly length: number
  readonly thickness: number | null
  readonly storey: string
  readonly x: number
  readonly y: number
  readonly turn: number
  readonly fromX: number
  readonly fromY: number
  readonly toX: number
  readonly toY: number
}

export function sharedFindings(db: ReadHandle, say: (mm: number) => string): Finding[] {
  const within = ruleNumber(db, 'closesWithin')
  const sides = rows<Stored>(
    db,
    `SELECT wall.id, room.name || ' ' || wall.name AS called, wall.backs, wall.length, wall.thickness, room.storey,
      room.at_x AS x, room.at_y AS y, room.turn,
      begins.x AS fromX, begins.y AS fromY, ends.x AS toX, ends.y AS toY
     FROM wall JOIN room ON room.id = wall.room
     JOIN corner AS begins ON begins.id = wall.from_corner JOIN corner AS ends ON ends.id = wall.to_corner
     WHERE wall.backs IS NOT NULL AND room.at_x IS NOT NULL AND room.at_y IS NOT NULL
     ORDER BY room.position, room.id, wall.position, wall.id`,
  ).map(({ x, y, turn, fromX, fromY, toX, toY, ...wall }) => {
    const place = { at: [x, y] as const, turn }
    return { ...wall, from: toBuilding(place, [fromX, fromY]), to: toBuilding(place, [toX, toY]) }
  })
  const known = new Map(sides.map(side => [side.id, side]))
  const told = new Set<string>()
  return sides.flatMap((side): Finding[] => {
    const other = known.get(side.backs)
    if (other === undefined || told.has(other.id)) return []
    told.add(side.id)
    const lie = side.storey === other.storey ? sharedLie(side, other, within) : { is: 'elsewhere' as const }
    if (lie.is === 'well') return []
    return [
      {
        severity: 'settle',
        code: 'shared-apart',
        subject: { kind: 'wall', id: side.id },
        text: `${side.called} is one wall with ${other.called}: ${lieSaid(lie, say)}. Place a room anew, measure the wall, or part them.`,
        figures: { other: other.id, ...(lie.is === 'apart' ? { apart: lie.apart, thickness: lie.thickness } : {}) },
      },
    ]
  })
}
