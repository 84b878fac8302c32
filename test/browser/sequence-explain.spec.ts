/** Why a work and a wall are as they are, told beside the drawing with figures. */
import AxeBuilder from '@axe-core/playwright'
import { expect, test } from './host.ts'
import { askForProposals, openSequence, wallsOf } from './sequence-screen.ts'

test('a work that is chosen is explained, with the next best place and its price', async ({ page, host }) => {
  const exhibition = await openSequence(page, host)
  const walls = await wallsOf(page, host, exhibition)
  const wall = walls.find(({ works }) => works.filter(work => !work.stays).length > 1)
  const free = wall?.works.find(work => !work.stays)
  if (wall === undefined || free === undefined) throw new Error('no free work')
  await page.locator(`[data-today] [data-entry="${free.entry}"]`).click()
  const told = page.getByRole('region', { name: `Why it is on ${wall.room}, ${wall.name}` })
  await expect(told).toBeVisible({ timeout: 30_000 })
  await expect(told.getByRole('heading', { name: 'Its next best place' })).toBeVisible()
  await expect(told).toContainText(/costs \d+\.\d\d points|would be better by \d+\.\d\d points|is as good/)
  await expect(told).toContainText(/free stretches of wall/)
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])

  // Of a proposal it is asked anew.
  await askForProposals(page)
  await expect(page.getByRole('region', { name: /^Why it / })).toContainText('In order', { timeout: 30_000 })
})

test('a wall says what it loses and what would help, by key as well', async ({ page, host }) => {
  const exhibition = await openSequence(page, host)
  const [wall] = await wallsOf(page, host, exhibition)
  if (wall === undefined) throw new Error('no wall')
  const why = page.getByRole('button', { name: `why ${wall.room}, ${wall.name} is so` })
  await why.focus()
  await page.keyboard.press('Enter')
  const told = page.getByRole('region', { name: `What ${wall.room}, ${wall.name} loses` })
  await expect(told).toBeVisible({ timeout: 30_000 })
  await expect(told.getByRole('row')).toHaveCount(6)
  await expect(told).toContainText('Nothing of it is done by itself.')
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  await page.keyboard.press('Escape')
  await expect(told).toHaveCount(0)
})
