/** The strip and the walls under many hands: several works at once, sections folded, only some looked at. */
import AxeBuilder from '@axe-core/playwright'
import { expect, test } from './host.ts'
import { openSequence, wallsOf } from './sequence-screen.ts'

test('several works go to the next wall by a key and to another by hand, each as one edit', async ({ page, host }) => {
  const exhibition = await openSequence(page, host)
  const before = await wallsOf(page, host, exhibition)
  const at = before.findIndex(
    (wall, index) => index + 1 < before.length && wall.works.filter(work => !work.stays).length > 1,
  )
  const [one, two] = before[at]?.works.filter(work => !work.stays) ?? []
  if (one === undefined || two === undefined) throw new Error('no two free works')
  const work = (entry: string) => page.locator(`[data-today] [data-entry="${entry}"]`)
  const where = async (entry: string) =>
    (await wallsOf(page, host, exhibition)).findIndex(wall => wall.works.some(each => each.entry === entry))
  await work(one.entry).click()
  await work(two.entry).click({ modifiers: ['Control'] })
  await expect(work(one.entry)).toHaveAttribute('aria-pressed', 'true')
  await expect(work(two.entry)).toHaveAttribute('aria-pressed', 'true')
  await work(two.entry).press('Alt+ArrowDown')
  await expect.poll(() => where(one.entry)).toBe(at + 1)
  expect(await where(two.entry)).toBe(at + 1)
  await expect(page.locator(`[data-face="${before[at + 1]?.face}"] [data-entry="${one.entry}"]`)).toBeVisible()
  await page.keyboard.press('Control+z')
  await expect.poll(() => wallsOf(page, host, exhibition)).toEqual(before)
  await expect(page.locator(`[data-face="${before[at]?.face}"] [data-entry="${one.entry}"]`)).toBeVisible()

  const to = page.locator(`[data-today] [data-face="${before[at + 1]?.face}"]`)
  await to.scrollIntoViewIfNeeded()
  const box = await to.boundingBox()
  const from = await work(two.entry).boundingBox()
  if (box === null || from === null) throw new Error('not on the screen')
  await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2)
  await page.mouse.down()
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2, { steps: 6 })
  await expect(to.locator('.over')).toHaveCount(2)
  await page.mouse.up()
  await expect.poll(() => where(one.entry)).toBe(at + 1)
  expect(await where(two.entry)).toBe(at + 1)
  await page.keyboard.press('Control+z')
  await expect.poll(() => wallsOf(page, host, exhibition)).toEqual(before)
})

test('a section folds and unfolds on the strip; its works are counted', async ({ page, host }) => {
  const exhibition = await openSequence(page, host)
  const { sections, works } = (await host.call(page, 'exhibition.frieze', { exhibition })) as {
    sections: readonly { id: string; title: string }[]
    works: readonly { section: string | null; running: string }[]
  }
  const [section] = sections
  if (section === undefined) throw new Error('no section')
  const many = works.filter(work => work.section === section.id).length
  const frieze = page.getByRole('region', { name: /^Frieze/ })
  const bracket = frieze.getByRole('button', { name: section.title, exact: true })
  await bracket.click()
  await expect(bracket).toHaveAttribute('aria-expanded', 'false')
  await expect(frieze.getByText(many === 1 ? 'one work' : `${many} works`)).toBeVisible()
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  await bracket.press('Enter')
  await expect(bracket).toHaveAttribute('aria-expanded', 'true')
})

test('only works of one lender and light stay on the strip, others are pale on the walls', async ({ page, host }) => {
  const exhibition = await openSequence(page, host)
  const { works } = (await host.call(page, 'exhibition.frieze', { exhibition })) as {
    works: readonly { lender: string; lightLimit: number | null }[]
  }
  const lender = works[0]?.lender ?? ''
  const own = works.filter(work => work.lender === lender)
  const looked = page.getByRole('group', { name: 'Works looked at' })
  await looked.getByLabel('lender').selectOption({ label: lender || 'no lender' })
  await expect(looked.getByRole('status')).toHaveText(`${own.length} of ${works.length} works`)
  await expect(page.locator('[data-today] .work.pale').first()).toBeAttached()
  await looked.getByLabel('light').selectOption({ label: 'to 50 lux' })
  const low = own.filter(work => work.lightLimit !== null && work.lightLimit <= 50).length
  await expect(looked.getByRole('status')).toHaveText(`${low} of ${works.length} works`)
  if (low > 0) await expect(page.locator('.frieze .work')).toHaveCount(low)
  await looked.getByRole('button', { name: 'show all' }).click()
  await expect(page.locator('[data-today] .work.pale')).toHaveCount(0)
})

test('works are put into another order on the strip, two by one key', async ({ page, host }) => {
  const exhibition = await openSequence(page, host)
  const order = async () =>
    ((await host.call(page, 'exhibition.frieze', { exhibition })) as { works: readonly { entry: string }[] }).works.map(
      work => work.entry,
    )
  const before = await order()
  const works = page.locator('.frieze .work')
  await works.nth(0).click()
  await works.nth(1).click({ modifiers: ['Shift'] })
  await expect(works.nth(1)).toHaveAttribute('aria-pressed', 'true')
  await works.nth(1).press('Alt+ArrowRight')
  await expect.poll(order).toEqual([before[2], before[0], before[1], ...before.slice(3)])
  await page.keyboard.press('Control+z')
  await expect.poll(order).toEqual(before)
})
