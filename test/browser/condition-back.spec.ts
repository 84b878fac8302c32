/** Both sides of a work in a report, a photograph that is pasted, and the papers: with the report that the demo has. */
import { AxeBuilder } from '@axe-core/playwright'
import sharp from 'sharp'
import type { Output } from '../../src/contract/contract.ts'
import { expect, test } from './host.ts'

const patient = { timeout: 30_000 }

test('a finding on the back, a pasted photograph to draw it on, and both papers', async ({ page, host }) => {
  test.setTimeout(180_000)
  await host.open(page, '#/condition')
  await page.getByRole('form', { name: 'Who is at the desk' }).getByRole('button').first().click(patient)
  await page.getByRole('link', { name: 'Check in between' }).click(patient)
  await page.waitForURL(/#\/condition\/./)
  const report = page.url().split('#/condition/')[1] ?? ''
  const told = async () => (await host.call(page, 'condition.get', { id: report })) as Output<'condition.get'> // the answer of that name

  // What lies on the back is not drawn on the front; its line opens the back.
  await expect(page.getByRole('heading', { name: '4 findings' })).toBeVisible(patient)
  await expect(page.getByRole('application', { name: /3 findings/ })).toBeVisible()
  await page.getByRole('button', { name: /loose hardware.*on the back/ }).click()
  const back = page.getByRole('application', { name: /The back, as seen from behind/ })
  await expect(back).toHaveAccessibleName(/, one finding;/, patient)
  await expect(page.getByText('Drawn as its back is measured now.')).toBeVisible()
  // The frame is a side of its own, drawn round its opening; its next key leads there, and its words come first.
  await page.getByRole('button', { name: 'front', exact: true }).click()
  await page.keyboard.press('b')
  const framed = page.getByRole('application', { name: /The frame, as seen from the front/ })
  await expect(framed).toHaveAccessibleName(/, 0 findings;/, patient)
  await framed.focus()
  await page.keyboard.press('Space')
  await expect(page.getByRole('heading', { name: '5 findings' })).toBeVisible(patient)
  await expect(page.getByRole('button', { name: 'frame, 1 found' })).toHaveAttribute('aria-pressed', 'true')
  expect((await told()).findings.at(-1)?.side).toBe('frame')
  const word = page.getByRole('list').getByRole('combobox', { name: /^word/i })
  await expect(word.locator('option').nth(1)).toHaveText(/· frame$/)
  await page.keyboard.press('Control+z')
  await expect(page.getByRole('heading', { name: '4 findings' })).toBeVisible(patient)
  await page.getByRole('button', { name: 'back, 1 found' }).click()
  await back.focus()
  await page.keyboard.press('Space')
  await expect(page.getByRole('heading', { name: '5 findings' })).toBeVisible(patient)
  expect((await told()).findings.map(({ side }) => side)).toEqual(['front', 'front', 'front', 'back', 'back'])

  // Pasted, as from a camera's program; then it is what the back is drawn on.
  const bytes = await sharp({ create: { width: 900, height: 1100, channels: 3, background: '#8a7a62' } })
    .jpeg()
    .toBuffer()
  await page.evaluate(base64 => {
    const data = new DataTransfer()
    const file = Uint8Array.from(atob(base64), letter => letter.charCodeAt(0))
    data.items.add(new File([file], 'back.jpg', { type: 'image/jpeg' }))
    document.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }))
  }, bytes.toString('base64'))
  // Two are there: the demo's open damage is seen in this report.
  await expect(page.getByRole('heading', { name: '3 photographs' })).toBeVisible(patient)
  await page.getByRole('combobox', { name: /^drawn on/ }).selectOption({ label: 'photograph 3: back.jpg' })
  await expect(back.locator('image')).toHaveCount(1, patient)
  const { photos, backPicture } = await told()
  expect(backPicture).toBe(photos[2]?.hash)
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme })
    const found = (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])
    expect(found).toEqual([])
  }

  // Seen before it is printed: the same pages.
  const seen = page.getByRole('dialog', { name: 'As it prints' })
  await page.getByRole('button', { name: 'see it as it prints' }).click()
  await expect(seen.getByRole('img', { name: /^Page 1 of/ })).toContainText('Check in between, examined on', patient)
  await page.keyboard.press('Escape')
  await expect(seen).toHaveCount(0)
  await page.getByRole('button', { name: 'see both as they print' }).click()
  await expect(seen.getByRole('img', { name: /^Page 1 of/ })).toContainText('Both drawn', patient)
  expect((await new AxeBuilder({ page }).analyze()).violations.map(({ id }) => id)).toEqual([])
  await seen.getByRole('button', { name: 'close' }).click()
  await expect(seen).toHaveCount(0)

  for (const [button, name] of [
    ['print this report', /check in between/],
    ['print both against one another', /condition compared/],
  ] as const) {
    await page.getByRole('button', { name: button }).click()
    const link = page.getByRole('link', { name })
    await expect(link).toBeVisible(patient)
    const download = page.waitForEvent('download')
    await link.click()
    expect((await download).suggestedFilename()).toMatch(/\.pdf$/)
  }
})
