import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { colourApart, labOfHex, lightnessApart } from '../../../src/sequence/colour.ts'
import { meanTone, pixelsAcross, pixelsOfCell, tonesOfPixels } from '../../../src/sequence/tones.ts'
import { piecesOf, visualWeight, type Weighed, weightOfSet } from '../../../src/sequence/visual-weight.ts'

const rules = { lightness: 1, colour: 0.5, detail: 0.5 }
const white = { l: 100, a: 0, b: 0 }

function pixels(colour: (x: number, y: number) => readonly [number, number, number]): Uint8Array {
  const rgb = new Uint8Array(pixelsAcross * pixelsAcross * 3)
  for (let y = 0; y < pixelsAcross; y += 1) {
    for (let x = 0; x < pixelsAcross; x += 1) rgb.set(colour(x, y), 3 * (y * pixelsAcross + x))
  }
  return rgb
}

const black = tonesOfPixels(pixels(() => [0, 0, 0]))
const plain: Weighed = { width: 1000, height: 500, band: 0, tones: null, frame: null, hand: 1 }

describe('tones of a picture', () => {
  test('an even picture is one colour without detail', () => {
    const tone = meanTone(tonesOfPixels(pixels(() => [255, 0, 0])))
    expect(tone.l).toBeCloseTo(labOfHex('#ff0000')?.l ?? 0, 6)
    expect(tone.detail).toBeCloseTo(0, 6)
  })

  test('stripes of one pixel are as restless as it gets, halves of a cell or more are not', () => {
    const striped = tonesOfPixels(pixels(x => (x % 2 === 0 ? [0, 0, 0] : [255, 255, 255])))
    expect(meanTone(striped).detail).toBe(1)
    const halves = tonesOfPixels(pixels(x => (x < pixelsAcross / 2 ? [0, 0, 0] : [255, 255, 255])))
    expect(meanTone(halves).detail).toBe(0)
    expect(meanTone(halves).l).toBeCloseTo(50, 6)
  })

  test('cells stand row by row from the top left', () => {
    const tones = tonesOfPixels(
      pixels((x, y) => (x < pixelsOfCell && y >= pixelsOfCell && y < 2 * pixelsOfCell ? [0, 0, 0] : [255, 255, 255])),
    )
    expect(tones.map(tone => Math.round(tone.l)).indexOf(0)).toBe(8)
  })

  test('pixels of another number are refused', () => {
    expect(() => tonesOfPixels(new Uint8Array(12))).toThrow(RangeError)
  })
})

describe('visual weight', () => {
  test('without a picture it is the area, and says so', () => {
    expect(visualWeight(plain, white, rules)).toMatchObject({ area: 0.5, weight: 0.5, from: 'area', right: 0, up: 0 })
  })

  test('black on white weighs twice its area, on black once', () => {
    const work = { ...plain, tones: black }
    expect(visualWeight(work, white, rules).weight).toBeCloseTo(1, 6)
    expect(visualWeight(work, { l: 0, a: 0, b: 0 }, rules).weight).toBeCloseTo(0.5, 6)
  })

  test('a hand has the last word', () => {
    expect(visualWeight({ ...plain, tones: black, hand: 3 }, white, rules).weight).toBeCloseTo(3, 6)
  })

  test('a picture half black and half white is no grey one, and its weight sits in the dark half', () => {
    const tones = tonesOfPixels(pixels(x => (x < pixelsAcross / 2 ? [0, 0, 0] : [255, 255, 255])))
    const grey = { l: 50, a: 0, b: 0 }
    expect(visualWeight({ ...plain, tones }, grey, rules).weight).toBeCloseTo(0.75, 3)
    // Black weighs 2, white 1: (2 · −250 + 1 · 250) / 3.
    expect(visualWeight({ ...plain, tones }, white, rules).right).toBeCloseTo(-250 / 3, 3)
    const low = tonesOfPixels(pixels((_, y) => (y >= pixelsAcross / 2 ? [0, 0, 0] : [255, 255, 255])))
    expect(visualWeight({ ...plain, tones: low }, white, rules).up).toBeCloseTo(-125 / 3, 3)
  })

  test('colour counts by hue and strength, lightness by itself', () => {
    const red = labOfHex('#ff0000')
    const green = labOfHex('#00a000')
    if (red === null || green === null) throw new Error('colours')
    const tones = tonesOfPixels(pixels(() => [255, 0, 0]))
    const found = visualWeight({ ...plain, tones }, green, rules)
    expect(found.colour).toBeCloseTo((0.5 * colourApart(red, green)) / 100, 6)
    expect(found.lightness).toBeCloseTo(lightnessApart(red, green) / 100, 6)
  })

  test('a frame whose colour is known weighs like any other part; one that is not, by its area', () => {
    const framed = { ...plain, band: 50 }
    expect(visualWeight(framed, white, rules).weight).toBeCloseTo(0.5, 9)
    const dark = visualWeight({ ...framed, frame: { l: 0, a: 0, b: 0 } }, white, rules)
    // The band: 1000 · 500 − 900 · 400 = 140,000 mm².
    expect(dark.weight).toBeCloseTo(0.5 + 0.14, 9)
    expect(dark.right).toBeCloseTo(0, 9)
  })

  test('the pieces cover the work, whatever the frame', () => {
    const side = fc.integer({ min: 1, max: 3000 })
    fc.assert(
      fc.property(side, side, fc.integer({ min: 0, max: 500 }), fc.boolean(), (width, height, band, pictured) => {
        const work = { ...plain, width, height, band, tones: pictured ? black : null }
        const area = piecesOf(work, white, rules).reduce((sum, piece) => sum + piece.width * piece.height, 0)
        expect(area).toBeCloseTo(width * height, 3)
        const { weight, area: square, lightness, colour, detail, hand } = visualWeight(work, white, rules)
        expect(weight).toBeCloseTo(square * (1 + lightness + colour + detail) * hand, 9)
      }),
    )
  })

  test('a set weighs what its parts weigh, where they stand', () => {
    const one = visualWeight({ ...plain, tones: black }, white, rules)
    const two = visualWeight({ ...plain, hand: 2 }, white, rules)
    const set = weightOfSet(
      [
        { x: -600, y: 0, own: one },
        { x: 600, y: 0, own: two },
      ],
      1,
    )
    expect(set.weight).toBeCloseTo(2, 6)
    expect(set.right).toBeCloseTo(0, 6)
    expect(set.weight).toBeCloseTo(set.area * (1 + set.lightness + set.colour + set.detail) * set.hand, 9)
    expect(weightOfSet([{ x: 0, y: 0, own: one }], 2).weight).toBeCloseTo(2, 6)
  })
})
