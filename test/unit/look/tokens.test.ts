/** The look's table against WCAG 2.2, and the style sheet against the table. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { colours, contrast, luminance, onPicture, pairs, type Theme, tokensCss } from '../../../renderer/look/tokens.ts'

describe('contrast', () => {
  // WCAG 2.2, "contrast ratio": black on white is 21:1, equal colours 1:1.
  it('is 21 for black on white and 1 for a colour on itself', () => {
    expect(contrast('#000000', '#FFFFFF')).toBeCloseTo(21, 10)
    expect(contrast('#8F5A00', '#8F5A00')).toBe(1)
  })

  // WCAG 2.2, Understanding 1.4.3 names #767676 on white as the palest grey that still passes at 4.5:1.
  it('passes #767676 on white at 4.5 and not the next paler grey', () => {
    expect(contrast('#767676', '#FFFFFF')).toBeGreaterThanOrEqual(4.5)
    expect(contrast('#777777', '#FFFFFF')).toBeLessThan(4.5)
  })

  it('counts the three primaries as sRGB does', () => {
    // IEC 61966-2-1 weights of red, green and blue in luminance, as WCAG quotes them.
    expect(['#FF0000', '#00FF00', '#0000FF'].map(luminance)).toEqual([0.2126, 0.7152, 0.0722])
  })
})

describe.each(['light', 'dark'] as const)('the %s table', (theme: Theme) => {
  it.each(pairs.map(pair => [`${pair.front} on ${pair.back}`, pair] as const))('%s can be read', (_, pair) => {
    expect(contrast(colours[theme][pair.front], colours[theme][pair.back])).toBeGreaterThanOrEqual(pair.least)
  })
})

it('what is drawn upon a picture can be read on the band of paper that goes around it', () => {
  // WCAG 2.2, 1.4.3 for its numbers, 1.4.11 for its lines.
  expect(contrast(onPicture['drawn-ink'], onPicture['drawn-paper'])).toBeGreaterThanOrEqual(4.5)
  expect(contrast(onPicture['drawn-quiet'], onPicture['drawn-paper'])).toBeGreaterThanOrEqual(3)
  expect(contrast(onPicture['drawn-pen'], onPicture['drawn-paper'])).toBeGreaterThanOrEqual(3)
})

it('tokens.css is made from the table', () => {
  expect(readFileSync(new URL('../../../renderer/look/tokens.css', import.meta.url), 'utf8')).toBe(tokensCss())
})
