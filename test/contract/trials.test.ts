/**
 * What would make a hang better, done and compared: the gain that is told before is the difference that is found
 * afterwards, of today's hang with stacks and uneven gaps and of a proposal.
 */
import { beforeEach, describe, expect, test } from 'vitest'
import type { Output } from '../../src/contract/contract.ts'
import type { Opened } from './opened.ts'
import { showInRoom } from './show-in-room.ts'

let here: Opened
let show: string
/** From the north wall on, clockwise. */
let faces: readonly string[]
let partition: { readonly id: string; readonly faces: { readonly a: string; readonly b: string } }
let switchOnWall: string
const [works, entries]: readonly [string[], string[]] = [[], []]

/** Gains are told to a millionth of a point, from qualities that are themselves told to a millionth of 1. */
const told = 3

beforeEach(async () => {
  let room: string
  ;({ here, show, room } = await showInRoom())
  const { rooms } = await here.call('room.list', {})
  faces = rooms[0]?.walls.map(wall => wall.face) ?? []
  const wallOf = (at: number) => rooms[0]?.walls[at]?.id ?? ''
  // Its axis is at 9140 − 4500 = 4640 of the page.
  await here.call('opening.add', { wall: wallOf(2), kind: 'door', x: 4000, y: 0, width: 1000, height: 2100 })
  ;({ id: switchOnWall } = await here.call('keepClear.add', {
    wall: wallOf(3),
    kind: 'thermostat',
    ...{ x: 2500, y: 1400, width: 100, height: 100, margin: 100 },
  }))
  // Face a looks down the page, at the doorway: the axis meets it 1640 from its left end.
  partition = await here.call('partition.add', {
    exhibition: show,
    room,
    name: 'screen',
    from: [3000, 2600],
    length: 2400,
  })
  const section = (await here.call('section.add', { exhibition: show, title: 'Prints' })).id
  await here.call('section.update', { id: section, changes: { hang: { was: 'row', to: 'stacks' } } })
  works.length = 0
  entries.length = 0
  for (const [index, width] of [300, 300, 320, 320, 900, 500, 700].entries()) {
    const work = await here.call('work.add', { title: `Work ${index + 1}`, exhibition: show })
    await here.call('work.addSize', { work: work.id, part: 'framed', height: 400, width, raw: '', kind: 'measured' })
    works.push(work.id)
    entries.push(work.entry ?? '')
  }
  await here.call('entry.move', { entries: entries.slice(0, 4), section, before: null })
}, 60_000)

const entryAt = (at: number) => entries[at] ?? ''
type Spot = readonly [work: number, face: string, x: number, y?: number]

/** Where each stands now, so that a move names it. */
const stood = new Map<string, { face: string; x: number; rule: 'face' | 'centre'; y: number | null }>()
async function put(spots: readonly Spot[]): Promise<void> {
  const places = spots.map(([work, face, x, y]) => {
    const entry = entryAt(work)
    const to = { face, x, rule: y === undefined ? ('face' as const) : ('centre' as const), y: y ?? null }
    const place = { entry, ...to, was: stood.get(entry) ?? null }
    stood.set(entry, to)
    return place
  })
  const { clashes } = await here.call('placement.put', { exhibition: show, places })
  expect(clashes).toEqual([])
}

/** Two stacks about the line of 1480, a work beside them, one on the partition and one far from the middle of the east wall. */
async function hangToday(): Promise<void> {
  stood.clear()
  await put([
    [0, faces[0] ?? '', 1000, 1720],
    [1, faces[0] ?? '', 1000, 1240],
    [2, faces[0] ?? '', 2100, 1720],
    [3, faces[0] ?? '', 2100, 1240],
    [4, faces[0] ?? '', 4000],
    [5, partition.faces.a, 1240],
    [6, faces[1] ?? '', 500],
  ])
}

type Hang = Output<'sequence.propose'>['proposals'][number]['faces']
const why = (face: string, hang?: Hang) =>
  here.call('sequence.explain', { exhibition: show, of: { face }, ...(hang === undefined ? {} : { faces: hang }) })

async function movePartition(by: number): Promise<void> {
  const { partitions } = await here.call('partition.list', { exhibition: show })
  const was = partitions[0]?.ends
  if (was === undefined) throw new Error('no partition')
  const [[ax, ay], [bx, end]] = was
  await here.call('partition.update', {
    id: partition.id,
    changes: {
      ends: {
        was,
        to: [
          [ax + by, ay],
          [bx + by, end],
        ],
      },
    },
  })
}

describe('of today’s hang, where its works stand', () => {
  test('a partition that is moved gains what was told', async () => {
    await hangToday()
    const before = await why(partition.faces.a)
    const offered = before.wall?.partition
    expect(offered).toMatchObject({ name: 'screen', by: 400, way: 'towards its right end' })
    expect(offered?.gain).toBeGreaterThan(0.1)
    await movePartition(400)
    const after = await why(partition.faces.a)
    expect(100 * (after.quality - before.quality)).toBeCloseTo(offered?.gain ?? Number.NaN, told)
  })

  test('a wall that is made longer and spread anew gains what was told', async () => {
    await hangToday()
    const face = faces[0] ?? ''
    const before = await why(face)
    const longer = before.wall?.longer
    if (longer == null) throw new Error('nothing was told of a longer wall')
    const { rooms } = await here.call('room.list', {})
    const wall = rooms[0]?.walls[0]?.id ?? ''
    await here.call('wall.update', { id: wall, changes: { length: { was: 9140, to: 9140 + longer.by } } })
    // Two stacks and a work, what is left over in equal parts at both ends and between: by hand.
    const { gap } = await here.call('sequence.capacity', { exhibition: show })
    // The last label stands before the wall's end.
    const margin = 219
    const left = (9540 - 2 * margin - (300 + 320 + 900) - 2 * gap) / 4
    const first = margin + left + 150
    const second = first + 150 + gap + left + 160
    const third = second + 160 + gap + left + 450
    await put([
      [0, face, first, 1720],
      [1, face, first, 1240],
      [2, face, second, 1720],
      [3, face, second, 1240],
      [4, face, third],
    ])
    const after = await why(face)
    expect(100 * (after.quality - before.quality)).toBeCloseTo(longer.gain, told)
  })

  test('a work that is left out gains what was told', async () => {
    await hangToday()
    // The one in the middle wants another light than both beside it.
    for (const [at, lux] of [200, 50, 200].entries())
      await here.call('work.update', { id: works[4 + at] ?? '', changes: { lightLimit: { was: null, to: lux } } })
    const face = partition.faces.a
    await put([
      [4, face, 550],
      [5, face, 1300],
      [6, face, 1950],
    ])
    const before = await why(face)
    const { drop } = before.wall ?? {}
    if (drop?.entry !== entryAt(5)) throw new Error('the one between is not better left out')
    await here.call('entry.remove', { entries: [drop.entry] })
    const after = await why(face)
    expect(100 * (after.quality - before.quality)).toBeCloseTo(drop.gain, told)
  })

  test('what is kept clear and taken away gains what was told', async () => {
    await hangToday()
    const face = faces[3] ?? ''
    const before = await why(face)
    const cleared = before.wall?.cleared
    expect(cleared).toMatchObject({ label: 'thermostat' })
    await here.call('keepClear.remove', { id: switchOnWall })
    const after = await why(face)
    expect(100 * (after.quality - before.quality)).toBeCloseTo(cleared?.gain ?? Number.NaN, told)
  })
})

test('of a proposal: what each wall is told to gain is what the same hang is worth once it is done', async () => {
  const { proposals } = await here.call('sequence.propose', { exhibition: show, seed: 2, steps: 1000 })
  let compared = 0
  for (const { faces: hang, quality } of proposals.slice(0, 2)) {
    const before = await why(partition.faces.a, hang)
    expect(before.quality).toBeCloseTo(quality, 6)
    const west = await why(faces[3] ?? '', hang)
    const { cleared } = west.wall ?? {}
    if (cleared != null) {
      await here.call('keepClear.remove', { id: switchOnWall })
      expect(100 * ((await why(faces[3] ?? '', hang)).quality - quality)).toBeCloseTo(cleared.gain, told)
      await here.call('edit.undo', {})
      compared += 1
    }
    const moved = before.wall?.partition
    if (moved?.way.startsWith('towards its')) {
      await movePartition(moved.way === 'towards its right end' ? moved.by : -moved.by)
      expect(100 * ((await why(partition.faces.a, hang)).quality - quality)).toBeCloseTo(moved.gain, told)
      await here.call('edit.undo', {})
      compared += 1
    }
  }
  expect(compared).toBeGreaterThan(1)
}, 120_000)
