/**
 * Rooms taken from a drawing as one building: a wall that two of them share is one, its doorway leads through; what is
 * taken later stands where the drawing has it; what we write is read again as the same rooms.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Output } from '../../src/contract/contract.ts'
import { box, dxfOf, oneRoom, oneRoomWords, twoRooms, twoRoomsWords } from './dxf-files.ts'
import { newCatalogue, type Opened, openOn, ownFolder, refusalCode } from './opened.ts'

function fresh(): Opened {
  const folder = ownFolder()
  return openOn(folder, newCatalogue(folder))
}

const doors = { kind: 'door', height: 2100 } as const
const twice = dxfOf(twoRooms, twoRoomsWords)

async function take({ call }: Opened, handle: string, names: readonly string[], openings: typeof doors | null = doors) {
  const { outlines } = await call('drawing.read', { handle })
  const rooms = names.map(name => ({ outline: outlines.find(one => one.name === name)?.key ?? 'none', name }))
  return call('drawing.take', { handle, rooms, height: 3200, ...(openings === null ? {} : { openings }) })
}

type Rooms = Output<'plan.get'>['rooms']
const roomsOf = async ({ call }: Opened): Promise<Rooms> => (await call('plan.get', { exhibition: null })).rooms
const cornersOf = (rooms: Rooms, name: string) =>
  rooms.find(room => room.name === name)?.walls.map(({ from }) => from.map(mm => Math.round(mm)))

/** What two rooms of the drawing have in common, as the plan tells it. */
function sharedIn(rooms: Rooms) {
  const [east, west] = ['East Cabinet', 'West Cabinet'].map(name => rooms.find(room => room.name === name))
  const wall = east?.walls.find(each => each.backs !== null)
  const behind = west?.walls.find(each => each.id === wall?.backs)
  return { east, west, wall, behind, door: wall?.openings[0], hole: behind?.openings[0] }
}

/** The wall between them is one, 200 mm thick, with one doorway of 1,000 mm, 1,500 mm from its left end on either side. */
function expectShared(rooms: Rooms): void {
  const { east, west, wall, behind, door, hole } = sharedIn(rooms)
  expect([wall?.thickness, behind?.thickness, behind?.backs]).toEqual([200, 200, wall?.id])
  expect([door?.x, door?.width, hole?.x, hole?.width]).toEqual([1500, 1000, 1500, 1000])
  expect([door?.leadsTo, door?.other, hole?.leadsTo, hole?.other]).toEqual([west?.id, hole?.id, east?.id, door?.id])
}

describe('rooms of one drawing', () => {
  test('share their wall, and its doorway leads from one to the other; one undo takes all back', async () => {
    const opened = fresh()
    const before = opened.state().split('\n').slice(1)
    const handle = opened.give('two.dxf', twice)
    expect(await take(opened, handle, ['East Cabinet', 'West Cabinet'])).toMatchObject({ openings: 2, doorways: 1 })
    expectShared(await roomsOf(opened))
    await opened.call('edit.undo', {})
    expect(opened.state().split('\n').slice(1)).toEqual(before)
  })

  test('with their gaps closed the wall is shared, and nothing leads through', async () => {
    const opened = fresh()
    const taken = await take(opened, opened.give('two.dxf', twice), ['East Cabinet', 'West Cabinet'], null)
    expect(taken).toMatchObject({ openings: 0, doorways: 0 })
    const { wall, behind, door } = sharedIn(await roomsOf(opened))
    expect([wall?.thickness, behind?.backs, door]).toEqual([200, wall?.id, undefined])
  })

  test('taken one after the other stand as they are drawn, wherever the first was carried', async () => {
    const opened = fresh()
    const handle = opened.give('two.dxf', twice)
    await take(opened, handle, ['West Cabinet'])
    const [west] = await roomsOf(opened)
    const [x, y] = west?.at ?? [0, 0]
    const change = { at: { was: [x, y] as [number, number], to: [x + 7000, y - 300] as [number, number] } }
    await opened.call('plan.placeRoom', { rooms: [{ id: west?.id ?? '', changes: change }] })
    expect(await take(opened, handle, ['East Cabinet'])).toMatchObject({ openings: 1, doorways: 1 })
    const rooms = await roomsOf(opened)
    expectShared(rooms)
    // 5,200 mm from left end to left end in the drawing.
    const [[eastX = 0, eastY = 0] = []] = cornersOf(rooms, 'East Cabinet') ?? []
    const [[westX = 0, westY = 0] = []] = cornersOf(rooms, 'West Cabinet') ?? []
    expect([westX - eastX, westY - eastY]).toEqual([5200, 0])
    await opened.call('edit.undo', {})
    expect((await roomsOf(opened)).map(room => room.name)).toEqual(['West Cabinet'])
  })

  test('taken once more, and of another drawing, stand beside what is there', async () => {
    const opened = fresh()
    const handle = opened.give('two.dxf', twice)
    await take(opened, handle, ['East Cabinet', 'West Cabinet'])
    await take(opened, handle, ['East Cabinet'])
    const other = opened.give('other.dxf', dxfOf(box('A-WALL', 0, 0, 3100, 2700), [{ text: 'Store', at: [900, 900] }]))
    await take(opened, other, ['Store'])
    const rooms = await roomsOf(opened)
    const left = (room: Rooms[number]) => Math.min(...room.walls.map(wall => wall.from[0]))
    const right = (room: Rooms[number]) => Math.max(...room.walls.map(wall => wall.from[0]))
    const [east, west, again, store] = rooms
    if (east === undefined || west === undefined || again === undefined || store === undefined) throw new Error('four')
    expect(left(again)).toBeGreaterThan(Math.max(right(east), right(west)))
    expect(left(store)).toBeGreaterThan(right(again))
  })
})

test('what goes out as DXF comes in again as the same rooms, where they stand and with their doorway', async () => {
  const first = fresh()
  await take(first, first.give('two.dxf', twice), ['East Cabinet', 'West Cabinet'])
  const { files } = await first.call('sheet.plan', { exhibition: null, formats: ['dxf'] })
  const written = readFileSync(first.host.handles.path(files[0]?.handle ?? ''))
  const second = fresh()
  const handle = second.give('out.dxf', written)
  const read = await second.call('drawing.read', { handle })
  expect(read).toMatchObject({ statedUnit: 'mm', ask: '', remarks: [] })
  expect(read.layers.filter(layer => layer.chosen).map(layer => layer.name)).toEqual(['WALLS'])
  await take(second, handle, ['East Cabinet', 'West Cabinet'])
  const [was, now] = [await roomsOf(first), await roomsOf(second)]
  expectShared(now)
  const said = (rooms: Rooms) =>
    rooms
      .map(({ name, area, turn, walls }) => ({
        name,
        area,
        turn,
        walls: walls.map(({ length, angle, thickness, openings }) => [
          length,
          angle,
          thickness,
          openings.map(({ x, width }) => [x, width]),
        ]),
      }))
      .sort((a, b) => a.name.localeCompare(b.name))
  expect(said(now)).toEqual(said(was))
  for (const { name } of was) expect(cornersOf(now, name)).toEqual(cornersOf(was, name))
})

test('a reading that is cancelled in its worker leaves nothing, and the next one reads', {
  timeout: 60_000,
}, async () => {
  const opened = fresh()
  const many = Array.from({ length: 60_000 }, (_, at) => box('A-FURN', at * 10, 9000, 5, 5)).flat()
  const handle = opened.give('large.dxf', dxfOf([...oneRoom, ...many], oneRoomWords))
  const before = { files: readdirSync(opened.host.handles.folder).sort(), state: opened.state() }
  let cancelled = false
  opened.host.subscribe(event => {
    if (event.kind === 'progress' && event.job === 'plan-1' && event.done > 0)
      cancelled ||= opened.host.cancel('plan-1')
  })
  expect(refusalCode(await opened.ask('drawing.read', { handle }, 'plan-1'))).toBe('cancelled')
  expect(cancelled).toBe(true)
  expect({ files: readdirSync(opened.host.handles.folder).sort(), state: opened.state() }).toEqual(before)
  const read = await opened.call('drawing.read', { handle, layers: ['A-WALL'] }, 'plan-1')
  expect(read.outlines.map(one => one.name)).toEqual(['East Cabinet'])
})
