/**
 * A wall of a room moved or turned with its neighbours: what becomes of lengths and angles, which corners go, how the
 * room's own axes go with its first wall, and what was measured that says otherwise. Millimetres and degrees.
 */
import { move, type Point } from '../drawing/room-plan.ts'

export interface BendWall {
  readonly name: string
  readonly length: number
  /** Interior angle at its right end. */
  readonly angle: number
}

export type Bent =
  | {
      readonly ok: true
      /** Of all walls, in order; angles at their right ends. */
      readonly lengths: readonly number[]
      readonly angles: readonly number[]
      /** Corners that go, by their places; wall 0 begins at corner 0. */
      readonly moved: readonly number[]
      /** How far the room's own 0, 0 goes in its own axes, and by how much these turn, so that all else stays. */
      readonly origin: Point
      readonly turn: number
    }
  | { readonly ok: false; readonly problem: string }

/** What a wall must keep, mm. */
const SHORTEST = 1

export const rounded = (value: number, parts: number) => Math.round(value * parts) / parts

/** The wall with its neighbours on either side; a sentence where the room has none. */
export function withNeighbours(walls: readonly BendWall[], index: number) {
  const count = walls.length
  const [before, own, after] = [walls[(index + count - 1) % count], walls[index], walls[(index + 1) % count]]
  return count < 3 || before === undefined || own === undefined || after === undefined
    ? ({ ok: false, problem: 'A wall moves in a room that closes. Add its other walls first.' } as const)
    : ({ ok: true, before, own, after } as const)
}

/** A neighbour this near to straight on can't follow: it would grow without end. Sine of about 6°. */
export function follows(sine: number, wall: BendWall) {
  if (Math.abs(sine) >= 0.1) return null
  return `${wall.name} runs on in nearly the same line, so nothing would fill the step between them.`
}

/** A sentence where a wall would have no length left. */
export function goneAway(walls: readonly BendWall[], lengths: readonly number[]): string | null {
  const gone = walls.find((_, at) => (lengths[at] ?? 0) < SHORTEST)
  return gone === undefined ? null : `${gone.name} would have no length left. Move it less far, or remove that wall.`
}

type Ends = { readonly from: Point; readonly to: Point }
export interface Drawn extends Ends {
  readonly name: string
  readonly length: number
  readonly angle: number | null
}

/** Walls as they bend: an angle that nobody measured is the one that is drawn. */
export function bendable(walls: readonly Drawn[]): readonly BendWall[] {
  const heading = ({ from, to }: Ends) => (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI
  return walls.map((wall, at) => {
    const next = walls[(at + 1) % walls.length] ?? wall
    return { ...wall, angle: wall.angle ?? (((180 - heading(next) + heading(wall)) % 360) + 360) % 360 }
  })
}

/** The walls as they are drawn then: two corners go along the neighbours, all others stay. */
export function bentWalls<W extends Drawn>(walls: readonly W[], index: number, bent: Bent & { readonly ok: true }) {
  const count = walls.length
  const grown = (at: number) => (bent.lengths[at] ?? 0) - (walls[at]?.length ?? 0)
  const along = ({ from, to }: Ends, by: number, corner: Point) => {
    const run = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
    return move(corner, [(to[0] - from[0]) / run, (to[1] - from[1]) / run], by)
  }
  const [before, after] = [(index + count - 1) % count, (index + 1) % count]
  const [first, own, next] = [walls[before], walls[index], walls[after]]
  if (first === undefined || own === undefined || next === undefined) return walls
  const [from, to] = [along(first, grown(before), own.from), along(next, -grown(after), own.to)]
  const put = (of: Point): [number, number] => [of[0], of[1]]
  return walls.map((wall, at) => ({
    ...wall,
    length: bent.lengths[at] ?? wall.length,
    angle: bent.angles[at] ?? wall.angle,
    from: put(at === index ? from : at === after ? to : wall.from),
    to: put(at === index ? to : at === before ? from : wall.to),
  }))
}

interface Taped {
  readonly kind: 'side' | 'diagonal' | 'angle'
  /** Places of corners; a side is its wall's. */
  readonly from: number
  readonly to: number
  readonly how: 'drawn' | 'measured'
  readonly used: boolean
}

/** What was measured, counts, and would say something else than the bent room. */
export function atOdds<M extends Taped>(
  measures: readonly M[],
  walls: readonly BendWall[],
  bent: Bent & { readonly ok: true },
): readonly M[] {
  const count = walls.length
  return measures.filter(({ kind, from, to, how, used }) => {
    if (!used || how !== 'measured') return false
    if (kind === 'diagonal') return bent.moved.includes(from) || bent.moved.includes(to)
    if (kind === 'side') return Math.abs((bent.lengths[from] ?? 0) - (walls[from]?.length ?? 0)) > 0.05
    const at = (from + count - 1) % count
    return Math.abs((bent.angles[at] ?? 0) - (walls[at]?.angle ?? 0)) > 0.005
  })
}
