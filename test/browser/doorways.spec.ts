/** Doorways between two rooms: which hole of the next room each is, and how their leaves turn. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import type { Output } from '../../src/contract/contract.ts'
import { expect, type RunningHost, test } from './host.ts'

type Room = Output<'room.list'>['rooms'][number]

async function roomsOf(page: Page, host: RunningHost): Promise<readonly Room[]> {
  const { rooms } = (await host.call(page, 'room.list', {})) as Output<'room.list'> // of that name
  return rooms
}

/** A door or passage that is said to be one hole with another room's. */
async function pairOf(page: Page, host: RunningHost) {
  for (const room of await roomsOf(page, host)) {
    for (const wall of room.walls) {
      const opening = wall.openings.find(({ other }) => other !== null)
      if (opening !== undefined) return { room, wall, opening }
    }
  }
  throw new Error('the demo has a doorway between two rooms')
}

test('a doorway is parted from the next room’s, offered again, made one hole, and each step undone', async ({
  page,
  host,
}) => {
  await host.open(page, '#/rooms')
  const { room, wall, opening } = await pairOf(page, host)
  const other = async () =>
    (await roomsOf(page, host))
      .flatMap(each => each.walls.flatMap(one => one.openings))
      .find(one => one.id === opening.id)?.other
  await host.open(page, `#/rooms/${room.id}`)
  await page
    .getByRole('group', { name: `Plan of ${room.name}` })
    .getByRole('button', { name: new RegExp(`^${wall.name}, `) })
    .press('Enter')
  const holes = page.getByRole('list', { name: 'Holes that the next room has too' })
  await expect(holes).toContainText('is one hole with')
  await holes.getByRole('button', { name: /^part them/ }).click()
  await expect(holes).toContainText('lies back to back with')
  expect(await other()).toBe(null)
  const { violations } = await new AxeBuilder({ page }).include('.rooms').analyze()
  expect(violations.map(({ id }) => id)).toEqual([])
  await holes.getByRole('button', { name: /^make it one hole/ }).press('Enter')
  await expect(holes).toContainText('is one hole with')
  expect(await other()).toBe(opening.other)
  await host.call(page, 'edit.undo', {})
  await expect(holes).toContainText('lies back to back with')
  await host.call(page, 'edit.undo', {})
  await expect(holes).toContainText('is one hole with')
  expect(await other()).toBe(opening.other)
})

test('a door turns on the plan of its room, and on that of the room behind it', async ({ page, host }) => {
  await host.open(page, '#/rooms')
  const rooms = await roomsOf(page, host)
  const doors = rooms.flatMap(room => room.walls.flatMap(wall => wall.openings.map(opening => ({ room, opening }))))
  const here = doors.find(({ opening }) => opening.kind === 'door' && opening.other !== null)
  const there = doors.find(({ opening }) => opening.id === here?.opening.other)
  if (here === undefined || there === undefined) throw new Error('the demo has a door between two rooms')
  const leaves = () => page.getByRole('group', { name: /^Plan of/ }).locator('.leaf')
  for (const [from, to, swing] of [
    [here, there, 'in left'],
    [there, here, 'both out'],
  ] as const) {
    for (const { opening } of [from, to]) {
      const now = (await roomsOf(page, host)).flatMap(each => each.walls.flatMap(one => one.openings))
      const was = now.find(({ id }) => id === opening.id)?.swing ?? ''
      const next = opening.id === from.opening.id ? swing : ''
      await host.call(page, 'opening.update', { id: opening.id, changes: { swing: { was, to: next } } })
    }
    for (const { room } of [from, to]) {
      await host.open(page, `#/rooms/${room.id}`)
      await expect(leaves()).toHaveCount(1)
    }
  }
})
