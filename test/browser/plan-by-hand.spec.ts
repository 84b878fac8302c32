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
