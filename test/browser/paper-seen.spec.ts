/**
 * Papers of the record seen before they are printed: leafed through by keys, laid out for the browser's own print at
 * their size, saved; from each screen that has one. The print is read by pdf.js.
 */
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import type { Output } from '../../src/contract/contract.ts'
import { expect, type RunningHost, sitDown, test } from './host.ts'

const patient = { timeout: 40_000 } as const

const paper = (page: Page) => page.getByRole('dialog', { name: 'As it prints' })
const pageOf = (page: Page, nth: number) => paper(page).getByRole('img', { name: new RegExp(`^Page ${nth} of`) })

async function go(page: Page, hash: string): Promise<void> {
  await page.goto(`${page.url().split('#')[0]}${hash}`)
}

async function put(page: Page): Promise<void> {
  await page.keyboard.press('Escape')
  await expect(paper(page)).toHaveCount(0)
}

/** Sizes in millimetres and words of the pages that the browser prints. */
async function printed(page: Page) {
  const data = new Uint8Array(await page.pdf({ preferCSSPageSize: true, printBackground: true }))
  const document = await getDocument({ data }).promise
  const mm = (points: number) => Math.round((points * 25.4) / 72)
  return Promise.all(
    Array.from({ length: document.numPages }, async (_, nth) => {
      const one = await document.getPage(nth + 1)
      const [left = 0, low = 0, right = 0, high = 0] = one.view
      const { items } = await one.getTextContent()
      const words = items.map(item => ('str' in item ? item.str : '')).join(' ')
      return { size: [mm(right - left), mm(high - low)], words }
    }),
  )
}

async function openDamage(page: Page, host: RunningHost): Promise<Output<'damage.list'>['lines'][number]> {
  const { lines } = (await host.call(page, 'damage.list', { state: 'open' })) as Output<'damage.list'> // the answer of that name
  const line = lines[0]
  if (line === undefined) throw new Error('the demo has an open damage')
  return line
}

test('a damage report is leafed through, printed as it is seen, and saved', async ({ page, host }) => {
  test.setTimeout(180_000)
  await host.open(page, '#/damage')
  await sitDown(page)
  const damage = await openDamage(page, host)
  await go(page, `#/damage/${damage.id}`)
  await page.getByRole('button', { name: 'see its report as it prints' }).click(patient)
  await expect(pageOf(page, 1)).toContainText(damage.reference, patient)
  const told = (await host.call(page, 'sheet.previewPaper', {
    of: { kind: 'damage report', damage: damage.id },
  })) as Output<'sheet.previewPaper'> // the same
  expect(told.pages.length).toBeGreaterThan(1)
  await expect(paper(page)).toContainText(`page 1 of ${told.pages.length}`)
  await page.keyboard.press('ArrowRight')
  await expect(paper(page)).toContainText(`page 2 of ${told.pages.length}`)
  await page.keyboard.press('End')
  await expect(paper(page)).toContainText(`page ${told.pages.length} of ${told.pages.length}`)
  await expect(pageOf(page, told.pages.length)).toBeInViewport()
  await page.keyboard.press('Home')
  await expect(paper(page)).toContainText(`page 1 of ${told.pages.length}`)
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    expect((await new AxeBuilder({ page }).analyze()).violations.map(({ id }) => id)).toEqual([])
  }

  const sheets = await printed(page)
  expect(sheets.map(({ size }) => size)).toEqual(
    told.pages.map(({ width, height }) => [Math.round(width), Math.round(height)]),
  )
  expect(sheets[0]?.words).toContain(damage.reference)
  // Nothing of the screen is on paper, and nothing of the paper is left on the screen.
  expect(sheets.map(({ words }) => words).join(' ')).not.toContain('records of damage')
  await expect(page.locator('.on-paper')).toHaveCount(0)

  await page.keyboard.press('s')
  const link = paper(page).getByRole('link', { name: /damage report\.pdf/ })
  await expect(link).toBeVisible(patient)
  const download = page.waitForEvent('download')
  await link.click()
  expect((await download).suggestedFilename()).toMatch(/\.pdf$/)

  // What is said meanwhile in another window is on the paper.
  const said = { damage: damage.id, kind: 'note', said: 'Seen by lamplight.' }
  await host.call(page, 'damage.say', said)
  await expect(paper(page)).toContainText('Seen by lamplight.', patient)
  await put(page)
})

test('the whole file of a work and of a loan, a day of movements and the air of a room are seen likewise', async ({
  page,
  host,
}) => {
  test.setTimeout(240_000)
  await host.open(page, '#/damage')
  await sitDown(page)
  const { work, workTitle } = await openDamage(page, host)
  await go(page, `#/work/${work}`)
  await page.getByRole('button', { name: 'see it as it prints' }).click(patient)
  await expect(pageOf(page, 1)).toContainText(workTitle, patient)
  // Paper is narrower than the window: the page behind lays itself out anew, and what is printed stays.
  const file = await printed(page)
  expect(file[0]?.words).toContain(workTitle)
  expect(new Set(file.map(({ size }) => size.join(' × '))).size).toBe(1)
  await expect(paper(page)).toContainText(`page 1 of ${file.length}`)
  await put(page)

  const { parties } = (await host.call(page, 'loan.list', {})) as Output<'loan.list'> // the answer of that name
  const [loan] = parties.flatMap(({ loans }) => loans)
  if (loan === undefined) throw new Error('the demo has a loan')
  await go(page, `#/loans/${loan.id}`)
  await page.getByRole('button', { name: 'see it as it prints' }).click(patient)
  await expect(pageOf(page, 1)).toContainText(loan.number, patient)
  await put(page)

  await go(page, '#/record')
  await page.getByRole('button', { name: 'see it as it prints' }).click(patient)
  await expect(pageOf(page, 1)).toContainText('0 movements', patient)
  await put(page)

  const { rooms } = (await host.call(page, 'climate.rooms', {})) as Output<'climate.rooms'> // the same
  const read = rooms.find(({ count }) => count > 0)
  if (read === undefined) throw new Error('the demo has a room whose air was read')
  await go(page, `#/climate/${read.id}`)
  await page.getByRole('button', { name: 'see it as it prints' }).click(patient)
  await expect(pageOf(page, 1)).toContainText(read.name, patient)
  await put(page)
})
