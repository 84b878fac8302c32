/** Rails, sheets, shelves, plinths and cases: lengths, pulls and loads by hand. */
import { describe, expect, test } from 'vitest'
import type { Fixing } from '../../../src/hang/method.ts'
import { linksFor } from '../../../src/hang/rail.ts'
import { ballastFor, centreUp, tippingAngle } from '../../../src/hang/standing.ts'
import { ask, codes, figure, found, refused } from './ask.ts'
import { railWall } from './backs.ts'
import { plainWall } from './sample.ts'

describe('picture rail', () => {
  const work = { height: 500, width: 400, mass: 6 }
  const centre = { x: 2000, y: 1480 }
  const level = { ...plainWall, rail: [[0, 3070]] as const, railKgPerMetre: 25 }
  const rings = { left: { drop: 60 }, right: { drop: 60 }, spacing: 300, way: 'upright' }
  const hang = (data: object, changes: object = {}) =>
    ask('picture-rail', data, { work, centre, wall: level, ...changes })

  test('upright: rail less ring, the hook’s own depth taken off, no hole', () => {
    // Ring at 1 480 + 250 − 60 = 1 670; 3 070 − 1 670 = 1 400.
    const answer = hang({ ...rings, by: { with: 'cable' } })
    expect(answer.hangers.map(one => one.length)).toEqual([1400, 1400])
    expect(answer.marks.map(mark => [mark.on, mark.bearing.x, mark.bearing.y])).toEqual([
      ['rail', 1850, 1670],
      ['rail', 2150, 1670],
    ])
    expect(hang({ ...rings, by: { with: 'cable', hook: 40 } }).hangers[0]?.length).toBe(1360)
    expect(codes(answer)).not.toContain('mark-off-backing')
    expect(answer.cautions.join(' ')).not.toContain('before drilling')
    expect(figure(answer, 'pull-left')).toBeCloseTo(3 * 9.80665, 9)
  })

  test('to one hook: a 3-4-5 triangle; the legs pull 5/8 of the weight each', () => {
    // Rings 300 apart and the hook 200 above them: legs of 250, each 0.5 / sin = 0.5 / 0.8.
    const near = { ...level, rail: [[0, 1870]] as const }
    const answer = hang({ ...rings, way: 'one-point', by: { with: 'cable' } }, { wall: near })
    expect(answer.hangers.map(one => one.length)).toEqual([250, 250])
    expect(figure(answer, 'pull-left')).toBeCloseTo(0.625 * 6 * 9.80665, 9)
    expect(codes(answer)).toContain('one-hook')
    expect(answer.cautions[0]).toMatch(/^ONE HOOK/)
    expect(answer.loads?.shares.map(share => share.shareKg)).toEqual([6])
    expect(answer.loads?.oneGone).toBeNull()
  })

  test('a loop: both sides, along the rail and along the work', () => {
    const answer = hang({ ...rings, way: 'loop', by: { with: 'cable' } })
    expect(figure(answer, 'loop')).toBe(1400 + 1400 + 300 + 300)
  })

  test('chain: links both ways or only longer', () => {
    expect(linksFor(1225.8, 21, 'both')).toEqual({ count: 58, rest: expect.closeTo(7.8, 9) })
    expect(linksFor(1233, 21, 'both')).toEqual({ count: 59, rest: expect.closeTo(-6, 9) })
    expect(linksFor(1233, 21, 'longer')).toEqual({ count: 58, rest: expect.closeTo(15, 9) })
    expect(linksFor(1239, 21, 'longer')).toEqual({ count: 59, rest: 0 })
    const answer = hang({ ...rings, by: { with: 'chain', pitch: 21, adjuster: 'longer', reach: 10 } })
    // 1 400 = 66 × 21 + 14.
    expect(figure(answer, 'links-left')).toBe(66)
    expect(figure(answer, 'rest-left')).toBe(14)
    expect(codes(answer)).toContain('adjuster-too-short')
  })

  test('the rail: unknown, unrated, overloaded, too low', () => {
    const cable = { ...rings, by: { with: 'cable' } }
    expect(codes(hang(cable, { wall: plainWall }))).toContain('rail-unknown')
    expect(hang(cable, { wall: plainWall }).hangers).toEqual([])
    expect(codes(hang(cable, { wall: { ...level, railKgPerMetre: null } }))).toContain('rail-rating-unknown')
    // 6 kg on a metre, × 4 = 24 ≤ 25.
    expect(codes(hang(cable))).toContain('rail-holds')
    expect(found(hang(cable, { wall: { ...level, railKgPerMetre: 23 } }), 'rail-overloaded').severity).toBe('stop')
    expect(found(hang(cable, { wall: { ...level, rail: [[0, 1600]] } }), 'ring-above-rail').severity).toBe('stop')
  })

  test('one hook stands over the mass, so that the work hangs level', () => {
    const answer = hang(
      { ...rings, way: 'one-point', by: { with: 'cable' } },
      { work: { ...work, massFromLeft: 150 }, wall: railWall },
    )
    expect(answer.hangers[0]?.from.x).toBe(1800 + 150)
  })
})

describe('unframed sheet', () => {
  const point: Fixing = { name: 'steel point', kind: 'steel-point', holeOffset: 0, ratedKg: 2 }
  const hang = (data: object, size = { height: 700, width: 1000 }) =>
    ask(
      'sheet',
      { hold: 'magnets', touch: 'margins', ...data },
      { work: size, centre: { x: 3000, y: 1500 }, fixings: [point] },
    )

  test('1.0 by 0.7 m at 300 g/m² weighs 0.21 kg; magnets pull 20 times that', () => {
    const answer = hang({ paper: 300 })
    expect(figure(answer, 'sheet-weight')).toBeCloseTo(0.21, 12)
    expect(figure(answer, 'needed-pull')).toBeCloseTo(20 * 0.21 * 9.80665, 9)
    expect(codes(answer)).toContain('pull-unknown')
    expect(answer.loads?.massKg).toBeCloseTo(0.21, 12)
  })

  test('points 25 in from the corners; a long edge gets one in its middle', () => {
    const at = (size: { height: number; width: number }) => hang({}, size).marks.map(mark => [mark.fromLeft, mark.drop])
    expect(at({ height: 500, width: 400 })).toEqual([
      [25, 25],
      [375, 25],
      [25, 475],
      [375, 475],
    ])
    expect(at({ height: 700, width: 1000 })).toContainEqual([500, 25])
    expect(at({ height: 700, width: 1000 })).toHaveLength(5)
    expect(at({ height: 1000, width: 700 })).toHaveLength(6)
    expect(at({ height: 1000, width: 700 })).toContainEqual([25, 500])
  })

  test('held or sliding: five magnets at friction 0.2', () => {
    // 4 × 0.21 kg × 9.80665 = 8.24 N; 5 × 8.3 N × 0.2 = 8.3 N.
    expect(codes(hang({ paper: 300, pull: 8.3 }))).toContain('sheet-held')
    expect(found(hang({ paper: 300, pull: 8.2 }), 'sheet-slides').severity).toBe('stop')
    expect(codes(hang({ paper: 300, pull: 4.2, friction: 0.4 }))).toContain('sheet-held')
  })

  test('who said that it may be touched', () => {
    expect(codes(hang({ touch: 'not-asked' }))).toContain('touch-not-asked')
    expect(found(hang({ touch: 'nowhere' }), 'touch-forbidden').severity).toBe('stop')
    expect(codes(hang({}))).toContain('mass-unknown')
    expect(refused(() => hang({ inset: 350 }))).toMatchObject({ code: 'points-cross', field: 'back.data.inset' })
  })

  test('clear corners: the lower two carry, the upper two keep', () => {
    const answer = hang({ hold: 'corners', paper: 300 })
    expect(answer.marks.map(mark => [mark.name, mark.does])).toEqual([
      ['upper left point', 'keeps'],
      ['upper right point', 'keeps'],
      ['lower left point', 'carries'],
      ['lower right point', 'carries'],
    ])
    expect(answer.loads?.shares[0]?.shareKg).toBeCloseTo(0.105, 12)
  })
})

describe('shelf', () => {
  const work = { height: 300, width: 400, depth: 150, mass: 6 }
  const back = {
    width: 600,
    depth: 250,
    mass: 4,
    left: { inset: 100 },
    right: { inset: 100 },
    screw: 30,
    apart: 120,
    off: 20,
  }
  const hang = (data: object, changes: object = {}) =>
    ask('shelf', data, { work, centre: { x: 2000, y: 1500 }, ...changes })

  test('brackets under the work, lower screws below them', () => {
    // Shelf from 1 700 to 2 300, its top at 1 350.
    expect(hang(back).marks.map(mark => [mark.name, mark.bearing.x, mark.bearing.y])).toEqual([
      [null, 1800, 1320],
      [null, 2200, 1320],
      ['left lower screw', 1800, 1200],
      ['right lower screw', 2200, 1200],
    ])
  })

  test('moment of object and shelf, and the pull on an upper screw', () => {
    const answer = hang(back)
    // 6 kg at 20 + 75, 4 kg at 125; half of it over 120 mm.
    const moment = (9.80665 * (6 * 95 + 4 * 125)) / 1000
    expect(figure(answer, 'moment')).toBeCloseTo(moment, 9)
    expect(figure(answer, 'pull-out')).toBeCloseTo((moment * 1000) / 2 / 120, 9)
    expect(answer.loads?.massKg).toBe(10)
    expect(answer.loads?.shares.map(share => share.shareKg)).toEqual([5, 5])
  })

  test('an object off the middle loads one bracket more', () => {
    const answer = hang(back, { work: { ...work, massFromLeft: 100 } })
    // 6 kg 100 left of the middle: common mass 60 left of it; 5 + 10 × 60/400.
    expect(answer.loads?.shares[0]?.shareKg).toBeCloseTo(6.5, 9)
  })

  test('too deep, too wide, not weighed', () => {
    expect(found(hang({ ...back, depth: 160 }), 'overhangs').severity).toBe('stop')
    expect(found(hang({ ...back, width: 390 }), 'overhangs').severity).toBe('settle')
    const { mass: _, apart: __, ...rest } = back
    expect(codes(hang(rest))).toEqual(expect.arrayContaining(['shelf-mass-unknown', 'pull-out-unknown']))
    expect(refused(() => hang({ ...back, left: { inset: 700 } })).code).toBe('hangers-off-the-work')
  })
})

describe('plinth and case', () => {
  const work = { height: 400, width: 300, depth: 200, mass: 20 }
  const back = { base: { height: 1000, width: 400, depth: 400, mass: 30 } }
  const stands = { work, centre: { x: 3000, y: 1200 } }

  test('no hole, no load on a wall; its corners on the floor', () => {
    const answer = ask('plinth', back, stands)
    expect(answer.marks.map(mark => [mark.name, mark.on, mark.bearing.x, mark.bearing.y])).toEqual([
      ['left corner', 'floor', 2800, 0],
      ['right corner', 'floor', 3200, 0],
    ])
    expect(answer.loads).toBeNull()
    expect(codes(answer)).not.toContain('mass-unknown')
    expect(codes(answer)).not.toContain('mark-off-wall')
    expect(answer.cautions.join(' ')).not.toContain('drilling')
  })

  test('centre of mass, tipping, push and floor load', () => {
    const answer = ask('plinth', back, stands)
    // (20 × 1 200 + 30 × 500) / 50 = 780; half the base is 200.
    expect(figure(answer, 'centre-up')).toBe(780)
    expect(figure(answer, 'tips-at')).toBeCloseTo((Math.atan(200 / 780) * 180) / Math.PI, 9)
    expect(figure(answer, 'tips-push')).toBeCloseTo((50 * 9.80665 * 200) / 1400, 9)
    expect(figure(answer, 'floor-load')).toBeCloseTo(50 / 0.16, 9)
    expect(codes(answer)).toEqual(expect.arrayContaining(['stands-firm', 'floor-rating-unknown']))
  })

  test('ballast brings it to the house’s angle, and not above', () => {
    const pieces = [
      { mass: 20, up: 1200 },
      { mass: 10, up: 500 },
    ]
    const needed = ballastFor(pieces, 300, 10, 50)
    if (needed === null) throw new Error('ballast expected')
    expect(needed).toBeGreaterThan(0)
    expect(tippingAngle(300, centreUp([...pieces, { mass: needed, up: 50 }]))).toBeCloseTo(10, 9)
    expect(ballastFor(pieces, 3000, 10, 50)).toBe(0)
    expect(ballastFor(pieces, 10, 10, 50)).toBeNull()
    const slender = ask('plinth', { base: { ...back.base, width: 250, depth: 250 } }, stands)
    expect(found(slender, 'tips-easily').severity).toBe('settle')
    expect(figure(slender, 'ballast')).toBeGreaterThan(0)
  })

  test('placed where it does not stand, it says where it would', () => {
    const off = found(ask('plinth', back, { ...stands, centre: { x: 3000, y: 1230 } }), 'does-not-stand')
    expect(off.figures).toMatchObject({ off: 30, centreY: 1200 })
    expect(codes(ask('plinth', back, stands))).not.toContain('does-not-stand')
  })

  test('a floor that may carry less stops; nobody weighed, nothing passes', () => {
    expect(found(ask('plinth', { ...back, floor: 300 }, stands), 'floor-overloaded').severity).toBe('stop')
    expect(codes(ask('plinth', { ...back, floor: 313 }, stands))).toContain('floor-holds')
    const light = ask('plinth', { base: { height: 1000, width: 400, depth: 400 } }, stands)
    expect(found(light, 'mass-unknown').text).toContain('its base')
    expect(light.figures).toEqual([])
  })

  test('a bonnet: free room, and the refusal of one that is too small', () => {
    const bonnet = { height: 460, width: 400, depth: 320, mass: 8 }
    const answer = ask('case', { ...back, bonnet }, stands)
    expect([figure(answer, 'free-height'), figure(answer, 'free-width'), figure(answer, 'free-depth')]).toEqual([
      60, 50, 60,
    ])
    expect(figure(answer, 'whole-mass')).toBe(58)
    expect(codes(answer)).not.toContain('bonnet-tight')
    expect(codes(ask('case', { ...back, bonnet: { ...bonnet, width: 380 } }, stands))).toContain('bonnet-tight')
    expect(refused(() => ask('case', { ...back, bonnet: { ...bonnet, width: 300 } }, stands))).toMatchObject({
      code: 'bonnet-too-small',
      field: 'back.data.bonnet.width',
    })
  })
})
