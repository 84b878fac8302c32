/** Measures by the letters of their corners, and rooms of any shape to measure. */
import fc from 'fast-check'
import { cornerAt, type Measure, type Point, type SurveyRules } from '../../../src/plan/survey.ts'

/** The house's own deviations as they come. */
export const rules: SurveyRules = { tape: 3, tapePerMetre: 0.3, angle: 0.5, closesWithin: 20 }

/** `AC` is a length, `C` the angle at C. */
export function measure(
  letters: string,
  count: number,
  value: number,
  standing: Measure['standing'] = 'measured',
): Measure {
  const from = cornerAt(letters[0] ?? '') ?? 0
  if (letters.length === 1) return { key: letters, kind: 'angle', from, to: from, value, standing }
  const to = cornerAt(letters[1] ?? '') ?? 0
  const apart = Math.abs(from - to)
  return { key: letters, kind: apart === 1 || apart === count - 1 ? 'side' : 'diagonal', from, to, value, standing }
}

export const between = ([ax, ay]: Point, [bx, by]: Point) => Math.hypot(bx - ax, by - ay)

/** A room that is seen whole from its middle, clockwise on the page; sides of half a metre and more. */
export const starRoom = (least: number, most: number) =>
  fc
    .array(fc.record({ far: fc.integer({ min: 2500, max: 9000 }), share: fc.integer({ min: 60, max: 100 }) }), {
      minLength: least,
      maxLength: most,
    })
    .map(spokes => {
      const total = spokes.reduce((sum, { share }) => sum + share, 0)
      let turned = 0
      return spokes.map(({ far, share }): Point => {
        turned += (share / total) * 2 * Math.PI
        return [far * Math.cos(turned), far * Math.sin(turned)]
      })
    })

/** All sides, and every diagonal that `keep` takes, as the corners have them. */
export function taped(corners: readonly Point[], keep: (from: number, to: number) => boolean): Measure[] {
  const count = corners.length
  return corners.flatMap((here, from) =>
    corners.flatMap((there, to): Measure[] => {
      if (to <= from) return []
      const side = to === from + 1 || (from === 0 && to === count - 1)
      if (!side && !keep(from, to)) return []
      const value = between(here, there)
      return [{ key: `${from} ${to}`, kind: side ? 'side' : 'diagonal', from, to, value, standing: 'measured' }]
    }),
  )
}
