/**
 * Colours of the demo's pictures, mixed for it: each palette names what its colours stand for, so that a scene painted
 * in another palette is another time of day and not another set of accidents.
 */

import type { Rgb } from './surface.ts'
import { blend, colour } from './surface.ts'

export interface Palette {
  readonly high: Rgb
  readonly low: Rgb
  readonly far: Rgb
  readonly middle: Rgb
  readonly near: Rgb
  readonly dark: Rgb
  readonly light: Rgb
  readonly accent: Rgb
  readonly second: Rgb
}

function palette(words: string): Palette {
  const [high, low, far, middle, near, dark, light, accent, second] = words.split(' ').map(colour)
  const grey: Rgb = [0.5, 0.5, 0.5]
  return {
    high: high ?? grey,
    low: low ?? grey,
    far: far ?? grey,
    middle: middle ?? grey,
    near: near ?? grey,
    dark: dark ?? grey,
    light: light ?? grey,
    accent: accent ?? grey,
    second: second ?? grey,
  }
}

export const palettes = {
  dusk: palette('#34466b #d99a76 #6d6587 #57596b #3a4245 #1f2430 #f2cfa1 #c3502f #e0a53d'),
  morning: palette('#9fb8c4 #f0dcc0 #a9b5b0 #7f9a83 #5c7350 #2f3d36 #fbf3df #d9743f #e7c25d'),
  rain: palette('#6f7f88 #b7bdb6 #83918f #5f716f #435450 #23302f #dfe2d8 #9d5f49 #b79a5a'),
  harvest: palette('#7ea2ad #efd9a4 #b99a5e #c8943c #8b5a2b #3b2a20 #f7e6b5 #b33d23 #dfb040'),
  winter: palette('#8d9aa8 #dbd8d4 #a7adb5 #c9cbcb #7b7f80 #2c3038 #f4f2ee #7a4a3a #ae8d5e'),
  kiln: palette('#2a2530 #7d3c2c #54323a #8f4a2c #5a2a22 #17131a #f3c584 #e0622a #f0a03c'),
  river: palette('#52788c #bcd0c8 #5e8a86 #3f7069 #2b4f4a #152c2f #e6ede0 #c86a3a #d9b44a'),
  meadow: palette('#a8c3c9 #e9e6c8 #8fae86 #7c9c4a #4d6f33 #22371f #f6f0d0 #c94f4a #e9c443'),
  plum: palette('#493a5c #b98a9b #6f5477 #7c4763 #4e2a45 #1f1528 #efd5cf #d0693f #cfa24b'),
  slate: palette('#3d4a57 #8fa0a6 #5c6a73 #4b5a5d #354144 #1a2126 #d5dcd8 #b5523a #c9a45c'),
  clay: palette('#cbb79b #ecdcc2 #c39a77 #b0704c #834631 #35221d #f6ead3 #2f5d62 #d9a14e'),
  night: palette('#10182b #27375a #1d2740 #18213a #0f1526 #070a14 #e9dcb0 #d6843c #8aa0b8'),
} as const

export type PaletteName = keyof typeof palettes

/** The colour `share` of the way from far to near, through the middle. */
export function depth(of: Palette, share: number): Rgb {
  return share < 0.5 ? blend(of.far, of.middle, share * 2) : blend(of.middle, of.near, share * 2 - 1)
}
