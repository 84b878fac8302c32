/** Two hangs side by side, and one gathered from both: one wall from one, others from the other, taken as one edit. */
import AxeBuilder from '@axe-core/playwright'
import { expect, test } from './host.ts'
import { askForProposals, openSequence, settleAll, wallsOf } from './sequence-screen.ts'

test('two proposals stand side by side, and what differs is drawn and said', async ({ page, host }) => {
  await openSequence(page, host)
  await askForProposals(page)
  await page.getByRole('group', { name: 'Proposals' }).getByRole('button').nth(1).click()
  await expect(page.locator('.work .differs').first()).toBeAttached()
  await expect(page.getByRole('button', { name: /, comes from / }).first()).toBeAttached()
  await page.getByLabel('beside it').selectOption({ label: 'In order' })
  await expect(page.locator('[data-today]')).toHaveCount(0)
  await expect(page.getByRole('button', { name: /, goes to / }).first()).toBeAttached()
  await expect(page.getByRole('img', { name: /^In order above, Freer below\. .* on another wall/ })).toBeVisible()
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
})

test('one wall from one proposal and two from another are one edit, settled before', async ({ page, host }) => {
  const exhibition = await openSequence(page, host)
  const before = await wallsOf(page, host, exhibition)
  await askForProposals(page)
  const ways = page.getByRole('group', { name: 'Proposals' }).getByRole('button')
  const boxes = page.getByRole('checkbox', { name: /^this wall: / })
  const picked = before.flatMap((wall, index) => (wall.works.some(work => !work.stays) ? [index] : [])).slice(0, 3)
  expect(picked.length).toBe(3)
  const [one, two, three] = picked
  await ways.nth(0).click()
  await boxes.nth(one ?? 0).check()
  await ways.nth(1).click()
  await boxes.nth(two ?? 0).check()
  await boxes.nth(three ?? 0).check()
  await expect(page.getByText(/^Gathered: one wall from In order, 2 walls from Freer/)).toBeVisible()

  const take = page.getByRole('button', { name: 'take 3 walls' })
  await settleAll(page)
  await take.click()
  await expect(page.getByText(/as proposed/).first()).toBeVisible()
  const after = await wallsOf(page, host, exhibition)
  for (const wall of before) {
    const now = after.find(each => each.face === wall.face)
    for (const work of wall.works.filter(each => each.stays)) expect(now?.works).toContainEqual(work)
  }
  const entries = after.flatMap(wall => wall.works.map(work => work.entry))
  expect(new Set(entries).size).toBe(entries.length)
  const untouched = before.filter((_, index) => !picked.includes(index))
  for (const wall of untouched) {
    const came = after.find(each => each.face === wall.face)?.works ?? []
    for (const work of came) expect(wall.works).toContainEqual(work)
  }
  await page.keyboard.press('Control+z')
  await expect.poll(() => wallsOf(page, host, exhibition)).toEqual(before)
})

test('a section alone is taken, and works of others stay where they are', async ({ page, host }) => {
  const exhibition = await openSequence(page, host)
  const before = await wallsOf(page, host, exhibition)
  const { works } = (await host.call(page, 'exhibition.frieze', { exhibition })) as {
    works: readonly { entry: string; section: string | null }[]
  }
  await askForProposals(page)
  await page.getByText('By section').click()
  const sections = page.locator('details').getByRole('checkbox')
  const order = [...new Set(works.map(work => work.section))]
  let taken: string | null | undefined
  for (const [index, section] of order.entries()) {
    await sections.nth(index).check()
    const take = page.getByRole('button', { name: 'take what is gathered' })
    if (await take.isEnabled()) {
      taken = section
      await take.click()
      break
    }
    // Its works would stand in others: told, and not taken.
    await expect(page.getByRole('group', { name: 'To settle before it is taken' })).toContainText('would stand in')
    await sections.nth(index).uncheck()
  }
  if (taken === undefined) return
  await expect(page.getByText(/as proposed/).first()).toBeVisible()
  const others = new Set(works.filter(work => work.section !== taken).map(work => work.entry))
  const placed = (walls: typeof before) =>
    walls.flatMap(wall => wall.works.flatMap(work => (others.has(work.entry) ? [{ ...work, face: wall.face }] : [])))
  expect(placed(await wallsOf(page, host, exhibition))).toEqual(placed(before))
  await page.keyboard.press('Control+z')
  await expect.poll(() => wallsOf(page, host, exhibition)).toEqual(before)
})
