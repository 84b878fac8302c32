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
    await call('wall.shift', { id: known.north, by: 250 })
    const [after] = await rooms()
    expect(after?.walls.map(wall => wall.length)).toEqual([9140, 5450, 9140, 5450])
    expect(after?.at).toEqual([0, -250])
    expect(after?.walls[2]?.from).toEqual(before?.walls[2]?.from)
    expect(after?.walls[2]?.to).toEqual(before?.walls[2]?.to)
  })

  test('the last wall moved inwards takes the room’s own 0, 0 with it and nothing else', async () => {
    const [before] = await rooms()
    await call('wall.shift', { id: before?.walls[3]?.id ?? '', by: -140 })
    const [after] = await rooms()
    expect(after?.walls.map(wall => wall.length)).toEqual([9000, 5450, 9000, 5450])
    expect(after?.walls[1]?.from).toEqual(before?.walls[1]?.from)
    expect(after?.walls[1]?.to).toEqual(before?.walls[1]?.to)
  })
})
