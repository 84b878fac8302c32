/**
 * A room's axes lie along its first wall. Whatever makes another wall the first, or moves it, what stands in the room
 * stays where it is in the building: partitions, furniture with the way it is turned, ceiling tracks. Compared with
 * where `plan.get` put them before, the one in the building's millimetres.
 */
import fc from 'fast-check'
import { beforeEach, describe, expect, test } from 'vitest'
import { newCatalogue, type Opened, openOn, ownFolder } from './opened.ts'

let here: Opened
let exhibition: string
beforeEach(async () => {
  const folder = ownFolder()
  here = openOn(folder, newCatalogue(folder))
  exhibition = (await here.call('exhibition.add', { title: 'Low Tide' })).id
}, 60_000)

type At = readonly [number, number]
/** An L: six walls, one corner of 270°, so that no two turns of it are alike. */
const outline = [
  { length: 6000, angle: 90 },
  { length: 5000, angle: 90 },
  { length: 2500, angle: 90 },
  { length: 2000, angle: 270 },
  { length: 3500, angle: 90 },
  { length: 3000, angle: 90 },
]

async function furnished(at: At, turn: number): Promise<{ readonly room: string; readonly walls: readonly string[] }> {
  const { id: room, walls } = await here.call('room.add', {
    name: 'Annex',
    height: 3200,
    walls: outline,
    place: { at: [...at], turn, storey: '' },
  })
  await here.call('partition.add', { exhibition, room, from: [1200, 900], to: [3100, 1500] })
  const size = { width: 1600, depth: 450 }
  await here.call('standing.add', { exhibition, room, kind: 'bench', at: [4000, 1500], turn: 30, ...size })
  await here.call('standing.add', { exhibition: null, room, kind: 'column', at: [700, 2200], width: 400, depth: 300 })
  const ends: [[number, number], [number, number]] = [
    [500, 500],
    [5500, 700],
  ]
  await here.call('track.add', { room, ends, height: 3000 })
  return { room, walls }
}

async function drawn(room: string) {
  const { rooms } = await here.call('plan.get', { exhibition })
  const found = rooms.find(({ id }) => id === room)
  if (found === undefined) throw new Error('the room is not on the plan')
  return found
}

/** Everything that stands there as points; a way that something is turned as a point a metre off. */
async function stands(room: string): Promise<readonly At[]> {
  const { partitions, things, tracks } = await drawn(room)
  return [
    ...partitions.flatMap(({ from, to }) => [from, to]),
    ...things.flatMap(({ at: [x, y], turn }): At[] => {
      const angle = (turn * Math.PI) / 180
      return [
        [x, y],
        [x + 1000 * Math.cos(angle), y + 1000 * Math.sin(angle)],
      ]
    }),
    ...tracks.flatMap(({ from, to }) => [from, to]),
  ]
}

function expectSame(now: readonly At[], was: readonly At[]): void {
  expect(now).toHaveLength(was.length)
  for (const [at, [x, y]] of now.entries()) {
    const [wx, wy] = was[at] ?? [Number.NaN, Number.NaN]
    expect(Math.hypot(x - wx, y - wy), `point ${at}: ${x}, ${y} was at ${wx}, ${wy}`).toBeLessThan(0.05)
  }
}

type Act = 'move' | 'drop' | 'add first' | 'split' | 'join' | 'shift'
const acts: readonly Act[] = ['move', 'drop', 'add first', 'split', 'join', 'shift']

/** Does it to the room if it may be done; what is refused changes nothing, and is compared too. */
async function act(room: string, what: Act, which: number, to: number): Promise<void> {
  const { walls } = await drawn(room)
  const wall = walls[which % walls.length]
  if (wall === undefined) return
  const { id } = wall
  if (what === 'move') await here.ask('wall.move', { id, before: walls[to % (walls.length + 1)]?.id ?? null })
  else if (what === 'drop' && walls.length > 4) await here.ask('wall.remove', { id })
  else if (what === 'add first') await here.ask('wall.add', { room, after: null, wall: { length: 900 } })
  else if (what === 'split') await here.ask('wall.split', { id, x: wall.length / 3 })
  else if (what === 'join') await here.ask('wall.join', { id })
  else
    await here.ask('wall.shift', { id: walls[to % 2 === 0 ? 0 : walls.length - 1]?.id ?? id, by: 120, setAside: true })
}

describe('what stands in a room', () => {
  test('stays where it is when the first wall goes to the end, and so do the walls', async () => {
    const { room, walls } = await furnished([2000, 1000], 25)
    const [was, before] = [await stands(room), await drawn(room)]
    await here.call('wall.move', { id: walls[0] ?? '', before: null })
    const after = await drawn(room)
    expect(after.turn).toBeCloseTo(115, 6)
    expectSame(await stands(room), was)
    const corners = (of: typeof before) => Object.fromEntries(of.walls.map(({ id, from }) => [id, from]))
    const [now, then] = [corners(after), corners(before)]
    expectSame(
      walls.map(id => now[id] ?? [0, 0]),
      walls.map(id => then[id] ?? [0, 0]),
    )
    // One edit, taken back whole.
    await here.call('edit.undo', {})
    expect(await drawn(room)).toEqual(before)
  })

  test('stays where it is when the first wall is moved outwards', async () => {
    const { room, walls } = await furnished([0, 0], 0)
    const was = await stands(room)
    await here.call('wall.shift', { id: walls[0] ?? '', by: 400, setAside: true })
    expect((await drawn(room)).at).toEqual([0, -400])
    expectSame(await stands(room), was)
  })

  test('in a room without a place keeps to the walls that it stood among', async () => {
    const { room, walls } = await furnished([0, 0], 0)
    await here.call('plan.placeRoom', { rooms: [{ id: room, changes: { at: { was: [0, 0], to: null } } }] })
    await here.call('wall.move', { id: walls[0] ?? '', before: null })
    // The second wall ran down the page from 6000, 0: what was 1200 across and 900 down is 900 along it, 4800 before it.
    const [partition] = (await here.call('partition.list', { exhibition })).partitions.filter(one => one.room === room)
    expect(partition?.ends).toEqual([
      [900, 4800],
      [1500, 2900],
    ])
  })

  test('stays where it is whatever is done to the walls', async () => {
    const doing = fc.tuple(fc.constantFrom(...acts), fc.nat(9), fc.nat(9))
    const place = fc.record({
      at: fc.tuple(fc.integer({ min: -20_000, max: 20_000 }), fc.integer({ min: -20_000, max: 20_000 })),
      turn: fc.constantFrom(0, 90, 180, 270, 17.5, 203),
    })
    await fc.assert(
      fc.asyncProperty(place, fc.array(doing, { minLength: 1, maxLength: 6 }), async ({ at, turn }, doings) => {
        const { room } = await furnished(at, turn)
        const was = await stands(room)
        for (const [what, which, to] of doings) {
          await act(room, what, which, to)
          expectSame(await stands(room), was)
        }
      }),
      { numRuns: 12 },
    )
  }, 120_000)
})
