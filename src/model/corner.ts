/** The interior angle at a corner of a room, as a person types it: 90, 92,5°, 88.5 deg. */

/** A corner turns by something: beyond these a wall would lie on its neighbour. Degrees, both excluded. */
export const cornerBounds = { least: 1, most: 359 } as const

export type CornerRead =
  | { readonly ok: true; readonly degrees: number }
  | { readonly ok: false; readonly message: string }

export function readCorner(text: string): CornerRead {
  const typed = text.trim()
  const plain = typed.replace(/\s*(°|deg|degrees)$/i, '').replace(',', '.')
  const degrees = Number(plain)
  if (plain === '' || !/^\d*\.?\d*$/.test(plain) || !Number.isFinite(degrees)) {
    return { ok: false, message: `“${typed}” is no angle in degrees.` }
  }
  const { least, most } = cornerBounds
  return degrees > least && degrees < most
    ? { ok: true, degrees }
    : { ok: false, message: `“${typed}”: the angle of a corner lies between ${least}° and ${most}°.` }
}
