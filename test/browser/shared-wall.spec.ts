/** A wall between two rooms, moved by the mouse and by the keyboard: the next room is told of first, and goes with it. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import type { Output } from '../../src/contract/contract.ts'
import { expect, type RunningHost, test } from './host.ts'

const sheet = (page: Page) => page.getByRole('group', { name: /^Plan of/ })

/** A bay of 6 by 4 m and a nook of 5 by 4 m, 300 mm of wall between them; drawn, nobody has measured. */
async function house(page: Page, host: RunningHost) {
  await host.open(page, '#/rooms')
  const room = async (name: string, x: number, wide: number) =>
    (await host.call(page, 'room.add', {
      name,
      height: 3000,
      how: 'drawn',
      place: { at: [x, 0], turn: 0, storey: '' },
      walls: [wide, 4000, wide, 4000].map((length, at) => ({ length, name: ['n', 'e', 's', 'w'][at] })),
    })) as Output<'room.add'> // of that name
  const [bay, nook] = [await room('Bay', 0, 6000), await room('Nook', 6300, 5000)]
  await host.call(page, 'wall.share', { id: bay.walls[1], with: nook.walls[3], thickness: 300 })
  await expect(sheet(page).getByRole('button', { name: /^Nook, / })).toBeVisible()
  await page.keyboard.press('0')
  const { bar, at } = await seen(page, host)
  expect([bar, at]).toEqual([
    [6000, 4000, 6000, 4000, 5000, 4000, 5000, 4000],
    [6300, 0],
  ])
  return { bay, nook }
}

/** Lengths of both rooms' walls, where the second stands, and how thick the wall between them is. */
async function seen(page: Page, host: RunningHost) {
  const { rooms } = (await host.call(page, 'plan.get', { exhibition: null })) as Output<'plan.get'> // likewise
  const shared = rooms[0]?.walls[1]
  return {
    bar: rooms.flatMap(({ walls }) => walls.map(({ length }) => Math.round(length * 10) / 10)),
    at: rooms[1]?.at,
    thickness: shared?.thickness,
    one: shared?.backs !== null,
  }
}

/** The bay's side of it, chosen by the keyboard. */
async function choose(page: Page) {
  await sheet(page)
    .getByRole('button', { name: /^Bay, / })
    .press('Enter')
  await sheet(page).getByRole('button', { name: /^e, / }).press('Enter')
}

test('a wall that two rooms share is dragged: the next room’s side is drawn and told of, and both go as one edit', async ({
  page,
  emptyHost,
}) => {
  await house(page, emptyHost)
  await choose(page)
  const box = await sheet(page).getByRole('button', { name: /^e, / }).boundingBox()
  if (box === null) throw new Error('it is on the screen')
  const [x, y] = [box.x + box.width / 2, box.y + box.height * 0.3]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + 30, y, { steps: 3 })
  await page.mouse.up()
  const asked = page.getByRole('alert', { name: 'The other side' })
  await expect(asked.getByText(/^Nook’s side, w, moves with it: n and s become .+ mm there\.$/)).toBeVisible()
  await expect(asked.getByText(/^By itself it /)).toBeVisible()
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  // Nothing is written while it is asked.
  expect((await seen(page, emptyHost)).bar[0]).toBe(6000)
  await asked.getByRole('button', { name: 'move both sides' }).click()
  await expect.poll(async () => (await seen(page, emptyHost)).bar[0]).toBeGreaterThan(6000)
  const { bar, thickness } = await seen(page, emptyHost)
  // What one room gained the other lost, and the wall is as thick.
  expect((bar[0] ?? 0) + (bar[4] ?? 0)).toBe(11_000)
  expect([bar[1], bar[5], thickness]).toEqual([4000, 4000, 300])
  await page.keyboard.press('ControlOrMeta+z')
  await expect.poll(async () => (await seen(page, emptyHost)).bar[0]).toBe(6000)
  expect((await seen(page, emptyHost)).bar[4]).toBe(5000)
})

test('by the keyboard alone: stepped, told, this side alone makes it thicker, and both sides are typed by a figure', async ({
  page,
  emptyHost,
}) => {
  await house(page, emptyHost)
  await choose(page)
  await page.locator('#screen').focus()
  await page.keyboard.press('Shift+ArrowLeft')
  const asked = page.getByRole('alert', { name: 'The other side' })
  await expect(asked.getByText(/^Nook’s side, w, moves with it: n and s become 5.100 mm there\.$/)).toBeVisible()
  await expect(asked.getByText('By itself it makes the wall thicker: 400 mm, not 300 mm.')).toBeVisible()
  await expect(asked.getByRole('button', { name: 'leave it as it is' })).toBeFocused()
  await page.keyboard.press('Tab')
  await page.keyboard.press('Tab')
  await expect(asked.getByRole('button', { name: 'move this side alone' })).toBeFocused()
  await page.keyboard.press('Enter')
  await expect.poll(async () => (await seen(page, emptyHost)).thickness).toBe(400)
  expect((await seen(page, emptyHost)).bar).toEqual([5900, 4000, 5900, 4000, 5000, 4000, 5000, 4000])

  const by = page.getByRole('textbox', { name: 'move e outwards by' })
  await by.fill('0,25 m')
  await by.press('Enter')
  await expect(asked.getByText(/n and s become 4.750 mm there/)).toBeVisible()
  await page.keyboard.press('Tab')
  await page.keyboard.press('Enter')
  await expect
    .poll(async () => (await seen(page, emptyHost)).bar)
    .toEqual([6150, 4000, 6150, 4000, 4750, 4000, 4750, 4000])
  expect((await seen(page, emptyHost)).thickness).toBe(400)
  // A turn by itself: no longer one wall, which is said before.
  await page.locator('#screen').focus()
  await page.keyboard.press('r')
  await expect(asked.getByText(/its sides would no longer be parallel/)).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(asked).toHaveCount(0)
  expect((await seen(page, emptyHost)).one).toBe(true)
})

test('what was measured in the next room is named with its room, and set aside only when that is agreed', async ({
  page,
  emptyHost,
}) => {
  const { nook } = await house(page, emptyHost)
  const survey = (await emptyHost.call(page, 'survey.get', { room: nook.id })) as Output<'survey.get'> // of that name
  const [a, b] = survey.corners.map(({ id }) => id)
  await emptyHost.call(page, 'survey.add', { room: nook.id, from: a, to: b, value: 5000 })
  await choose(page)
  const by = page.getByRole('textbox', { name: 'move e outwards by' })
  await by.fill('100')
  await by.press('Enter')
  const asked = page.getByRole('alert', { name: 'Measured otherwise' })
  await expect(asked.getByText(/^Nook A–B/)).toBeVisible()
  await expect(asked.getByRole('button', { name: 'move this side alone', exact: true })).toBeVisible()
  await asked.getByRole('button', { name: 'set it aside and move both sides' }).click()
  await expect.poll(async () => (await seen(page, emptyHost)).bar[4]).toBe(4900)
})

test('a room put elsewhere leaves its side of the wall: told in the tag, and put back against it or the wall measured anew', async ({
  page,
  emptyHost,
}) => {
  const { nook } = await house(page, emptyHost)
  await sheet(page)
    .getByRole('button', { name: /^Nook, / })
    .press('Enter')
  await page.keyboard.press('Shift+ArrowRight')
  const told = page.getByRole('status').filter({ hasText: 'w, one wall with Bay, e: its two sides lie 400 mm apart' })
  await expect(told).toBeVisible()
  await expect.poll(async () => (await seen(page, emptyHost)).at).toEqual([6400, 0])
  await told.getByRole('button', { name: 'w' }).press('Enter')
  await page.getByRole('button', { name: 'put Nook 300 mm from it' }).press('Enter')
  await expect.poll(async () => (await seen(page, emptyHost)).at).toEqual([6300, 0])
  await expect(page.getByText(/its two sides lie/)).toHaveCount(0)

  await emptyHost.call(page, 'plan.placeRoom', {
    rooms: [{ id: nook.id, changes: { at: { was: [6300, 0], to: [6350, 0] } } }],
  })
  await page.getByRole('button', { name: 'it is 350 mm thick' }).click()
  await expect.poll(async () => (await seen(page, emptyHost)).thickness).toBe(350)
  await expect(page.getByText(/its two sides lie/)).toHaveCount(0)
})

test('900 wide, all answers are seen at once, and what the tag is about stays in sight while it is read on', async ({
  page,
  emptyHost,
}) => {
  await page.setViewportSize({ width: 900, height: 900 })
  await house(page, emptyHost)
  await choose(page)
  const by = page.getByRole('textbox', { name: 'move e outwards by' })
  await by.fill('100')
  await by.press('Enter')
  const asked = page.getByRole('alert', { name: 'The other side' })
  for (const name of ['leave it as it is', 'move both sides', 'move this side alone'])
    await expect(asked.getByRole('button', { name })).toBeInViewport({ ratio: 1 })
  // Lower still, all of the tag is more than its place holds.
  await page.setViewportSize({ width: 900, height: 560 })
  const tag = page.getByRole('complementary', { name: 'Tag of what is selected' })
  await tag.evaluate(element => element.scrollTo(0, element.scrollHeight))
  await expect(tag.getByRole('heading', { name: 'Bay, e' })).toBeInViewport({ ratio: 1 })
  expect(await tag.evaluate(element => element.scrollTop)).toBeGreaterThan(0)
})

test('a wall that two rooms share is split on both its sides, by a figure or by a press, once that was told and agreed', async ({
  page,
  emptyHost,
}) => {
  await house(page, emptyHost)
  await choose(page)
  const walls = async () => {
    const { rooms } = (await emptyHost.call(page, 'plan.get', { exhibition: null })) as Output<'plan.get'> // of that name
    return rooms.map(room => room.walls.map(({ length }) => Math.round(length)))
  }
  const whole = [
    [6000, 4000, 6000, 4000],
    [5000, 4000, 5000, 4000],
  ]
  await page.locator('#screen').focus()
  await page.keyboard.press('s')
  const at = page.getByRole('form', { name: 'Split e' }).getByRole('textbox')
  await at.fill('1,5 m')
  await at.press('Enter')
  const asked = page.getByRole('alert', { name: 'The other side' })
  await expect(asked.getByText(/^Nook’s side, w, is split with it, 2.500 mm from its left end\.$/)).toBeVisible()
  await expect(
    asked.getByText('By itself, Nook’s side, w, stays whole, and is then the other side of the right part alone.'),
  ).toBeVisible()
  await expect(asked.getByRole('button', { name: 'leave it as it is' })).toBeFocused()
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  expect(await walls()).toEqual(whole)
  await page.keyboard.press('Tab')
  await page.keyboard.press('Enter')
  await expect.poll(walls).toEqual([
    [6000, 1500, 2500, 6000, 4000],
    [5000, 4000, 5000, 2500, 1500],
  ])
  await expect(asked).toHaveCount(0)
  // Joined again, both are whole.
  await page.getByRole('button', { name: /^join with the next/ }).click()
  await expect(asked.getByText('Nook’s side is joined with it: w and w, right part become one.')).toBeVisible()
  await asked.getByRole('button', { name: 'join both sides' }).click()
  await expect.poll(walls).toEqual(whole)

  // By a press on the wall, this side alone; one undo.
  await page.locator('#screen').focus()
  await page.keyboard.press('s')
  const box = await sheet(page).getByRole('button', { name: /^e, / }).boundingBox()
  if (box === null) throw new Error('it is on the screen')
  await page.mouse.move(box.x + box.width / 2, box.y + box.height * 0.52)
  await page.mouse.down()
  await page.mouse.up()
  await expect(asked.getByText(/^Nook’s side, w, is split with it/)).toBeVisible()
  await asked.getByRole('button', { name: 'split this side alone' }).click()
  await expect.poll(async () => (await walls()).map(one => one.length)).toEqual([5, 4])
  await page.keyboard.press('ControlOrMeta+z')
  await expect.poll(walls).toEqual(whole)
})
