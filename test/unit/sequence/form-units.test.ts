/** Stacks and grids formed from a checklist, against every cut there is; their sizes by a second route. */
import { describe, expect, test } from 'vitest'
import { chanceFrom, pickBelow } from '../../../src/sequence/chance.ts'
import { type Form, type Framed, formUnits, unitsOf, unlikeness } from '../../../src/sequence/form-units.ts'
import { at } from '../../../src/sequence/problem.ts'

const usual: Form = { hang: 'stacks', rows: 3, columns: 3, align: 'axis', gapDown: 60, gapAcross: 50, alike: 60 }

function randomWorks(seed: number): Framed[] {
  const chance = chanceFrom(seed)
  const series = 300 + 10 * pickBelow(chance, 20)
  return Array.from({ length: 1 + pickBelow(chance, 9) }, () => ({
    width: series + 10 * pickBelow(chance, 9),
    height: series + 10 * pickBelow(chance, chance() < 0.5 ? 4 : 40),
  }))
}

/** All lists of counts that add up to n. */
function cutsOf(n: number): number[][] {
  if (n === 0) return [[]]
  return Array.from({ length: n }, (_, index) => index + 1).flatMap(first =>
    cutsOf(n - first).map(rest => [first, ...rest]),
  )
}

/** Least length, and of that the least unlikeness, by trying every cut. Sizes by the second route. */
function bestOfAll(works: readonly Framed[], form: Form, gap: number, most: number) {
  let best = { length: Number.POSITIVE_INFINITY, unlike: 0 }
  for (const cut of cutsOf(works.length)) {
    let [from, length, unlike] = [0, 0, 0]
    for (const count of cut) {
      const own = works.slice(from, from + count)
      from += count
      length += outerWidth(own, form, most) + gap
      unlike += spread(own.map(work => work.width)) + spread(own.map(work => work.height))
    }
    if (length < best.length - 1e-6 || (length < best.length + 1e-6 && unlike < best.unlike)) best = { length, unlike }
  }
  return best
}

const spread = (of: readonly number[]) => Math.max(...of) - Math.min(...of)

function outerWidth(own: readonly Framed[], form: Form, most: number): number {
  if (own.length === 1) return at(own, 0).width
  const [wide, high] = [own.map(work => work.width), own.map(work => work.height)]
  if (spread(wide) > form.alike) return Number.POSITIVE_INFINITY
  if (form.hang === 'stacks') {
    const tall = high.reduce((sum, height) => sum + height, 0) + form.gapDown * (own.length - 1)
    return own.length <= form.rows && tall <= most ? Math.max(...wide) : Number.POSITIVE_INFINITY
  }
  if (spread(high) > form.alike) return Number.POSITIVE_INFINITY
  let least = Number.POSITIVE_INFINITY
  for (let rows = 2; rows <= form.rows; rows += 1) {
    const columns = own.length / rows
    const tall = rows * Math.max(...high) + (rows - 1) * form.gapDown
    if (!Number.isInteger(columns) || columns > form.columns || tall > most) continue
    least = Math.min(least, columns * Math.max(...wide) + (columns - 1) * form.gapAcross)
  }
  return least
}

describe('works formed into units', () => {
  test.each(['stacks', 'grid'] as const)('%s: 400 sections as every cut says', hang => {
    let several = 0
    for (let seed = 1; seed <= 400; seed += 1) {
      const works = randomWorks(seed)
      const form = { ...usual, hang }
      const units = formUnits(works, form, 120, (_, height) => height <= 1500)
      expect(units.flatMap(unit => unit.works)).toEqual(works.map((_, index) => index))
      const length = units.reduce((sum, unit) => sum + unit.width + 120, 0)
      const unlike = units.reduce((sum, unit) => sum + unlikeness(works, unit), 0)
      const best = bestOfAll(works, form, 120, 1500)
      expect(length).toBeCloseTo(best.length, 6)
      expect(unlike).toBeCloseTo(best.unlike, 6)
      several += units.filter(unit => unit.works.length > 1).length
    }
    expect(several).toBeGreaterThan(200)
  })

  test('no two works of a unit touch, and together they fill its outer size', () => {
    for (let seed = 1; seed <= 300; seed += 1) {
      const works = randomWorks(seed)
      for (const hang of ['stacks', 'grid'] as const)
        for (const align of ['axis', 'left', 'right'] as const)
          for (const unit of formUnits(works, { ...usual, hang, align }, 120, () => true)) {
            const rects = unit.works.map((work, index) => {
              const { width, height } = at(works, work)
              const { dx, dy } = at(unit.places, index)
              return { left: dx - width / 2, right: dx + width / 2, bottom: dy - height / 2, top: dy + height / 2 }
            })
            for (const [index, one] of rects.entries()) {
              expect(Math.abs(one.left) - unit.width / 2).toBeLessThan(1e-6)
              expect(Math.max(one.right, one.top - unit.height / 2 + unit.width / 2)).toBeLessThan(
                unit.width / 2 + 1e-6,
              )
              expect(one.bottom).toBeGreaterThan(-unit.height / 2 - 1e-6)
              for (const other of rects.slice(index + 1)) {
                const apart = Math.max(
                  one.left - other.right,
                  other.left - one.right,
                  one.bottom - other.top,
                  other.bottom - one.top,
                )
                expect(apart).toBeGreaterThanOrEqual(50 - 1e-6)
              }
            }
          }
    }
  })

  test('a stack of three by hand, on a left edge', () => {
    const works = [
      { width: 400, height: 500 },
      { width: 440, height: 300 },
      { width: 420, height: 400 },
    ]
    const [unit] = unitsOf(works, 0, 3, { ...usual, align: 'left' })
    // 500 + 60 + 300 + 60 + 400; the top is 660 above the middle.
    expect(unit).toMatchObject({ kind: 'stack', width: 440, height: 1320 })
    expect(unit?.places).toEqual([
      { dx: -20, dy: 410 },
      { dx: 0, dy: -50 },
      { dx: -10, dy: -460 },
    ])
  })

  test('a grid is whole, read row by row', () => {
    const prints = Array.from({ length: 7 }, () => ({ width: 300, height: 400 }))
    const units = formUnits(prints, { ...usual, hang: 'grid', rows: 2 }, 120, () => true)
    expect(units.map(unit => unit.works.length).sort()).toEqual([1, 6])
    const grid = units.find(unit => unit.kind === 'grid')
    expect(grid).toMatchObject({ width: 3 * 300 + 2 * 50, height: 2 * 400 + 60 })
    expect(grid?.places.map(({ dx, dy }) => [dx, dy])).toEqual([
      [-350, 230],
      [0, 230],
      [350, 230],
      [-350, -230],
      [0, -230],
      [350, -230],
    ])
  })
})
