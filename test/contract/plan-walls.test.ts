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
