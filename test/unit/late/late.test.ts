/**
 * Late changes: what is drilled stays a fact, what hangs is not moved unasked, and the price of each way out is what a
 * person would count on the wall. Walls are invented; wall and works of the first are those of the worked wall of six.
 */
import { describe, expect, test } from 'vitest'
import { matchHoles } from '../../../src/late/holes.ts'
import { lateOffers } from '../../../src/late/late.ts'
import type { Change, DrilledHole, LateQuestion, LateWork, NeededHole, Prices } from '../../../src/late/late-shape.ts'

const prices: Prices = {
  hungMoved: 1000,
  newHole: 30,
  deadHole: 20,
  moved: 10,
  label: 5,
  gapSpreadPerMm: 0.2,
  endsPerMm: 0.1,
  offLinePerMm: 0.5,
}

const rings = (width: number, height: number, drop: number, inset: number): NeededHole[] => [
  { slot: 'left', dx: inset - width / 2, dy: height / 2 - drop },
  { slot: 'right', dx: width / 2 - inset, dy: height / 2 - drop },
]

interface Given extends Partial<LateWork> {
  readonly id: string
  readonly width: number
  readonly left: number
}

function work({ id, width, left, ...rest }: Given): LateWork {
  const height = rest.height ?? 600
  return {
    name: id.toUpperCase(),
    height,
    x: left + width / 2,
    stands: { rule: 'centre', y: 1480 },
    standing: 'free',
    held: false,
    holes: rings(width, height, 100, 50),
    labelled: false,
    id,
    width,
    ...rest,
  }
}

/** Holes as they would be drilled for a work where it is. */
function drilledFor(...works: readonly LateWork[]): DrilledHole[] {
  return works.flatMap(each =>
    each.holes.map(hole => ({ id: `${each.id}-${hole.slot}`, x: each.x + hole.dx, y: each.stands.y + hole.dy })),
  )
}

// Six works of the worked wall: margins 900, gaps 632.
const six = (
  [
    ['a', 480, 620, 900],
    ['b', 710, 910, 2012],
    ['c', 540, 540, 3354],
    ['d', 960, 1220, 4526],
    ['e', 480, 620, 6118],
    ['f', 1010, 760, 7230],
  ] as const
).map(([id, width, height, left]) => work({ id, width, height, left }))

function ask(
  works: readonly LateWork[],
  change: Change,
  drilled: readonly DrilledHole[] = [],
  more = {},
): LateQuestion {
  return {
    wall: { length: 9140, height: 3450, floor: [], ceiling: [], skirting: null, openings: [], keepClears: [] },
    works,
    drilled,
    change,
    leastGap: 75,
    leastMargin: 150,
    prices,
    sameHole: 1,
    say: mm => `${Math.round(mm)} mm`,
    stops: () => '',
    ...more,
  }
}

const as = (standing: LateWork['standing'], ids: string, works = six) =>
  works.map(each => (ids.includes(each.id) ? { ...each, standing } : each))

describe('a frame 52 mm wider', () => {
  const wider = (id: string, works: readonly LateWork[] = six): Change => {
    const old = works.find(each => each.id === id)
    const width = (old?.width ?? 0) + 52
    const height = old?.height ?? 0
    return { kind: 'different', id, width, height, holes: rings(width, height, 100, 50) }
  }

  test('nothing drilled: it may stay about its centre, and the gaps beside it lose 26 each', () => {
    const { offers, problem } = lateOffers(ask(six, wider('c')))
    expect(problem).toBe('')
    const centre = offers.find(offer => offer.key === 'centre')
    expect(centre?.moves).toEqual([])
    expect(centre?.gaps.map(gap => Math.round(gap))).toEqual([900, 632, 606, 606, 632, 632, 900])
    expect(centre?.cost).toMatchObject({ moved: 0, newHoles: 0, deadHoles: 0, hungMoved: 0 })
    expect(centre?.cost.gapSpread).toBeCloseTo(26, 6)
  })

  test('half the wall drilled: the drilled work with the new frame leaves two dead holes and needs two new ones', () => {
    const works = as('drilled', 'abc')
    const { offers } = lateOffers(ask(works, wider('c'), drilledFor(...works.slice(0, 3))))
    const centre = offers.find(offer => offer.key === 'centre')
    expect(centre?.cost).toMatchObject({ newHoles: 2, deadHoles: 2, moved: 0 })
    expect([...(centre?.deadHoles ?? [])].sort()).toEqual(['c-left', 'c-right'])
    // Hung so that one of its holes serves again, it costs one hole each way.
    const kept = offers.find(offer => offer.cost.newHoles === 1)
    expect(kept?.cost).toMatchObject({ newHoles: 1, deadHoles: 1, moved: 1 })
    expect(kept?.price).toBeLessThan(centre?.price ?? 0)
  })

  test('half the wall drilled, two of it hung: a handful that differ, said in words and figures', () => {
    const works = as('hung', 'b', as('drilled', 'abd'))
    const { offers } = lateOffers(
      ask(works, wider('d', works), drilledFor(...works.filter(({ id }) => 'abd'.includes(id)))),
    )
    const calm = offers.filter(({ cost }) => cost.hungMoved === 0)
    expect(calm.length).toBeGreaterThan(2)
    expect(calm.length).toBeLessThanOrEqual(5)
    expect(offers.length - calm.length).toBeLessThanOrEqual(2)
    // With an edge kept, the ring at that edge finds its hole again: a twin from each side.
    expect(offers[0]?.says).toBe('Keep the left edge of D where it is; its neighbours stay.')
    expect(offers[0]?.cost).toMatchObject({ newHoles: 1, deadHoles: 1 })
    expect(offers[1]?.price).toBeCloseTo(offers[0]?.price ?? 0, 6)
    expect(calm.map(({ says }) => says)).toContain('Keep D about the same centre; its neighbours stay.')
    for (const [at, one] of calm.entries()) {
      for (const other of calm.slice(at + 1).filter(({ price }) => Math.abs(price - one.price) > 0.5)) {
        const counts = (['moved', 'newHoles', 'deadHoles'] as const).some(key => one.cost[key] !== other.cost[key])
        const seen =
          Math.abs(one.cost.gapSpread - other.cost.gapSpread) > 15 || Math.abs(one.cost.ends - other.cost.ends) > 30
        expect(counts || seen, `${one.says} / ${other.says}`).toBe(true)
      }
    }
  })

  test('rings as far apart as before: both holes serve again and nothing is drilled', () => {
    const works = as('drilled', 'abcdef')
    const old = six[2]
    const change: Change = { kind: 'different', id: 'c', width: 592, height: 540, holes: old?.holes ?? [] }
    const [best] = lateOffers(ask(works, change, drilledFor(...works))).offers
    expect(best?.key).toBe('centre')
    expect(best?.cost).toMatchObject({ newHoles: 0, deadHoles: 0, moved: 0, hungMoved: 0 })
  })

  test('a hung work moves in no offer before the last resort', () => {
    const works = as('hung', 'bd', as('drilled', 'bd'))
    const { offers } = lateOffers(ask(works, wider('c'), drilledFor(...works.filter(each => 'bd'.includes(each.id)))))
    expect(offers.length).toBeGreaterThan(1)
    const firstHung = offers.findIndex(offer => offer.cost.hungMoved > 0)
    expect(offers.slice(0, firstHung === -1 ? undefined : firstHung).every(offer => offer.cost.hungMoved === 0)).toBe(
      true,
    )
    expect(offers[0]?.cost.hungMoved).toBe(0)
    for (const offer of offers.filter(each => each.cost.hungMoved === 0)) {
      expect(offer.moves.map(move => move.id)).not.toContain('b')
      expect(offer.moves.map(move => move.id)).not.toContain('d')
    }
  })

  test('so tight that it fits only where the neighbours give way: the centre is not offered', () => {
    const tight = [
      work({ id: 'a', width: 500, left: 200 }),
      work({ id: 'b', width: 500, left: 800 }),
      work({ id: 'c', width: 500, left: 1400 }),
    ]
    const wall = { length: 2400, height: 3000, floor: [], ceiling: [], skirting: null, openings: [], keepClears: [] }
    const { offers } = lateOffers(ask(tight, wider('b', tight), [], { wall, leastGap: 90 }))
    expect(offers.map(offer => offer.key)).not.toContain('centre')
    expect(offers[0]?.gaps.slice(1, -1).every(gap => gap >= 90 - 1e-6)).toBe(true)
  })

  test('no room at all says so', () => {
    const tight = [work({ id: 'a', width: 900, left: 150 }), work({ id: 'b', width: 900, left: 1150 })]
    const wall = { length: 2200, height: 3000, floor: [], ceiling: [], skirting: null, openings: [], keepClears: [] }
    const answer = lateOffers(ask(tight, wider('b', tight), [], { wall, leastGap: 100 }))
    expect(answer.offers).toEqual([])
    expect(answer.problem).toContain('52 mm too long for its place. Take a work off')
  })
})

describe('two works swapped', () => {
  test('of one size with equal backs: no new hole, none dead', () => {
    const works = as('drilled', 'abcdef')
    const { offers } = lateOffers(ask(works, { kind: 'swap', one: 'a', other: 'e' }, drilledFor(...works)))
    expect(offers[0]?.cost).toMatchObject({ newHoles: 0, deadHoles: 0, moved: 2, gapSpread: expect.closeTo(0, 6) })
  })

  test('and back: every mark is where it was', () => {
    const [offer] = lateOffers(ask(six, { kind: 'swap', one: 'b', other: 'e' })).offers
    const swapped = six.map(each => {
      const move = offer?.moves.find(({ id }) => id === each.id)
      return move === undefined ? each : { ...each, x: move.x }
    })
    const back = lateOffers(ask(swapped, { kind: 'swap', one: 'b', other: 'e' })).offers
    const same = back.some(each =>
      six.every(work => {
        const at = each.moves.find(({ id }) => id === work.id)?.x ?? swapped.find(({ id }) => id === work.id)?.x ?? 0
        return Math.abs(at - work.x) < 0.01
      }),
    )
    expect(same).toBe(true)
  })
})

describe('another work in the place of one', () => {
  test('of the same size and back takes its holes; the one that leaves is off the wall', () => {
    const works = as('drilled', 'abc')
    const by = { ...work({ id: 'new', width: 710, height: 910, left: 0 }), x: 99_999 }
    const { offers } = lateOffers(ask(works, { kind: 'replace', id: 'b', by }, drilledFor(...works.slice(0, 3))))
    expect(offers[0]?.cost).toMatchObject({ newHoles: 0, deadHoles: 0, moved: 0 })
    expect(offers[0]?.off).toEqual(['b'])
    expect(offers[0]?.places).toEqual([{ id: 'new', x: 2367, y: 1480 }])
  })
})

describe('one work dropped', () => {
  test('leaving its gap moves nothing and leaves its holes dead', () => {
    const works = as('drilled', 'c')
    const { offers } = lateOffers(
      ask(works, { kind: 'drop', id: 'c' }, drilledFor(...works.filter(each => each.id === 'c'))),
    )
    const leave = offers.find(offer => offer.key === 'leave-gap')
    expect(leave?.cost).toMatchObject({ moved: 0, newHoles: 0, deadHoles: 2 })
    expect(leave?.off).toEqual(['c'])
  })

  test('closing up the whole row gives the gaps that the sum gives', () => {
    const { offers } = lateOffers(ask(six, { kind: 'drop', id: 'c' }))
    // (9140 − 2 · 900 − (480 + 710 + 960 + 480 + 1010)) / 4
    const even = offers.find(offer => offer.cost.gapSpread < 0.01 && offer.cost.ends < 0.01)
    expect(even?.gaps.slice(1, -1).map(gap => gap.toFixed(3))).toEqual(['925.000', '925.000', '925.000', '925.000'])
  })
})

describe('the whole wall 50 mm lower', () => {
  test('offers what is not drilled, what is not hung, and all, with their holes', () => {
    const works = as('hung', 'a', as('drilled', 'abc'))
    const { offers } = lateOffers(ask(works, { kind: 'lower', by: 50 }, drilledFor(...works.slice(0, 3))))
    const by = new Map(offers.map(offer => [offer.key, offer]))
    expect(by.get('lower-free')?.cost).toMatchObject({ moved: 3, newHoles: 0, deadHoles: 0, hungMoved: 0 })
    expect(by.get('lower-not-hung')?.cost).toMatchObject({ moved: 5, newHoles: 4, deadHoles: 4, hungMoved: 0 })
    expect(by.get('lower-all')?.cost).toMatchObject({ moved: 5, newHoles: 6, deadHoles: 6, hungMoved: 1 })
    // Off the new line is who stays behind.
    expect([...by.values()].map(({ cost }) => Math.round(cost.offLine))).toEqual([150, 50, 0])
    expect(by.get('lower-free')?.says).toBe(
      'Lower only what is not drilled yet by 50 mm; A, B and C stay, so heights differ.',
    )
    expect(offers.at(-1)?.key).toBe('lower-all')
  })
})

describe('every offer', () => {
  // A small seeded generator: the same walls every time.
  function random(seed: number): () => number {
    let state = seed
    return () => {
      state = (state * 1664525 + 1013904223) % 4294967296
      return state / 4294967296
    }
  }

  test('keeps least gaps, never counts a hole twice, and the default moves nothing that hangs', () => {
    for (let seed = 1; seed <= 150; seed += 1) {
      const next = random(seed)
      const works: LateWork[] = []
      let left = 200 + next() * 400
      while (works.length < 3 + next() * 9) {
        const width = 300 + Math.round(next() * 900)
        const standing = next() < 0.3 ? 'hung' : next() < 0.5 ? 'drilled' : 'free'
        works.push(work({ id: `w${works.length}`, width, left, standing, height: 300 + Math.round(next() * 900) }))
        left += width + 80 + next() * 500
      }
      const wall = {
        length: left + 200,
        height: 3600,
        floor: [],
        ceiling: [],
        skirting: null,
        openings: [],
        keepClears: [],
      }
      const drilled = drilledFor(...works.filter(each => each.standing !== 'free'))
      const one = works[Math.floor(next() * works.length)]
      const other = works[Math.floor(next() * works.length)]
      if (one === undefined || other === undefined || one === other) continue
      const changes: readonly Change[] = [
        {
          kind: 'different',
          id: one.id,
          width: one.width + 52,
          height: one.height,
          holes: rings(one.width + 52, one.height, 100, 50),
        },
        { kind: 'swap', one: one.id, other: other.id },
        { kind: 'drop', id: one.id },
      ]
      for (const change of changes) {
        const asked = ask(works, change, drilled, { wall })
        const { offers } = lateOffers(asked)
        offers.forEach((offer, index) => {
          expect(offer.gaps.slice(1, -1).every(gap => gap >= 0)).toBe(true)
          expect(new Set(offer.deadHoles).size).toBe(offer.deadHoles.length)
          const earlier = offers[index - 1]
          if (earlier !== undefined && earlier.cost.hungMoved > 0) expect(offer.cost.hungMoved).toBeGreaterThan(0)
          for (const move of offer.moves) {
            const standing = works.find(({ id }) => id === move.id)?.standing
            if (standing === 'hung') expect(offer.cost.hungMoved).toBeGreaterThan(0)
          }
        })
      }
    }
  })
})

describe('holes', () => {
  test('serve within reach, once, nearest first', () => {
    const near = { id: 'n', x: 0, y: 0, holes: [{ slot: 'left', dx: 0, dy: 0 }] }
    const far = { id: 'f', x: 0.8, y: 0, holes: [{ slot: 'left', dx: 0, dy: 0 }] }
    const count = matchHoles([far, near], [{ id: 'h', x: 0.1, y: 0 }], 1)
    expect(count.missing.map(need => need.work)).toEqual(['f'])
    expect(count.unused).toEqual([])
    expect(matchHoles([near], [{ id: 'h', x: 1.2, y: 0 }], 1).missing).toHaveLength(1)
  })
})

describe('what was wrong before the change', () => {
  // A thermostat that wants 100 mm about it; the third work stands 26 mm inside that.
  const wall = {
    length: 9140,
    height: 3450,
    floor: [],
    ceiling: [],
    skirting: null,
    openings: [],
    keepClears: [{ id: 'k', what: 'thermostat', reason: '', x: 3968, y: 1450, width: 80, height: 120, margin: 100 }],
  }

  test('bars nothing while it gets no worse, and bars what makes it worse', () => {
    const down = lateOffers(ask(six, { kind: 'lower', by: 10 }, [], { wall }))
    expect(down.problem).toBe('')
    expect(down.offers[0]?.cost.moved).toBe(6)
    const change: Change = { kind: 'different', id: 'c', width: 592, height: 540, holes: [] }
    const { offers } = lateOffers(ask(six, change, [], { wall }))
    expect(offers.map(({ key }) => key)).not.toContain('centre')
    expect(offers.map(({ key }) => key)).toContain('right-edge')
  })

  test('and what bars a lower wall is named', () => {
    const { offers, problem } = lateOffers(ask(six, { kind: 'lower', by: 1000 }, [], { wall }))
    expect(offers).toEqual([])
    expect(problem).toBe('D would run into the floor. Type a shorter length, or move that work first.')
  })
})
