/** The media of the demo's pictures: each a way to make a scene, with the figures that set one hand apart from another. */
import { chalk, contours, wash } from './draw.ts'
import { paint } from './paint.ts'
import type { Palette } from './palettes.ts'
import type { Silver } from './photograph.ts'
import { ripples, shadows, silver } from './photograph.ts'
import { cut, etch, flatInks } from './print.ts'
import type { Random } from './random.ts'
import type { Scene } from './scene.ts'
import type { Surface } from './surface.ts'
import { blend, colour } from './surface.ts'
import type { Pattern } from './textile.ts'
import { weave } from './textile.ts'

export interface Call {
  readonly scene: Scene
  readonly width: number
  readonly height: number
  readonly palette: Palette
  readonly random: Random
}

const cream = colour('#efe6d2')
const white = colour('#f3f0e8')
const black = colour('#1c1a1b')

function silverOf(random: Random, warm: boolean): Silver {
  return {
    dark: warm ? colour('#1d1611') : colour('#131416'),
    light: warm ? colour('#efe5d3') : colour('#ebe9e5'),
    contrast: random.between(1.02, 1.25),
    grain: random.between(0.04, 0.085),
    vignette: random.between(0.16, 0.4),
    soft: random.between(5, 11),
    border: random.chance(0.4) ? 0.028 : 0,
  }
}

export const media = {
  'oil, broad': (c: Call) =>
    paint(
      c.scene,
      c.width,
      c.height,
      {
        brush: c.random.between(0.034, 0.05),
        body: 1,
        stray: 0.1,
        restless: 0.5,
        ground: blend(blend(c.palette.accent, c.palette.middle, 0.5), c.palette.dark, 0.2),
        weave: 0.4,
      },
      c.random,
    ),
  'oil, fine': (c: Call) =>
    paint(
      c.scene,
      c.width,
      c.height,
      {
        brush: c.random.between(0.018, 0.026),
        body: 0.65,
        stray: 0.05,
        restless: 0.25,
        ground: blend(c.palette.near, c.palette.low, 0.35),
        weave: 0.7,
      },
      c.random,
    ),
  tempera: (c: Call) =>
    paint(
      c.scene,
      c.width,
      c.height,
      {
        brush: c.random.between(0.01, 0.014),
        body: 0.3,
        stray: 0.045,
        restless: 0.12,
        ground: c.palette.light,
        weave: 0.15,
      },
      c.random,
    ),
  etching: (c: Call) =>
    etch(
      c.scene,
      c.width,
      c.height,
      {
        margins: { side: 0.07, top: 0.065, foot: 0.1 },
        ink: blend(black, c.palette.dark, 0.5),
        paper: cream,
        lines: c.random.between(84, 118),
        plateTone: c.random.between(0.04, 0.13),
      },
      c.random,
    ),
  woodcut: (c: Call) =>
    cut(
      c.scene,
      c.width,
      c.height,
      {
        margins: { side: 0.045, top: 0.045, foot: 0.07 },
        paper: cream,
        inks: [{ ink: black, below: c.random.between(0.36, 0.44), grain: 1 }],
        cuts: c.random.between(54, 80),
        carved: 0.62,
        off: 0,
      },
      c.random,
    ),
  'colour woodcut': (c: Call) =>
    cut(
      c.scene,
      c.width,
      c.height,
      {
        margins: { side: 0.05, top: 0.05, foot: 0.075 },
        paper: white,
        cuts: c.random.between(40, 58),
        carved: 0.3,
        off: 3,
        inks: [
          { ink: blend(c.palette.low, c.palette.light, 0.2), below: 0.9, grain: 0.5 },
          { ink: c.palette.second, below: 0.6, grain: 0.8 },
          { ink: c.palette.accent, below: 0.38, grain: 0.9 },
          { ink: blend(c.palette.dark, c.palette.near, 0.35), below: 0.2, grain: 0.7 },
        ],
      },
      c.random,
    ),
  lithograph: (c: Call) =>
    flatInks(
      c.scene,
      c.width,
      c.height,
      {
        margins: { side: 0.06, top: 0.06, foot: 0.09 },
        paper: white,
        grain: c.random.between(1.7, 2.4),
        inks: [
          { ink: blend(c.palette.low, c.palette.light, 0.3), from: 0.5, to: 1.02 },
          { ink: blend(c.palette.middle, c.palette.accent, 0.35), from: 0.2, to: 0.72 },
          { ink: blend(black, c.palette.dark, 0.6), from: 0.02, to: 0.42 },
        ],
      },
      c.random,
    ),
  'gelatin silver': (c: Call) => silver(c.scene, c.width, c.height, silverOf(c.random, false), c.random),
  'warm silver': (c: Call) => silver(c.scene, c.width, c.height, silverOf(c.random, true), c.random),
  photogram: (c: Call) =>
    shadows(
      c.width,
      c.height,
      {
        ...silverOf(c.random, false),
        contrast: 1.05,
        soft: 3,
        vignette: 0.12,
        things: c.random.whole(24, 46),
        long: c.random.chance(0.5),
      },
      c.random,
    ),
  ripples: (c: Call) =>
    ripples(
      c.width,
      c.height,
      {
        ...silverOf(c.random, c.random.chance(0.5)),
        soft: 4,
        often: c.random.between(7, 17),
        turn: c.random.between(0.7, 2.1),
        wander: c.random.between(0.05, 0.16),
      },
      c.random,
    ),
  'woven blocks': (c: Call) => cloth('blocks', c),
  'woven stripes': (c: Call) => cloth('stripes', c),
  'resist-dyed warp': (c: Call) => cloth('resist', c),
  'pieced cloth': (c: Call) => cloth('pieces', c),
  'figured bands': (c: Call) => cloth('bands', c),
  graphite: (c: Call) =>
    chalk(
      c.scene,
      c.width,
      c.height,
      {
        paper: white,
        ink: colour('#34363a'),
        lights: null,
        stroke: 0.034,
        outline: 0.5,
        turn: c.random.between(-1, -0.6),
        tooth: 0.5,
      },
      c.random,
    ),
  'two chalks': (c: Call) =>
    chalk(
      c.scene,
      c.width,
      c.height,
      {
        paper: blend(c.palette.low, c.palette.middle, 0.35),
        ink: blend(colour('#5a2a1c'), c.palette.dark, 0.4),
        lights: colour('#fbf5e6'),
        stroke: 0.045,
        outline: 0.3,
        turn: c.random.between(0.4, 1.1),
        tooth: 1,
      },
      c.random,
    ),
  'ink wash': (c: Call) =>
    wash(
      c.scene,
      c.width,
      c.height,
      {
        paper: white,
        pen: blend(black, c.palette.dark, 0.3),
        washes: [
          { ink: blend(c.palette.low, c.palette.light, 0.1), below: 0.86 },
          { ink: blend(c.palette.middle, c.palette.low, 0.3), below: 0.6 },
          { ink: blend(c.palette.near, c.palette.middle, 0.2), below: 0.36 },
          { ink: c.palette.dark, below: 0.16 },
        ],
      },
      c.random,
    ),
  'pen contours': (c: Call) =>
    contours(
      c.scene,
      c.width,
      c.height,
      {
        paper: cream,
        inks: [blend(black, c.palette.dark, 0.4), blend(c.palette.near, c.palette.dark, 0.3)],
        lines: c.random.whole(86, 120),
      },
      c.random,
    ),
} as const

function cloth(pattern: Pattern, c: Call): Surface {
  const { palette, random } = c
  return weave(
    pattern,
    c.width,
    c.height,
    {
      inks: [palette.accent, palette.second, palette.near, palette.low, palette.dark, palette.far],
      ground: palette.light,
      threads: random.between(120, 170),
      slub: random.between(0.25, 0.6),
    },
    random,
  )
}

export type Medium = keyof typeof media
