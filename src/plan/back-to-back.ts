/**
 * Walls of two rooms that lie back to back are mostly one wall seen from its two sides. Nothing is made one silently: a
 * pair is told with how far its faces lie apart, which is the wall's thickness as it is drawn, and with the doorways
 * that go through both. Building coordinates, mm.
 */
import type { PlanRoomRow, PlanWallRow } from '../contract/areas/plan.ts'
import type { Point } from '../drawing/room-plan.ts'

type Face = Pick<PlanWallRow, 'from' | 'to' | 'length'> & {
  readonly openings: readonly Pick<PlanWallRow['openings'][number], 'id' | 'kind' | 'x' | 'width' | 'other'>[]
}
type Wall = Face & Pick<PlanWallRow, 'id' | 'name' | 'backs' | 'thickness'>

export interface BackToBack {
  readonly a: Wall & { readonly room: string }
  readonly b: Wall & { readonly room: string }
  /** Between the two faces. */
  readonly apart: number
  /** Openings that go through both, as pairs of a's and b's. */
  readonly through: readonly (readonly [string, string])[]
  /** How far apart the jambs of each pair were measured, mm. */
  readonly jambs: readonly number[]
}

/** Thinner is no wall, thicker is no longer one; faces that lie beside one another for less only meet at a corner. mm, from memory. */
export const sharedBounds = { thinnest: 20, thickest: 800, beside: 300 } as const
/** Faces this far from parallel are still one wall's, degrees. From memory. */
export const askew = 0.5
/** Jambs of one doorway may be measured this far apart from its two sides, mm. From memory. */
const JAMB = 150

const dot = (a: Point, b: Point) => a[0] * b[0] + a[1] * b[1]

/**
 * How two walls lie to each other; null where they are not back to back.
 * @param beside how far they lie beside one another at least, mm
 */
export function facing(
  a: Face,
  b: Face,
  beside: number = sharedBounds.beside,
): Pick<BackToBack, 'apart' | 'through' | 'jambs'> | null {
  const run = Math.hypot(a.to[0] - a.from[0], a.to[1] - a.from[1])
  const other = Math.hypot(b.to[0] - b.from[0], b.to[1] - b.from[1])
  if (run < 1 || other < 1) return null
  const along: Point = [(a.to[0] - a.from[0]) / run, (a.to[1] - a.from[1]) / run]
  const out: Point = [along[1], -along[0]]
  const theirs: Point = [(b.to[0] - b.from[0]) / other, (b.to[1] - b.from[1]) / other]
  if (dot(along, theirs) > 0 || Math.abs(dot(out, theirs)) > Math.sin((askew * Math.PI) / 180)) return null
  const from: Point = [b.from[0] - a.from[0], b.from[1] - a.from[1]]
  const to: Point = [b.to[0] - a.from[0], b.to[1] - a.from[1]]
  const apart = (dot(from, out) + dot(to, out)) / 2
  if (apart < sharedBounds.thinnest || apart > sharedBounds.thickest) return null
  const [right, left] = [dot(from, along), dot(to, along)]
  if (Math.min(run, right) - Math.max(0, left) < beside) return null
  // Along a, b's own positions run from its left end, which is at a's right.
  const onA = (x: number) => right - (x * other) / b.length
  const free = b.openings.filter(each => each.other === null && each.kind !== 'niche')
  const pairs = a.openings.flatMap(mine => {
    if (mine.other !== null || mine.kind === 'niche') return []
    const [begin, end] = [(mine.x * run) / a.length, ((mine.x + mine.width) * run) / a.length]
    for (const each of free) {
      const off = Math.max(Math.abs(onA(each.x + each.width) - begin), Math.abs(onA(each.x) - end))
      if (off <= JAMB) return [{ pair: [mine.id, each.id] as const, off }]
    }
    return []
  })
  return { apart, through: pairs.map(({ pair }) => pair), jambs: pairs.map(({ off }) => off) }
}

/** All pairs on one storey of which neither wall is said to back another. */
export function backToBack(rooms: readonly PlanRoomRow[]): readonly BackToBack[] {
  const found: BackToBack[] = []
  const placed = rooms.filter(room => room.at !== null)
  for (const [index, room] of placed.entries()) {
    for (const next of placed.slice(index + 1)) {
      if (next.storey !== room.storey) continue
      for (const a of room.walls) {
        if (a.backs !== null) continue
        for (const b of next.walls) {
          if (b.backs !== null) continue
          const lie = facing(a, b)
          if (lie !== null) found.push({ a: { ...a, room: room.name }, b: { ...b, room: next.name }, ...lie })
        }
      }
    }
  }
  return found
}
