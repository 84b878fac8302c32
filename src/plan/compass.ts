/**
 * Walls named for people by the compass: the north wall is the one at the north side of its room, the one a visitor
 * faces looking north. Bearings in degrees clockwise from north; plan coordinates as everywhere, x right and y down.
 */
import type { Point } from '../drawing/room-plan.ts'

/** The eight principal winds, each the middle of 45 degrees. */
export const winds = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'] as const
export type Wind = (typeof winds)[number]

export interface SeenWall {
  readonly id: string
  readonly length: number
  /** Its ends on the building's plan, from left to right as seen from its room. */
  readonly from: Point
  readonly to: Point
}

/**
 * Where somebody looks who faces the wall square on, degrees clockwise from north, from 0 up to 360.
 *
 * @param north degrees clockwise from the top of the page to north
 */
export function bearingOf({ from, to }: Pick<SeenWall, 'from' | 'to'>, north: number): number {
  // The room lies to the right of the way along the wall, so out of it is (dy, −dx); a bearing on the page is
  // atan2(x, −y) from its top, clockwise.
  const out = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI
  return (((out - north) % 360) + 360) % 360
}

export function windOf(bearing: number): Wind {
  return winds[Math.round(bearing / 45) % 8] ?? 'north'
}

/**
 * A name for each wall of a room: "north wall"; where several look one way they are told apart from left to right, as
 * somebody sees them who looks that way: "north wall, left" and "right", or "north wall 1", "2", "3".
 */
export function compassNames(walls: readonly SeenWall[], north: number): ReadonlyMap<string, string> {
  const byWind = new Map<Wind, SeenWall[]>()
  for (const wall of walls) {
    const wind = windOf(bearingOf(wall, north))
    byWind.set(wind, [...(byWind.get(wind) ?? []), wall])
  }
  const names = new Map<string, string>()
  for (const [wind, all] of byWind) {
    const plain = `${wind} wall`
    const sorted = fromLeft(all, wind, north)
    for (const [at, wall] of sorted.entries()) {
      const told = sorted.length === 1 ? '' : sorted.length === 2 ? `, ${at === 0 ? 'left' : 'right'}` : ` ${at + 1}`
      names.set(wall.id, `${plain}${told}`)
    }
  }
  return names
}

/** As somebody sees them who looks that way: by where their middles lie across the look. */
function fromLeft(walls: readonly SeenWall[], wind: Wind, north: number): readonly SeenWall[] {
  const look = ((winds.indexOf(wind) * 45 + north) * Math.PI) / 180
  // The look on the page is (sin, −cos); to its right is (cos, sin).
  const across = ({ from, to }: SeenWall) =>
    ((from[0] + to[0]) / 2) * Math.cos(look) + ((from[1] + to[1]) / 2) * Math.sin(look)
  return [...walls].sort((a, b) => across(a) - across(b))
}
