/** Walls that two rooms share, with their doorways, and a wall moved: what becomes of the rooms, by hand. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { createHost } from '../../main/hosts/host.ts'
import type { Input, Name } from '../../src/contract/contract.ts'
import { callClock, callOn, makeFixture } from './fixture.ts'

const folder = mkdtempSync(join(tmpdir(), 'hangwright-plan-walls-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const { file, known } = await makeFixture(folder)
const host = createHost({ kind: 'command line', data: join(folder, 'data'), clock: callClock, checksOutput: true })
host.openFile(file)
const call = <N extends Name>(name: N, input: Input<N>) => callOn(host, name, input)
const rooms = async () => (await call('plan.get', { exhibition: null })).rooms

describe('walls on the plan', () => {
  test('are made one with their thickness, the doorway through both leading from one room to the other, and parted again', async () => {
    await call('plan.placeRoom', { rooms: [{ id: known.room, changes: { at: { was: null, to: [0, 0] } } }] })
    const next = await call('room.add', {
      name: 'Room 2',
      height: 3450,
      place: { at: [9440, 0], turn: 0, storey: '' },
      walls: [{ length: 4000 }, { length: 5200 }, { length: 4000 }, { length: 5200 }],
    })
    const west = next.walls[3] ?? ''
    // Room 1's door lies from 2000 to 3000 down its east wall; room 2 sees it from 5200 − 3000 on.
    const door = await call('opening.add', { wall: west, kind: 'door', x: 2210, y: 0, width: 1000, height: 2100 })
    expect(await call('wall.share', { id: known.east, with: west, thickness: 300 })).toEqual({ doorways: 1 })
    const [one, two] = await rooms()
    expect(one?.walls[1]).toMatchObject({ backs: west, thickness: 300 })
    expect(one?.walls[1]?.openings[0]).toMatchObject({ other: door.id, leadsTo: next.id })
    expect(two?.walls[3]).toMatchObject({ backs: known.east, thickness: 300 })
    expect(two?.walls[3]?.openings[0]).toMatchObject({ other: known.door, leadsTo: known.room })
    // Measured from either room it is as thick from both, wherever the room is put.
    const thick = async () =>
      (await rooms()).flatMap(room => room.walls).filter(({ id }) => id === west || id === known.east)
    await call('wall.update', { id: west, changes: { thickness: { was: 300, to: 280 } } })
    expect((await thick()).map(({ thickness }) => thickness)).toEqual([280, 280])
    await call('plan.placeRoom', { rooms: [{ id: next.id, changes: { at: { was: [9440, 0], to: [20_000, 0] } } }] })
    await call('wall.update', { id: known.east, changes: { thickness: { was: 280, to: 300 } } })
    await call('plan.placeRoom', { rooms: [{ id: next.id, changes: { at: { was: [20_000, 0], to: [9440, 0] } } }] })
    expect((await thick()).map(({ thickness, backs }) => [thickness, backs])).toEqual([
      [300, west],
      [300, known.east],
    ])
    await expect(call('wall.share', { id: known.east, with: next.walls[1] ?? '', thickness: null })).rejects.toThrow(
      'shared',
    )
    await call('wall.unshare', { id: west })
    const [again] = await rooms()
    expect(again?.walls[1]).toMatchObject({ backs: null, thickness: 300 })
    expect(again?.walls[1]?.openings[0]).toMatchObject({ other: null })
  })

  test('the first wall moved outwards: its neighbours grow, the others stay where they stand', async () => {
    const [before] = await rooms()
    await call('wall.shift', { id: known.north, by: 250, setAside: true })
    const [after] = await rooms()
    expect(after?.walls.map(wall => wall.length)).toEqual([9140, 5450, 9140, 5450])
    expect(after?.at).toEqual([0, -250])
    expect(after?.walls[2]?.from).toEqual(before?.walls[2]?.from)
    expect(after?.walls[2]?.to).toEqual(before?.walls[2]?.to)
  })

  test('the last wall moved inwards takes the room’s own 0, 0 with it and nothing else', async () => {
    const [before] = await rooms()
    await call('wall.shift', { id: before?.walls[3]?.id ?? '', by: -140, setAside: true })
    const [after] = await rooms()
    expect(after?.walls.map(wall => wall.length)).toEqual([9000, 5450, 9000, 5450])
    expect(after?.walls[1]?.from).toEqual(before?.walls[1]?.from)
    expect(after?.walls[1]?.to).toEqual(before?.walls[1]?.to)
  })

  test('a wall turned about its left end: its neighbour shrinks, all else and what stands on the floor stays', async () => {
    const [before] = await rooms()
    if (before === undefined) throw new Error('the fixture has a room')
    const stand = {
      room: known.room,
      exhibition: null,
      kind: 'column',
      name: '',
      at: [2000, 2000] as [number, number],
      turn: 0,
    } as const
    await call('standing.add', { ...stand, width: 400, depth: 400, height: null, bottom: 0, round: false })
    const [stood] = await rooms()
    const column = stood?.things.at(-1)
    await call('wall.turn', { id: known.north, about: 'left', by: 3, setAside: true })
    const [after] = await rooms()
    // 9000 × tan 3° = 471.67 down the east wall; the wall itself 9000 / cos 3° = 9012.35. By hand.
    expect(after?.walls[1]?.length).toBeCloseTo(5450 - 471.67, 1)
    expect(after?.walls[0]?.length).toBeCloseTo(9012.35, 1)
    expect(after?.walls[0]?.angle).toBeCloseTo(93, 6)
    expect(after?.walls[3]?.angle).toBeCloseTo(87, 6)
    for (const [at, wall] of before.walls.entries()) {
      if (at < 2) continue
      for (const axis of [0, 1] as const) expect(after?.walls[at]?.from[axis]).toBeCloseTo(wall.from[axis], 1)
    }
    for (const axis of [0, 1] as const) {
      expect(after?.things.at(-1)?.at[axis]).toBeCloseTo(column?.at[axis] ?? 0, 6)
    }
    expect(after?.things.at(-1)?.turn).toBeCloseTo(column?.turn ?? 0, 6)
  })

  test('what was measured and says otherwise is named first, and set aside with its date when that is agreed', async () => {
    const corners = (await call('survey.get', { room: known.room })).corners
    const across = Math.hypot(
      (corners[2]?.at[0] ?? 0) - (corners[0]?.at[0] ?? 0),
      (corners[2]?.at[1] ?? 0) - (corners[0]?.at[1] ?? 0),
    )
    const ends = { from: corners[0]?.id ?? '', to: corners[2]?.id ?? '' }
    const { id } = await call('survey.add', { room: known.room, ...ends, value: across })
    const { walls } = (await rooms())[0] ?? { walls: [] }
    const south = walls[2]?.id ?? ''
    await expect(call('wall.shift', { id: south, by: 100 })).rejects.toThrow(/Measured otherwise: .*A–C/)
    await call('wall.shift', { id: south, by: 100, setAside: true })
    const { measures } = await call('survey.get', { room: known.room })
    expect(measures.find(one => one.id === id)).toMatchObject({ used: false, how: 'measured', value: across })
    const drawn = measures.filter(({ kind, how, used }) => kind === 'side' && how === 'drawn' && used)
    expect(drawn.map(({ from }) => from).filter(from => from === 1 || from === 3).length).toBeGreaterThan(1)
  })
})

/** Two rooms of 6 by 4 m and 5 by 4 m, 300 mm of wall between them, with a door of 900 mm through it. */
async function house() {
  const room = (name: string, x: number, wide: number) =>
    call('room.add', {
      name,
      height: 3000,
      how: 'drawn',
      place: { at: [x, 0], turn: 0, storey: 'up' },
      walls: [wide, 4000, wide, 4000].map((length, at) => ({ length, name: ['n', 'e', 's', 'w'][at] ?? '' })),
    })
  const [west, east] = [await room('West', 0, 6000), await room('East', 6300, 5000)]
  const [a, b] = [west.walls[1] ?? '', east.walls[3] ?? '']
  const door = { kind: 'door', y: 0, width: 900, height: 2100 } as const
  await call('opening.add', { wall: a, x: 1000, ...door })
  await call('opening.add', { wall: b, x: 2100, ...door })
  expect(await call('wall.share', { id: a, with: b, thickness: 300 })).toEqual({ doorways: 1 })
  const seen = async () => {
    const { rooms: all } = await call('plan.get', { exhibition: null })
    const of = (id: string) => all.find(one => one.id === id)
    const [one, two] = [of(west.id), of(east.id)]
    if (one === undefined || two === undefined) throw new Error('both were made')
    return { west: one, east: two }
  }
  return { west, east, a, b, seen }
}

describe('a wall that two rooms share', () => {
  test('goes with both its sides, as thick as before, in one edit that one undo takes back', async () => {
    const { a, b, seen } = await house()
    const before = await seen()
    await call('wall.shift', { id: a, by: 200 })
    const now = await seen()
    expect(now.west.walls.map(({ length }) => length)).toEqual([6200, 4000, 6200, 4000])
    expect(now.east.walls.map(({ length }) => length)).toEqual([4800, 4000, 4800, 4000])
    expect([now.west.walls[1]?.from, now.east.walls[3]?.to]).toEqual([
      [6200, 0],
      [6500, 0],
    ])
    // The far wall of the next room stays where it stands.
    expect(now.east.walls[1]?.from).toEqual(before.east.walls[1]?.from)
    expect([now.west.walls[1]?.thickness, now.east.walls[3]?.thickness]).toEqual([300, 300])
    expect(now.west.walls[1]?.openings[0]?.other).toBe(now.east.walls[3]?.openings[0]?.id)
    const { edits } = await call('edit.list', {})
    expect(edits[0]?.label).toBe('Move West e and East w outwards by 200 mm')
    await call('edit.undo', {})
    expect(await seen()).toEqual(before)
    // From the other side it is the same wall the other way.
    await call('wall.shift', { id: b, by: -200 })
    expect((await seen()).west.walls.map(({ length }) => length)).toEqual([6200, 4000, 6200, 4000])
  })

  test('turned it stays as thick, and its doorway one hole', async () => {
    const { a, seen } = await house()
    await call('wall.turn', { id: a, about: 'left', by: 4 })
    const { west, east } = await seen()
    const [mine, theirs] = [west.walls[1], east.walls[3]]
    if (mine === undefined || theirs === undefined) throw new Error('both have four walls')
    const along = (wall: typeof mine, x: number) => {
      const share = x / wall.length
      return [0, 1].map(at => (wall.from[at] ?? 0) + ((wall.to[at] ?? 0) - (wall.from[at] ?? 0)) * share)
    }
    const [hole, there] = [mine.openings[0], theirs.openings[0]]
    const [p, q] = [along(mine, (hole?.x ?? 0) + 450), along(theirs, (there?.x ?? 0) + 450)]
    // Straight through the wall: the two middles are its thickness apart.
    expect(Math.hypot((p[0] ?? 0) - (q[0] ?? 0), (p[1] ?? 0) - (q[1] ?? 0))).toBeCloseTo(300, 1)
    // 300 tan 2° = 10.5 mm that the other face turns beside the pivot. By hand.
    expect(Math.abs((there?.x ?? 0) - 2100)).toBeGreaterThan(0.01)
    expect(mine.backs).toBe(theirs.id)
  })

  test('names what was measured in either room, and sets nothing aside unasked', async () => {
    const { a, west, east, seen } = await house()
    for (const { walls, id } of [west, east]) {
      const { corners } = await call('survey.get', { room: id })
      const ends = { from: corners[0]?.id ?? '', to: corners[1]?.id ?? '' }
      await call('survey.add', { room: id, ...ends, value: walls === west.walls ? 6000 : 5000 })
    }
    const before = await seen()
    await expect(call('wall.shift', { id: a, by: 200 })).rejects.toThrow(/Measured otherwise: A–B and A–B of East\./)
    expect(await seen()).toEqual(before)
    await call('wall.shift', { id: a, by: 200, setAside: true })
    expect((await seen()).east.walls[0]?.length).toBe(4800)
  })

  test('one side alone makes it thicker or thinner, is refused through the other, and parts what is no longer one', async () => {
    const { a, b, seen } = await house()
    const sides = async () => {
      const { west, east } = await seen()
      return [west.walls[1], east.walls[3]].map(wall => [
        wall?.backs,
        wall?.thickness,
        wall?.openings[0]?.other !== null,
      ])
    }
    await call('wall.shift', { id: a, by: -100, alone: true })
    expect(await sides()).toEqual([
      [b, 400, true],
      [a, 400, true],
    ])
    expect((await seen()).east.walls.map(({ length }) => length)).toEqual([5000, 4000, 5000, 4000])
    await expect(call('wall.shift', { id: a, by: 395, alone: true })).rejects.toThrow(
      'Only 5 mm of wall would be left.',
    )
    await expect(call('wall.shift', { id: a, by: 600, alone: true })).rejects.toThrow('come through the other side')
    await call('wall.shift', { id: a, by: -500, alone: true })
    expect(await sides()).toEqual([
      [null, null, false],
      [null, null, false],
    ])
  })

  test('is turned on both sides only where it is known how they lie', async () => {
    const { a, b, east, seen } = await house()
    await call('plan.placeRoom', { rooms: [{ id: east.id, changes: { at: { was: [6300, 0], to: null } } }] })
    await expect(call('wall.turn', { id: a, about: 'left', by: 2 })).rejects.toThrow('while a room has no place')
    await call('wall.shift', { id: b, by: 150 })
    expect((await seen()).west.walls[0]?.length).toBe(5850)
    await call('wall.turn', { id: a, about: 'left', by: 2, alone: true })
    expect((await seen()).west.walls[1]?.backs).toBeNull()
  })

  test('is told of where a typed length or a new place moves its sides apart, until that is settled', async () => {
    const { east, a, b } = await house()
    const told = async () =>
      (await call('room.findings', {})).findings.filter(
        ({ code, subject }) => code === 'shared-apart' && (subject.id === a || subject.id === b),
      )
    expect(await told()).toEqual([])
    await call('plan.placeRoom', { rooms: [{ id: east.id, changes: { at: { was: [6300, 0], to: [6340, 0] } } }] })
    expect((await told()).map(({ text, figures }) => [text, figures.apart])).toEqual([
      [
        'West e is one wall with East w: its two sides lie 340 mm apart on the plan, and it was measured 300 mm thick. Place a room anew, measure the wall, or part them.',
        340,
      ],
    ])
    await call('wall.update', { id: b, changes: { thickness: { was: 300, to: 340 } } })
    expect(await told()).toEqual([])
    await call('plan.placeRoom', { rooms: [{ id: east.id, changes: { at: { was: [6340, 0], to: [9000, 0] } } }] })
    expect((await told())[0]?.text).toContain('do not lie back to back')
  })

  test('moves nothing where the next room has no room for it', async () => {
    const { a, seen } = await house()
    const before = await seen()
    await expect(call('wall.shift', { id: a, by: 5000 })).rejects.toThrow('no length left')
    expect(await seen()).toEqual(before)
  })
})
