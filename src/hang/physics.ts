/**
 * Units of force. Forces are computed in newtons and shown to people in kilograms-force. Definitions as in NIST SP 811
 * (from memory): standard gravity and the international pound are exact.
 */
export const GRAVITY = 9.80665
export const POUND = 0.45359237
export const INCH = 25.4

export function newtons(kilogramsForce: number): number {
  return kilogramsForce * GRAVITY
}

export function kilogramsForce(force: number): number {
  return force / GRAVITY
}

export function radians(degrees: number): number {
  return (degrees * Math.PI) / 180
}

export function degrees(radiansOf: number): number {
  return (radiansOf * 180) / Math.PI
}
