/**
 * What stands in rooms: whose it is, where it is measured from, and where it stands in the building once its room does.
 * Figures by hand.
 */
import { beforeEach, expect, test } from 'vitest'
import { type Opened, refusalCode } from './opened.ts'
import { showInRoom } from './show-in-room.ts'

let here: Opened
let show: string
let room: string
let walls: readonly string[]

beforeEach(async () => {
  ;({ here, show, room, walls } = await showInRoom())
})

const things = async (exhibition: string | null) => (await here.call('standing.list', { exhibition })).things

test('a plinth is put by a tape from a wall and along it, to its nearest sides, however it is turned', async () => {
  const plinth = { room, exhibition: show, kind: 'plinth', width: 600, depth: 400 } as const
  // From the north wall: 2000 along to its left side, 1200 off to its back: middle at 2300, 1400.
  await here.call('standing.add', { ...plinth, byWall: { wall: walls[0] ?? '', along: 2000, off: 1200 } })
  // From the east wall, which runs down the page at x = 9140 and looks to the left; turned by 90° it is 400 along x and
  // 600 along y: its left side is at y = 1000, its back at 9140 − 700.
  await here.call('standing.add', { ...plinth, turn: 90, byWall: { wall: walls[1] ?? '', along: 1000, off: 700 } })
  expect((await things(show)).map(({ at }) => at)).toEqual([
    [2300, 1400],
    [8240, 1300],
  ])
})

test('a bench is of its show alone, a column of the building; a closed show keeps its bench as it was', async () => {
  const other = (await here.call('exhibition.add', { title: 'High Water' })).id
  const facts = { room, at: [4000, 2600] as [number, number], width: 400, depth: 400 }
  await here.call('standing.add', { ...facts, exhibition: null, kind: 'column' })
  const bench = await here.call('standing.add', { ...facts, exhibition: show, kind: 'bench' })
  expect((await things(show)).map(({ kind }) => kind)).toEqual(['column', 'bench'])
  expect((await things(other)).map(({ kind }) => kind)).toEqual(['column'])
  expect((await things(null)).map(({ kind }) => kind)).toEqual(['column'])

  const copy = (await here.call('exhibition.copy', { id: show, title: 'Again', placements: false })).id
  expect((await things(copy)).map(({ kind }) => kind)).toEqual(['column', 'bench'])

  await here.call('exhibition.setState', { id: show, was: 'planning', to: 'closed' })
  expect(refusalCode(await here.ask('standing.remove', { id: bench.id }))).toBe('exhibition-closed')
  const moved = { at: { was: facts.at, to: [1000, 1000] as [number, number] } }
  expect(refusalCode(await here.ask('standing.update', { id: bench.id, changes: moved }))).toBe('exhibition-closed')
  expect(refusalCode(await here.ask('edit.undo', {}))).not.toBe('exhibition-closed')
})

test('on the plan of the building it stands where its room stands, turned with it', async () => {
  await here.call('standing.add', {
    room,
    exhibition: show,
    kind: 'bench',
    at: [3000, 1000],
    turn: 30,
    width: 1600,
    depth: 450,
  })
  await here.call('track.add', {
    room,
    ends: [
      [1000, 1200],
      [8000, 1200],
    ],
  })
  await here.call('partition.add', { exhibition: show, room, name: 'screen', from: [3000, 2600], length: 2400 })
  const place = {
    at: { was: null, to: [20_000, 1000] as [number, number] },
    turn: { was: 0, to: 90 },
  }
  await here.call('plan.placeRoom', { rooms: [{ id: room, changes: place }] })
  const [one] = (await here.call('plan.get', { exhibition: show })).rooms
  // A quarter turn clockwise on a page with y down takes (x, y) to (−y, x).
  expect(one?.things).toMatchObject([{ kind: 'bench', at: [19_000, 4000], turn: 120 }])
  expect(one?.tracks).toMatchObject([{ from: [18_800, 2000], to: [18_800, 9000], length: 7000 }])
  expect(one?.partitions).toMatchObject([
    { name: 'screen', from: [17_400, 4000], to: [17_400, 6400], angle: 90, sides: [{ side: 'a' }, { side: 'b' }] },
  ])
  expect((await here.call('plan.get', { exhibition: null })).rooms[0]).toMatchObject({ things: [], partitions: [] })
})
