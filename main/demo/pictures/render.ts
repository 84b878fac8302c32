/**
 * One picture of the demo: which scene, in which medium, in which colours. `renderPicture` needs nothing but its recipe,
 * so that several threads can work at once; the same recipe gives the same bytes.
 */

import type { Medium } from './media.ts'
import { media } from './media.ts'
import type { PaletteName } from './palettes.ts'
import { palettes } from './palettes.ts'
import { noiseFrom, seeded, seedOf } from './random.ts'
import type { Ground } from './scene.ts'
import { hills, orchard, reeds, town } from './scenes-land.ts'
import { arcs, leaves, room, stones, vessels } from './scenes-things.ts'
import { bridge, lamps, weir } from './scenes-water.ts'
import { encode } from './surface.ts'

export type SceneName = keyof typeof scenes

export interface Recipe {
  /** The picture hangs on this key and on the seed. */
  readonly key: string
  readonly medium: Medium
  readonly scene: SceneName
  readonly palette: PaletteName
  /** Of the image, mm: the picture has this shape. */
  readonly width: number
  readonly height: number
}

export interface RenderedPicture {
  readonly name: string
  readonly mime: 'image/jpeg'
  readonly widthPx: number
  readonly heightPx: number
  readonly bytes: Buffer
}

const scenes = {
  hills: (ground: Ground) => hills(ground),
  weir,
  bridge,
  orchard,
  town,
  reeds,
  lamps,
  vessels,
  room,
  arcs,
  stones,
  leaves,
} as const

/** JPEG quality where a medium's grain or thread would make its file needlessly heavy. */
const qualities: Partial<Record<Medium, number>> = {
  'gelatin silver': 74,
  'warm silver': 74,
  lithograph: 68,
  etching: 66,
  photogram: 76,
  ripples: 74,
  graphite: 58,
  'two chalks': 66,
  'woven blocks': 62,
  'woven stripes': 62,
  'resist-dyed warp': 56,
  'pieced cloth': 62,
  'figured bands': 60,
}
export const LONG_SIDE = 960

/** Makes one picture, its longer side so many pixels. */
export async function renderPicture(recipe: Recipe, seed: number, longSide = LONG_SIDE): Promise<RenderedPicture> {
  const scale = longSide / Math.max(recipe.width, recipe.height)
  const width = Math.round(recipe.width * scale)
  const height = Math.round(recipe.height * scale)
  const random = seeded(seedOf(recipe.key, seed))
  const palette = palettes[recipe.palette]
  const scene = scenes[recipe.scene]({
    width: width / longSide,
    height: height / longSide,
    palette,
    random,
    noise: noiseFrom(random),
  })
  const picture = media[recipe.medium]({ scene, width, height, palette, random })
  const bytes = await encode(picture, qualities[recipe.medium] ?? 78)
  return { name: `${recipe.key}.jpg`, mime: 'image/jpeg', widthPx: width, heightPx: height, bytes }
}
