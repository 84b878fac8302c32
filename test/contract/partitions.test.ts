/**
 * A partition of one show from end to end: two faces, each with its own left end; works that stay from it when it moves;
 * what goes through it is seen from both sides; other shows know nothing of it; a closed show keeps it as it was.
 * Figures by hand: a partition from (3000, 2600), 2400 long to the right of the page, so that face a looks up the page
 * from y > 2600 and its left end is at x = 3000; the left end of face b is at x = 5400.
 */
import { beforeEach, describe, expect, test } from 'vitest'
import { type Opened, refusalCode } from './opened.ts'
import { showInRoom } from './show-in-room.ts'

let here: Opened
let show: string
let room: string
let walls: readonly string[]
let partition: { readonly id: string; readonly faces: { readonly a: string; readonly b: string } }
const entries: string[] = []

beforeEach(async () => {
  ;({ here, show, room, walls } = await showInRoom())
  partition = await here.call('partition.add', {
    exhibition: show,
    room,
    name: 'screen',
    from: [3000, 2600],
    length: 2400,
  })
  entries.length = 0
  for (const [title, width] of [
    ['Nets', 600],
    ['Oars', 500],
  ] as const) {
    const work = await here.call('work.add', { title, exhibition: show })
    await here.call('work.addSize', { work: work.id, part: 'framed', height: 700, width, raw: '', kind: 'measured' })
    entries.push(work.entry ?? '')
  }
}, 60_000)

const hang = (entry: number, face: string, x: number) =>
  here.call('placement.put', {
    exhibition: show,
    places: [{ entry: entries[entry] ?? '', face, x, rule: 'face', y: null, was: null }],
  })
const seen = (face: string, exhibition = show) => here.call('wall.elevation', { exhibition, face })
const plan = async (exhibition: string | null) => (await here.call('room.plan', { exhibition })).rooms[0]?.walls ?? []

type Ends = [[number, number], [number, number]]
const first: Ends = [
  [3000, 2600],
  [5400, 2600],
]
const moveTo = (to: Ends, was: Ends = first) =>
  here.call('partition.update', { id: partition.id, changes: { ends: { was, to } } })

describe('the two faces of a partition', () => {
  test('are offered with the walls of the show, the outline stays closed, and both look out of it', async () => {
    const faces = await plan(show)
    expect(faces.map(({ name, partition }) => [name, partition])).toEqual([
      ['wall 1', false],
      ['wall 2', false],
      ['wall 3', false],
      ['wall 4', false],
      ['screen, side a', true],
      ['screen, side b', true],
    ])
    expect(faces[4]).toMatchObject({ face: partition.faces.a, from: [3000, 2600], to: [5400, 2600] })
    expect(faces[5]).toMatchObject({ face: partition.faces.b, from: [5400, 2600], to: [3000, 2600] })
    const { rooms } = await here.call('room.list', {})
    expect(rooms[0]).toMatchObject({ closure: { closes: true, gap: 0 }, area: 47.528 })
    expect(rooms[0]?.walls).toHaveLength(4)
  })

  test('show what goes through from both sides, and each its own fixtures and works', async () => {
    await here.call('opening.add', {
      wall: partition.id,
      kind: 'door',
      x: 300,
      y: 0,
      width: 900,
      height: 2100,
      swing: 'in left',
    })
    await here.call('keepClear.add', {
      wall: partition.id,
      side: 'b',
      kind: 'outlet',
      x: 100,
      y: 300,
      width: 80,
      height: 80,
      margin: 50,
    })
    await hang(0, partition.faces.a, 1800)
    await hang(1, partition.faces.b, 500)
    const [a, b] = [await seen(partition.faces.a), await seen(partition.faces.b)]
    expect(a.wall.openings).toMatchObject([{ x: 300, swing: 'in left' }])
    // 2400 − 300 − 900; what turns in on the left here turns out on the right there.
    expect(b.wall.openings).toMatchObject([{ x: 1200, swing: 'out right' }])
    expect(a.wall.keepClears).toEqual([])
    expect(b.wall.keepClears).toMatchObject([{ x: 100, kind: 'outlet' }])
    expect(a.works.map(({ title }) => title)).toEqual(['Nets'])
    expect(b.works.map(({ title }) => title)).toEqual(['Oars'])
    expect([a.wall.name, b.wall.name]).toEqual(['screen, side a', 'screen, side b'])
  })

  test('take what goes through from either side, moved and widened as who stands there sees it', async () => {
    const behind = async () => (await seen(partition.faces.b)).wall.openings
    const { id } = await here.call('opening.add', {
      wall: partition.id,
      side: 'b',
      kind: 'door',
      x: 200.3,
      y: 0,
      width: 900,
      height: 2100,
      swing: 'in left',
    })
    expect(await behind()).toMatchObject([{ x: 200.3, width: 900, swing: 'in left' }])
    // 2400 − 200.3 − 900, and turned round.
    expect((await seen(partition.faces.a)).wall.openings).toMatchObject([{ x: 1299.7, swing: 'out right' }])

    // Its left end there stays while it grows.
    const wider = await here.call('opening.update', { id, side: 'b', changes: { width: { was: 900, to: 1000 } } })
    expect(wider).toEqual({ saved: ['width'], clashes: [] })
    expect(await behind()).toMatchObject([{ x: 200.3, width: 1000 }])
    expect((await seen(partition.faces.a)).wall.openings).toMatchObject([{ x: 1199.7, width: 1000 }])

    // Stretched by its left edge, both change.
    await here.call('opening.update', {
      id,
      side: 'b',
      changes: {
        x: { was: 200.3, to: 100 },
        width: { was: 1000, to: 1100.3 },
        swing: { was: 'in left', to: 'both in' },
      },
    })
    expect(await behind()).toMatchObject([{ x: 100, width: 1100.3, swing: 'both in' }])
    expect((await seen(partition.faces.a)).wall.openings).toMatchObject([{ swing: 'both out' }])

    // Meanwhile somebody moved it; the answer says where it is as it is seen from here.
    const clash = await here.call('opening.update', { id, side: 'b', changes: { x: { was: 300, to: 400 } } })
    expect(clash).toMatchObject({ saved: [], clashes: [{ field: 'x', was: 300, yours: 400, theirs: 100 }] })
    expect(await behind()).toMatchObject([{ x: 100, width: 1100.3 }])
  })

  test('are two on a partition alone: a wall of the room has one', async () => {
    const wall = walls[0] ?? ''
    const place = { x: 100, y: 0, width: 900, height: 2100 }
    expect(refusalCode(await here.ask('opening.add', { wall, side: 'b', kind: 'door', ...place }))).toBe('one-face')
    const { id } = await here.call('opening.add', { wall, kind: 'door', ...place })
    expect(
      refusalCode(await here.ask('opening.update', { id, side: 'b', changes: { x: { was: 100, to: 200 } } })),
    ).toBe('one-face')
  })

  test('turn over the floor and what is in the wall', async () => {
    await here.call('wall.update', {
      id: partition.id,
      changes: {
        floor: {
          was: [],
          to: [
            [0, 0],
            [2400, -24],
          ],
        },
        studs: { was: [], to: [100, 700] },
        ceiling: {
          was: [],
          to: [
            [0, 3400],
            [2400, 3390],
          ],
        },
      },
    })
    const { wall } = await seen(partition.faces.b)
    // Its left end is 24 lower, so the other end is 24 above it and the ceiling over it 3390 + 24.
    expect(wall.floor).toEqual([
      [0, 0],
      [2400, 24],
    ])
    expect(wall.studs).toEqual([1700, 2300])
    expect(wall.ceiling).toEqual([
      [0, 3414],
      [2400, 3424],
    ])
  })
})

describe('a partition that moves', () => {
  test('takes its works along at their distance from the left end of each face', async () => {
    await hang(0, partition.faces.a, 1800)
    await hang(1, partition.faces.b, 500)
    expect(
      await moveTo([
        [3000, 1000],
        [3000, 3400],
      ]),
    ).toMatchObject({ saved: ['ends'], noLongerFits: [] })
    expect((await seen(partition.faces.a)).works[0]?.x).toBe(1800)
    expect((await seen(partition.faces.b)).works[0]?.x).toBe(500)
  })

  test('says what no longer fits when it is shortened, and keeps it; undo takes both back', async () => {
    await hang(0, partition.faces.a, 1800)
    await hang(1, partition.faces.b, 500)
    const { noLongerFits } = await moveTo([
      [3000, 2600],
      [5000, 2600],
    ])
    // 1800 + 300 reaches 2100, the partition is 2000 long.
    expect(noLongerFits.map(({ code, figures }) => [code, figures.by])).toEqual([['off-wall', 100]])
    expect(noLongerFits[0]?.text).toMatch(/^“Nets”, side a: .*100 mm beyond the wall’s right end\.$/)
    expect((await seen(partition.faces.a)).works[0]?.x).toBe(1800)
    await here.call('edit.undo', {})
    expect((await seen(partition.faces.a)).wall.length).toBe(2400)
  })

  test('is not lengthened by the measures of its room', async () => {
    expect(
      refusalCode(await here.ask('wall.update', { id: partition.id, changes: { length: { was: 2400, to: 3000 } } })),
    ).toBe('partition')
    expect(refusalCode(await here.ask('wall.remove', { id: partition.id }))).toBe('partition')
    expect(refusalCode(await here.ask('wall.move', { id: partition.id, before: null }))).toBe('partition')
    await here.call('wall.update', { id: walls[0] ?? '', changes: { length: { was: 9140, to: 9145 } } })
    expect((await here.call('partition.list', { exhibition: show })).partitions[0]?.ends).toEqual(first)
  })
})

describe('of another show', () => {
  test('a partition is never seen, hung on or planned', async () => {
    const other = (await here.call('exhibition.add', { title: 'High Water' })).id
    const entry = (await here.call('work.add', { title: 'Rope', exhibition: other })).entry ?? ''
    expect(await plan(other)).toHaveLength(4)
    expect(await plan(null)).toHaveLength(4)
    const face = partition.faces.a
    expect(refusalCode(await here.ask('wall.elevation', { exhibition: other, face }))).toBe('not-found')
    expect(
      refusalCode(
        await here.ask('placement.put', {
          exhibition: other,
          places: [{ entry, face, x: 500, rule: 'face', y: null, was: null }],
        }),
      ),
    ).toBe('not-found')
    expect(refusalCode(await here.ask('wall.plan', { exhibition: other, face, changes: {} }))).toBe('not-found')
    const [its, others] = [show, other].map(exhibition => here.call('work.counts', { exhibition }))
    expect((await its)?.wall).toBe(28_680 + 2 * 2400)
    expect((await others)?.wall).toBe(28_680)
  })

  test('a copy has partitions and works of its own', async () => {
    await hang(0, partition.faces.a, 1800)
    const copy = (await here.call('exhibition.copy', { id: show, title: 'Again', placements: true })).id
    const [copied] = (await here.call('partition.list', { exhibition: copy })).partitions
    expect(copied).toMatchObject({ name: 'screen', works: 1, ends: first })
    expect(copied?.faces.a).not.toBe(partition.faces.a)
    await here.call('partition.update', { id: copied?.id ?? '', changes: { height: { was: 3450, to: 2400 } } })
    expect((await here.call('partition.list', { exhibition: show })).partitions[0]).toMatchObject({
      height: 3450,
      works: 1,
    })
    await here.call('exhibition.remove', { id: copy })
    expect((await here.call('partition.list', { exhibition: show })).partitions).toHaveLength(1)
  })

  test('a copy has the rules of the hang, about its own partitions', async () => {
    await hang(0, partition.faces.a, 1800)
    const { works } = await here.call('wall.elevation', { exhibition: show, face: partition.faces.a })
    const named = works.map(({ work }) => work)
    const places = [{ kind: 'wall' as const, id: partition.faces.a }]
    await here.call('sequence.addRule', { exhibition: show, kind: 'stays', works: named })
    await here.call('sequence.addRule', {
      exhibition: show,
      kind: 'only on',
      works: named,
      places,
      reason: 'its light',
    })
    const told = async (exhibition: string) => {
      const { rules } = await here.call('sequence.rules', { exhibition })
      return rules.map(({ kind, places: at, state, reason }) => [kind, at.map(({ id }) => id), state, reason])
    }
    const placements = async (with_: boolean) =>
      (await here.call('exhibition.copy', { id: show, title: `Again ${with_}`, placements: with_ })).id
    const hung = await placements(true)
    const [copied] = (await here.call('partition.list', { exhibition: hung })).partitions
    expect(await told(hung)).toEqual([
      ['stays', [copied?.faces.a], 'held', ''],
      ['only on', [copied?.faces.a], 'held', 'its light'],
    ])
    // What hangs nowhere cannot stay where it hangs.
    const bare = await placements(false)
    const [own] = (await here.call('partition.list', { exhibition: bare })).partitions
    expect(await told(bare)).toEqual([['only on', [own?.faces.a], 'open', 'its light']])
    expect((await told(show)).map(([, at]) => at)).toEqual([[partition.faces.a], [partition.faces.a]])
  })
})

test('a partition with works on it stays, and one of a closed show too', async () => {
  const put = await hang(0, partition.faces.b, 500)
  expect(refusalCode(await here.ask('partition.remove', { id: partition.id }))).toBe('wall-in-use')
  expect(refusalCode(await here.ask('room.remove', { id: room }))).toBe('wall-in-use')
  await here.call('placement.remove', { placements: put.placements })
  await here.call('exhibition.setState', { id: show, was: 'planning', to: 'closed' })
  for (const refused of [
    await here.ask('partition.remove', { id: partition.id }),
    await here.ask('partition.update', { id: partition.id, changes: { height: { was: 3450, to: 2000 } } }),
    await here.ask('opening.add', { wall: partition.id, kind: 'door', x: 0, y: 0, width: 900, height: 2100 }),
    await here.ask('wall.update', { id: partition.id, changes: { skirting: { was: null, to: 80 } } }),
    await here.ask('room.remove', { id: room }),
  ]) {
    expect(refusalCode(refused)).toBe('exhibition-closed')
  }
  await here.call('exhibition.setState', { id: show, was: 'closed', to: 'closing' })
  await here.call('partition.remove', { id: partition.id })
  expect(await plan(show)).toHaveLength(4)
})

test('doorways in two rooms are made one, and parted when one leads elsewhere', async () => {
  const next = await here.call('room.add', {
    name: 'Room 2',
    height: 3000,
    walls: [{ length: 5000 }, { length: 4000 }],
  })
  const third = await here.call('room.add', {
    name: 'Room 3',
    height: 3000,
    walls: [{ length: 5000 }, { length: 4000 }],
  })
  const hole = (wall: string) =>
    here.call('opening.add', { wall, kind: 'door', x: 500, y: 0, width: 900, height: 2100 })
  const [one, two] = [await hole(walls[1] ?? ''), await hole(next.walls[0] ?? '')]
  await here.call('opening.pair', { id: one.id, other: two.id })
  const openings = async () =>
    (await here.call('room.list', {})).rooms.flatMap(each => each.walls.flatMap(wall => wall.openings))
  expect((await openings()).map(({ leadsTo, other }) => [leadsTo, other])).toEqual([
    [next.id, two.id],
    [room, one.id],
  ])
  await here.call('opening.update', { id: one.id, changes: { leadsTo: { was: next.id, to: third.id } } })
  expect((await openings()).map(({ leadsTo, other }) => [leadsTo, other])).toEqual([
    [third.id, null],
    [room, null],
  ])
})
