/**
 * What no building can have, through the contract: refused where it is wrong by itself, with nothing written; found, by
 * name, where it is wrong beside something else, with nothing lost.
 */
import { describe, expect, test } from 'vitest'
import { newCatalogue, type Opened, openOn, ownFolder } from './opened.ts'

async function room(lengths: readonly number[], angles: readonly number[] = []) {
  const folder = ownFolder()
  const open = openOn(folder, newCatalogue(folder))
  const walls = lengths.map((length, at) => ({ length, name: `wall ${at + 1}`, angle: angles[at] ?? 90 }))
  const { id, walls: made } = await open.call('room.add', { name: 'Annex', height: 3000, walls })
  return { open, id, wall: made[0] ?? '' }
}

async function found(open: Opened, exhibition: string | null = null) {
  const { findings } = await open.call('room.findings', { exhibition })
  return findings.map(({ severity, code, text }) => [severity, code, text.replaceAll('\u2009', ' ')])
}

describe('an outline that crosses itself', () => {
  // A recess of 5 m into a room that is 4 m deep: its corners and lengths come round exactly.
  const lengths = [2000, 5000, 1000, 5000, 3000, 4000, 6000, 4000]
  const angles = [90, 270, 270, 90, 90, 90, 90, 90]

  test('is told by both its walls though it closes, and by no finding once the figure is put right', async () => {
    const { open, id, wall } = await room(lengths, angles)
    const told = 'Drawn by these measures wall 2 crosses wall 7. Look for a corner or a length that is far off.'
    expect(await found(open)).toEqual([['settle', 'room-open', `Annex: ${told}`]])
    const { rooms } = await open.call('room.list', {})
    expect(rooms[0]?.closure).toMatchObject({ closes: false, note: told })
    expect((await open.call('survey.get', { room: id })).note).toBe(told)
    const [, second, , fourth] = rooms[0]?.walls ?? []
    for (const each of [second?.id ?? '', fourth?.id ?? ''])
      await open.call('wall.update', { id: each, changes: { length: { was: 5000, to: 3000 } } })
    expect(await found(open)).toEqual([])
    const [mended] = (await open.call('room.list', {})).rooms
    // 6 by 4 m less a recess of 1 by 3.
    expect(mended?.area).toBeCloseTo(21, 6)
    expect(mended?.walls[0]?.id).toBe(wall)
  })
})

describe('a wall without length', () => {
  test('is refused where it is typed, with nothing of its room written', async () => {
    const { open, wall } = await room([4000, 3000, 4000, 3000])
    const before = JSON.stringify(await open.call('room.list', {}))
    expect(
      await open.ask('room.add', { name: 'Nook', height: 3000, walls: [{ length: 3000 }, { length: 0 }] }),
    ).toMatchObject({ refusal: { field: 'walls.1.length' } })
    expect(await open.ask('wall.update', { id: wall, changes: { length: { was: 4000, to: 0 } } })).toMatchObject({
      refusal: { field: 'changes.length.to' },
    })
    const { id: exhibition } = await open.call('exhibition.add', { title: 'Low Tide' })
    const { rooms } = await open.call('room.list', {})
    const at: [number, number] = [600, 1500]
    expect(await open.ask('partition.add', { exhibition, room: rooms[0]?.id ?? '', from: at, to: at })).toMatchObject({
      refusal: { code: 'no-length', field: 'to' },
    })
    expect(JSON.stringify(await open.call('room.list', {}))).toBe(before)
  })
})

describe('a door wider than its wall', () => {
  test('is found with how much, typed so or left behind by a shorter wall, and stays until somebody settles it', async () => {
    const { open, wall } = await room([4000, 3000, 4000, 3000])
    const door = { wall, kind: 'door', y: 0, height: 2100 } as const
    const { id } = await open.call('opening.add', { ...door, x: 0, width: 5000 })
    expect(await found(open)).toEqual([
      ['stop', 'opening-wider', 'Annex wall 1: a door is 1 000 mm wider than the wall is long.'],
    ])
    await open.call('opening.update', { id, changes: { width: { was: 5000, to: 900 } } })
    expect(await found(open)).toEqual([])
    await open.call('wall.update', { id: wall, changes: { length: { was: 4000, to: 600 } } })
    const short = await found(open)
    expect(short).toContainEqual([
      'stop',
      'opening-wider',
      'Annex wall 1: a door is 300 mm wider than the wall is long.',
    ])
    expect((await open.call('room.list', {})).rooms[0]?.walls[0]?.openings).toHaveLength(1)
    await open.call('edit.undo', {})
    expect(await found(open)).toEqual([])
  })
})

describe('partitions that lie over one another', () => {
  test('across, along and through a wall: each pair is told with how far, and nothing of another show', async () => {
    const { open, id } = await room([4000, 3000, 4000, 3000])
    const { id: exhibition } = await open.call('exhibition.add', { title: 'Low Tide' })
    const { id: other } = await open.call('exhibition.add', { title: 'Ebb' })
    const put = (from: [number, number], to: [number, number]) =>
      open.call('partition.add', { exhibition, room: id, from, to })
    await put([500, 1500], [3500, 1500])
    expect(await found(open, exhibition)).toEqual([])
    await put([2000, 500], [2000, 2500])
    await put([600, 1500], [1200, 1500])
    await put([2500, 2200], [9000, 2200])
    expect(await found(open, exhibition)).toEqual([
      ['stop', 'partition-crosses-wall', 'Annex: partition 4 crosses wall 2 and ends 5 000 mm beyond it.'],
      ['stop', 'partitions-cross', 'Annex: partition 2 goes 1 050 mm through partition 1.'],
      ['stop', 'partitions-cross', 'Annex: partition 3 goes 100 mm through partition 1.'],
    ])
    expect(await found(open, other)).toEqual([])
  })
})
