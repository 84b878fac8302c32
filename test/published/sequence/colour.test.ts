/**
 * Colours against published values. CIEDE2000: the 34 pairs of Sharma, Wu and Dalal, "The CIEDE2000 color-difference
 * formula: implementation notes", Color Research and Application 30 (2005), which try every branch of it. CIELAB: by the
 * definition (IEC 61966-2-1 for sRGB, CIE 15 for L*a*b*, white D65), written out here a second time.
 */
import { differenceCiede2000 } from 'culori'
import { describe, expect, test } from 'vitest'
import { labOfHex, labOfRgb } from '../../../src/sequence/colour.ts'

/** L1 a1 b1, L2 a2 b2, the difference. */
const pairs: readonly (readonly [number, number, number, number, number, number, number])[] = [
  [50, 2.6772, -79.7751, 50, 0, -82.7485, 2.0425],
  [50, 3.1571, -77.2803, 50, 0, -82.7485, 2.8615],
  [50, 2.8361, -74.02, 50, 0, -82.7485, 3.4412],
  [50, -1.3802, -84.2814, 50, 0, -82.7485, 1.0],
  [50, -1.1848, -84.8006, 50, 0, -82.7485, 1.0],
  [50, -0.9009, -85.5211, 50, 0, -82.7485, 1.0],
  [50, 0, 0, 50, -1, 2, 2.3669],
  [50, -1, 2, 50, 0, 0, 2.3669],
  [50, 2.49, -0.001, 50, -2.49, 0.0009, 7.1792],
  [50, 2.49, -0.001, 50, -2.49, 0.001, 7.1792],
  [50, 2.49, -0.001, 50, -2.49, 0.0011, 7.2195],
  [50, 2.49, -0.001, 50, -2.49, 0.0012, 7.2195],
  [50, -0.001, 2.49, 50, 0.0009, -2.49, 4.8045],
  [50, -0.001, 2.49, 50, 0.001, -2.49, 4.8045],
  [50, -0.001, 2.49, 50, 0.0011, -2.49, 4.7461],
  [50, 2.5, 0, 50, 0, -2.5, 4.3065],
  [50, 2.5, 0, 73, 25, -18, 27.1492],
  [50, 2.5, 0, 61, -5, 29, 22.8977],
  [50, 2.5, 0, 56, -27, -3, 31.903],
  [50, 2.5, 0, 58, 24, 15, 19.4535],
  [50, 2.5, 0, 50, 3.1736, 0.5854, 1.0],
  [50, 2.5, 0, 50, 3.2972, 0, 1.0],
  [50, 2.5, 0, 50, 1.8634, 0.5757, 1.0],
  [50, 2.5, 0, 50, 3.2592, 0.335, 1.0],
  [60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644],
  [63.0109, -31.0961, -5.8663, 62.8187, -29.7946, -4.0864, 1.263],
  [61.2901, 3.7196, -5.3901, 61.4292, 2.248, -4.962, 1.8731],
  [35.0831, -44.1164, 3.7933, 35.0232, -40.0716, 1.5901, 1.8645],
  [22.7233, 20.0904, -46.694, 23.0331, 14.973, -42.5619, 2.0373],
  [36.4612, 47.858, 18.3852, 36.2715, 50.5065, 21.2231, 1.4146],
  [90.8027, -2.0831, 1.441, 91.1528, -1.6435, 0.0447, 1.4441],
  [90.9257, -0.5406, -0.9208, 88.6381, -0.8985, -0.7239, 1.5381],
  [6.7747, -0.2908, -2.4247, 5.8714, -0.0985, -2.2286, 0.6377],
  [2.0776, 0.0795, -1.135, 0.9033, -0.0636, -0.5514, 0.9082],
]

describe('the colour library', () => {
  test.each(pairs)('CIEDE2000 of %f %f %f and %f %f %f is %f', (l1, a1, b1, l2, a2, b2, wanted) => {
    const difference = differenceCiede2000()(
      { mode: 'lab65', l: l1, a: a1, b: b1 },
      { mode: 'lab65', l: l2, a: a2, b: b2 },
    )
    expect(difference).toBeCloseTo(wanted, 4)
  })
})

/** sRGB to L*a*b* by the definition: matrix of IEC 61966-2-1, the white that it makes of 255, 255, 255. */
function byDefinition(red: number, green: number, blue: number) {
  const linear = [red, green, blue].map(value => {
    const c = value / 255
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
  })
  const matrix = [
    [0.4124, 0.3576, 0.1805],
    [0.2126, 0.7152, 0.0722],
    [0.0193, 0.1192, 0.9505],
  ]
  const times = (values: readonly number[]) =>
    matrix.map(row => row.reduce((sum, factor, at) => sum + factor * (values[at] ?? 0), 0))
  const white = times([1, 1, 1])
  const [x = 0, y = 0, z = 0] = times(linear).map((value, at) => {
    const t = value / (white[at] ?? 1)
    return t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29
  })
  return { l: 116 * y - 16, a: 500 * (x - y), b: 200 * (y - z) }
}

describe('sRGB in CIELAB, D65', () => {
  test.each([
    ['#ff0000', 53.2371, 80.0901, 67.2033],
    ['#00ff00', 87.7355, -86.1816, 83.1866],
    ['#0000ff', 32.3009, 79.1953, -107.8555],
    ['#808080', 53.585, 0, 0],
    ['#ffffff', 100, 0, 0],
    ['#000000', 0, 0, 0],
  ])('%s', (hex, l, a, b) => {
    const lab = labOfHex(hex)
    expect(lab?.l).toBeCloseTo(l, 2)
    expect(lab?.a).toBeCloseTo(a, 2)
    expect(lab?.b).toBeCloseTo(b, 2)
  })

  test('agrees with the definition over the whole cube', () => {
    for (let red = 0; red <= 255; red += 51) {
      for (let green = 0; green <= 255; green += 51) {
        for (let blue = 0; blue <= 255; blue += 51) {
          const ours = labOfRgb(red, green, blue)
          const theirs = byDefinition(red, green, blue)
          // The standard prints four figures of the matrix; that is worth a tenth in a* and b*.
          expect(Math.abs(ours.l - theirs.l)).toBeLessThan(0.05)
          expect(Math.hypot(ours.a - theirs.a, ours.b - theirs.b)).toBeLessThan(0.15)
        }
      }
    }
  })

  test('what is no colour is none', () => {
    for (const text of ['', '#fff', 'red', '#12345', '#1234567', '#12345g']) expect(labOfHex(text)).toBeNull()
  })
})
