/** The sequence: walls in the visitor's order, works moved between them, proposals looked at, taken and undone. */
import AxeBuilder from '@axe-core/playwright'
import { expect, test } from './host.ts'
import { askForProposals, openSequence as open, settleAll, wallsOf as walls } from './sequence-screen.ts'

test('walls stand in the visitor’s order, and whether the show fits is told', async ({ page, host }) => {
  const exhibition = await open(page, host)
  const all = await walls(page, host, exhibition)
  await expect(page.locator('[data-today] [data-face]')).toHaveCount(all.length)
  const shown = await page
    .locator('[data-today] [data-face]')
    .evaluateAll(list => list.map(one => one.getAttribute('data-face')))
  expect(shown).toEqual(all.map(wall => wall.face))
  const capacity = (await host.call(page, 'sequence.capacity', { exhibition })) as { says: string }
  await expect(page.getByRole('region', { name: 'Does it fit?' })).toContainText(capacity.says)
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
})

test('a work goes to the next wall by a key, to another by hand, and back by undo', async ({ page, host }) => {
  const exhibition = await open(page, host)
  const before = await walls(page, host, exhibition)
  const at = before.findIndex((wall, index) => index + 1 < before.length && wall.works.some(work => !work.stays))
  const free = before[at]?.works.find(work => !work.stays)
  if (free === undefined) throw new Error('no free work')
  const work = () => page.locator(`[data-today] [data-entry="${free.entry}"]`)
  const where = async () =>
    (await walls(page, host, exhibition)).findIndex(wall => wall.works.some(one => one.entry === free.entry))
  await work().press('Alt+ArrowDown')
  await expect.poll(where).toBe(at + 1)
  await page.keyboard.press('Control+z')
  await expect.poll(where).toBe(at)

  // The screen hears of it a moment later than the catalogue.
  await expect(page.locator(`[data-face="${before[at]?.face}"] [data-entry="${free.entry}"]`)).toBeVisible()

  const to = page.locator(`[data-today] [data-face="${before[at + 1]?.face}"]`)
  await to.scrollIntoViewIfNeeded()
  const box = await to.boundingBox()
  const from = await work().boundingBox()
  if (box === null || from === null) throw new Error('not on the screen')
  await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2)
  await page.mouse.down()
  await page.mouse.move(box.x + 30, box.y + box.height / 2, { steps: 6 })
  await page.mouse.up()
  await expect.poll(where).toBe(at + 1)
  await page.keyboard.press('Control+z')
  await expect.poll(where).toBe(at)
})

test('proposals differ, one is taken as one edit and taken back', async ({ page, host }) => {
  const exhibition = await open(page, host)
  const before = await walls(page, host, exhibition)
  await askForProposals(page)
  const ways = page.getByRole('group', { name: 'Proposals' }).getByRole('button')
  expect(await ways.count()).toBeGreaterThanOrEqual(2)
  await ways.nth(1).click()
  await expect(page.getByRole('heading', { name: 'Freer' })).toBeVisible()
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])

  await settleAll(page)
  await page.getByRole('button', { name: 'take it' }).click()
  await expect(page.getByText(/hang as proposed/).first()).toBeVisible()
  const after = await walls(page, host, exhibition)
  expect(after).not.toEqual(before)
  // What stays has not moved.
  for (const wall of before) {
    const now = after.find(one => one.face === wall.face)
    for (const work of wall.works.filter(one => one.stays)) expect(now?.works).toContainEqual(work)
  }
  await page.keyboard.press('Control+z')
  await expect.poll(() => walls(page, host, exhibition)).toEqual(before)
})

test('one wall of a proposal is taken, the others stand as they stood', async ({ page, host }) => {
  const exhibition = await open(page, host)
  const before = await walls(page, host, exhibition)
  await askForProposals(page)
  const wall = before.find(one => one.works.length > 2 && one.works.every(work => !work.stays))
  if (wall === undefined) throw new Error('no wall is free')
  await page.getByRole('checkbox', { name: new RegExp(`this wall: ${wall.room}, ${wall.name}`) }).check()
  await settleAll(page)
  await page.getByRole('button', { name: 'take one wall' }).click()
  await expect(page.getByText(/as proposed/).first()).toBeVisible()
  const after = await walls(page, host, exhibition)
  const came = after.find(one => one.face === wall.face)?.works.map(work => work.entry) ?? []
  for (const one of after.filter(each => each.face !== wall.face)) {
    const stood = before.find(each => each.face === one.face)?.works ?? []
    expect(one.works).toEqual(stood.filter(work => !came.includes(work.entry)))
  }
  await page.keyboard.press('Control+z')
  await expect.poll(() => walls(page, host, exhibition)).toEqual(before)
})
