/**
 * What moving a wall does to its room: the corner at its right goes with it, the outline is judged anew by the house's
 * own tolerance, it is one edit, and what stands on the wall stays where it is.
 */
import { describe, expect, test } from 'vitest'
import { newCatalogue, type Opened, openOn, ownFolder } from './opened.ts'

async function opened(): Promise<Opened> {
  const folder = ownFolder()
  const open = openOn(folder, newCatalogue(folder))
  const { id } = await open.call('person.add', {
    name: 'Ann Weir',
    role: '',
    lengthUnit: 'mm',
    paper: 'A4',
    fraction: 16,
  })
  await open.call('desk.sit', { person: id })
  return open
}

/** An L of 6 × 2 and 3 × 2 m, its re-entrant corner at the right of wall C. */
const lShape = [
  { name: 'A', length: 6000, angle: 90 },
  { name: 'B', length: 2000, angle: 90 },
  { name: 'C', length: 3000, angle: 270 },
  { name: 'D', length: 2000, angle: 90 },
  { name: 'E', length: 3000, angle: 90 },
  { name: 'F', length: 4000, angle: 90 },
]

async function roomOf(open: Opened) {
  const { rooms } = await open.call('room.list', {})
  const room = rooms[0]
  if (room === undefined) throw new Error('the room is gone')
  const wall = (name: string) => {
    const found = room.walls.find(one => one.name === name)
    if (found === undefined) throw new Error(`there is no wall ${name}`)
    return found
  }
  return { ...room, wall, names: room.walls.map(one => one.name).join('') }
}

describe('moving a wall', () => {
  test('carries the corner at its right and judges the outline anew', async () => {
    const open = await opened()
    await open.call('room.add', { name: 'Annex', height: 3000, walls: lShape })
    const before = await roomOf(open)
    expect([before.closure.closes, before.area]).toEqual([true, 18])

    await open.call('wall.move', { id: before.wall('C').id, before: before.wall('B').id })
    const after = await roomOf(open)
    expect(after.names).toBe('ACBDEF')
    // By hand: 6 to the right, 3 down, a turn back out to the right by 2, 2 down, 3 to the left, 4 up: 5 to the right
    // of where it began and 1 below it.
    expect(after.closure.closes).toBe(false)
    expect(after.closure.gap).toBeCloseTo(Math.hypot(5000, 1000), 6)
    expect(after.wall('C').angle).toBe(270)
    expect(after.walls.map(wall => wall.angle)).toEqual([90, 270, 90, 90, 90, 90])
    // Every wall begins where the one before it ends; the room is drawn as measured, so the last ends off the first.
    expect(after.walls[0]?.from).toEqual([0, 0])
    for (const [index, wall] of after.walls.slice(1).entries()) expect(wall.from).toEqual(after.walls[index]?.to)
    expect(after.wall('F').to.map(Math.round)).toEqual([5000, 1000])
    const { findings } = await open.call('room.findings', {})
    expect(findings.map(found => found.code)).toEqual(['room-open'])

    await open.call('edit.undo', {})
    expect(await roomOf(open)).toEqual({ ...before, wall: expect.any(Function) })
    await open.call('edit.redo', {})
    expect(await roomOf(open)).toEqual({ ...after, wall: expect.any(Function) })
  })

  test('the first to the end is the same room, seen from its next wall', async () => {
    const open = await opened()
    await open.call('room.add', { name: 'Annex', height: 3000, walls: lShape })
    const before = await roomOf(open)
    await open.call('wall.move', { id: before.wall('A').id, before: null })
    const after = await roomOf(open)
    expect(after.names).toBe('BCDEFA')
    expect([after.closure.closes, after.area]).toEqual([true, 18])
    expect([after.wall('B').from, after.wall('B').to]).toEqual([
      [0, 0],
      [2000, 0],
    ])
  })

  test('keeps what is fixed on it and what stands on it, and is one edit named by both walls', async () => {
    const open = await opened()
    await open.call('room.add', { name: 'Annex', height: 3000, walls: lShape })
    const before = await roomOf(open)
    const { id, face } = before.wall('B')
    await open.call('opening.add', { wall: id, kind: 'door', x: 200, y: 0, width: 900, height: 2100 })
    const { id: exhibition } = await open.call('exhibition.add', { title: 'Low Tide' })
    const added = await open.call('work.add', {
      title: 'Eel trap',
      maker: '',
      kind: 'object',
      lender: null,
      exhibition,
    })
    const { works } = await open.call('exhibition.frieze', { exhibition })
    const entry = works.find(one => one.work === added.id)?.entry ?? ''
    await open.call('placement.put', {
      exhibition,
      places: [{ entry, face, x: 1500, rule: 'face', y: null, was: null }],
    })
    const standing = await open.call('wall.elevation', { exhibition, face })
    const edits = (await open.call('edit.list', {})).edits.length

    await open.call('wall.move', { id, before: before.wall('F').id })
    const after = await roomOf(open)
    expect(after.names).toBe('ACDEBF')
    expect(after.wall('B')).toMatchObject({ id, face, length: 2000, openings: [{ x: 200, width: 900 }] })
    expect((await open.call('wall.elevation', { exhibition, face })).works).toEqual(standing.works)
    const { edits: now } = await open.call('edit.list', {})
    expect(now.length).toBe(edits + 1)
    expect(now[0]?.label).toBe('Move Annex B before F')
  })

  test('to where it is already changes nothing and is no edit', async () => {
    const open = await opened()
    await open.call('room.add', { name: 'Annex', height: 3000, walls: lShape })
    const { wall } = await roomOf(open)
    const state = open.state()
    await open.call('wall.move', { id: wall('B').id, before: wall('C').id })
    await open.call('wall.move', { id: wall('B').id, before: wall('B').id })
    await open.call('wall.move', { id: wall('F').id, before: null })
    expect(open.state()).toBe(state)
  })

  test('of an open pair turns it round and leaves no corner over', async () => {
    const open = await opened()
    const walls = [
      { name: 'left', length: 3000, angle: 120 },
      { name: 'right', length: 2000, angle: 60 },
    ]
    await open.call('room.add', { name: 'Niche', height: 3000, walls })
    const before = await roomOf(open)
    await open.call('wall.move', { id: before.wall('right').id, before: before.wall('left').id })
    const after = await roomOf(open)
    expect([after.wall('right').from, after.wall('right').to, after.wall('right').angle]).toEqual([
      [0, 0],
      [2000, 0],
      60,
    ])
    // The way turns by 180° − 60°: 3 000 at 120° from 2 000, 0.
    expect(after.wall('left').to[0]).toBeCloseTo(2000 + 3000 * Math.cos((2 * Math.PI) / 3), 5)
    expect(after.wall('left').to[1]).toBeCloseTo(3000 * Math.sin((2 * Math.PI) / 3), 5)
    expect(await open.call('catalogue.check', {})).toEqual({ ok: true, integrity: [] })
    await open.call('edit.undo', {})
    expect(await roomOf(open)).toEqual({ ...before, wall: expect.any(Function) })
  })

  test('before a wall of another room is refused and moves nothing', async () => {
    const open = await opened()
    await open.call('room.add', { name: 'Annex', height: 3000, walls: lShape })
    await open.call('room.add', { name: 'Store', height: 3000, walls: lShape })
    const { rooms } = await open.call('room.list', {})
    const state = open.state()
    const id = rooms[0]?.walls[0]?.id ?? ''
    const answer = await open.ask('wall.move', { id, before: rooms[1]?.walls[0]?.id ?? '' })
    expect(answer).toMatchObject({ ok: false, refusal: { code: 'not-found', field: 'before' } })
    expect(open.state()).toBe(state)
  })
})

test('a room stored by half is drawn as its walls were typed, and closes once the last wall is there', async () => {
  const open = await opened()
  const sides = [6000, 4000, 6000].map(length => ({ length, angle: 90 }))
  const { id, walls } = await open.call('room.add', { name: 'Half', height: 3000, walls: sides })
  const long = async () => {
    const lines = (await open.call('room.plan', { exhibition: null })).rooms[0]?.walls ?? []
    const [first, last] = [lines[0], lines.at(-1)]
    const gap = Math.hypot((last?.to[0] ?? 0) - (first?.from[0] ?? 0), (last?.to[1] ?? 0) - (first?.from[1] ?? 0))
    return { drawn: lines.map(({ from, to }) => Math.hypot(to[0] - from[0], to[1] - from[1])), gap }
  }
  // 6 000 to the right, 4 000 down, 6 000 back: 4 000 are missing, and shared over the walls they would bend all of them.
  const half = await long()
  for (const [at, side] of sides.entries()) expect(half.drawn[at]).toBeCloseTo(side.length, 6)
  expect(half.gap).toBeCloseTo(4000, 6)
  await open.call('wall.add', { room: id, after: walls.at(-1) ?? null, wall: { length: 4000, angle: 90 } })
  const whole = await long()
  expect(whole.gap).toBeCloseTo(0, 6)
})

test('rooms that lie over one another on the plan are told with how far, until one is placed anew or on another storey', async () => {
  const open = await opened()
  const walls = [6000, 4000, 6000, 4000].map(length => ({ length }))
  const at = (x: number) => ({ at: [x, 0] as [number, number], turn: 0, storey: '' })
  await open.call('room.add', { name: 'Boat Store', height: 3000, walls, place: at(0) })
  const { id } = await open.call('room.add', { name: 'Net Loft', height: 3000, walls, place: at(5800) })
  const told = async () => {
    const { findings } = await open.call('room.findings', {})
    return findings.filter(({ code }) => code === 'rooms-overlap').map(({ text }) => text)
  }
  expect(await told()).toEqual([
    expect.stringMatching(/^Boat Store lies over Net Loft on the plan, by 200\smm\. Place one of them anew/),
  ])
  const changes = { at: { was: [5800, 0] as [number, number], to: [6000, 0] as [number, number] } }
  await open.call('plan.placeRoom', { rooms: [{ id, changes }] })
  expect(await told()).toEqual([])
  await open.call('edit.undo', {})
  expect(await told()).toHaveLength(1)
  await open.call('plan.placeRoom', { rooms: [{ id, changes: { storey: { was: '', to: 'upper' } } }] })
  expect(await told()).toEqual([])
})
