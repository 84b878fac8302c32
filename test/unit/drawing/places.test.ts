/** Where works stand while they are moved, and what the catalogue is asked for in the end. */
import { describe, expect, it } from 'vitest'
import type { Elevation, PlacedWork } from '../../../src/contract/areas/walls.ts'
import { inRow, lined, sized, spreadOut } from '../../../src/drawing/arrange.ts'
import { columnsOf } from '../../../src/drawing/columns.ts'
import { alongTo, placeAt, ruledAs, withSpots } from '../../../src/drawing/places.ts'
import { wallChain } from '../../../src/layout/chains.ts'

const plan: Elevation['plan'] = {
  centreLine: 1480,
  centreLineSet: 1480,
  ramp: [],
  centreLineFrom: 'house rule',
  rule: 'centre',
  eyeFraction: 0.5,
  plannedLux: null,
  visitorOrder: null,
  viewingDistance: null,
  viewers: [],
  colour: '',
  note: '',
}

function work(id: string, x: number, width: number, height: number, more: Partial<PlacedWork> = {}): PlacedWork {
  return {
    placement: id,
    entry: `e${id}`,
    work: `w${id}`,
    running: id,
    number: '',
    title: `Work ${id}`,
    maker: '',
    dateText: '',
    medium: '',
    size: {
      height,
      width,
      depth: null,
      diameter: null,
      part: 'framed',
      kind: 'measured',
      at: '2031-01-01T00:00:00.000Z',
    },
    mass: 5,
    glazing: '',
    sensitivity: '',
    lightLimit: null,
    picture: null,
    back: null,
    fixing: null,
    keeper: null,
    lockTool: '',
    hooksApart: null,
    x,
    rule: 'face',
    y: null,
    centreY: 1480,
    held: false,
    state: 'planned',
    labelSide: '',
    set: null,
    label: { text: '', suggestion: '', width: null, height: null, gap: null },
    note: '',
    ...more,
  }
}

describe('a work that is moved', () => {
  it('goes on following its wall while it only goes along', () => {
    expect(placeAt(work('1', 1000, 500, 700), plan, { x: 1200, centreY: 1480 })).toEqual({
      x: 1200,
      rule: 'face',
      y: null,
    })
  })

  it('stands by hand once it is lifted, and follows again on the line', () => {
    const lifted = placeAt(work('1', 1000, 500, 700), plan, { x: 1000, centreY: 1500 })
    expect(lifted).toEqual({ x: 1000, rule: 'hand', y: 1500 })
    const back = placeAt(work('1', 1000, 500, 700, { rule: 'hand', y: 1500, centreY: 1500 }), plan, {
      x: 1000,
      centreY: 1480,
    })
    expect(back).toEqual({ x: 1000, rule: 'face', y: null })
  })

  it('keeps its own rule and moves that rule’s height', () => {
    const top = work('1', 1000, 500, 700, { rule: 'top', y: 2000, centreY: 1650 })
    expect(placeAt(top, plan, { x: 1000, centreY: 1660 })).toEqual({ x: 1000, rule: 'top', y: 2010 })
    expect(ruledAs(top, plan, 'bottom')).toEqual({ x: 1000, rule: 'bottom', y: 1300 })
  })

  // The floor rises 300 in 6 000: 50 under x 1 000, 150 under x 3 000, so the wall's height goes from 1 530 to 1 630.
  describe('along a ramp', () => {
    const sloping = {
      ...plan,
      ramp: [
        [0, 0],
        [6000, 300],
      ] as [number, number][],
    }
    const follows = work('1', 1000, 500, 700, { centreY: 1530 })

    it('climbs with the floor and goes on following its wall', () => {
      expect(alongTo(follows, sloping.ramp, 3000)).toEqual({ x: 3000, centreY: 1630 })
      expect(placeAt(follows, sloping, alongTo(follows, sloping.ramp, 3000))).toEqual({
        x: 3000,
        rule: 'face',
        y: null,
      })
    })

    it('is off the line where a hand left it as high above the left end as it was', () => {
      expect(placeAt(follows, sloping, { x: 3000, centreY: 1530 })).toEqual({ x: 3000, rule: 'hand', y: 1530 })
    })

    it('keeps its own rule, as high above the floor as before', () => {
      const top = work('1', 1000, 500, 700, { rule: 'top', y: 2000, centreY: 1650 })
      expect(placeAt(top, sloping, alongTo(top, sloping.ramp, 3000))).toEqual({ x: 3000, rule: 'top', y: 2100 })
    })

    it('spread out, each stays on the line', () => {
      const three = [500, 900, 3000].map((x, i) => work(String(i), x, 400, 500, { centreY: 1480 + x / 20 }))
      const { spots } = spreadOut(sized(three), 'centres', sloping.ramp)
      expect(spots.get('1')).toEqual({ x: 1750, centreY: 1480 + 1750 / 20 })
    })
  })

  it('leaves the others the very same objects', () => {
    const works = [work('1', 1000, 500, 700), work('2', 2000, 500, 700)]
    const moved = withSpots(works, plan, new Map([['1', { x: 1100, centreY: 1480 }]]))
    expect(moved[0]?.x).toBe(1100)
    expect(moved[1]).toBe(works[1])
  })
})

describe('columns of a chain', () => {
  it('takes works one above the other as one, and their chain adds up to the wall', () => {
    const columns = columnsOf([
      { id: 'a', x: 1000, y: 1500, width: 400, height: 500 },
      { id: 'b', x: 1100, y: 900, width: 500, height: 500 },
      { id: 'c', x: 2000, y: 1200, width: 300, height: 500 },
    ])
    expect(columns.map(({ ids, left, width }) => [ids, left, width])).toEqual([
      [['a', 'b'], 1000, 600],
      [['c'], 2000, 300],
    ])
    const chain = wallChain(4000, columns)
    expect(chain.pieces.map(piece => piece.printed.size.mm)).toEqual([1000, 600, 400, 300, 1700])
  })

  it('shows works that cover each other as a gap below nothing', () => {
    const chain = wallChain(
      4000,
      columnsOf([
        { id: 'a', x: 1000, y: 1200, width: 400, height: 500 },
        { id: 'b', x: 1300, y: 1200, width: 400, height: 500 },
      ]),
    )
    expect(chain.pieces.map(piece => piece.printed.size.mm)).toEqual([1000, 400, -100, 400, 2300])
  })
})

const whole = { from: 0, to: 9140, length: 9140, leftOf: 'end', rightOf: 'end' }

describe('arranging what is selected', () => {
  const six = [480, 710, 540, 960, 480, 1010].map((width, index) =>
    work(String(index + 1), 800 + index * 1300, width, 700),
  )

  // The published scenario of the job: 9 140 long, 900 at each end, six works of 4 180: (9140 − 1800 − 4180) / 5 = 632.
  it('keeps margins and makes the gaps even', () => {
    const { spots } = inRow(sized(six), { rule: 'margins', left: 900, right: 900 }, [whole], 75)
    const edges = six.map(({ placement, size }) => (spots.get(placement)?.x ?? 0) - (size?.width ?? 0) / 2)
    expect(edges[0]).toBeCloseTo(900, 6)
    expect(edges[1]).toBeCloseTo(900 + 480 + 632, 6)
    expect(spots.get('1')?.x).toBeCloseTo(1140, 6)
  })

  it('never moves what is held', () => {
    const held = six.map((one, index) => (index === 2 ? { ...one, held: true } : one))
    const { spots } = inRow(sized(held), { rule: 'equal' }, [whole], 75)
    expect(spots.has('3')).toBe(false)
    expect(spots.size).toBe(5)
    expect(lined(sized(held), 'lefts').spots.get('3')).toEqual({ x: held[2]?.x, centreY: 1480 })
  })

  it('spreads between the outermost', () => {
    const three = spreadOut(
      sized([work('1', 500, 400, 500), work('2', 900, 200, 500), work('3', 3000, 400, 500)]),
      'gaps',
    ).spots
    expect(three.get('2')?.x).toBeCloseTo((700 + 2800) / 2, 6)
  })
})
