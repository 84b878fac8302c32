/**
 * A set on a wall when something changes late, and what keeps its parts: B and C of the wall of six as a diptych with a
 * gap of 19. It stands in the middle of where they stood: (2 012 + 3 894) / 2 = 2 953; 710 + 19 + 540 = 1 269 wide, so
 * from 2 318.5 to 3 587.5, B before C. Figures by hand.
 */
import { beforeEach, describe, expect, test } from 'vitest'
import type { Input, Output } from '../../src/contract/contract.ts'
import { refusalCode } from './opened.ts'
import { type WallOfSix, wallOfSix } from './wall-of-six.ts'

let wall: WallOfSix
let set: { readonly id: string; readonly placement: string; readonly entry: string }

beforeEach(async () => {
  wall = await wallOfSix()
  const { here, show, work } = wall
  const made = await here.call('set.make', {
    works: [work.B ?? '', work.C ?? ''],
    exhibition: show,
    form: 'row',
    gapX: 19,
    gapY: 0,
  })
  set = { id: made.id, placement: made.placement ?? '', entry: made.entry ?? '' }
  await here.call('exhibition.renumber', { id: show })
}, 60_000)

type Change = Input<'late.offer'>['change']
type Offered = Output<'late.offer'>['offers'][number]

const face = () => wall.faces[0] ?? ''
const offersOf = (change: Change) => wall.here.call('late.offer', { exhibition: wall.show, change })
async function placedSet() {
  const { works } = await wall.here.call('wall.elevation', { exhibition: wall.show, face: face() })
  const found = works.find(each => each.entry === set.entry)
  if (found?.set == null) throw new Error('the set is not on the wall')
  return { ...found, set: found.set }
}
async function take(change: Change, { key, moves }: Offered) {
  const spots = moves.map(({ entry, x, y }) => ({ entry, x, y }))
  return wall.here.call('late.take', { exhibition: wall.show, change, key, moves: spots })
}
async function drill(...slots: string[]) {
  const marks = slots.map(slot => ({ placement: set.placement, slot }))
  const of = { exhibition: wall.show, face: face(), marks }
  await wall.here.call('mark.services', { ...of, checked: true })
  await wall.here.call('mark.set', { ...of, to: 'drilled' })
}
function firstOf({ offers, problem }: Output<'late.offer'>, key?: string): Offered {
  const found = key === undefined ? offers[0] : offers.find(offer => offer.key === key)
  if (found === undefined)
    throw new Error(`no ${key ?? 'offer'}: ${problem} ${offers.map(offer => offer.key).join(', ')}`)
  return found
}
/** Taken as one edit, looked at, and taken back to the last row. */
async function takenAndBack(change: Change, offer: Offered, look: () => Promise<void>) {
  const { call, state } = wall.here
  const before = bare(state())
  await take(change, offer)
  await look()
  await call('edit.undo', {})
  expect(bare(state())).toBe(before)
}
/** Without how long the journal is. */
const bare = (state: string) => state.slice(state.indexOf('\n'))

test('stands where its parts stood, as wide as they and their gap', async () => {
  const { x, centreY, size } = await placedSet()
  expect([x, centreY, size?.width, size?.height]).toEqual([2953, 1480, 1269, 910])
})

describe('late', () => {
  test('one drilled part freezes all of it', async () => {
    await drill('b-left')
    const { ask } = wall.here
    const changes = { gapX: { was: 19, to: 25 } }
    expect(refusalCode(await ask('set.update', { id: set.id, changes }))).toBe('drilled')
    expect(refusalCode(await ask('set.takeApart', { id: set.id }))).toBe('drilled')
    const { B = '', C = '' } = wall.work
    expect(refusalCode(await ask('set.parts', { id: set.id, was: [B, C], to: [C, B] }))).toBe('drilled')
    expect((await placedSet()).set.gapX).toBe(19)
  })

  test('dropped, it leaves the wall whole and its holes stay', async () => {
    await drill('a-left', 'a-right')
    const change = { kind: 'drop', entry: set.entry } as const
    const offer = firstOf(await offersOf(change))
    expect(offer.off.map(off => off.entry)).toEqual([set.entry])
    // B runs from 2 318.5, its rings 55 in: 2 373.5 and 2 973.5.
    expect(offer.deadHoles.map(hole => hole.x)).toEqual([2373.5, 2973.5])
    await takenAndBack(change, offer, async () => {
      const { works } = await wall.here.call('wall.elevation', { exhibition: wall.show, face: face() })
      expect(works.map(work => work.title)).toEqual(['A', 'D', 'E', 'F'])
      const { dead } = await wall.here.call('mark.ofFace', { exhibition: wall.show, face: face() })
      expect(dead.map(hole => hole.x)).toEqual([2373.5, 2973.5])
    })
  })

  test('swapped with another work, it moves as one', async () => {
    const change = { kind: 'swap', one: wall.entry.A ?? '', other: set.entry } as const
    const offer = firstOf(await offersOf(change))
    const moved = offer.moves.find(move => move.entry === set.entry)
    expect(moved).toMatchObject({ width: 1269, height: 910, wasX: 2953 })
    await takenAndBack(change, offer, async () => {
      const { x, set: now } = await placedSet()
      expect(x).toBe(moved?.x)
      expect(now.parts.map(part => part.title)).toEqual(['B', 'C'])
      const { marks } = await wall.here.call('mark.ofFace', { exhibition: wall.show, face: face() })
      const own = marks.filter(mark => mark.placement === set.placement)
      expect(own.map(mark => [mark.slot, mark.planned?.x])).toEqual([
        ['a-left', x - 634.5 + 55],
        ['a-right', x - 634.5 + 655],
        ['b-left', x - 634.5 + 729 + 35],
        ['b-right', x - 634.5 + 729 + 505],
      ])
    })
  })

  test('with its wall 50 lower, all its marks go down 50', async () => {
    const heights = async () => {
      const { marks } = await wall.here.call('mark.ofFace', { exhibition: wall.show, face: face() })
      return marks.filter(mark => mark.placement === set.placement).map(mark => mark.planned?.y ?? 0)
    }
    const before = await heights()
    const change: Change = { kind: 'lower', by: 50, faces: [face()] }
    await takenAndBack(change, firstOf(await offersOf(change)), async () => {
      expect(await heights()).toEqual(before.map(y => y - 50))
    })
  })

  test('another frame of a part: the set grows by what the part does', async () => {
    const change = { kind: 'different', entry: set.entry, part: wall.work.C ?? '', width: 592, height: 540 } as const
    const offer = firstOf(await offersOf(change), 'centre')
    expect(offer.moves).toEqual([])
    await takenAndBack(change, offer, async () => {
      const { x, size, set: now } = await placedSet()
      expect([x, size?.width]).toEqual([2953, 1321])
      expect(now.parts.map(part => part.size?.width)).toEqual([710, 592])
      const { marks } = await wall.here.call('mark.ofFace', { exhibition: wall.show, face: face() })
      // From 2 953 − 660.5 = 2 292.5: B’s rings at 55, C’s 35 in from 729 and from 1 321.
      expect(marks.filter(mark => mark.placement === set.placement).map(mark => mark.planned?.x)).toEqual([
        2347.5, 2947.5, 3056.5, 3578.5,
      ])
    })
  })

  test('another frame must say of which part', async () => {
    const frame = { kind: 'different', entry: set.entry, width: 592, height: 540 } as const
    expect(await offersOf(frame)).toMatchObject({ offers: [], problem: expect.stringContaining('which of its parts') })
    expect(await offersOf({ ...frame, part: wall.work.A ?? '' })).toMatchObject({
      offers: [],
      problem: expect.stringContaining('not in the set'),
    })
    const alone = { ...frame, entry: wall.entry.A ?? '', part: wall.work.A ?? '' }
    expect(await offersOf(alone)).toMatchObject({ offers: [], problem: expect.stringContaining('no set') })
  })
})

test('the register of locks names each part’s own lock, its place and its tool', async () => {
  const { call } = wall.here
  const { C = '' } = wall.work
  await call('work.setBack', {
    work: C,
    method: 'security-hangers',
    seenFrom: 'front',
    data: {
      left: { drop: 70, inset: 35 },
      right: { drop: 70, inset: 35 },
      lock: { up: 26, left: 270 },
      depth: 12,
      head: 'upright',
      tool: 'hex-key',
      toolFrom: 'below',
      toolLength: 260,
    },
  })
  const plate = (await call('fixing.add', { name: 'hanger plate', kind: 'plate', holeOffset: 10, ratedKg: 30 })).id
  const lock = (await call('fixing.add', { name: 'turned lock', kind: 'lock', holeOffset: 0, ratedKg: null })).id
  await call('set.fix', {
    placement: set.placement,
    work: C,
    changes: {
      fixing: { was: wall.hook, to: plate },
      keeper: { was: null, to: lock },
      lockTool: { was: '', to: 'flat key' },
    },
  })
  const { locks } = await call('lock.list', { exhibition: wall.show })
  // C begins 729 along in the set, its lock 270 further: 2 318.5 + 999.
  expect(locks).toMatchObject([
    {
      placement: set.placement,
      running: '2 b',
      title: 'C',
      called: 'lock',
      x: 3317.5,
      fixing: 'turned lock',
      tool: 'flat key',
    },
  ])
  const { down, hanging } = await call('crew.orders', { exhibition: wall.show })
  expect(down.find(work => work.placement === set.placement)).toMatchObject({ locks: 1, tool: 'flat key' })
  expect(hanging.find(work => work.placement === set.placement)?.parts.map(part => part.running)).toEqual([
    '2 a',
    '2 b',
  ])
  expect((await call('crew.hardware', { exhibition: wall.show })).locks).toEqual({
    byWorks: 1,
    byMarks: 1,
    agree: true,
  })
})

test('held, it stays as one', async () => {
  const { call, ask } = wall.here
  await call('placement.hold', { placements: [set.placement], held: true })
  const changes = { gapX: { was: 19, to: 25 } }
  expect(refusalCode(await ask('set.update', { id: set.id, changes }))).toBe('held')
  await call('placement.hold', { placements: [set.placement], held: false })
  expect(await call('set.update', { id: set.id, changes })).toEqual({ saved: ['gapX'], clashes: [] })
  expect((await placedSet()).size?.width).toBe(1275)
})
