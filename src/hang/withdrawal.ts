/**
 * How hard a plain nail may be pulled straight out of wood: `W = 1380 G^(5/2) D` pounds on each inch of penetration,
 * side grain, seasoned wood (US national design specification for wood; a fifth of the ultimate `6900 G^(5/2) D` of the
 * US Department of Agriculture, FPL-093, 1965). In newtons and millimetres here. Never across end grain or in board.
 */
import { INCH, newtons, POUND } from './physics.ts'

/** Specific gravity of a light softwood, as studs and plywood are: from memory; the lower figure is the safer. */
export const SOFTWOOD = 0.42

/** Allowable withdrawal of one nail, newtons: `diameter` and `penetration` in millimetres, `gravity` of the wood. */
export function nailWithdrawal(gravity: number, diameter: number, penetration: number): number {
  const poundsPerInch = 1380 * gravity ** 2.5 * (diameter / INCH)
  return newtons(poundsPerInch * POUND) * (penetration / INCH)
}
