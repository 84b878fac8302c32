/** A room made by typing sizes in mixed units, its closure told, a length changed and taken back. */
import AxeBuilder from '@axe-core/playwright'
import { expect, test } from './host.ts'

interface Building {
  readonly rooms: readonly {
    readonly name: string
    readonly walls: readonly { readonly id: string; readonly name: string; readonly length: number }[]
  }[]
}

test('a room is typed wall by wall, drawn, added, changed and the change undone', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/rooms')
  await page.getByRole('textbox', { name: 'name', exact: true }).last().fill('North room')
  await page.getByRole('textbox', { name: 'height' }).fill('3450')
  const walls = page.getByRole('textbox', { name: /walls from left/ })
  await walls.fill('9140\n5,2 m\n9260\n5200 mm')
  await expect(page.getByText('The walls fail to close by 120 mm. Measure walls 1 and 3 again first')).toBeVisible()
  await walls.fill('9140\n5,2 m\n9140\n17\' 0 3/4"')
  await expect(page.getByText('▲ The walls close')).toHaveCount(0)
  await expect(page.getByText(/● The walls close/)).toBeVisible()
  await walls.fill('9140\nabout five\n9140\n5200')
  await expect(page.getByText(/Line 2/)).toBeVisible()
  await walls.fill('9140 x 5200')
  await expect(page.getByText('● The walls close exactly.')).toBeVisible()
  await page.getByRole('button', { name: 'add the room' }).click()

  const cell = page.getByRole('textbox', { name: 'wall 1, length' })
  await expect(cell).toHaveValue(/9.140/)
  await cell.fill('29\' 11 1/4"')
  await cell.press('Enter')
  const lengths = async () => {
    const { rooms } = (await emptyHost.call(page, 'room.list', {})) as Building // the answer of that name
    return rooms[0]?.walls.map(wall => wall.length)
  }
  // 29 ft 11 1/4 in = 359.25 in × 25.4
  await expect.poll(async () => (await lengths())?.[0]).toBeCloseTo(9124.95, 6)
  await page.locator('main').click({ position: { x: 5, y: 5 } })
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await lengths())?.[0]).toBe(9140)
})

test('a room with works on its walls says why it stays', async ({ page, host }) => {
  await host.open(page, '#/rooms')
  await page.getByRole('button', { name: 'remove this room' }).click()
  await expect(page.getByText(/stands? on this wall. Take (it|them) off first/)).toBeVisible()
})

test('the screen is free of barriers, light and dark', async ({ page, host }) => {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    await host.open(page, '#/rooms')
    await expect(page.getByRole('img', { name: /Plan of/ })).toBeVisible()
    const { violations } = await new AxeBuilder({ page }).analyze()
    expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([])
  }
})
