/**
 * Things that stand: when they tip, what push tips them, the ballast that keeps them, what they put on the floor.
 * Formulas derived in the design: `atan((b/2)/h_cg)`, `F = m g (b/2)/h`, mass over footprint. mm, kg, degrees, newtons.
 */
import { degrees, newtons, radians } from './physics.ts'

/** One part of a stack: its mass and the height of its own centre above the floor. */
export interface Piece {
  readonly mass: number
  readonly up: number
}

export function massOf(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, piece) => sum + piece.mass, 0)
}

/** Height of the common centre of mass. */
export function centreUp(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, piece) => sum + piece.mass * piece.up, 0) / massOf(pieces)
}

/** Lean at which it goes over by itself: base `across` wide, mass `up` above the floor. */
export function tippingAngle(across: number, up: number): number {
  return degrees(Math.atan2(across / 2, up))
}

/** Level push at `at` above the floor that begins to tip it, newtons. */
export function tippingPush(mass: number, across: number, at: number): number {
  return (newtons(mass) * (across / 2)) / at
}

/**
 * Ballast that makes it stand to `angle`, its own centre `up` above the floor. 0 where it stands already; null where no
 * ballast so high can do it.
 */
export function ballastFor(pieces: readonly Piece[], across: number, angle: number, up: number): number | null {
  const most = across / 2 / Math.tan(radians(angle))
  const over = pieces.reduce((sum, piece) => sum + piece.mass * (piece.up - most), 0)
  if (over <= 0) return 0
  return most > up ? over / (most - up) : null
}

/** kg on each square metre of its footprint. */
export function floorLoad(mass: number, width: number, depth: number): number {
  return (mass * 1e6) / (width * depth)
}
