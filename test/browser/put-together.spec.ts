/** Rooms without a place, put together by their doorways: proposed, some left out, taken as one edit, taken back. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import type { Output } from '../../src/contract/contract.ts'
import { expect, type RunningHost, test } from './host.ts'

const placesOf = async (page: Page, host: RunningHost) => {
  const { rooms } = (await host.call(page, 'plan.get', { exhibition: null })) as Output<'plan.get'>
  return Object.fromEntries(rooms.map(room => [room.name, room.at]))
}

/** How many walls are the other side of one. */
async function sharedWalls(page: Page, host: RunningHost): Promise<number> {
  const { rooms } = (await host.call(page, 'plan.get', { exhibition: null })) as Output<'plan.get'>
  return rooms.flatMap(({ walls }) => walls).filter(({ backs }) => backs !== null).length
}

/** A hall of 6 by 4 m, a cabinet on its east side, a study behind that, and a store that nothing leads to. */
async function house(page: Page, host: RunningHost): Promise<void> {
  const room = async (name: string, across: number, down: number) =>
    (await host.call(page, 'room.add', {
      name,
      height: 3000,
      walls: [across, down, across, down].map(length => ({ length })),
    })) as Output<'room.add'>
  const hall = await room('Hall', 6000, 4000)
  const cabinet = await room('Cabinet', 3000, 3000)
  const study = await room('Study', 2500, 3500)
  await room('Store', 2000, 2000)
  const door = (wall: string | undefined, x: number, width: number, leadsTo: string) =>
    host.call(page, 'opening.add', { wall, kind: 'door', x, y: 0, width, height: 2100, leadsTo })
  await door(hall.walls[1], 1000, 900, cabinet.id)
  await door(cabinet.walls[3], 1000, 900, hall.id)
  await door(cabinet.walls[2], 500, 800, study.id)
  // 20 mm wider on this side: one hole all the same, and told.
  await door(study.walls[0], 600, 820, cabinet.id)
  const thickness = { was: null, to: 250 }
  await host.call(page, 'wall.update', { id: hall.walls[1], changes: { thickness } })
}

test('rooms are proposed where their doorways meet, and taken as one edit', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/rooms')
  await house(page, emptyHost)
  await page.getByRole('button', { name: 'put 4 rooms together by doorways' }).click()
  const put = page.getByRole('list', { name: 'Rooms that would be put' })
  await expect(put.getByRole('checkbox')).toHaveCount(3)
  await expect(put.getByText('stands first')).toBeVisible()
  await expect(put.getByText(/250 mm of wall between/)).toBeVisible()
  await expect(put.getByText(/nobody measured it/)).toBeVisible()
  await expect(put.getByText(/is 820 mm wide here and 800 mm there/)).toBeVisible()
  await expect(page.getByText('no doorway is said to lead to it or from it')).toBeVisible()
  const one = page.getByRole('list', { name: 'Walls that become one' })
  await expect(one.getByText('250 mm thick, a doorway through both')).toBeVisible()
  await expect(one.getByText('thickness not measured, a doorway through both')).toBeVisible()
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  // A proposal writes nothing.
  expect(Object.values(await placesOf(page, emptyHost))).toEqual([null, null, null, null])

  // By the keyboard alone: one is left out, and may come back.
  const study = put.getByRole('checkbox', { name: 'Study' })
  await study.focus()
  await page.keyboard.press('Space')
  await expect(put.getByRole('checkbox')).toHaveCount(2)
  await page.getByRole('button', { name: 'put 2 rooms there' }).click()
  await expect.poll(async () => (await placesOf(page, emptyHost)).Hall).not.toBeNull()
  const places = await placesOf(page, emptyHost)
  expect([places.Study, places.Store]).toEqual([null, null])
  // The door's middle is 1,450 mm down the hall's east wall, and 1,550 mm down the cabinet's west wall; 250 mm between.
  const [[hallX = NaN, hallY = NaN], [cabinetX = NaN, cabinetY = NaN]] = [places.Hall ?? [], places.Cabinet ?? []]
  expect(cabinetX - hallX).toBeCloseTo(6250, 1)
  expect(cabinetY - hallY).toBeCloseTo(1450 - 1550, 1)

  // The wall between them is one, and so is its doorway.
  const { rooms } = (await emptyHost.call(page, 'plan.get', { exhibition: null })) as Output<'plan.get'>
  const [hall, cabinet] = rooms.map(({ walls }) => walls)
  expect(hall?.[1]).toMatchObject({ backs: cabinet?.[3]?.id, thickness: 250 })
  expect(cabinet?.[3]).toMatchObject({ backs: hall?.[1]?.id, thickness: 250 })
  expect(cabinet?.[3]?.openings[0]?.other).toBe(hall?.[1]?.openings[0]?.id)

  await page.getByRole('button', { name: 'put 2 rooms together by doorways' }).click()
  // Said not to: the rooms alone are put.
  await page.getByRole('checkbox', { name: /made one/ }).press('Space')
  await page.getByRole('button', { name: 'put 1 room there' }).click()
  await expect.poll(async () => (await placesOf(page, emptyHost)).Study).not.toBeNull()
  expect(await sharedWalls(page, emptyHost)).toBe(2)
  await page.keyboard.press('ControlOrMeta+z')
  await expect.poll(async () => (await placesOf(page, emptyHost)).Study).toBeNull()
  await page.keyboard.press('ControlOrMeta+z')
  await expect.poll(async () => Object.values(await placesOf(page, emptyHost))).toEqual([null, null, null, null])
  // Taken back with the places, in the one step.
  expect(await sharedWalls(page, emptyHost)).toBe(0)
})
