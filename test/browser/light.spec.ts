/** Light: hours typed in for a show, a reading recorded in footcandles and struck, what is wrong told in a sentence. */
import AxeBuilder from '@axe-core/playwright'
import { expect, test } from './host.ts'

const patient = { timeout: 40_000 } as const

test('hours lit and a reading make a ledger, and what is wrong is told', async ({ page, host }) => {
  await host.open(page, '#/light')
  const form = page.getByRole('form', { name: 'Add hours lit' })
  await expect(form).toBeVisible(patient)
  await form.getByLabel('from').fill('2031-05-02')
  await form.getByLabel('until').fill('2031-04-01')
  await form.getByLabel('hours a day').fill('8')
  await form.getByRole('button', { name: 'add' }).click()
  await expect(page.getByRole('alert')).toContainText('before the first')
  await form.getByLabel('from').fill('2026-01-01')
  await form.getByLabel('until').fill('2026-12-31')
  await form.getByLabel('hours a day').fill('8')
  await form.getByRole('button', { name: 'add' }).click()
  await expect(page.getByRole('cell', { name: '8 h' })).toBeVisible(patient)
  await expect(page.getByRole('alert')).toHaveCount(0)
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme })
    const found = (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])
    expect(found).toEqual([])
  }
  await page.locator('main tbody cite').last().click()

  const reading = page.getByRole('form', { name: 'Record a reading of light' })
  await reading.getByLabel('meter shows').fill('-1')
  await reading.getByRole('button', { name: 'record it' }).click()
  await expect(page.getByRole('alert')).toContainText('is no number of lux')
  await reading.getByLabel('meter shows').fill('5 fc; 40 lx')
  await reading.getByRole('button', { name: 'record it' }).click()
  await expect(page.getByRole('alert')).toContainText('A record has a name')
  await page.getByRole('form', { name: 'Who is at the desk' }).getByRole('button').first().click()
  await reading.getByRole('button', { name: 'record it' }).click()
  const line = page.locator('.readings li')
  await expect(line).toContainText('53.8 lx', patient)
  await line.getByRole('button', { name: 'strike' }).click()
  await line.getByLabel('why').fill('another work')
  await page.keyboard.press('Enter')
  await expect(line).toContainText('another work')
  expect(
    (await new AxeBuilder({ page }).include('section[aria-labelledby="light-received"]').analyze()).violations,
  ).toEqual([])
})
