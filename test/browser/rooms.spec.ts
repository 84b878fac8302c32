/** A room made by typing sizes in mixed units, its closure told, its walls and what is fixed on them changed by hand. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, type RunningHost, test } from './host.ts'

interface Placed {
  readonly id: string
  readonly kind: string
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}
interface Wall {
  readonly id: string
  readonly name: string
  readonly length: number
  readonly lengthText: string
  readonly angle: number | null
  readonly floor: readonly (readonly [number, number])[]
  readonly openings: readonly Placed[]
  readonly keepClears: readonly (Placed & { readonly margin: number; readonly reason: string })[]
}

async function wallsOf(page: Page, host: RunningHost, room: string): Promise<readonly Wall[]> {
  // The answer of that name.
  const { rooms } = (await host.call(page, 'room.list', {})) as { rooms: { name: string; walls: Wall[] }[] }
  return rooms.find(one => one.name === room)?.walls ?? []
}

async function wallOf(page: Page, host: RunningHost, room: string, wall: string): Promise<Wall> {
  const found = (await wallsOf(page, host, room)).find(one => one.name === wall)
  if (found === undefined) throw new Error(`the demo has no ${wall} in ${room}`)
  return found
}

async function standBefore(page: Page, host: RunningHost, room: string, wall: string): Promise<void> {
  await host.open(page, '#/rooms')
  await page.getByRole('navigation', { name: 'Rooms' }).getByRole('button', { name: room }).click()
  await page
    .getByRole('row', { name: wall })
    .getByRole('button', { name: new RegExp(`^\\d+ ${wall}$`) })
    .click()
  await expect(page.getByRole('group', { name: `Elevation of ${wall}` })).toBeVisible()
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
  await cell.fill('about nine')
  await cell.press('Enter')
  await expect(page.getByText('“about nine” does not start with a number.')).toBeVisible()
  await cell.fill('29\' 11 1/4"')
  await cell.press('Enter')
  const first = async () => (await wallsOf(page, emptyHost, 'North room'))[0]
  // 29 ft 11 1/4 in = 359.25 in × 25.4
  await expect.poll(async () => (await first())?.length).toBeCloseTo(9124.95, 6)
  expect(await first()).toMatchObject({ lengthText: '29\' 11 1/4"' })
  await page.locator('main').click({ position: { x: 5, y: 5 } })
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await first())?.length).toBe(9140)

  const corner = page.getByRole('textbox', { name: 'wall 1, corner angle' })
  await corner.fill('92,5')
  await corner.press('Enter')
  await expect.poll(async () => (await first())?.angle).toBe(92.5)
  await expect(page.getByText('▲ The walls fail to close by')).toBeVisible()
})

test('a wall is added after another and removed; one with works says why it stays', async ({ page, host }) => {
  await standBefore(page, host, 'River Room', 'south wall')
  const form = page.getByRole('form', { name: 'Add a wall' })
  await form.getByRole('textbox', { name: 'called' }).fill('short wall')
  await form.getByRole('textbox', { name: 'long' }).fill('2\' 6"')
  await form.getByRole('button', { name: 'add the wall' }).click()
  const names = async () => (await wallsOf(page, host, 'River Room')).map(wall => wall.name)
  await expect.poll(names).toEqual(['north wall', 'east wall', 'south wall', 'short wall', 'west wall'])
  await page.getByRole('button', { name: 'remove this wall' }).click()
  await expect.poll(names).toEqual(['north wall', 'east wall', 'south wall', 'west wall'])

  await page
    .getByRole('row', { name: 'south wall' })
    .getByRole('button', { name: /^\d+ south wall$/ })
    .click()
  await page.getByRole('button', { name: 'remove this wall' }).click()
  await expect(page.getByText(/stands? on this wall. Take (it|them) off first/)).toBeVisible()
  await page.getByRole('button', { name: 'remove this room' }).click()
  await expect(page.getByText(/stands? on this wall. Take (it|them) off first/)).toBeVisible()
  expect(await names()).toContain('south wall')
})

test('a door is dragged, stretched, nudged and let go of, each as one edit', async ({ page, host }) => {
  await standBefore(page, host, 'River Room', 'east wall')
  const door = async () => (await wallOf(page, host, 'River Room', 'east wall')).openings[0]
  const before = await door()
  if (before === undefined) throw new Error('the demo has no door here')
  const drawn = page.getByRole('group', { name: 'Elevation of east wall' }).getByRole('button', { name: /^door/ })
  await drawn.scrollIntoViewIfNeeded()
  const box = await drawn.boundingBox()
  if (box === null) throw new Error('the door is not drawn')
  /** Pixels of the drawing for a millimetre. */
  const scale = box.width / before.width
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]

  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x - 30, y, { steps: 6 })
  await page.keyboard.press('Escape')
  await page.mouse.up()
  expect(await door()).toEqual(before)

  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x - 12, y, { steps: 4 })
  await page.mouse.move(x - 30, y, { steps: 4 })
  await page.mouse.up()
  await expect.poll(async () => (await door())?.x).toBeLessThan(before.x)
  const moved = await door()
  expect(Math.abs((moved?.x ?? 0) - (before.x - 30 / scale))).toBeLessThan(1.5 / scale)
  expect(moved).toMatchObject({ width: before.width, height: before.height, y: 0 })
  expect(Number.isInteger(moved?.x)).toBe(true)

  await drawn.focus()
  for (let press = 0; press < 3; press++) await page.keyboard.press('ArrowRight')
  await page.keyboard.press('Shift+ArrowRight')
  await expect.poll(async () => (await door())?.x).toBe((moved?.x ?? 0) + 13)
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await door())?.x).toBe(moved?.x)
  await page.keyboard.press('Control+z')
  await expect.poll(door).toEqual(before)
})

test('a thermostat and floor heights are typed in any unit, and changed where somebody else was first', async ({
  page,
  host,
}) => {
  await standBefore(page, host, 'Mill Room', 'north wall')
  const wall = () => wallOf(page, host, 'Mill Room', 'north wall')
  const known = (await wall()).keepClears.map(one => one.id)
  const form = page.getByRole('form', { name: 'Add something to north wall' })
  await form.getByRole('combobox', { name: 'add a' }).selectOption('thermostat')
  await form.getByRole('textbox', { name: 'from the left end' }).fill('4 ft')
  await form.getByRole('textbox', { name: 'above the floor' }).fill('1,42 m')
  await form.getByRole('textbox', { name: 'wide' }).fill('12')
  await form.getByRole('textbox', { name: 'high' }).fill('120')
  await form.getByRole('button', { name: 'add it' }).click()
  await expect(form.getByRole('alert')).toContainText('margin')
  await form.getByRole('textbox', { name: 'margin' }).fill('6 in')
  await form.getByRole('textbox', { name: 'called' }).fill('new sensor')
  await form.getByRole('button', { name: 'add it' }).click()
  const added = async () => (await wall()).keepClears.find(one => !known.includes(one.id))
  await expect.poll(async () => (await added())?.kind).toBe('thermostat')
  // 4 ft and 6 in in millimetres, exact by definition of the inch.
  expect(await added()).toMatchObject({ x: 1219.2, y: 1420, width: 12, height: 120, margin: 152.4 })

  const cell = page.getByRole('textbox', { name: 'new sensor, wide' })
  await cell.fill('90')
  const id = (await added())?.id
  await host.call(page, 'keepClear.update', { id, changes: { width: { was: 12, to: 100 } } })
  await cell.press('Enter')
  await expect(page.getByText('Meanwhile somebody made it “100”.')).toBeVisible()
  await page.getByRole('button', { name: 'write “90”' }).click()
  await expect.poll(async () => (await added())?.width).toBe(90)

  await page.getByRole('button', { name: 'back to the wall' }).click()
  const floor = page.getByRole('form', { name: 'Add a floor height' })
  await floor.getByRole('textbox', { name: 'at' }).fill('3 m')
  await floor.getByRole('textbox', { name: 'height' }).fill('-12')
  await floor.getByRole('button', { name: 'add' }).click()
  await expect.poll(async () => (await wall()).floor).toContainEqual([3000, -12])
})

test('the screen is free of barriers, light and dark', async ({ page, host }) => {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    await host.open(page, '#/rooms')
    await expect(page.getByRole('group', { name: /Plan of/ })).toBeVisible()
    const look = async () =>
      (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])
    expect(await look()).toEqual([])
    await page
      .getByRole('row', { name: 'east wall' })
      .getByRole('button', { name: /^\d+ east wall$/ })
      .click()
    await page.getByRole('button', { name: /^door/ }).focus()
    await page.keyboard.press('Enter')
    await expect(page.getByRole('heading', { name: 'Door' })).toBeVisible()
    expect(await look()).toEqual([])
    await page.getByRole('button', { name: 'add a room' }).click()
    await expect(page.getByRole('button', { name: 'add the room' })).toBeVisible()
    expect(await look()).toEqual([])
  }
})
