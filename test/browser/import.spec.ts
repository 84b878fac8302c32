/** A messy list from a lender, from a paste to works in the show: read, corrected, answered, taken in, taken back. */
import AxeBuilder from '@axe-core/playwright'
import { expect, test } from './host.ts'

// Invented rows in the ways lenders write sizes.
const list = [
  ['Loan no.', 'Title', 'Artist', 'Date', 'Medium', 'Dimensions'],
  ['Q 1', 'Slack water', 'Ina Vorr', '1931', 'oil on canvas', 'framed 24 1/2 x 36 3/4 in.'],
  ['Q 2', 'Groyne', 'Ina Vorr', '1932', 'etching', '49,8 x 69,2 cm'],
  ['Q 3', 'Nets drying', 'Ina Vorr', '1933', 'watercolour', '61 x 91.5'],
]
const pasted = list.map(row => row.join('\t')).join('\n')

async function paste(page: import('@playwright/test').Page, text: string): Promise<void> {
  await page.evaluate(words => {
    const data = new DataTransfer()
    data.setData('text/plain', words)
    document.body.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }))
  }, text)
}

test('a pasted list is shown, answered, taken in once, and taken back by one undo', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/checklist')
  await paste(page, pasted)
  await expect(page.getByText('3 rows, 1 with a question.')).toBeVisible()
  await expect(page.getByText('framed 622 × 933')).toBeVisible()
  await expect(page.getByText('498 × 692')).toBeVisible()

  // Nothing is written before it is taken.
  expect(await emptyHost.call(page, 'work.list', {})).toMatchObject({ total: 0 })
  const question = page.locator('.question')
  await expect(question.locator('cite')).toHaveText('61 x 91.5')
  await question.getByRole('button').first().click()
  await expect(page.getByText('3 rows, 0 with a question.')).toBeVisible()

  await page.getByRole('button', { name: 'take it in' }).click()
  await expect(page.getByRole('heading', { name: '3 added' })).toBeVisible()
  expect(await emptyHost.call(page, 'work.list', {})).toMatchObject({ total: 3 })

  await page.getByRole('button', { name: 'to the checklist' }).click()
  await paste(page, pasted)
  await expect(page.getByText('unchanged 3')).toBeVisible()
  await page.getByRole('button', { name: 'put it away' }).click()

  await page.keyboard.press('Control+z')
  await expect.poll(() => emptyHost.call(page, 'work.list', {})).toMatchObject({ total: 0 })
})

test('the preview is free of barriers, light and dark', async ({ page, emptyHost }) => {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    await emptyHost.open(page, '#/checklist')
    await paste(page, pasted)
    await expect(page.getByText('3 rows, 1 with a question.')).toBeVisible()
    await page.getByRole('button', { name: 'columns' }).click()
    const { violations } = await new AxeBuilder({ page }).analyze()
    expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([])
  }
})
