/** The demo's pictures: the same from the same seed however they are made, in the works' shapes, and no two alike. */
import sharp from 'sharp'
import { beforeAll, describe, expect, it } from 'vitest'
import { media } from '../../../main/demo/pictures/media.ts'
import { seeded } from '../../../main/demo/pictures/random.ts'
import { type RenderedPicture, renderPicture } from '../../../main/demo/pictures/render.ts'
import { renderAll } from '../../../main/demo/pictures/render-all.ts'
import { recipes } from '../../../main/demo/write-checklist.ts'

const SEED = 1931
const SMALL = 24

let pictures: readonly RenderedPicture[] = []
let small: readonly Buffer[] = []

beforeAll(async () => {
  pictures = await renderAll(recipes, SEED, { threads: 2 })
  small = await Promise.all(
    pictures.map(({ bytes }) => sharp(bytes).resize(SMALL, SMALL, { fit: 'fill' }).removeAlpha().raw().toBuffer()),
  )
}, 120_000)

function meanDifference(a: Buffer, b: Buffer): number {
  let sum = 0
  for (let i = 0; i < a.length; i += 1) sum += Math.abs((a[i] ?? 0) - (b[i] ?? 0))
  return sum / a.length
}

describe('pictures', () => {
  it('are one for each recipe, in the shape of the image, 900 to 1 400 pixels long', async () => {
    expect(pictures).toHaveLength(recipes.length)
    for (const [index, picture] of pictures.entries()) {
      const recipe = recipes[index]
      // sharp reads the file itself: what we say of it is held against what it is.
      const found = await sharp(picture.bytes).metadata()
      expect([found.format, found.width, found.height]).toEqual(['jpeg', picture.widthPx, picture.heightPx])
      expect(Math.max(picture.widthPx, picture.heightPx)).toBeGreaterThanOrEqual(900)
      expect(Math.max(picture.widthPx, picture.heightPx)).toBeLessThanOrEqual(1400)
      const shape = (recipe?.width ?? 0) / (recipe?.height ?? 1)
      expect(Math.abs(picture.widthPx / picture.heightPx / shape - 1), recipe?.key).toBeLessThan(0.003)
    }
  })

  it('are light files', () => {
    const sizes = pictures.map(({ bytes }) => bytes.length)
    expect(Math.max(...sizes)).toBeLessThan(320_000)
    expect(sizes.reduce((sum, size) => sum + size, 0) / sizes.length).toBeLessThan(200_000)
  })

  it('come out the same byte for byte in this thread as in two', async () => {
    for (const index of [0, 5, 17, 33, 48]) {
      const recipe = recipes[index]
      if (recipe === undefined) throw new Error('no such recipe')
      const again = await renderPicture(recipe, SEED)
      expect(again.bytes.equals(pictures[index]?.bytes ?? Buffer.alloc(0)), recipe.key).toBe(true)
    }
  })

  it('change with the seed', async () => {
    const recipe = recipes[1]
    if (recipe === undefined) throw new Error('no such recipe')
    const other = await renderPicture(recipe, SEED + 1)
    expect(other.bytes.equals(pictures[1]?.bytes ?? Buffer.alloc(0))).toBe(false)
  })

  it('look different, each from every other', () => {
    let least = { between: '', difference: Number.POSITIVE_INFINITY }
    for (let a = 0; a < small.length; a += 1) {
      for (let b = a + 1; b < small.length; b += 1) {
        const difference = meanDifference(small[a] ?? Buffer.alloc(0), small[b] ?? Buffer.alloc(0))
        if (difference < least.difference) least = { between: `${recipes[a]?.key} and ${recipes[b]?.key}`, difference }
      }
    }
    // Of 255; two prints from one block would be near 0, two unrelated pictures are at 50 and more.
    expect(least.difference, least.between).toBeGreaterThan(7)
  })

  it('are none of them blank', async () => {
    for (const [index, { bytes }] of pictures.entries()) {
      const { channels } = await sharp(bytes).stats()
      expect(Math.max(...channels.map(channel => channel.stdev)), recipes[index]?.key).toBeGreaterThan(9)
    }
  })

  it('use every medium that there is', () => {
    expect(new Set(recipes.map(recipe => recipe.medium))).toEqual(new Set(Object.keys(media)))
  })

  it('stop when they are cancelled', async () => {
    const abort = new AbortController()
    const work = renderAll(recipes, SEED, {
      threads: 2,
      signal: abort.signal,
      progress: () => abort.abort(new Error('enough')),
    })
    await expect(work).rejects.toThrow('enough')
    const alone = renderAll(recipes, SEED, { threads: 1, signal: AbortSignal.abort(new Error('not begun')) })
    await expect(alone).rejects.toThrow('not begun')
  })
})

describe('chance', () => {
  it('is even: the mean of many draws is near a half and each tenth gets its tenth', () => {
    const random = seeded(7)
    const draws = Array.from({ length: 20_000 }, () => random.next())
    expect(draws.reduce((sum, draw) => sum + draw, 0) / draws.length).toBeCloseTo(0.5, 2)
    const tenths = new Array<number>(10).fill(0)
    for (const draw of draws) tenths[Math.floor(draw * 10)] = (tenths[Math.floor(draw * 10)] ?? 0) + 1
    // Pearson's chi-squared, 9 degrees of freedom: 27.88 is the 0.999 point (NIST/SEMATECH e-Handbook, table 1.3.6.7.4).
    expect(tenths.reduce((sum, count) => sum + (count - 2000) ** 2 / 2000, 0)).toBeLessThan(27.88)
  })
})
