/** A wall moved or turned with its neighbours. Against plane geometry done anew here: lines cut with one another. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/drawing/room-plan.ts'
import { outlineOf } from '../../../src/model/outline.ts'
import { atOdds, bendable, bentWalls } from '../../../src/plan/bend.ts'
import { shiftWall } from '../../../src/plan/shift-wall.ts'
import { pivots, turnWall } from '../../../src/plan/turn-wall.ts'

const named = (points: readonly Point[]) =>
  points.map((from, at) => {
    const to = points[(at + 1) % points.length] ?? from
    return { name: `side ${at + 1}`, from, to, length: Math.hypot(to[0] - from[0], to[1] - from[1]), angle: null }
  })

/** Where the lines p–q and r–s cross, by Cramer's rule. */
function cut(p: Point, q: Point, r: Point, s: Point): Point {
  const [a, b, c, d] = [q[0] - p[0], r[0] - s[0], q[1] - p[1], r[1] - s[1]]
  const share = ((r[0] - p[0]) * d - (r[1] - p[1]) * b) / (a * d - b * c)
  return [p[0] + a * share, p[1] + c * share]
}

/** A four-sided room, every corner pushed about by up to a metre. */
const rooms = fc
  .array(fc.tuple(fc.double({ min: -900, max: 900, noNaN: true }), fc.double({ min: -900, max: 900, noNaN: true })), {
    minLength: 4,
    maxLength: 4,
  })
  .map(by =>
    (
      [
        [0, 0],
        [8000, 0],
        [8000, 6000],
        [0, 6000],
      ] as const
    ).map(([x, y], at): Point => [x + (by[at]?.[0] ?? 0), y + (by[at]?.[1] ?? 0)]),
  )

const turned = ([x, y]: Point, [px, py]: Point, degrees: number): Point => {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
  return [px + (x - px) * cos - (y - py) * sin, py + (x - px) * sin + (y - py) * cos]
}

describe('a wall that bends its room', () => {
  test('turned about either end or its middle, its corners are where its line cuts its neighbours', () => {
    fc.assert(
      fc.property(
        rooms,
        fc.nat(3),
        fc.constantFrom(...pivots),
        fc.double({ min: -8, max: 8, noNaN: true }),
        (points, index, about, by) => {
          const walls = named(points)
          const bent = turnWall(bendable(walls), index, about, by)
          if (!bent.ok) throw new Error(bent.problem)
          const at = (place: number): Point => points[(place + 4) % 4] ?? [0, 0]
          const [l, r] = [at(index), at(index + 1)]
          const pivot: Point = { left: l, middle: [(l[0] + r[0]) / 2, (l[1] + r[1]) / 2] as Point, right: r }[about]
          const [p, q] = [turned(l, pivot, by), turned(r, pivot, by)]
          const wanted = [...points]
          wanted[index] = cut(p, q, at(index - 1), l)
          wanted[(index + 1) % 4] = cut(p, q, at(index + 2), r)
          const drawn = bentWalls(walls, index, bent)
          for (const [place, [x, y]] of wanted.entries()) {
            expect(drawn[place]?.from[0]).toBeCloseTo(x, 1)
            expect(drawn[place]?.from[1]).toBeCloseTo(y, 1)
          }
          // The figures make the same room: it closes.
          const lengths = bent.lengths.map((length, place) => ({ length, angle: bent.angles[place] ?? null }))
          expect(outlineOf(lengths, 1).gap).toBeLessThan(0.05)
        },
      ),
      { numRuns: 200 },
    )
  })

  test('moved parallel, it lies that far out and the room still closes; back again all is as before', () => {
    fc.assert(
      fc.property(rooms, fc.nat(3), fc.double({ min: -900, max: 900, noNaN: true }), (points, index, by) => {
        const walls = named(points)
        const there = shiftWall(bendable(walls), index, by)
        if (!there.ok) throw new Error(there.problem)
        const drawn = bentWalls(walls, index, there)
        const [was, now] = [walls[index], drawn[index]]
        if (was === undefined || now === undefined) throw new Error('it is one of the walls')
        const out: Point = [(was.to[1] - was.from[1]) / was.length, -(was.to[0] - was.from[0]) / was.length]
        for (const end of [now.from, now.to]) {
          expect((end[0] - was.from[0]) * out[0] + (end[1] - was.from[1]) * out[1]).toBeCloseTo(by, 1)
        }
        const back = shiftWall(bendable(drawn), index, -by)
        if (!back.ok) throw new Error(back.problem)
        for (const [at, wall] of walls.entries()) expect(back.lengths[at]).toBeCloseTo(wall.length, 1)
      }),
      { numRuns: 200 },
    )
  })

  test('says in words what cannot be: a neighbour straight on, one that would be gone, a corner closed up', () => {
    const square = bendable(
      named([
        [0, 0],
        [4000, 0],
        [4000, 3000],
        [0, 3000],
      ]),
    )
    expect(shiftWall(square, 0, -3000)).toEqual({
      ok: false,
      problem: 'side 2 would have no length left. Move it less far, or remove that wall.',
    })
    const inLine = bendable(
      named([
        [0, 0],
        [2000, 0],
        [4000, 0],
        [4000, 3000],
        [0, 3000],
      ]),
    )
    expect(shiftWall(inLine, 0, 100)).toMatchObject({ ok: false, problem: expect.stringContaining('side 2 runs on') })
    expect(turnWall(inLine, 0, 'left', 2)).toMatchObject({
      ok: false,
      problem: expect.stringContaining('side 2 runs on'),
    })
    expect(turnWall(square, 0, 'left', 89.5)).toMatchObject({
      ok: false,
      problem: expect.stringContaining('corner with side 4'),
    })
    expect(turnWall(square.slice(0, 2), 0, 'left', 5)).toMatchObject({ ok: false })
  })

  test('finds what was measured otherwise: sides that change, diagonals of corners that go, angles that turn', () => {
    const walls = bendable(
      named([
        [0, 0],
        [4000, 0],
        [4000, 3000],
        [0, 3000],
      ]),
    )
    const measured = { how: 'measured', used: true } as const
    const measures = [
      { key: 'own', kind: 'side', from: 0, to: 1, ...measured },
      { key: 'next', kind: 'side', from: 1, to: 2, ...measured },
      { key: 'over', kind: 'side', from: 2, to: 3, ...measured },
      { key: 'drawn', kind: 'side', from: 3, to: 0, how: 'drawn', used: true },
      { key: 'left', kind: 'diagonal', from: 0, to: 2, ...measured },
      { key: 'right', kind: 'diagonal', from: 1, to: 3, ...measured },
      { key: 'aside', kind: 'diagonal', from: 1, to: 3, how: 'measured', used: false },
      { key: 'corner', kind: 'angle', from: 1, to: 1, ...measured },
      { key: 'far', kind: 'angle', from: 2, to: 2, ...measured },
    ] as const
    const keys = (bent: ReturnType<typeof shiftWall>) =>
      bent.ok ? atOdds(measures, walls, bent).map(({ key }) => key) : []
    expect(keys(shiftWall(walls, 0, 100))).toEqual(['next', 'left', 'right'])
    expect(keys(turnWall(walls, 0, 'left', 2))).toEqual(['own', 'next', 'right', 'corner'])
  })
})
