/** Labels in a row and lines of text: properties that hold for all. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { openFaces } from '../../../main/fonts/faces.ts'
import { wrap } from '../../../src/sheets/lines.ts'
import { spread } from '../../../src/sheets/spread.ts'

describe('labels in a row', () => {
  const labels = fc
    .array(
      fc.record({
        at: fc.double({ min: 0, max: 300, noNaN: true }),
        width: fc.double({ min: 1, max: 15, noNaN: true }),
      }),
      { maxLength: 30 },
    )
    .map(list => list.sort((a, b) => a.at - b.at))

  test('stand clear of each other, inside the paper, in their order', () => {
    fc.assert(
      fc.property(labels, wanted => {
        const middles = spread(wanted, 0, 300, 1)
        const needed = wanted.reduce((sum, label) => sum + label.width + 1, -1)
        if (needed > 300) return expect(middles).toBeNull()
        middles?.forEach((middle, index) => {
          const half = (wanted[index]?.width ?? 0) / 2
          expect(middle - half).toBeGreaterThanOrEqual(-1e-6)
          expect(middle + half).toBeLessThanOrEqual(300 + 1e-6)
          const next = middles[index + 1]
          if (next !== undefined)
            expect(next - (wanted[index + 1]?.width ?? 0) / 2 - (middle + half)).toBeGreaterThanOrEqual(1 - 1e-6)
        })
      }),
    )
  })

  test('stand over their place where there is room', () => {
    const wanted = [
      { at: 20, width: 8 },
      { at: 40, width: 8 },
      { at: 200, width: 8 },
    ]
    expect(spread(wanted, 0, 300, 1)).toEqual([20, 40, 200])
  })
})

describe('lines of text', () => {
  test('never break a number, its fraction or its unit', async () => {
    const faces = await openFaces()
    const text = 'bears at 1\u2009480 + 910 / 2 − 140 = 1\u2009795, or 70 11/16 in on 24 1/2 in and 9.5 kg of 22.7 kg'
    for (let width = 18; width < 60; width += 1) {
      for (const line of wrap(text, 'narrow', 2.25, width, faces)) {
        expect(line).not.toMatch(/^(\d+\/\d+|in\b|kg\b|480|795)/)
        expect(faces.width('narrow', 2.25, line)).toBeLessThanOrEqual(width + 1e-6)
      }
    }
  })

  test('figures of the same count run equally wide', async () => {
    const faces = await openFaces()
    for (const face of ['figure', 'narrow', 'plain', 'strong'] as const) {
      expect(faces.width(face, 8, '1\u2009111')).toBeCloseTo(faces.width(face, 8, '8\u2009888'), 9)
    }
  })

  test('Latin of all Europe, Cyrillic, Greek and Vietnamese have faces; nothing is dropped', async () => {
    const faces = await openFaces()
    for (const face of ['figure', 'narrow', 'plain', 'strong', 'title'] as const) {
      expect(faces.lacks(face, 'Łódź Őry Dvořák Şişli İz ßæøåþ — Кама Ђ Γιάννης Việt × − ½ “a”')).toEqual([])
      expect(faces.lacks(face, 'a波b')).toEqual(['波'])
    }
  })
})
