/** The order in which works go up and come down, and what is left in the wall. */
import { describe, expect, test } from 'vitest'
import { comingDown, type HangingOrder, hangingOrder, type OrderedWork } from '../../../src/crew/hanging-order.ts'
import { patchOf, unionArea } from '../../../src/crew/patch.ts'
import { randomFrom } from '../database/random-edits.ts'

const rules = { liftOn: 25 }

function work(
  id: string,
  more: Partial<OrderedWork> & { readonly at?: readonly [number, number, number, number] } = {},
) {
  const { at, ...rest } = more
  const [x, y, width, height] = at ?? [0, 1200, 400, 500]
  return {
    id,
    face: 'f',
    faceOrder: 0,
    rect: { x, y, width, height },
    x: x + width / 2,
    class: 'by hand',
    tools: [],
    ...rest,
  } satisfies OrderedWork
}

function area([x, y, width, height]: readonly [number, number, number, number]) {
  return { x, y, width, height }
}

describe('hanging order', () => {
  test('heavy and large first, then farthest from the entrance, then left to right', () => {
    const works = [
      work('near-left', { at: [100, 1200, 400, 500] }),
      work('near-right', { at: [900, 1200, 400, 500] }),
      work('far', { faceOrder: 2, face: 'g' }),
      work('heavy', { face: 'h', faceOrder: 1, class: 'stacker lift' }),
      work('hoisted', { at: [2000, 900, 1800, 1800], class: 'hoist' }),
    ]
    expect(hangingOrder(works, rules).order).toEqual(['hoisted', 'heavy', 'far', 'near-left', 'near-right'])
  })

  test('an upper work with a lock below hangs before the lower one', () => {
    // 400 × 400 at 1 600; its lock in the middle, the tool 300 deep: 1 300 to 1 600, and the lower one ends at 1 500.
    const upper = work('upper', { at: [500, 1600, 400, 400], tools: [area([650, 1300, 100, 300])] })
    const lower = work('lower', { at: [0, 900, 700, 600] })
    expect(hangingOrder([lower, upper], rules)).toEqual({
      order: ['upper', 'lower'],
      before: [{ first: 'upper', last: 'lower', why: 'lock-tool', gap: 100 }],
      against: [],
    })
    // With the tool's room free nothing bars it; nobody reaches over the lower one all the same.
    const far = work('upper', { at: [500, 1800, 400, 400], tools: [area([650, 1500, 100, 300])] })
    expect(hangingOrder([lower, far], rules).before).toEqual([
      { first: 'upper', last: 'lower', why: 'reach-over', gap: 300 },
    ])
    const beside = work('upper', { at: [700, 1600, 400, 400], tools: [area([850, 1300, 100, 300])] })
    expect(hangingOrder([lower, beside], rules).before).toEqual([])
  })

  test('a neighbour at the side where the tool comes in hangs later', () => {
    const locked = work('locked', { at: [1000, 1200, 400, 500], tools: [area([900, 1210, 100, 100])] })
    const left = work('left', { at: [500, 1200, 450, 500] })
    expect(hangingOrder([left, locked], rules)).toEqual({
      order: ['locked', 'left'],
      before: [{ first: 'locked', last: 'left', why: 'lock-tool', gap: 50 }],
      against: [],
    })
  })

  test('two that bar each other’s tool are told', () => {
    const a = work('a', { at: [0, 1200, 400, 500], tools: [area([400, 1210, 100, 100])] })
    const b = work('b', { at: [450, 1200, 400, 500], tools: [area([350, 1210, 100, 100])] })
    expect(hangingOrder([a, b], rules).against).toEqual([{ first: 'b', last: 'a', why: 'lock-tool', gap: 50 }])
  })

  test('a stack of three hangs from above, one after the other', () => {
    const stack = ['low', 'middle', 'high'].map((id, at) => work(id, { at: [0, 600 + at * 600, 400, 500] }))
    expect(hangingOrder(stack, rules)).toEqual({
      order: ['high', 'middle', 'low'],
      before: [
        { first: 'middle', last: 'low', why: 'reach-over', gap: 100 },
        { first: 'high', last: 'middle', why: 'reach-over', gap: 100 },
      ],
      against: [],
    })
  })

  test('what needs a lift goes up while the floor is clear, whatever hangs above it', () => {
    const heavy = work('heavy', { at: [0, 600, 900, 900], class: 'stacker lift' })
    expect(hangingOrder([work('small', { at: [100, 1600, 300, 300] }), heavy], rules)).toMatchObject({
      order: ['heavy', 'small'],
      before: [],
    })
  })

  test('a narrow gap above is hung from below upwards', () => {
    const upper = work('upper', { at: [0, 1520, 400, 400] })
    const lower = work('lower', { at: [50, 900, 700, 600] })
    expect(hangingOrder([upper, lower], rules).order).toEqual(['lower', 'upper'])
  })

  test('both at once are told', () => {
    const upper = work('upper', { at: [0, 1520, 400, 400], tools: [area([150, 1220, 100, 300])] })
    const lower = work('lower', { at: [50, 900, 700, 600] })
    const made = hangingOrder([lower, upper], rules)
    expect(made.order).toEqual(['upper', 'lower'])
    expect(made.against).toEqual([{ first: 'lower', last: 'upper', why: 'lift-on', gap: 20 }])
  })

  test('300 random walls: everything once, nothing before what it waits for, and the other way round coming down', () => {
    const random = randomFrom(3)
    const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1))
    const check = (made: HangingOrder, count: number) => {
      expect(new Set(made.order).size).toBe(count)
      const down = comingDown(made.order)
      for (const { first, last } of made.before) {
        expect(made.order.indexOf(first)).toBeLessThan(made.order.indexOf(last))
        expect(down.indexOf(last)).toBeLessThan(down.indexOf(first))
      }
    }
    for (let round = 0; round < 300; round++) {
      const works = Array.from({ length: whole(1, 20) }, (_, index) =>
        work(`w${index}`, {
          face: `f${index % 3}`,
          faceOrder: index % 3,
          at: [whole(0, 3000), whole(3, 12) * 200, whole(2, 8) * 100, whole(2, 4) * 95],
          class: random() < 0.2 ? 'stacker lift' : 'by hand',
          tools: random() < 0.5 ? [] : [area([whole(0, 3000), whole(3, 12) * 200, 100, 300])],
        }),
      )
      check(hangingOrder(works, rules), works.length)
    }
  })
})

describe('patches', () => {
  const wall = { length: 4000, height: 3000 }

  test('two holes of 6 by 35 mm: 2 × π/4 × 6² × 35 × 2 = 3.96 ml, two squares of 150 mm', () => {
    const holes = [1000, 2000].map(x => ({ x, y: 1700, diameter: null, depth: null }))
    const made = patchOf(holes, 150, wall)
    expect(made.count).toBe(2)
    expect(made.fillerMl).toBeCloseTo(3.958, 3)
    expect(made.paintM2).toBeCloseTo(0.045, 9)
  })

  test('patches that overlap are painted once, and nothing beyond the wall', () => {
    const hole = (x: number, y: number) => ({ x, y, diameter: 5, depth: 30 })
    expect(patchOf([hole(1000, 1700), hole(1075, 1700)], 150, wall).paintM2).toBeCloseTo(0.225 * 0.15, 9)
    expect(patchOf([hole(0, 0)], 150, wall).paintM2).toBeCloseTo(0.075 * 0.075, 9)
    expect(patchOf([], 150, wall)).toEqual({ count: 0, fillerMl: 0, paintM2: 0 })
  })

  test('the joined area against counting grid cells', () => {
    const random = randomFrom(5)
    for (let round = 0; round < 50; round++) {
      const areas = Array.from({ length: 6 }, () => {
        const from = Math.floor(random() * 30)
        const bottom = Math.floor(random() * 30)
        return { from, to: from + Math.floor(random() * 12), bottom, top: bottom + Math.floor(random() * 12) }
      })
      let cells = 0
      for (let x = 0; x < 45; x++) {
        for (let y = 0; y < 45; y++) {
          if (areas.some(each => each.from <= x && x < each.to && each.bottom <= y && y < each.top)) cells++
        }
      }
      expect(unionArea(areas)).toBe(cells)
    }
  })
})
