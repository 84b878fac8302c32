/**
 * Outlines to begin an adjustment from: once as the sides and angles walk round, once as the lengths lay triangles on
 * one another. The second finds rooms whose corners nobody measured, the first those without diagonals.
 */
import { outlineOf } from '../model/outline.ts'
import type { Measure, Point } from './survey.ts'

/** At least one; each with corner 0 at 0, 0 and corner 1 to its right. */
export function startsOf(count: number, measures: readonly Measure[]): readonly (readonly Point[])[] {
  const walked = level(outlineOf(sidesOf(count, measures), 0).corners)
  const laid = level(triangles(count, measures, walked))
  return [walked, laid]
}

/** Sides in order with the angles at their right ends; several of one are averaged, what is missing is guessed. */
function sidesOf(count: number, measures: readonly Measure[]) {
  const mean = (of: (measure: Measure) => boolean): number | null => {
    const counted = measures.filter(measure => of(measure) && measure.standing !== 'taken')
    const some = counted.length > 0 ? counted : measures.filter(of)
    return some.length === 0 ? null : some.reduce((sum, { value }) => sum + value, 0) / some.length
  }
  const lengths = Array.from({ length: count }, (_, at) => {
    const next = (at + 1) % count
    return mean(one => one.kind !== 'angle' && joins(one, at, next))
  })
  const known = lengths.filter(one => one !== null)
  const usual = known.length === 0 ? 1000 : known.reduce((sum, one) => sum + one, 0) / known.length
  return lengths.map((length, at) => {
    const angle = mean(one => one.kind === 'angle' && one.from === (at + 1) % count)
    return { length: length ?? usual, angle }
  })
}

const joins = ({ from, to }: Measure, a: number, b: number) => (from === a && to === b) || (from === b && to === a)

/** Each corner where two circles about placed ones meet. */
function triangles(count: number, measures: readonly Measure[], walked: readonly Point[]): readonly Point[] {
  const lengths = new Map<string, number>()
  for (const { kind, from, to, value, standing } of measures) {
    if (kind === 'angle' || from === to || standing === 'taken') continue
    lengths.set(`${from} ${to}`, value)
    lengths.set(`${to} ${from}`, value)
  }
  const placed = new Map<number, Point>([[0, [0, 0]]])
  placed.set(1, [lengths.get('0 1') ?? walked[1]?.[0] ?? 1000, 0])
  for (let round = 0; round < count; round += 1) {
    let best: { readonly corner: number; readonly at: Point; readonly sharp: number } | null = null
    for (let corner = 2; corner < count; corner += 1) {
      if (placed.has(corner)) continue
      const known = [...placed].flatMap(([other, at]) => {
        const length = lengths.get(`${corner} ${other}`)
        return length === undefined ? [] : [{ other, at, length }]
      })
      for (const [index, a] of known.entries()) {
        for (const b of known.slice(index + 1)) {
          const met = meeting(a, b, known.length > 2 ? known : [], walked[corner] ?? [0, 0])
          if (best === null || met.sharp > best.sharp) best = { corner, ...met }
        }
      }
    }
    if (best === null) break
    placed.set(best.corner, best.at)
  }
  return walked.map((at, corner) => placed.get(corner) ?? at)
}

interface Circle {
  readonly at: Point
  readonly length: number
}

/**
 * Where two circles meet, or come nearest: of the two places the one that all known circles like, else the one nearer to
 * `near`. `sharp` is 1 where they cross square, 0 where they only touch or miss.
 */
function meeting(
  a: Circle,
  b: Circle,
  known: readonly Circle[],
  near: Point,
): { readonly at: Point; readonly sharp: number } {
  const apart = Math.max(Math.hypot(b.at[0] - a.at[0], b.at[1] - a.at[1]), 1e-6)
  const along = (a.length ** 2 - b.length ** 2 + apart ** 2) / (2 * apart)
  const square = a.length ** 2 - along ** 2
  const off = square > 0 ? Math.sqrt(square) : 0
  const [ux, uy] = [(b.at[0] - a.at[0]) / apart, (b.at[1] - a.at[1]) / apart]
  const foot: Point = [a.at[0] + ux * along, a.at[1] + uy * along]
  const [left, right]: [Point, Point] = [
    [foot[0] + uy * off, foot[1] - ux * off],
    [foot[0] - uy * off, foot[1] + ux * off],
  ]
  const far = ([x, y]: Point) =>
    known.length === 0
      ? Math.hypot(x - near[0], y - near[1])
      : known.reduce((sum, { at, length }) => sum + (Math.hypot(x - at[0], y - at[1]) - length) ** 2, 0)
  const sharp = (apart * off) / Math.max(a.length * b.length, 1e-6)
  return { at: far(left) < far(right) ? left : right, sharp }
}

/** Turned so that the first wall runs to the right from 0, 0. */
export function level(corners: readonly Point[]): readonly Point[] {
  const [ox, oy] = corners[0] ?? [0, 0]
  const [nx, ny] = corners[1] ?? [1, 0]
  const run = Math.hypot(nx - ox, ny - oy)
  const [cos, sin] = run > 1e-9 ? [(nx - ox) / run, (ny - oy) / run] : [1, 0]
  return corners.map(([x, y]): Point => [cos * (x - ox) + sin * (y - oy), cos * (y - oy) - sin * (x - ox)])
}
