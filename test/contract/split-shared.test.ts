/**
 * A wall between two rooms, cut and joined: both its sides are, at one place of the building, in one edit; nothing on
 * either side is lost or moved. Places are compared in the building's coordinates, as a person on site would.
 */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Output } from '../../src/contract/contract.ts'
import { newCatalogue, type Opened, openOn, ownFolder } from './opened.ts'

interface House {
  readonly open: Opened
  readonly exhibition: string
  /** The bay's north wall, 9 m, and the nook's south wall behind it, 6 m, which begins 1 m in. */
  readonly wall: string
  readonly behind: string
  readonly rooms: readonly [string, string]
}

const [long, short, inset, thick] = [9000, 6000, 1000, 250]

async function house(): Promise<House> {
  const folder = ownFolder()
  const open = openOn(folder, newCatalogue(folder))
  const { id: exhibition } = await open.call('exhibition.add', { title: 'Low Tide' })
  const room = (name: string, wide: number, at: [number, number]) =>
    open.call('room.add', {
      name,
      height: 3200,
      wallType: 'drywall',
      place: { at, turn: 0, storey: '' },
      walls: [wide, 5000, wide, 5000].map((length, side) => ({ length, name: ['n', 'e', 's', 'w'][side] ?? '' })),
    })
  const bay = await room('Bay', long, [0, 0])
  const nook = await room('Nook', short, [inset, -5000 - thick])
  const [wall = '', behind = ''] = [bay.walls[0], nook.walls[2]]
  await open.call('wall.share', { id: wall, with: behind, thickness: thick })
  return { open, exhibition, wall, behind, rooms: [bay.id, nook.id] }
}

/** A door through both at 3 to 4 m of the bay's side, an outlet and works on both sides. */
async function furnish({ open, exhibition, wall, behind, rooms }: House): Promise<void> {
  const door = { kind: 'door', y: 0, width: 1000, height: 2100 } as const
  const own = await open.call('opening.add', { wall, ...door, x: 3000 })
  const other = await open.call('opening.add', { wall: behind, ...door, x: short + inset - 4000 })
  await open.call('opening.pair', { id: own.id, other: other.id })
  const outlet = { kind: 'outlet', y: 300, width: 80, height: 80, margin: 100 } as const
  await open.call('keepClear.add', { wall, ...outlet, x: 6000 })
  await open.call('keepClear.add', { wall: behind, ...outlet, x: 4500 })
  const { rooms: rows } = await open.call('room.list', {})
  for (const [at, id] of rooms.entries()) {
    const face = rows.find(one => one.id === id)?.walls[at === 0 ? 0 : 2]?.face ?? ''
    for (const x of [700, 2200, 4900, 5600]) {
      const work = await open.call('work.add', {
        title: `Eel trap ${at} ${x}`,
        maker: '',
        kind: 'object',
        lender: null,
        exhibition,
      })
      await open.call('work.addSize', {
        work: work.id,
        part: 'framed',
        height: 500,
        width: 400,
        raw: '',
        kind: 'measured',
      })
      const places = [{ entry: work.entry ?? '', face, x, rule: 'face' as const, y: null, was: null }]
      await open.call('placement.put', { exhibition, places })
    }
  }
}

type Plan = Output<'plan.get'>
const planOf = ({ open, exhibition }: House) => open.call('plan.get', { exhibition })
const areas = (plan: Plan) => plan.rooms.map(({ area }) => Number(area.toFixed(6)))
const wallsOf = (plan: Plan) => plan.rooms.flatMap(room => room.walls)

/** Everything on walls by where its middle is in the building. */
function stands(plan: Plan): string[] {
  return wallsOf(plan)
    .flatMap(wall => {
      const run = Math.hypot(wall.to[0] - wall.from[0], wall.to[1] - wall.from[1])
      const at = (x: number) =>
        [0, 1].map(axis => {
          const [from, to] = [wall.from[axis] ?? 0, wall.to[axis] ?? 0]
          return (from + ((to - from) * x) / run).toFixed(2)
        })
      return [
        ...wall.openings.map(one => `${one.kind} ${one.id} ${at(one.x + one.width / 2)} ${one.y} ${one.other}`),
        ...wall.fixtures.map(one => `${one.kind} ${one.id} ${at(one.x + one.width / 2)} ${one.y}`),
        ...wall.works.map(one => `${one.work} ${at(one.x)}`),
      ]
    })
    .map(line => line.replaceAll('-0.00', '0.00'))
    .sort()
}

/** Both rows of every pair point at each other, and lie face to face as far apart as the wall is thick. */
function pairs(plan: Plan): string[] {
  const walls = wallsOf(plan)
  return walls
    .filter(wall => wall.backs !== null)
    .map(wall => {
      const other = walls.find(one => one.id === wall.backs)
      expect(other?.backs).toBe(wall.id)
      expect(other?.thickness).toBe(wall.thickness)
      expect(Math.abs((other?.from[1] ?? 0) - wall.from[1])).toBeCloseTo(thick, 6)
      return `${wall.name} ${other?.name}`
    })
    .sort()
}

describe('a wall between two rooms', () => {
  test('is cut on both its sides at one place, loses nothing, and is given back by a join and by one undo', {
    timeout: 240_000,
  }, async () => {
    const one = await house()
    await furnish(one)
    const { open, wall } = one
    const before = await planOf(one)
    expect(stands(before)).toHaveLength(2 + 2 + 8)
    const list = JSON.stringify(await open.call('room.list', {}))
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: long - 1 }), fc.boolean(), async (x, byUndo) => {
        const answer = await open.ask('wall.split', { id: wall, x })
        const across = x > 3000 && x < 4000
        expect(answer.ok).toBe(!across)
        if (!answer.ok) {
          expect(answer.refusal.code).toBe('opening-across')
          expect(JSON.stringify(await open.call('room.list', {}))).toBe(list)
          return
        }
        const parted = await planOf(one)
        const cutBehind = x > inset && x < inset + short
        expect(parted.rooms.map(({ walls }) => walls.length)).toEqual([5, cutBehind ? 5 : 4])
        expect(stands(parted)).toEqual(stands(before))
        expect(areas(parted)).toEqual(areas(before))
        expect(pairs(parted)).toEqual(
          cutBehind
            ? ['n s, right part', 'n, right part s', 's n, right part', 's, right part n']
            : x <= inset
              ? ['n, right part s', 's n, right part']
              : ['n s', 's n'],
        )
        if (cutBehind) {
          // The cut is at one place of the building on both sides.
          const [bay, nook] = parted.rooms
          expect(bay?.walls[0]?.to[0]).toBeCloseTo(nook?.walls[2]?.to[0] ?? 0, 6)
        }
        const { findings } = await open.call('room.findings', {})
        expect(findings.filter(({ code }) => code === 'shared-apart')).toEqual([])
        if (byUndo) {
          await open.call('edit.undo', {})
          expect(JSON.stringify(await open.call('room.list', {}))).toBe(list)
        } else await open.call('wall.join', { id: wall })
        const again = await planOf(one)
        expect(again.rooms.map(({ walls }) => walls.map(({ length }) => length))).toEqual(
          before.rooms.map(({ walls }) => walls.map(({ length }) => length)),
        )
        expect(stands(again)).toEqual(stands(before))
        expect(areas(again)).toEqual(areas(before))
        expect(pairs(again)).toEqual(['n s', 's n'])
      }),
      {
        numRuns: 14,
        examples: [
          [4, false],
          [inset + 1, true],
          [3000, false],
          [4000, true],
          [inset + short - 1, false],
        ],
      },
    )
    expect(await open.call('catalogue.check', {})).toEqual({ ok: true, integrity: [] })
  })

  test('is cut on one side alone when that is asked for: the other side stays whole, with the part that more of it lies on', async () => {
    const one = await house()
    const { open, wall, behind } = one
    const { id: part } = await open.call('wall.split', { id: wall, x: 2500, alone: true })
    const plan = await planOf(one)
    expect(plan.rooms.map(({ walls }) => walls.length)).toEqual([5, 4])
    expect(wallsOf(plan).find(({ id }) => id === behind)?.backs).toBe(part)
    expect(pairs(plan)).toEqual(['n, right part s', 's n, right part'])
    // Joined again, the whole is its other side.
    await open.call('wall.join', { id: wall })
    expect(pairs(await planOf(one))).toEqual(['n s', 's n'])
  })

  test('is not cut through a hole of the next room alone, which is named with its room, nor where nobody knows how its sides lie', async () => {
    const one = await house()
    const { open, wall, behind } = one
    await open.call('opening.add', {
      wall: behind,
      kind: 'niche',
      x: 2000,
      y: 900,
      width: 600,
      height: 600,
      depth: 100,
    })
    const at = inset + short - 2300
    expect(await open.ask('wall.split', { id: wall, x: at })).toMatchObject({
      refusal: {
        code: 'opening-across',
        message: expect.stringMatching(
          /^At 2.300 mm of Nook s, its other side, the niche is in the way; it reaches from 2.000 mm to 2.600 mm\. Split/,
        ),
      },
    })
    await open.call('plan.placeRoom', {
      rooms: [{ id: one.rooms[1], changes: { at: { was: [inset, -5000 - thick], to: null } } }],
    })
    expect(await open.ask('wall.split', { id: wall, x: 2000 })).toMatchObject({ refusal: { code: 'other-side' } })
    expect((await open.ask('wall.split', { id: wall, x: at, alone: true })).ok).toBe(true)
  })

  test('whose parts are sides of two other walls is not joined with one of them silently', async () => {
    const one = await house()
    const { open, wall, behind } = one
    const { id: part } = await open.call('wall.split', { id: wall, x: 4000 })
    const hall = await open.call('room.add', {
      name: 'Hall',
      height: 3200,
      walls: [3000, 3000, 3000, 3000].map(length => ({ length })),
    })
    await open.call('wall.unshare', { id: part })
    await open.call('wall.share', { id: part, with: hall.walls[0] ?? '', thickness: null })
    const answer = await open.ask('wall.join', { id: wall })
    expect(answer).toMatchObject({ refusal: { code: 'other-side' } })
    await open.call('wall.join', { id: wall, alone: true })
    const plan = await planOf(one)
    const joined = wallsOf(plan).find(({ id }) => id === wall)
    expect(joined?.length).toBe(long)
    expect(wallsOf(plan).find(({ id }) => id === joined?.backs)?.name).toBe('s, right part')
    expect(wallsOf(plan).find(({ id }) => id === behind)?.backs).toBeNull()
  })
})
