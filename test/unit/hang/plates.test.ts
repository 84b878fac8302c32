/** Keyhole, strap and transit plates, security hangers: where their holes are and what holds them against their screws. */
import { describe, expect, test } from 'vitest'
import type { Fixing } from '../../../src/hang/method.ts'
import { ask, codes, figure, found, refused } from './ask.ts'
import { plainWall } from './sample.ts'

const screw: Fixing = { name: 'screw 4', kind: 'screw', holeOffset: -2, ratedKg: 25, shank: 4, head: 8, length: 50 }
const work = { height: 800, width: 600, mass: 8, depth: 40 }
const centre = { x: 2000, y: 1500 }
const places = (answer: ReturnType<typeof ask>) => answer.marks.map(mark => [mark.hole.x, mark.hole.y])

describe('keyhole plates', () => {
  const side = { drop: 50, inset: 80 }
  const back = { left: side, right: side, slot: 5, entry: 10, thickness: 2, recess: 8 }
  const hang = (data: object, fixing: Fixing = screw) =>
    ask('keyhole-plates', data, { work, centre, fixings: [fixing] })

  test('the shank rests in the slot: the hole is its radius below', () => {
    // 1 500 + 400 − 50 = 1 850, less 2; 1 700 + 80 and 2 300 − 80.
    expect(places(hang(back))).toEqual([
      [1780, 1848],
      [2220, 1848],
    ])
    expect(figure(hang(back), 'stands-out')).toBe(2.5)
  })

  test('head and shank against slot and entry', () => {
    expect(codes(hang(back))).toContain('head-holds')
    const severity = (fixing: Partial<Fixing>, code: string) =>
      found(hang(back, { ...screw, ...fixing }), code).severity
    expect(severity({ head: 5 }, 'head-through-slot')).toBe('stop')
    expect(severity({ head: 10 }, 'head-too-wide')).toBe('stop')
    expect(severity({ shank: 5 }, 'shank-too-thick')).toBe('stop')
    expect(found(hang(back, { ...screw, head: null }), 'head-not-checked').text).toContain('the head of screw 4')
    expect(found(hang({ left: side, right: side }), 'head-not-checked').text).toContain('the slot’s width')
    expect(codes(hang({ ...back, recess: 2.5 }))).toContain('recess-too-shallow')
    expect(codes(hang({ ...back, entry: 5 }))).toContain('entry-not-wider')
  })

  test('slots at two heights are said, and a slot off the work is refused', () => {
    expect(codes(hang({ ...back, right: { drop: 53, inset: 80 } }))).toContain('drops-differ')
    expect(refused(() => hang({ ...back, left: { drop: 800, inset: 80 } }))).toMatchObject({
      code: 'drop-below-the-work',
      field: 'back.data.left.drop',
    })
  })
})

describe('strap plates', () => {
  const carry = { by: 'rings', left: { drop: 200, inset: 50 }, right: { drop: 200, inset: 50 } }
  const two = { left: { upper: { out: 15, drop: 100 } }, right: { upper: { out: 15, drop: 100 } } }
  const hang = (data: object, fixings: readonly Fixing[] = [screw], keeper: Fixing | null = null) =>
    ask('strap-plates', data, { work, centre, fixings, keeper })

  test('holes outside the frame, from the top and from the bottom; rings carry', () => {
    const answer = hang({
      carry,
      left: { upper: { out: 15, drop: 100 }, lower: { out: 12, up: 60 } },
      bottom: { right: { out: 20, inset: 100 }, middle: { out: 18 } },
    })
    expect(answer.marks.map(mark => [mark.name, mark.does, mark.from, mark.bearing.x, mark.bearing.y])).toEqual([
      [null, 'carries', 'top', 1750, 1700],
      [null, 'carries', 'top', 2250, 1700],
      ['upper left plate', 'keeps', 'top', 1685, 1800],
      ['lower left plate', 'keeps', 'bottom', 1688, 1160],
      ['bottom right plate', 'keeps', 'bottom', 2200, 1080],
      ['bottom plate', 'keeps', 'bottom', 2000, 1082],
    ])
    expect(answer.working.find(line => line.key === 'bearing-bottom-plate')?.mm.expression).toBe('1\u2009100 − 18')
    expect(answer.loads?.shares.map(share => share.shareKg)).toEqual([4, 4])
    expect(answer.needs).toContainEqual({ what: 'frame screw for a plate', count: 8, per: 'work' })
  })

  test('a ledge carries from under the bottom edge', () => {
    const answer = hang({ carry: { by: 'ledge', left: { inset: 100 }, right: { inset: 100 } }, ...two })
    expect(answer.marks.slice(0, 2).map(mark => [mark.bearing.x, mark.bearing.y])).toEqual([
      [1800, 1100],
      [2200, 1100],
    ])
    expect(codes(answer)).not.toContain('plates-carry')
    // It tips about the ledge: 8 kg × 20 mm / 700 mm at the plates.
    expect(figure(answer, 'pull-out')).toBeCloseTo((8 * 9.80665 * 20) / 700, 9)
  })

  test('plates alone: a loud caution, and a stop with fewer than two above', () => {
    const answer = hang({ carry: { by: 'plates' }, ...two })
    expect(answer.cautions[0]).toMatch(/^PLATES ALONE/)
    expect(found(answer, 'plates-carry').severity).toBe('settle')
    expect(answer.marks.every(mark => mark.does === 'carries')).toBe(true)
    expect(codes(answer)).not.toContain('plates-too-few')
    expect(found(hang({ carry: { by: 'plates' }, left: two.left }), 'plates-too-few').severity).toBe('stop')
  })

  test('screw, plate and block: what reaches the wall', () => {
    const data = { carry, ...two, block: 20, thickness: 3 }
    expect(codes(hang(data, [screw], { ...screw, length: 48 }))).not.toContain('screw-too-short')
    // 40 − 20 − 3 = 17 in the wall; 48 would leave 25.
    const short = found(hang(data, [screw], { ...screw, length: 40 }), 'screw-too-short')
    expect(short.text).toContain('17 mm of it reach the wall')
    expect(short.text).toContain('48 mm long')
    expect(hang(data).needs).toContainEqual({ what: 'block 20 mm thick', count: 2, per: 'wall' })
  })

  test('no plate at all is refused, and one above the work', () => {
    expect(refused(() => hang({ carry })).code).toBe('no-plate')
    expect(refused(() => hang({ carry, left: { lower: { out: 10, up: 900 } } }))).toMatchObject({
      code: 'mark-above-the-work',
      field: 'back.data.left.lower.up',
    })
    expect(refused(() => hang({ carry, bottom: { left: { out: 10, inset: 700 } } })).field).toBe(
      'back.data.bottom.left.inset',
    )
  })
})

describe('security hangers', () => {
  const side = { drop: 30, inset: 100 }
  const back = {
    left: side,
    right: side,
    lock: { up: 12, left: 280 },
    head: 'level',
    tool: 'flat-key',
    toolFrom: 'below',
  }
  const plate: Fixing = { name: 'wall plate', kind: 'plate', holeOffset: 8, ratedKg: 40 }
  const lock: Fixing = { name: 'T-head screw', kind: 'lock', holeOffset: 0, ratedKg: null }
  const hang = (data: object, changes: object = {}) =>
    ask('security-hangers', data, { work, centre, fixings: [plate], keeper: lock, ...changes })

  test('the lock is measured from the bottom edge and its left edge', () => {
    const answer = hang(back)
    const mark = answer.marks.find(one => one.name === 'lock')
    // 1 500 − 400 + 12 and 1 700 + 280.
    expect(mark).toMatchObject({ does: 'keeps', from: 'bottom', bearing: { x: 1980, y: 1112 } })
    expect(answer.working.find(line => line.key === 'bearing-lock')?.mm).toEqual({
      expression: '1\u2009100 + 12',
      value: '1\u2009112',
    })
    expect(answer.marks[0]?.hole).toEqual({ x: 1800, y: 1878 })
    expect(answer.loads?.shares).toHaveLength(2)
    expect(answer.cautions.join(' ')).toContain('Set the head level')
  })

  test('the register has its place, type and tool', () => {
    expect(hang(back).locks).toEqual([
      { name: 'lock', at: { x: 1980, y: 1112 }, type: 'T-head screw', tool: 'flat key', from: 'below', room: null },
    ])
  })

  test('measured from behind, its left is the right of the front; the tool’s side turns too', () => {
    const turned = { ...back, toolFrom: 'left', toolLength: 100 }
    const seen = ask('security-hangers', turned, { work, centre, fixings: [plate] }, 'back')
    expect(seen.marks.find(one => one.name === 'lock')?.bearing.x).toBe(2300 - 280)
    expect(seen.figures.find(one => one.key === 'tool-room')?.label).toContain('to the right of the work')
    const both = hang({ ...back, lock: { up: 12, left: 280, right: 315 } })
    expect(found(both, 'lock-insets-differ').figures.difference).toBe(-5)
    expect(hang({ ...back, lock: { up: 12 } }).marks.find(one => one.name === 'lock')?.bearing.x).toBe(2000)
  })

  test('room for the tool: below, and beside to the wall’s end', () => {
    expect(codes(hang(back))).toContain('tool-not-measured')
    const long = { ...back, toolLength: 150 }
    expect(figure(hang(long), 'tool-room')).toBe(138)
    expect(codes(hang(long))).not.toContain('tool-no-room')
    const low = hang(long, { centre: { x: 2000, y: 500 } })
    expect(found(low, 'tool-no-room').severity).toBe('stop')
    const side = { ...back, toolFrom: 'left', toolLength: 700 }
    // 700 − 280 behind the work = 420 to its left; 320 are there when its edge stands at 320.
    expect(figure(hang(side), 'tool-room')).toBe(420)
    expect(found(hang(side, { centre: { x: 620, y: 1500 } }), 'tool-no-room').figures).toMatchObject({
      room: 420,
      free: 320,
    })
  })

  test('no lock chosen is to settle; a lock off the work is refused', () => {
    expect(codes(hang(back, { keeper: null }))).toContain('lock-not-chosen')
    expect(refused(() => hang({ ...back, lock: { up: 800 } })).field).toBe('back.data.lock.up')
    expect(refused(() => hang({ ...back, lock: { up: 12, right: 700 } })).field).toBe('back.data.lock.right')
  })
})

describe('transit plates', () => {
  const side = { drop: 120, out: 20 }
  const hang = (data: object) => ask('transit-plates', data, { work, centre })

  test('turned out, the holes stand beside the work', () => {
    const answer = hang({
      version: 'hanging',
      left: { ...side, lower: { out: 18, up: 100 } },
      right: side,
      spacing: 640,
    })
    expect(answer.marks.map(mark => [mark.bearing.x, mark.bearing.y, mark.does])).toEqual([
      [1680, 1780, 'carries'],
      [2320, 1780, 'carries'],
      [1682, 1200, 'keeps'],
    ])
    expect(answer.spacing?.agrees).toBe(true)
    expect(codes(answer)).not.toContain('travel-plates-carry')
    expect(hang({ version: 'hanging', left: side, right: side, spacing: 645 }).spacing?.agrees).toBe(false)
  })

  test('plates for travel only stop', () => {
    expect(found(hang({ version: 'travel', left: side, right: side }), 'travel-plates-carry').severity).toBe('stop')
  })
})

describe('frames out of square', () => {
  const rings = { left: { drop: 100, inset: 50 }, right: { drop: 100, inset: 50 } }
  const hang = (left: number, right: number) =>
    ask(
      'd-rings',
      { ...rings, diagonals: { left, right } },
      { work: { height: 400, width: 300 }, centre, wall: plainWall },
    )

  test('300 by 400 has diagonals of 500', () => {
    expect(codes(hang(500, 500))).not.toContain('out-of-square')
    expect(codes(hang(501.5, 498.5))).not.toContain('out-of-square')
    // A bottom edge 5 to the right: √(305² + 400²) and √(295² + 400²).
    const leaning = found(hang(Math.hypot(305, 400), Math.hypot(295, 400)), 'out-of-square')
    expect(leaning.figures.aside).toBeCloseTo(5, 9)
    expect(leaning.text).toContain('5 mm to the right')
    expect(codes(hang(Math.hypot(305, 400), Math.hypot(295, 400)))).not.toContain('diagonals-against-size')
  })

  test('diagonals that fit no such size', () => {
    expect(codes(hang(520, 520))).toContain('diagonals-against-size')
    expect(refused(() => hang(50, 500))).toMatchObject({
      code: 'diagonal-impossible',
      field: 'back.data.diagonals.left',
    })
  })
})
