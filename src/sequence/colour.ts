/**
 * Colours in CIELAB (white point D65, of sRGB), where distances are about what an eye sees. The arithmetic is the colour
 * library's; the distances that a wall is judged by are here.
 */
// In one file: its hundred and fifty modules would cost every program and worker half a second at its start.
import culori from 'culori/require'

const toLab = culori.converter('lab65')

/** L* from 0 (black) to 100 (white), a* and b* without a unit. */
export interface Lab {
  readonly l: number
  readonly a: number
  readonly b: number
}

/** Of sRGB, each 0 to 255. */
export function labOfRgb(red: number, green: number, blue: number): Lab {
  const { l, a, b } = toLab({ mode: 'rgb', r: red / 255, g: green / 255, b: blue / 255 })
  return { l, a, b }
}

/** Of a colour written as `#RRGGBB`; null where it is written in another way. */
export function labOfHex(hex: string): Lab | null {
  if (!/^#[0-9a-fA-F]{6}$/.test(hex)) return null
  const at = (from: number) => Number.parseInt(hex.slice(from, from + 2), 16)
  return labOfRgb(at(1), at(3), at(5))
}

/** How much lighter or darker one is than the other: the distance of L*, from 0 to 100. */
export function lightnessApart(one: Lab, other: Lab): number {
  return Math.abs(one.l - other.l)
}

/** How far apart they are in hue and strength, lightness left out: the distance in a* and b*. */
export function colourApart(one: Lab, other: Lab): number {
  return Math.hypot(one.a - other.a, one.b - other.b)
}
