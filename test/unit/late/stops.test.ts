/**
 * What the wall's own checks stop, no way out brings: sloping ceilings, skirtings, openings, what must stay clear, light
 * and labels. Each offer is carried out here by hand and the wall is checked as a whole; whatever is stopped then was
 * stopped before. Walls are invented.
 */
import { describe, expect, test } from 'vitest'
import type { LateChange, LateOffer } from '../../../src/contract/areas/marks.ts'
import type { Elevation, PlacedWork } from '../../../src/contract/areas/walls.ts'
import { faceFindings } from '../../../src/model/face-findings.ts'
import { lateOfShow } from '../../../src/model/late-of-show.ts'
import { latePricesFrom, lateRules } from '../../../src/model/late-rules.ts'
import { wallWith, work } from '../model/sample-wall.ts'

const style = {
  unit: 'mm' as const,
  steps: { mm: 1, fraction: 16 } as const,
  prices: latePricesFrom(key => lateRules[key].value),
}

interface Given {
  readonly id: string
  readonly width: number
  readonly height: number
  readonly x: number
  readonly y?: number
  readonly labelSide?: PlacedWork['labelSide']
}

function hung({ id, width, height, x, y, labelSide = '' }: Given): PlacedWork {
  return {
    ...work,
    placement: `p${id}`,
    entry: id,
    work: `w${id}`,
    running: id,
    lightLimit: null,
    mass: 6,
    size: { height, width, depth: 40, diameter: null, part: 'framed', kind: 'measured', at: '' },
    back: {
      method: 'd-rings',
      seenFrom: 'back',
      data: { left: { drop: 60, inset: 40 }, right: { drop: 60, inset: 40 } },
    },
    x,
    rule: y === undefined ? 'face' : 'hand',
    y: y ?? null,
    centreY: y ?? 1480,
    labelSide,
  }
}

function wallOf(works: readonly PlacedWork[], facts: Partial<Elevation['wall']> = {}): Elevation {
  const wall = wallWith(works)
  return { ...wall, wall: { ...wall.wall, keepClears: [], ...facts } }
}

/** The wall once the offer is taken. */
function taken(wall: Elevation, change: LateChange, offer: LateOffer): Elevation {
  const off = new Set(offer.off.map(each => each.entry))
  const works = wall.works
    .filter(each => !off.has(each.entry))
    .map((each): PlacedWork => {
      const to = offer.moves.find(move => move.entry === each.entry)
      const size =
        change.kind === 'different' && change.entry === each.entry && each.size !== null
          ? { ...each.size, width: change.width, height: change.height }
          : each.size
      return to === undefined ? { ...each, size } : { ...each, size, x: to.x, centreY: to.y, rule: 'hand', y: to.y }
    })
  return { ...wall, works }
}

function stops(wall: Elevation): Set<string> {
  return new Set(
    faceFindings(wall)
      .filter(found => found.severity === 'stop')
      .map(({ code, subject, figures }) => `${code} ${subject.id} ${figures.with ?? figures.keepClear ?? ''}`),
  )
}

const three = [
  hung({ id: '1', width: 600, height: 700, x: 900 }),
  hung({ id: '2', width: 600, height: 700, x: 2000 }),
  hung({ id: '3', width: 600, height: 700, x: 3100 }),
]

describe('a sloping ceiling', () => {
  // 3 000 at the left end, 1 700 at 4 000: at 3 400 it is 1 895, over a work whose top is at 1 830.
  const slope = {
    length: 4000,
    height: 3000,
    ceiling: [[0, 3000] as [number, number], [4000, 1700] as [number, number]],
  }

  test('bars a frame that would reach into it, though the wall is high enough, and says so', () => {
    const higher = (height: number): LateChange => ({ kind: 'different', entry: '3', width: 600, height })
    expect(lateOfShow([wallOf(three, { ...slope, ceiling: [] })], higher(900), style).offers).not.toEqual([])
    // 1 480 + 415 is 1 895, just the line over its right edge.
    expect(lateOfShow([wallOf(three, slope)], higher(800), style).offers.map(({ key }) => key)).toContain('centre')
    const { offers, problem } = lateOfShow([wallOf(three, slope)], higher(900), style)
    expect(offers).toEqual([])
    expect(problem).toContain('3 would run into the ceiling')
  })

  test('bars raising a whole wall into it, and names the work', () => {
    const wall = wallOf(three, slope)
    const { offers, problem } = lateOfShow([wall], { kind: 'lower', by: -100, faces: ['face1'] }, style)
    expect(offers).toEqual([])
    expect(problem).toContain('3 would run into the ceiling')
  })
})

test('a skirting bars lowering on to it', () => {
  const low = three.map(each => ({ ...each, centreY: 520, rule: 'hand' as const, y: 520 }))
  const wall = wallOf(low, { skirting: 150 })
  const ask = (by: number) => lateOfShow([wall], { kind: 'lower', by, faces: ['face1'] }, style)
  // Bottoms at 170: 20 above the skirting.
  expect(ask(20).offers).toHaveLength(1)
  expect(ask(21).problem).toContain('would come down over the skirting')
})

test('a mark on a thermostat is no way out, though the frame may stand there with its margin given up', () => {
  const item = {
    id: 'k',
    kind: 'thermostat' as const,
    x: 1985,
    y: 1750,
    width: 30,
    height: 30,
    margin: 0,
    label: '',
    reason: '',
    depth: null,
    reachable: false,
  }
  const wall = wallOf(three, { keepClears: [item] })
  const { offers } = lateOfShow([wall], { kind: 'swap', one: '1', other: '2' }, style)
  const before = stops(wall)
  for (const offer of offers) {
    const after = [...stops(taken(wall, { kind: 'swap', one: '1', other: '2' }, offer))]
    expect(after.filter(stop => !before.has(stop) && stop.startsWith('mark-'))).toEqual([])
  }
})

test('a stop that the new frame brings wherever it hangs does not bar it', () => {
  const heavy = three.map(each => ({ ...each, mass: 60 }))
  const wall = wallOf(heavy)
  expect([...stops(wall)].some(stop => stop.startsWith('load-exceeds'))).toBe(true)
  const { offers } = lateOfShow([wall], { kind: 'different', entry: '2', width: 620, height: 700 }, style)
  expect(offers.length).toBeGreaterThan(0)
})

test('a label that would stand on the neighbour bars a way', () => {
  const labelled = (labelSide: PlacedWork['labelSide']) =>
    wallOf(
      [
        hung({ id: '1', width: 600, height: 700, x: 900, labelSide }),
        { ...hung({ id: '2', width: 600, height: 700, x: 1800 }), held: true },
      ],
      { length: 2300 },
    )
  // About its centre the wider frame leaves 120 mm for a label of more than that; to the left there is room.
  const change: LateChange = { kind: 'different', entry: '1', width: 960, height: 700 }
  expect(lateOfShow([labelled('')], change, style).offers.map(({ key }) => key)).toContain('centre')
  const { offers } = lateOfShow([labelled('right')], change, style)
  expect(offers.map(({ key }) => key)).not.toContain('centre')
  expect(offers.map(({ key }) => key)).toContain('right-edge')
})

describe('any wall', () => {
  function random(seed: number): () => number {
    let state = seed
    return () => {
      state = (state * 1664525 + 1013904223) % 4294967296
      return state / 4294967296
    }
  }

  function anyWall(seed: number): Elevation {
    const next = random(seed)
    const works: PlacedWork[] = []
    let left = 250
    for (let at = 0; at < 4 + Math.floor(next() * 4); at += 1) {
      const width = 300 + Math.round(next() * 500)
      const height = 400 + Math.round(next() * 900)
      const side = (['', 'right', 'below'] as const)[Math.floor(next() * 3)] ?? ''
      works.push({
        ...hung({ id: `${at + 1}`, width, height, x: left + width / 2, labelSide: side }),
        state: next() < 0.2 ? 'hung' : 'planned',
        label: { ...work.label, text: 'A label' },
      })
      left += width + 150 + Math.round(next() * 400)
    }
    const length = left + 150
    const low = 1900 + next() * 500
    const things = [0, 1].map(at => ({
      id: `k${at}`,
      kind: 'thermostat' as const,
      x: next() * (length - 100),
      y: 1100 + next() * 800,
      width: 80,
      height: 80,
      margin: 50,
      label: '',
      reason: '',
      depth: null,
      reachable: false,
    }))
    return wallOf(works, {
      length,
      height: 3000,
      skirting: 120,
      floor: [
        [0, 0],
        [length, -40 + next() * 80],
      ],
      ceiling: [
        [0, 2900],
        [length * next(), low],
        [length, 2600],
      ],
      keepClears: things,
    })
  }

  test('no offer makes a stop that was not there, nor reaches through ceiling or skirting', () => {
    let offered = 0
    for (let seed = 1; seed <= 60; seed += 1) {
      const wall = anyWall(seed)
      const before = stops(wall)
      const [one, other] = [wall.works[seed % 4], wall.works[(seed + 1) % 4]]
      if (one === undefined || other === undefined) throw new Error('a wall has four works and more')
      const changes: readonly LateChange[] = [
        {
          kind: 'different',
          entry: one.entry,
          width: (one.size?.width ?? 0) + 60,
          height: (one.size?.height ?? 0) + 200,
        },
        { kind: 'swap', one: one.entry, other: other.entry },
        { kind: 'drop', entry: one.entry },
        { kind: 'lower', by: seed % 2 === 0 ? 150 : -150, faces: ['face1'] },
      ]
      for (const change of changes) {
        for (const offer of lateOfShow([wall], change, style).offers) {
          offered += 1
          const after = taken(wall, change, offer)
          const fresh = [...stops(after)].filter(stop => !before.has(stop))
          expect(fresh, `${seed} ${change.kind} ${offer.key}`).toEqual([])
          for (const { entry, x, y, width, height, wasY } of offer.moves) {
            for (const at of [x - width / 2, x, x + width / 2]) {
              expect(y + height / 2, `${seed} ${entry}`).toBeLessThanOrEqual(
                Math.max(lineAt(wall.wall.ceiling, at), wasY + height / 2) + 1e-6,
              )
            }
          }
        }
      }
    }
    expect(offered).toBeGreaterThan(300)
  })
})

/** Straight lines between measured points, written anew. */
function lineAt(points: Elevation['wall']['ceiling'], x: number): number {
  const sorted = [...points].sort((a, b) => a[0] - b[0])
  for (const [index, [x1, y1]] of sorted.entries()) {
    const [x0, y0] = sorted[index - 1] ?? [x1 - 1, y1]
    if (x <= x1) return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0)
  }
  return sorted.at(-1)?.[1] ?? Number.POSITIVE_INFINITY
}
