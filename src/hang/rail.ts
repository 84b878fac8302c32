/**
 * A work on cables, rods or chain from a picture rail: how long each hanger is, how many links of chain, and how far the
 * work leans out. mm; heights as on the wall. Formulas derived in the design (`ℓ = Yr − y`, `n = round(ℓ/p)`); the lean
 * is a balance of forces that the tests check against least energy.
 */
import { degrees } from './physics.ts'

export interface Links {
  readonly count: number
  /** What the adjuster takes up: positive lengthens. */
  readonly rest: number
}

/**
 * Whole links of pitch p nearest to a length; where the adjuster only lengthens, the links that are not longer. A length
 * that is whole links but for the last digit of a sum counts as whole.
 */
export function linksFor(length: number, pitch: number, adjuster: 'both' | 'longer'): Links {
  const links = length / pitch
  const near = Math.round(links)
  const whole = Math.abs(links - near) < 1e-9
  const count = adjuster === 'both' || whole ? near : Math.floor(links)
  return { count, rest: length - count * pitch }
}

/** Pulls in two hangers that meet at one point, as parts of the weight; each hangs `down` and `aside` from the point. */
export function twoLegs(
  left: { readonly down: number; readonly aside: number },
  right: { readonly down: number; readonly aside: number },
): readonly [number, number] {
  // Sideways the pulls cancel, downwards they carry 1.
  const [l, r] = [Math.hypot(left.down, left.aside), Math.hypot(right.down, right.aside)]
  const [sinL, sinR] = [left.down / l, right.down / r]
  const [cosL, cosR] = [Math.abs(left.aside) / l, Math.abs(right.aside) / r]
  const together = sinL * cosR + sinR * cosL
  return together < 1e-12 ? [0.5, 0.5] : [cosR / together, cosL / together]
}

export interface LeanQuestion {
  /** Rail's hook off the wall, length of the hanger, ring above the bottom edge, mm. */
  readonly off: number
  readonly hanger: number
  readonly ringUp: number
  /** Mass in front of the frame's back, and below the ring, mm. */
  readonly massOut: number
  readonly massDown: number
  /** Pad at the bottom, mm. */
  readonly pad: number
}

/**
 * Lean of the work out from the wall at its top, degrees: the bottom edge leans on its pad, the hanger pulls back as far
 * as the push of the wall needs. `tan θ = (c − u tan φ)/v` for the hanger, `p + v sin φ = s + ℓ sin θ` for the ring.
 * Where the mass lies far below the ring the bottom would leave its pad: then it hangs free, at `tan φ = c/u`.
 */
export function leanOf({ off, hanger, ringUp, massOut, massDown, pad }: LeanQuestion): number {
  const free = massDown > 0 ? Math.atan(massOut / massDown) : Math.PI / 2
  const ring = (lean: number) => {
    const push = (massOut - massDown * Math.tan(lean)) / ringUp
    return off + (hanger * push) / Math.hypot(1, push)
  }
  const gap = (lean: number) => pad + ringUp * Math.sin(lean) - ring(lean)
  let [low, high] = [-Math.PI / 3, Math.min(free, Math.PI / 3)]
  if (gap(high) < 0) return degrees(high)
  for (let i = 0; i < 100; i += 1) {
    const middle = (low + high) / 2
    if (gap(middle) < 0) low = middle
    else high = middle
  }
  return degrees((low + high) / 2)
}

/** Pads that let the work hang plumb: as thick as its rings then stand off the wall. */
export function padForPlumb({ off, hanger, ringUp, massOut }: Omit<LeanQuestion, 'pad' | 'massDown'>): number {
  const push = massOut / ringUp
  return off + (hanger * push) / Math.hypot(1, push)
}
