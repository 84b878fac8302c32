/**
 * A wall cut in two and joined again, through the contract: nothing on it is lost or moved, the room keeps its area, and
 * what cannot be done is refused by name. Places are compared as a person on site would, from the whole wall's left end.
 */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Input } from '../../src/contract/contract.ts'
import { newCatalogue, type Opened, openOn, ownFolder } from './opened.ts'

interface House {
  readonly open: Opened
  readonly wall: string
  readonly face: string
  readonly exhibition: string
}

const long = 9000

async function house(more: Input<'wall.update'>['changes'] = {}): Promise<House> {
  const folder = ownFolder()
  const open = openOn(folder, newCatalogue(folder))
  const { id: exhibition } = await open.call('exhibition.add', { title: 'Low Tide' })
  const walls = [long, 5000, long, 5000].map((length, at) => ({ length, name: `wall ${at + 1}` }))
  const room = await open.call('room.add', { name: 'Annex', height: 3200, wallType: 'drywall', walls })
  const [wall = ''] = room.walls
  await open.call('wall.update', {
    id: wall,
    changes: { ...more, length: { was: long, to: long }, lengthText: { was: '', to: '9 m' } },
  })
  const { rooms } = await open.call('room.list', {})
  return { open, wall, face: rooms[0]?.walls[0]?.face ?? '', exhibition }
}

async function hang({ open, face, exhibition }: House, centres: readonly number[]): Promise<void> {
  for (const [at, x] of centres.entries()) {
    const work = await open.call('work.add', {
      title: `Eel trap ${at}`,
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
    const entry = work.entry ?? ''
    // Every second work has a height of its own.
    const own = at % 2 === 0 ? ({ rule: 'face', y: null } as const) : ({ rule: 'hand', y: 1500 } as const)
    await open.call('placement.put', { exhibition, places: [{ entry, face, x, ...own, was: null }] })
  }
}

/** Every thing on the room's first walls by its place along the line that they make, floor of the first as zero. */
async function along({ open, exhibition }: House) {
  const { rooms } = await open.call('room.list', {})
  const [room] = rooms
  const parts = room?.walls.filter(wall => Math.abs(wall.from[1]) < 1e-6 && Math.abs(wall.to[1]) < 1e-6) ?? []
  const found: string[] = []
  let rise = 0
  for (const part of parts) {
    const at = (x: number, y: number) => `${(part.from[0] + x).toFixed(3)} ${(y + rise).toFixed(3)}`
    for (const one of part.openings) found.push(`${one.kind} ${one.id} ${at(one.x, one.y)} ${one.width}`)
    for (const one of part.keepClears) found.push(`${one.kind} ${one.id} ${at(one.x, one.y)} ${one.width}`)
    const { works, plan } = await open.call('wall.elevation', { exhibition, face: part.face })
    // What has no height of its own hangs by the line of its wall.
    for (const one of works) found.push(`${one.work} ${at(one.x, one.y ?? plan.centreLine)}`)
    const last = part.floor.findLast(([x]) => x <= part.length)
    rise += last?.[1] ?? 0
  }
  return { found: found.sort(), parts: parts.length, area: room?.area ?? 0, walls: room?.walls.length ?? 0 }
}

const floor: Input<'wall.update'>['changes'] = {
  floor: {
    was: [],
    to: [
      [0, 0],
      [long, -45],
    ],
  },
  studFirst: { was: null, to: 285 },
  studSpacing: { was: null, to: 406 },
  joints: { was: [], to: [1200, 2400, 6000] },
  ceiling: {
    was: [],
    to: [
      [0, 3200],
      [long, 3100],
    ],
  },
}

describe('split, then join', () => {
  test.each([
    ['on a level floor', {}],
    ['on a sloping floor, with studs, joints and ceiling', floor],
  ] as const)('keeps everything where it is and gives the wall back, %s', { timeout: 120_000 }, async (_, more) => {
    const one = await house(more)
    const { open, wall } = one
    await open.call('opening.add', { wall, kind: 'door', x: 3000, y: 0, width: 1000, height: 2100 })
    await open.call('opening.add', { wall, kind: 'window', x: 7000, y: 900, width: 800, height: 1200 })
    await open.call('keepClear.add', { wall, kind: 'outlet', x: 5000, y: 300, width: 80, height: 80, margin: 100 })
    await hang(one, [600, 1500, 4600, 6400, 8300])
    const before = await along(one)
    expect(before.found).toHaveLength(8)
    const whole = await open.call('wall.elevation', { exhibition: one.exhibition, face: one.face })
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: long - 1 }), async x => {
        const answer = await open.ask('wall.split', { id: wall, x })
        const across = (x > 3000 && x < 4000) || (x > 7000 && x < 7800)
        expect(answer.ok).toBe(!across)
        if (!answer.ok) {
          expect(answer.refusal.code).toBe('opening-across')
          return
        }
        const parted = await along(one)
        expect([parted.parts, parted.walls]).toEqual([2, 5])
        expect(parted.found).toEqual(before.found)
        expect(parted.area).toBeCloseTo(before.area, 9)
        await open.call('wall.join', { id: wall })
        const joined = await along(one)
        expect({ ...joined, area: joined.area.toFixed(9) }).toEqual({ ...before, area: before.area.toFixed(9) })
        const again = await open.call('wall.elevation', { exhibition: one.exhibition, face: one.face })
        expect(again.works).toEqual(whole.works)
        expect(again.wall).toEqual({ ...whole.wall, datum: again.wall.datum, datumBy: again.wall.datumBy })
      }),
      { numRuns: 12 },
    )
  })

  test('goes back by undo, and loses no hole and no kept layout', async () => {
    const one = await house()
    const { open, wall, face, exhibition } = one
    await hang(one, [1500, 7500])
    await open.call('layout.keep', { exhibition, face, name: 'first hang' })
    const states = [await along(one)]
    const list = JSON.stringify(await open.call('room.list', {}))
    const { id: part } = await open.call('wall.split', { id: wall, x: 4500, name: 'east end' })
    const { rooms } = await open.call('room.list', {})
    const right = rooms[0]?.walls[1]
    expect(right).toMatchObject({ id: part, name: 'east end', length: 4500 })
    const { layouts } = await open.call('wall.elevation', { exhibition, face: right?.face ?? '' })
    expect(layouts.map(({ name }) => name)).toEqual(['first hang'])
    await open.call('wall.join', { id: wall })
    expect(await along(one)).toEqual(states[0])
    const joined = await open.call('wall.elevation', { exhibition, face })
    expect(joined.layouts.map(({ name }) => name)).toEqual(['first hang'])
    await open.call('edit.undo', {})
    await open.call('edit.undo', {})
    expect(JSON.stringify(await open.call('room.list', {}))).toBe(list)
    await open.call('edit.redo', {})
    expect((await along(one)).parts).toBe(2)
    expect(await open.call('catalogue.check', {})).toEqual({ ok: true, integrity: [] })
  })

  test('the length of the whole stays as it was taped, and is the wall’s again', async () => {
    const { open, wall } = await house()
    const { rooms } = await open.call('room.list', {})
    const room = rooms[0]?.id ?? ''
    await open.call('wall.split', { id: wall, x: 4000 })
    const parted = await open.call('survey.get', { room })
    expect(parted.measures.filter(({ kind }) => kind === 'diagonal')).toMatchObject([
      { from: 0, to: 2, value: 9000, text: '9 m' },
    ])
    // Along walls in line it says nothing of the corners.
    expect(parted.way).toBe('walked')
    await open.call('wall.join', { id: wall })
    const joined = await open.call('room.list', {})
    expect(joined.rooms[0]?.walls[0]).toMatchObject({ length: 9000, lengthText: '9 m' })
  })
})

describe('joining', () => {
  test('walls that differ, that do not lie in line or that are too few is refused by name', async () => {
    const { open, wall } = await house()
    const refusal = async (id: string) => {
      const answer = await open.ask('wall.join', { id })
      return answer.ok ? null : [answer.refusal.code, answer.refusal.message]
    }
    expect(await refusal(wall)).toEqual([
      'not-straight',
      'The corner between wall 1 and wall 2 is 90°. Walls are joined where it is 180°, within 1°.',
    ])
    const { id: part } = await open.call('wall.split', { id: wall, x: 4500 })
    await open.call('wall.update', {
      id: part,
      changes: { wallType: { was: 'drywall', to: 'brick' }, skirting: { was: null, to: 140 } },
    })
    expect(await refusal(wall)).toEqual([
      'walls-differ',
      'wall 1 and wall 1, right part differ in built of and skirting. Make them alike first.',
    ])
    await open.call('edit.undo', {})
    await open.call('wall.update', { id: part, changes: { datum: { was: null, to: 1600 } } })
    expect((await refusal(wall))?.[0]).toBe('lines-differ')
    const { rooms } = await open.call('room.list', {})
    expect((await refusal(rooms[0]?.walls.at(-1)?.id ?? ''))?.[0]).toBe('not-straight')
  })

  test('the last wall with the first: one wall again, what is on both where it was, the room where it stood', async () => {
    const { open, wall } = await house()
    await open.call('opening.add', { wall, kind: 'door', x: 1000, y: 0, width: 900, height: 2100 })
    const right = await open.call('wall.split', { id: wall, x: 4000 })
    await open.call('opening.add', { wall: right.id, kind: 'window', x: 500, y: 900, width: 1200, height: 1500 })
    const [room] = (await open.call('room.list', {})).rooms
    const id = room?.id ?? ''
    await open.call('plan.placeRoom', { rooms: [{ id, changes: { at: { was: null, to: [1000, 2000] } } }] })
    // The left part comes last; the room is drawn from the right part then.
    await open.call('wall.move', { id: wall, before: null })
    const placed = async () => (await open.call('plan.get', { exhibition: null })).rooms[0]
    const before = await placed()
    expect(before?.walls.at(-1)?.id).toBe(wall)
    await open.call('wall.join', { id: wall })
    const after = await placed()
    expect(after?.walls).toHaveLength(4)
    const joined = after?.walls.find(one => one.id === wall)
    expect(joined?.length).toBe(long)
    // Each as far from the whole wall's left end as it was.
    expect(joined?.openings.map(({ kind, x }) => [kind, x])).toEqual([
      ['door', 1000],
      ['window', 4500],
    ])
    for (const axis of [0, 1] as const) {
      expect(joined?.from[axis]).toBeCloseTo(before?.walls.at(-1)?.from[axis] ?? 0, 6)
      expect(joined?.to[axis]).toBeCloseTo(before?.walls[0]?.to[axis] ?? 0, 6)
    }
    expect(after?.area).toBeCloseTo(before?.area ?? 0, 9)
  })
})

test('rules of the hang follow: both parts are named, what stays stays on its part, and one wall is one again', async () => {
  const one = await house()
  const { open, wall, face, exhibition } = one
  await hang(one, [1000, 8000])
  const { works } = await open.call('wall.elevation', { exhibition, face })
  const [left = '', right = ''] = works.map(({ work }) => work)
  await open.call('sequence.addRule', { exhibition, kind: 'stays', works: [left, right] })
  const places = [{ kind: 'wall' as const, id: face }]
  await open.call('sequence.addRule', { exhibition, kind: 'only on', works: [left, right], places })
  const told = async () => {
    const { rules } = await open.call('sequence.rules', { exhibition })
    return rules.map(({ kind, works: of, places: at, state }) => {
      expect(state).toBe('held')
      return [kind, of.map(({ work }) => work), at.map(({ id }) => id)]
    })
  }
  const before = await told()
  expect(before).toEqual([
    ['stays', [left, right], [face]],
    ['only on', [left, right], [face]],
  ])
  await open.call('wall.split', { id: wall, x: 4500 })
  const parts = (await open.call('room.list', {})).rooms[0]?.walls.map(each => each.face) ?? []
  const [, part] = parts
  const after = await told()
  expect(after).toHaveLength(3)
  expect(after).toEqual(
    expect.arrayContaining([
      ['stays', [left], [face]],
      ['stays', [right], [part]],
      ['only on', [left, right], [face, part]],
    ]),
  )
  await open.call('wall.join', { id: wall })
  expect(await told()).toEqual(
    expect.arrayContaining([
      ['stays', [right], [face]],
      ['only on', [left, right], [face]],
    ]),
  )
  await open.call('edit.undo', {})
  await open.call('edit.undo', {})
  expect(await told()).toEqual(before)
})
