/**
 * What it takes to draw a nail straight out of wood. Information, not a rating: it holds for a plain nail driven across
 * the grain of sound, seasoned wood of a known density, and says nothing of what hangs on it.
 */
import { INCH, kilogramsForce, newtons, POUND } from './physics.ts'

interface NailInWood {
  /** Oven-dry density of the wood against water, 0.3 to 0.8. */
  readonly gravity: number
  /** Diameter of the shank, mm. */
  readonly diameter: number
  /** How far the point is in the wood, mm. */
  readonly into: number
}

export interface NailWithdrawal {
  readonly allowableN: number
  readonly allowableKg: number
  readonly ultimateN: number
  readonly ultimateKg: number
  readonly says: string
}

export const withdrawalSays =
  'Information, not a rating: side grain of sound seasoned wood, plain shank, pulled straight out. After NDS and USDA FPL-093. Local codes and licensed practice decide.'

/**
 * Allowable `W = 1380 G^(5/2) D` lb for each inch in the wood (NDS; G 0.45, D 0.203 in gives 38.05), ultimate
 * `p = 6900 G^(5/2) D` (USDA FPL-093, 1965; the allowable is a fifth of it). Newtons and kg-force.
 */
export function nailWithdrawal({ gravity, diameter, into }: NailInWood): NailWithdrawal {
  const perInch = 1380 * gravity ** 2.5 * (diameter / INCH)
  const allowableN = newtons(perInch * (into / INCH) * POUND)
  return {
    allowableN,
    allowableKg: kilogramsForce(allowableN),
    ultimateN: 5 * allowableN,
    ultimateKg: kilogramsForce(5 * allowableN),
    says: withdrawalSays,
  }
}
