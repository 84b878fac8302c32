/** What of a wall is planned on, what bars a work there, and the narrowest gap; by hand on one wall. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { narrowestGap } from '../../../src/sequence/narrowest-gap.ts'
import { barOn, servedOn, viewersOf } from '../../../src/sequence/served-on.ts'
import { firstAfter, neighbourAt, staysOn, stretchesOf, usualHeight } from '../../../src/sequence/stretches.ts'
import { wallWith, work } from '../model/sample-wall.ts'

/** A wall of 9,140 with a thermostat at 4,300 to 4,420, kept clear by 150. */
const planned = { ...work, placement: 'p2', entry: 'e2', x: 7000, centreY: 1480 }
const held = { ...work, x: 2000, centreY: 1480, held: true }

describe('stretches of a wall', () => {
  test('end at what is kept clear and at works that stay; works that may move cut nothing', () => {
    const spans = (works: readonly (typeof work)[]) =>
      stretchesOf(wallWith(works), 600).map(({ from, to }) => [from, to])
    expect(spans([planned])).toEqual([
      [0, 4150],
      [4570, 9140],
    ])
    // The held work is 960 wide about 2,000.
    expect(spans([planned, held])).toEqual([
      [0, 1520],
      [2480, 4150],
      [4570, 9140],
    ])
  })

  test('what hangs too high to be in the way cuts nothing, and a rest of 300 or less is no stretch', () => {
    expect(stretchesOf(wallWith([{ ...held, centreY: 2600 }]), 600)).toHaveLength(2)
    const spans = stretchesOf(wallWith([{ ...held, x: 780 }]), 600).map(({ from, to }) => [from, to])
    expect(spans[0]).toEqual([1260, 4150])
  })

  test('a work stays when it is held, hung, or has a hole', () => {
    const hung = { ...planned, state: 'hung' as const }
    const stays = (works: readonly (typeof work)[]) => staysOn(wallWith(works)).map(one => one.placement)
    expect(stays([planned, held])).toEqual(['p1'])
    expect(stays([hung])).toEqual(['p2'])
  })

  test('a usual work is as tall as the middle one', () => {
    expect(usualHeight([900, 300, 500])).toBe(500)
    expect(usualHeight([])).toBe(600)
  })
})

describe('what stays between stretches', () => {
  const stretches = stretchesOf(wallWith([held]), 600)
  test('it is met before the first stretch right of it; past the last, after its wall', () => {
    expect(firstAfter(stretches, { face: 'face1', x: 2000 })).toBe(1)
    expect(firstAfter(stretches, { face: 'face1', x: 8000 })).toBe(3)
    expect(firstAfter(stretches, { face: 'another', x: 0 })).toBe(3)
  })

  test('it is the neighbour of the stretches that end at its edges', () => {
    const works = [
      { width: 960, stays: null },
      { width: 960, stays: { face: 'face1', x: 2000 } },
    ]
    expect(neighbourAt(works, 'face1', 1520, 'left')).toBe(1)
    expect(neighbourAt(works, 'face1', 2480, 'right')).toBe(1)
    expect(neighbourAt(works, 'face1', 4150, 'left')).toBeNull()
    expect(neighbourAt(works, 'face2', 1520, 'left')).toBeNull()
  })
})

describe('whether a work may hang on a stretch', () => {
  const [, stretch] = stretchesOf(wallWith([], 200), 600)
  if (stretch === undefined) throw new Error('the wall has two stretches')
  const size = { width: 4270, height: 1200, limit: null }
  const wishes = { margin: 150, usual: 2000, sight: { line: -10, inner: 15, outer: 30 } }

  test('its width, its light, its height, by the millimetre', () => {
    expect(barOn(stretch, size, 150)).toBeNull()
    expect(barOn(stretch, { ...size, width: 4271 }, 150)).toBe('too wide')
    expect(barOn(stretch, { ...size, limit: 200 }, 150)).toBeNull()
    expect(barOn(stretch, { ...size, limit: 150 }, 150)).toBe('too much light')
    // Centred at 1,480 under 3,450 less 25 to lift it on; the floor comes first.
    expect(barOn(stretch, { ...size, height: 2960 }, 150)).toBeNull()
    expect(barOn(stretch, { ...size, height: 2961 }, 150)).toBe('too low')
    const low = { ...stretch, elevation: { ...stretch.elevation, wall: { ...stretch.elevation.wall, height: 2600 } } }
    expect(barOn(low, { ...size, height: 2190 }, 150)).toBeNull()
    expect(barOn(low, { ...size, height: 2191 }, 150)).toBe('too high')
  })

  test('what is barred serves nobody; else the least served of its viewers counts', () => {
    expect(servedOn(stretch, { ...size, width: 5000 }, wishes)).toBeNull()
    const plan = {
      ...stretch.elevation.plan,
      viewers: [
        { kind: 'child' as const, share: 1 },
        { kind: 'standing' as const, share: 0 },
      ],
    }
    expect(viewersOf(plan)).toEqual(['child'])
    expect(viewersOf(stretch.elevation.plan)).toEqual(['standing'])
    const both = { ...plan, viewers: plan.viewers.map(one => ({ ...one, share: 0.5 })) }
    const served = (viewers: typeof plan) =>
      servedOn({ ...stretch, elevation: { ...stretch.elevation, plan: viewers } }, { ...size, height: 600 }, wishes) ??
      Number.NaN
    const standing = served(stretch.elevation.plan as typeof plan)
    expect(served(both)).toBeCloseTo(Math.min(standing, served(plan)), 12)
    expect(served(plan)).not.toBeCloseTo(standing, 2)
  })
})

describe('the narrowest gap', () => {
  test('none for one work, none between works one above the other', () => {
    expect(narrowestGap([{ x: 500, width: 400 }])).toBeNull()
    expect(
      narrowestGap([
        { x: 500, width: 400 },
        { x: 500, width: 300 },
      ]),
    ).toBeNull()
    expect(
      narrowestGap([
        { x: 500, width: 1000 },
        { x: 500, width: 300 },
        { x: 1500, width: 400 },
      ]),
    ).toBe(300)
  })

  test('the least of all distances between works that do not overlap, where none do', () => {
    const row = fc.array(
      fc.record({ gap: fc.integer({ min: 0, max: 400 }), width: fc.integer({ min: 1, max: 900 }) }),
      { minLength: 2, maxLength: 8 },
    )
    fc.assert(
      fc.property(row, spaced => {
        let left = 0
        const works = spaced.map(({ gap, width }) => {
          const x = left + gap + width / 2
          left += gap + width
          return { x, width }
        })
        expect(narrowestGap(works.toReversed())).toBeCloseTo(Math.min(...spaced.slice(1).map(({ gap }) => gap)), 6)
      }),
    )
  })
})
