/** A room copied beside itself: all of the building, nothing of any show, and neither touches the other. */
import { expect, test } from 'vitest'
import { newCatalogue, openOn, ownFolder } from './opened.ts'

test('the copy has walls, openings, fixtures, measures and what of the building stands there; works stay', async () => {
  const folder = ownFolder()
  const open = openOn(folder, newCatalogue(folder))
  const { id: exhibition } = await open.call('exhibition.add', { title: 'Low Tide' })
  const walls = [9000, 5000, 9000, 5000].map((length, at) => ({ length, name: `wall ${at + 1}` }))
  const room = await open.call('room.add', { name: 'Annex', height: 3200, walls })
  const other = await open.call('room.add', { name: 'Shed', height: 3200, walls })
  const [wall = ''] = room.walls
  await open.call('opening.add', { wall, kind: 'door', x: 3000, y: 0, width: 1000, height: 2100 })
  await open.call('keepClear.add', { wall, kind: 'outlet', x: 5000, y: 300, width: 80, height: 80, margin: 100 })
  await open.call('standing.add', {
    room: room.id,
    exhibition: null,
    kind: 'column',
    at: [2000, 2000],
    turn: 0,
    width: 300,
    depth: 300,
  })
  await open.call('standing.add', {
    room: room.id,
    exhibition,
    kind: 'bench',
    at: [4000, 2000],
    turn: 0,
    width: 1200,
    depth: 400,
  })
  const { corners } = await open.call('survey.get', { room: room.id })
  await open.call('survey.add', { room: room.id, from: corners[0]?.id ?? '', to: corners[2]?.id ?? '', value: 10_310 })
  await open.call('plan.placeRoom', { rooms: [{ id: room.id, changes: { at: { was: null, to: [1000, 2000] } } }] })
  const before = await open.call('plan.get', { exhibition })

  const { id } = await open.call('room.copy', { id: room.id, name: 'Annex 2' })
  const { rooms } = await open.call('room.list', {})
  expect(rooms.map(one => one.name)).toEqual(['Annex', 'Annex 2', 'Shed'])
  const [first, copy] = rooms
  const bare = (one: typeof first) =>
    one?.walls.map(({ id: _, face: __, openings, keepClears, ...rest }) => ({
      ...rest,
      openings: openings.map(({ id: ___, ...opening }) => opening),
      keepClears: keepClears.map(({ id: ____, ...fixture }) => fixture),
    }))
  expect(bare(copy)).toEqual(bare(first))
  expect(copy?.closure).toEqual(first?.closure)
  const measures = async (of: string) =>
    (await open.call('survey.get', { room: of })).measures.map(({ kind, from, to, value }) => [kind, from, to, value])
  expect(await measures(id)).toEqual(await measures(room.id))
  const { things } = await open.call('standing.list', { exhibition })
  expect(things.filter(one => one.room === id).map(one => one.kind)).toEqual(['column'])

  const plan = await open.call('plan.get', { exhibition })
  const placed = plan.rooms.find(one => one.id === id)
  // To the right of the first by its width and 600; the diagonal leans the room a little beyond its 9 000.
  expect(placed?.at?.[0]).toBeGreaterThanOrEqual(1000 + 9000 + 600)
  expect(placed?.at?.[1]).toBe(2000)
  expect(plan.rooms.filter(one => one.id !== id)).toEqual(before.rooms)

  await open.call('opening.remove', { id: copy?.walls[0]?.openings[0]?.id ?? '' })
  expect((await open.call('room.list', {})).rooms[0]?.walls[0]?.openings).toHaveLength(1)
  await open.call('edit.undo', {})
  await open.call('edit.undo', {})
  expect((await open.call('plan.get', { exhibition })).rooms).toEqual(before.rooms)
  expect(other.id).not.toBe(id)
})
