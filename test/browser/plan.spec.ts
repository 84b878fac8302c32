/** The building's plan: a room drawn with the mouse, one by figures alone, rooms put where they stand, all taken back. */
import AxeBuilder from '@axe-core/playwright'
import type { Locator, Page } from '@playwright/test'
import type { Output } from '../../src/contract/contract.ts'
import { expect, type RunningHost, test } from './host.ts'

type Room = Output<'plan.get'>['rooms'][number]

async function roomsOf(page: Page, host: RunningHost): Promise<readonly Room[]> {
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as Output<'exhibition.list'> // of that name
  const plan = await host.call(page, 'plan.get', { exhibition: exhibitions[0]?.id ?? null })
  return (plan as Output<'plan.get'>).rooms // likewise
}

async function middleOf(drawn: Locator): Promise<{ readonly x: number; readonly y: number }> {
  const box = await drawn.boundingBox()
  if (box === null) throw new Error('it is not on the screen')
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

const sheet = (page: Page) => page.getByRole('group', { name: /^Plan of/ })
const roomOn = (page: Page, name: string) => sheet(page).getByRole('button', { name: new RegExp(`^${name}, `) })

test('a room is drawn with the mouse, a typed length winning over it, and taken back', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/rooms')
  await page.getByRole('button', { name: 'draw a room' }).click()
  const { x, y } = await middleOf(sheet(page))
  await page.mouse.click(x - 200, y - 120)
  await page.mouse.move(x + 100, y - 117)
  await expect(page.getByText('level on the page').first()).toBeVisible()
  await page.keyboard.type('6,2 m')
  await page.keyboard.press('Enter')
  const end = async () => page.getByRole('textbox', { name: 'length of side 2' })
  await expect(await end()).toBeFocused()
  // A side that goes nowhere is refused in words.
  await page.keyboard.type('0')
  await expect(page.getByText('A wall is longer than nothing.')).toBeVisible()
  await page.keyboard.press('Escape')
  await page.keyboard.type('4100')
  await page.keyboard.press('Enter')
  await page.keyboard.type('6200')
  await page.keyboard.press('Enter')
  // Back to the first corner by the hand, a little beside it: it holds and closes.
  await page.mouse.click(x - 197, y - 118)
  await page.getByRole('textbox', { name: 'name of the new room' }).fill('Bay')
  await page.getByRole('textbox', { name: 'height of the new room' }).fill('3,3 m')
  await page.getByRole('button', { name: 'add the room' }).click()
  await expect(roomOn(page, 'Bay')).toBeVisible()
  const [room] = await roomsOf(page, emptyHost)
  expect(room?.walls.map(wall => [wall.length, wall.angle])).toEqual([
    [6200, 90],
    [4100, 90],
    [6200, 90],
    [4100, 90],
  ])
  expect(room).toMatchObject({ height: 3300, closes: true, area: 25.42 })
  expect(room?.at).not.toBeNull()
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await roomsOf(page, emptyHost)).length).toBe(0)
})

test('a room is drawn by the keyboard alone; what would cross is refused, Backspace takes a corner back', async ({
  page,
  emptyHost,
}) => {
  await emptyHost.open(page, '#/rooms')
  await page.keyboard.press('d')
  await page.keyboard.press('Enter')
  const side = async (length: string, corner = '') => {
    await page.keyboard.type(length)
    if (corner !== '') {
      await page.keyboard.press('Tab')
      await page.keyboard.type(corner)
    }
    await page.keyboard.press('Enter')
  }
  await side('5000')
  await side('4000')
  await side('3000')
  // Up through the first side.
  await side('6000')
  await expect(page.getByText(/would cross side 1/)).toBeVisible()
  await page.keyboard.press('Escape')
  await side('1500', '90')
  await side('2000', '270')
  await side('700')
  await page.keyboard.press('Backspace')
  await side('2500')
  const name = page.getByRole('textbox', { name: 'name of the new room' })
  await expect(name).toBeFocused()
  await page.keyboard.type('Store')
  await page.keyboard.press('Tab')
  await page.keyboard.type('2700')
  await page.keyboard.press('Enter')
  await expect(roomOn(page, 'Store')).toBeVisible()
  const [room] = await roomsOf(page, emptyHost)
  // 5000 × 4000 less the corner of 2000 × 1500, by hand.
  expect(room).toMatchObject({ closes: true, area: 17 })
  expect(room?.walls.map(wall => wall.length)).toEqual([5000, 4000, 3000, 1500, 2000, 2500])
})

test('a room is carried beside another and holds to it, stepped by keys, placed by figures, and taken back', async ({
  page,
  host,
}) => {
  await host.open(page, '#/rooms')
  const [first, second] = await roomsOf(page, host)
  if (first === undefined || second === undefined) throw new Error('the demo has two rooms')
  const stored = async (id: string) => (await roomsOf(page, host)).find(room => room.id === id)
  for (const [index, room] of [first, second].entries()) {
    const change = { at: { was: room.at, to: [index * 20_000, 0] }, turn: { was: room.turn, to: 0 } }
    await host.call(page, 'plan.placeRoom', { rooms: [{ id: room.id, changes: change }] })
  }
  await expect(roomOn(page, first.name)).not.toHaveAccessibleName(/not placed/)
  await expect(roomOn(page, second.name)).not.toHaveAccessibleName(/not placed/)
  await page.keyboard.press('0')
  await roomOn(page, second.name).focus()
  await page.keyboard.press('Enter')
  const east = Math.max(...((await stored(first.id))?.walls ?? []).map(wall => wall.from[0]))
  const from = await middleOf(roomOn(page, second.name))
  const other = await roomOn(page, first.name).boundingBox()
  const own = await roomOn(page, second.name).boundingBox()
  if (other === null || own === null) throw new Error('both are on the screen')
  await page.mouse.move(from.x, from.y + 30)
  await page.mouse.down()
  await page.mouse.move(from.x - 20, from.y + 30)
  await page.mouse.move(from.x - (own.x - other.x - other.width) + 3, from.y + 33, { steps: 4 })
  await expect(page.getByText(/back to back with/).first()).toBeVisible()
  await page.mouse.up()
  await expect.poll(async () => (await stored(second.id))?.at?.[0]).toBeLessThan(19_000)
  const beside = await stored(second.id)
  const west = Math.min(...(beside?.walls ?? []).map(wall => wall.from[0]))
  expect(west).toBeGreaterThan(east)

  await page.keyboard.press('Shift+ArrowRight')
  await page.keyboard.press('ArrowDown')
  await expect.poll(async () => (await stored(second.id))?.at?.[1]).toBeCloseTo((beside?.at?.[1] ?? 0) + 10, 2)
  expect((await stored(second.id))?.at?.[0]).toBeCloseTo((beside?.at?.[0] ?? 0) + 100, 2)
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await stored(second.id))?.at).toEqual(beside?.at)

  const turn = page.getByRole('textbox', { name: `turn of ${second.name}` })
  await turn.fill('45')
  await turn.press('Enter')
  await expect.poll(async () => (await stored(second.id))?.turn).toBe(45)
  const north = page.getByRole('textbox', { name: /^north/ })
  await north.fill('350')
  await north.press('Enter')
  await expect(page.getByRole('img', { name: /North lies 350°/ })).toBeVisible()
})

test('a room is typed from the building’s plan by a key, and put aside', async ({ page, host }) => {
  await host.open(page, '#/rooms')
  const [first] = await roomsOf(page, host)
  await expect(roomOn(page, first?.name ?? '')).toBeVisible()
  await page.keyboard.press('n')
  await expect(page.getByRole('textbox', { name: /^walls from left to right/ })).toBeVisible()
  await page.getByRole('button', { name: 'back to the rooms' }).click()
  await expect(roomOn(page, first?.name ?? '')).toBeVisible()
})

test('a chosen wall shows its elevation; a work chosen there is marked on the plan and led to', async ({
  page,
  host,
}) => {
  await host.open(page, '#/rooms')
  const rooms = await roomsOf(page, host)
  const room = rooms.find(one => one.walls.some(wall => wall.works.length > 0))
  const wall = room?.walls.find(one => one.works.length > 0)
  const [work] = wall?.works ?? []
  if (room === undefined || wall === undefined || work === undefined) throw new Error('the demo has a work on a wall')
  await roomOn(page, room.name).focus()
  await page.keyboard.press('Enter')
  await sheet(page)
    .getByRole('button', { name: new RegExp(`^${wall.name}, `) })
    .press('Enter')
  const strip = page.getByRole('region', { name: `Elevation of ${room.name}, ${wall.name}` })
  const shown = strip.getByRole('button', { name: work.title })
  await expect(sheet(page).locator('.work.chosen')).toHaveCount(0)
  await shown.press('Enter')
  await expect(shown).toHaveAttribute('aria-pressed', 'true')
  await expect(sheet(page).locator('.work.chosen')).toHaveCount(1)
  await shown.press('Enter')
  await expect(page).toHaveURL(new RegExp(`#/work/${work.work}`))
})

for (const scheme of ['light', 'dark'] as const) {
  test(`the plan is free of barriers while a room is chosen and while one is drawn, ${scheme}`, async ({
    page,
    host,
  }) => {
    await page.emulateMedia({ colorScheme: scheme })
    await host.open(page, '#/rooms')
    const [room] = await roomsOf(page, host)
    await roomOn(page, room?.name ?? '').focus()
    await page.keyboard.press('Enter')
    await expect(page.getByRole('complementary', { name: 'Tag of what is selected' })).toBeVisible()
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
    await page.keyboard.press('Escape')
    await page.keyboard.press('d')
    await page.keyboard.press('Enter')
    await page.keyboard.type('4000')
    expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  })
}

test('while the wheel turns the drawing is carried, and true to its own letters when it rests', async ({
  page,
  host,
}) => {
  await host.open(page, '#/rooms')
  const [room] = await roomsOf(page, host)
  if (room === undefined) throw new Error('the demo has a room')
  const name = sheet(page).locator('text').filter({ hasText: room.name }).first()
  await expect(name).toBeVisible()
  const high = async () => (await name.boundingBox())?.height ?? 0
  const letters = await high()
  const pointer = await middleOf(roomOn(page, room.name))
  const before = (await roomOn(page, room.name).boundingBox()) ?? { x: 0, width: 1 }
  // Half as large again: 184 px of wheel at 0.0022 a pixel, in one turn after the other.
  const seen = await sheet(page).evaluate(
    async (table, [clientX, clientY]) => {
      const frame = () => new Promise(requestAnimationFrame)
      const about = { bubbles: true, cancelable: true, clientX, clientY, deltaY: -46 }
      const drawing = table.querySelector('svg')
      for (let turn = 0; turn < 4; turn += 1) {
        table.dispatchEvent(new WheelEvent('wheel', about))
        await frame()
      }
      return new DOMMatrix(getComputedStyle(drawing ?? table).transform).a
    },
    [pointer.x, pointer.y] as const,
  )
  expect(seen).toBeCloseTo(Math.exp(4 * 46 * 0.0022), 3)
  await expect
    .poll(() =>
      sheet(page)
        .locator('svg.drawn, svg.words')
        .evaluateAll(all => all.map(svg => getComputedStyle(svg).transform)),
    )
    .toEqual(['matrix(1, 0, 0, 1, 0, 0)', 'matrix(1, 0, 0, 1, 0, 0)'])
  expect(await high()).toBeCloseTo(letters, 1)
  const after = (await roomOn(page, room.name).boundingBox()) ?? { x: 0, width: 1 }
  expect(after.width / before.width).toBeCloseTo(Math.exp(4 * 46 * 0.0022), 1)
  // What was under the pointer still is.
  expect((pointer.x - after.x) / after.width).toBeCloseTo((pointer.x - before.x) / before.width, 2)
  await page.mouse.click(pointer.x, pointer.y + after.width / 8)
  await expect(roomOn(page, room.name)).toHaveAttribute('aria-pressed', 'true')
})

test('in a narrow window the plan keeps its height: the wall’s strip is a line that opens, the tag stands beside and folds', async ({
  page,
  host,
}) => {
  await page.setViewportSize({ width: 900, height: 700 })
  await host.open(page, '#/rooms')
  const [room] = await roomsOf(page, host)
  const wall = room?.walls[0]
  if (room === undefined || wall === undefined) throw new Error('the demo has a room')
  await roomOn(page, room.name).press('Enter')
  await sheet(page).locator(`[data-wall="${wall.id}"]`).press('Enter')
  const strip = page.getByRole('region', { name: `Elevation of ${room.name}, ${wall.name}` })
  await expect(strip).toBeInViewport({ ratio: 1 })
  await expect(strip.getByRole('group')).toHaveCount(0)
  const high = async () => (await sheet(page).boundingBox())?.height ?? 0
  // The window without the bars above and the frieze below, and a line for the strip.
  expect(await high()).toBeGreaterThan(300)
  await strip.getByRole('button', { name: 'see it straight on' }).press('Enter')
  await expect(strip.getByRole('group', { name: `${wall.name}, straight on` })).toBeInViewport({ ratio: 1 })
  await strip.getByRole('button', { name: 'fold' }).press('Enter')
  const tag = page.getByRole('complementary', { name: 'Tag of what is selected' })
  await expect(tag.getByRole('heading', { name: `${room.name}, ${wall.name}` })).toBeVisible()
  const wide = async () => (await sheet(page).boundingBox())?.width ?? 0
  const before = await wide()
  await tag.getByRole('button', { name: 'fold' }).press('Enter')
  await expect(tag.getByRole('heading')).toBeHidden()
  await expect.poll(wide).toBeGreaterThan(before + 200)
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  await tag.getByRole('button', { name: 'show the tag' }).press('Enter')
  await expect(tag.getByRole('heading', { name: `${room.name}, ${wall.name}` })).toBeVisible()
})
