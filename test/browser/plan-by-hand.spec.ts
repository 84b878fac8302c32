/** The plan changed where it is drawn: a dimension figure typed anew, by the pointer and by the keyboard. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import type { Output } from '../../src/contract/contract.ts'
import { expect, type RunningHost, test } from './host.ts'

type Room = Output<'plan.get'>['rooms'][number]

async function roomsOf(page: Page, host: RunningHost): Promise<readonly Room[]> {
  const plan = await host.call(page, 'plan.get', { exhibition: null })
  return (plan as Output<'plan.get'>).rooms // of that name
}

const sheet = (page: Page) => page.getByRole('group', { name: /^Plan of/ })
const roomOn = (page: Page, name: string) => sheet(page).getByRole('button', { name: new RegExp(`^${name}, `) })

/** A room by itself: 6000 × 4000, a door of 900 at 1000 in its first wall, seen as large as it goes. */
async function oneRoom(page: Page, host: RunningHost): Promise<Room> {
  await host.open(page, '#/rooms')
  const walls = [6000, 4000, 6000, 4000].map((length, at) => ({ name: `side ${at + 1}`, length, angle: 90 }))
  const made = await host.call(page, 'room.add', {
    name: 'Bay',
    height: 3000,
    walls,
    place: { at: [0, 0], turn: 0, storey: '' },
  })
  const { walls: ids } = made as Output<'room.add'> // likewise
  await host.call(page, 'opening.add', { wall: ids[0], kind: 'door', x: 1000, y: 0, width: 900, height: 2100 })
  await expect(roomOn(page, 'Bay')).toBeVisible()
  await page.keyboard.press('0')
  const [room] = await roomsOf(page, host)
  if (room === undefined) throw new Error('the room was made')
  return room
}

test('a dimension figure is typed anew by the keyboard; what no longer closes is told in the tag; Escape leaves', async ({
  page,
  emptyHost,
}) => {
  await oneRoom(page, emptyHost)
  await roomOn(page, 'Bay').focus()
  await page.keyboard.press('Enter')
  const tag = page.getByRole('complementary', { name: 'Tag of what is selected' })
  await expect(tag.getByText('The walls close exactly.')).toBeVisible()
  await sheet(page)
    .getByRole('button', { name: /^length of side 3/ })
    .focus()
  await page.keyboard.press('Enter')
  const field = page.getByRole('textbox', { name: 'length of side 3' })
  await expect(field).toBeFocused()
  await page.keyboard.type('20 ft')
  await page.keyboard.press('Escape')
  await expect(field).toHaveCount(0)
  expect((await roomsOf(page, emptyHost))[0]?.walls[2]?.length).toBe(6000)
  await expect(sheet(page).getByRole('button', { name: /^length of side 3/ })).toBeFocused()
  await page.keyboard.press('Enter')
  await page.keyboard.type('nothing')
  await page.keyboard.press('Enter')
  await expect(page.getByText(/does not start with a number/)).toBeVisible()
  await field.fill('20 ft')
  await page.keyboard.press('Enter')
  await expect(field).toHaveCount(0)
  // 20 ft = 6096 mm: 96 mm more than the wall over against it.
  await expect.poll(async () => (await roomsOf(page, emptyHost))[0]?.walls[2]?.length).toBe(6096)
  await expect(tag.getByText(/fail to close by 96 mm. Measure side 1 and side 3 again first/)).toBeVisible()
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  const room = (await roomsOf(page, emptyHost))[0]
  const survey = (await emptyHost.call(page, 'survey.get', { room: room?.id })) as Output<'survey.get'> // of that name
  const typed = survey.measures.find(({ value }) => value === 6096)
  expect(typed).toMatchObject({ kind: 'side', text: '20 ft', how: 'measured', used: true })
  expect(typed?.at).not.toBe('')
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await roomsOf(page, emptyHost))[0]?.walls[2]?.length).toBe(6000)
})

test('a figure is pressed with the pointer: the stretch before a door moves the door', async ({ page, emptyHost }) => {
  await oneRoom(page, emptyHost)
  // Nothing is chosen; the figure can be pressed all the same.
  const box = await sheet(page)
    .locator('text', { hasText: /^1.000$/ })
    .boundingBox()
  if (box === null) throw new Error('it is on the screen')
  await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2)
  const field = page.getByRole('textbox', { name: 'from the left end of side 1 to the door' })
  await expect(field).toBeFocused()
  await field.fill('5,2 m')
  await page.keyboard.press('Enter')
  await expect(page.getByText('The door would reach beyond the end of side 1.')).toBeVisible()
  await field.fill('1,4 m')
  await page.keyboard.press('Enter')
  await expect.poll(async () => (await roomsOf(page, emptyHost))[0]?.walls[0]?.openings[0]?.x).toBe(1400)
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await roomsOf(page, emptyHost))[0]?.walls[0]?.openings[0]?.x).toBe(1000)
})

async function chooseWall(page: Page, name: string) {
  await roomOn(page, 'Bay').focus()
  await page.keyboard.press('Enter')
  await sheet(page)
    .getByRole('button', { name: new RegExp(`^${name}, `) })
    .press('Enter')
}

const lengths = async (page: Page, host: RunningHost) =>
  ((await roomsOf(page, host))[0]?.walls ?? []).map(wall => Math.round(wall.length * 10) / 10)

test('a chosen wall is dragged along its normal and holds to a round figure; what was measured is asked about first', async ({
  page,
  emptyHost,
}) => {
  await oneRoom(page, emptyHost)
  await chooseWall(page, 'side 3')
  const wall = sheet(page).getByRole('button', { name: /^side 3, / })
  const box = await wall.boundingBox()
  if (box === null) throw new Error('it is on the screen')
  const [x, y] = [box.x + box.width * 0.3, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x, y - 30, { steps: 3 })
  await expect(page.getByText(/into the room · side [24] .* long/).first()).toBeVisible()
  await page.mouse.up()
  const asked = page.getByRole('alert', { name: 'Measured otherwise' })
  await expect(asked.getByText('B–C')).toBeVisible()
  await expect(asked.getByText('D–A')).toBeVisible()
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  // Nothing is written while it is asked.
  expect(await lengths(page, emptyHost)).toEqual([6000, 4000, 6000, 4000])
  await asked.getByRole('button', { name: 'leave it as measured' }).click()
  await expect(asked).toHaveCount(0)
  expect(await lengths(page, emptyHost)).toEqual([6000, 4000, 6000, 4000])

  const by = page.getByRole('textbox', { name: 'move side 3 outwards by' })
  await by.fill('0,5 m')
  await by.press('Enter')
  await asked.getByRole('button', { name: 'set them aside and move it' }).click()
  await expect.poll(() => lengths(page, emptyHost)).toEqual([6000, 4500, 6000, 4500])
  // Drawn now: the keys move it without asking, four steps as one edit.
  await page.locator('#screen').focus()
  for (let step = 0; step < 4; step += 1) await page.keyboard.press('ArrowUp')
  await expect.poll(() => lengths(page, emptyHost)).toEqual([6000, 4460, 6000, 4460])
  await page.keyboard.press('Control+z')
  await expect.poll(() => lengths(page, emptyHost)).toEqual([6000, 4500, 6000, 4500])
})

test('a chosen wall is turned by its end, by a figure about its middle and by keys, and taken back', async ({
  page,
  emptyHost,
}) => {
  await oneRoom(page, emptyHost)
  await chooseWall(page, 'side 3')
  const box = await sheet(page)
    .getByRole('button', { name: /^side 3, / })
    .boundingBox()
  if (box === null) throw new Error('it is on the screen')
  // Its left end as seen from inside is at the right of the page.
  const [x, y] = [box.x + box.width, box.y + box.height / 2]
  await page.mouse.move(x - 7, y)
  await page.mouse.down()
  await page.mouse.move(x - 7, y - 40, { steps: 4 })
  await expect(page.getByText(/^turned /).first()).toBeVisible()
  await page.keyboard.press('Escape')
  await page.mouse.up()
  expect(await lengths(page, emptyHost)).toEqual([6000, 4000, 6000, 4000])

  await page.getByRole('combobox', { name: 'turn it about' }).selectOption('middle')
  const by = page.getByRole('textbox', { name: 'turn side 3 by, degrees clockwise' })
  await by.fill('2')
  await by.press('Enter')
  const asked = page.getByRole('alert', { name: 'Measured otherwise' })
  await asked.getByRole('button', { name: 'set them aside and turn it' }).click()
  // 3000 × tan 2° = 104.8 more on one side, less on the other; 6000 / cos 2° = 6003.7. By hand.
  await expect.poll(() => lengths(page, emptyHost)).toEqual([6000, 4104.8, 6003.7, 3895.2])
  await page.locator('#screen').focus()
  await page.keyboard.press('Shift+R')
  await page.keyboard.press('Shift+R')
  await expect.poll(() => lengths(page, emptyHost)).toEqual([6000, 4000, 6000, 4000])
})

test('a wall is split where it is pressed, held to its middle, and joined again; the last with the first alike', async ({
  page,
  emptyHost,
}) => {
  await oneRoom(page, emptyHost)
  await chooseWall(page, 'side 3')
  await page.locator('#screen').focus()
  await page.keyboard.press('s')
  const typed = page.getByRole('textbox', { name: /^at / })
  await expect(typed).toBeFocused()
  const box = await sheet(page)
    .getByRole('button', { name: /^side 3, / })
    .boundingBox()
  if (box === null) throw new Error('it is on the screen')
  const [x, y] = [box.x + box.width / 2 + 3, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await expect(page.getByText(/from the left end · the middle/).first()).toBeVisible()
  await page.mouse.click(x, y)
  await expect.poll(() => lengths(page, emptyHost)).toEqual([6000, 4000, 3000, 3000, 4000])
  await expect(typed).toHaveCount(0)
  await page.getByRole('button', { name: /^join with the next/ }).click()
  await expect.poll(() => lengths(page, emptyHost)).toEqual([6000, 4000, 6000, 4000])

  await chooseWall(page, 'side 1')
  await page.locator('#screen').focus()
  await page.keyboard.press('s')
  // Across the door, by a figure: refused by name, and what was typed stays.
  await typed.fill('1500')
  await typed.press('Enter')
  await expect(page.getByText(/the door is in the way/)).toBeVisible()
  await typed.fill('2 m')
  await typed.press('Enter')
  await expect.poll(() => lengths(page, emptyHost)).toEqual([2000, 4000, 4000, 6000, 4000])
  const [left] = (await roomsOf(page, emptyHost))[0]?.walls ?? []
  await emptyHost.call(page, 'wall.move', { id: left?.id, before: null })
  await expect.poll(() => lengths(page, emptyHost)).toEqual([4000, 4000, 6000, 4000, 2000])
  await page.getByRole('button', { name: /^join with the next.*side 1, right part/ }).click()
  await expect.poll(() => lengths(page, emptyHost)).toEqual([4000, 6000, 4000, 6000])
})

test('in inches the keys move a room and a wall by sixteenths and feet', async ({ page, emptyHost }) => {
  const room = await oneRoom(page, emptyHost)
  await page.getByRole('button', { name: 'in', exact: true }).click()
  await roomOn(page, 'Bay').focus()
  await page.keyboard.press('Enter')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('Shift+ArrowDown')
  const at = async (): Promise<readonly [number, number]> => (await roomsOf(page, emptyHost))[0]?.at ?? [0, 0]
  // 25.4 / 16 and 304.8.
  await expect.poll(async () => (await at())[1] - (room.at?.[1] ?? 0)).toBeCloseTo(304.8, 6)
  expect((await at())[0] - (room.at?.[0] ?? 0)).toBeCloseTo(1.5875, 6)
  await chooseWall(page, 'side 3')
  await page.locator('#screen').focus()
  await page.keyboard.press('ArrowUp')
  await page.getByRole('button', { name: 'set them aside and move it' }).click()
  await expect.poll(async () => (await roomsOf(page, emptyHost))[0]?.walls[1]?.length).toBeCloseTo(3998.4125, 2)
})

test('M measures though the survey is still on its way', async ({ page, emptyHost }) => {
  const { id } = await oneRoom(page, emptyHost)
  let late = true
  await page.route('**/call', async route => {
    if (late && route.request().postData()?.includes('survey.get') === true) {
      await new Promise(done => setTimeout(done, 1500))
    }
    await route.continue()
  })
  await page.goto(`${page.url().split('#')[0]}#/rooms/${id}`)
  await expect(page.getByRole('group', { name: 'Plan of Bay' })).toBeVisible()
  await page.keyboard.press('m')
  await expect(page.locator('#measure-ends')).toBeFocused()
  late = false
})
