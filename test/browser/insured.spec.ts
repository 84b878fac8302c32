/** What works are worth together: limits, values and rates typed in, days stepped by key, what is wrong told. */
import AxeBuilder from '@axe-core/playwright'
import { expect, test } from './host.ts'

const patient = { timeout: 40_000 } as const

test('a value, a limit and a rate make a sum that is over, apart and over again', async ({ page, host }) => {
  await host.open(page, '#/insured')
  const band = page.getByRole('slider')
  await expect(band).toBeVisible(patient)
  // Two weeks before the show opens three works lie in the store; three weeks later it is open.
  await band.press('Home')
  const everything = page.getByRole('row', { name: /^Everything/ })
  await expect(everything.getByRole('cell').nth(1)).toHaveText('3', patient)
  for (let week = 0; week < 3; week++) await band.press('PageUp')
  await expect(everything.getByRole('cell').nth(1)).not.toHaveText('3', patient)
  await expect(everything).toContainText('▲', patient)

  const limits = page.getByRole('form', { name: 'Set a limit' })
  await limits.getByLabel('at most').fill('100 000 thalers')
  await limits.getByRole('button', { name: 'set it' }).click()
  await expect(page.getByRole('alert')).toContainText('no currency that is known here')
  await limits.getByLabel('at most').fill('CHF 100’000.–')
  await limits.getByLabel('by', { exact: true }).fill('house policy')
  await limits.getByRole('button', { name: 'set it' }).click()
  await expect(page.getByRole('alert')).toHaveCount(0)
  await expect(everything).toContainText('not sure', patient)

  const values = page.getByRole('textbox', { name: /^value of/ })
  const unvalued = await values.count()
  await values.first().fill('$ 45,000')
  await values.first().press('Enter')
  await expect(page.getByRole('alert')).toContainText('is the sign of USD')
  await values.first().fill('CHF 120,000')
  await values.first().press('Enter')
  await expect(values).toHaveCount(unvalued - 1, patient)
  await expect(everything).toContainText('over by CHF 20 000', patient)
  await expect(page.getByText('Over the limit')).toBeVisible()
  await expect(page.getByText(/is over house policy on \d+ days/)).toBeVisible()

  await values.first().fill('EUR 1.000')
  await values.first().press('Enter')
  await expect(everything).toContainText('and EUR 1 000 apart', patient)
  const rates = page.getByRole('form', { name: 'Enter a rate of exchange' })
  await rates.getByLabel('is', { exact: true }).fill('0')
  await rates.getByRole('button', { name: 'enter it' }).click()
  await expect(page.getByRole('alert')).toContainText('is no rate')
  await rates.getByLabel('is', { exact: true }).fill('0,9412')
  await rates.getByRole('button', { name: 'enter it' }).click()
  await expect(everything).toContainText('over by CHF 20 941.20', patient)
  await expect(everything).not.toContainText('apart')

  const day = page.getByLabel('on', { exact: true })
  const before = await day.inputValue()
  await page.locator('h1').click()
  await page.keyboard.press(']')
  await expect(day).not.toHaveValue(before)
  await page.keyboard.press('[')
  await expect(day).toHaveValue(before)
  await page.keyboard.press('Control+z')
  await expect(everything).toContainText('and EUR 1 000 apart', patient)

  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme })
    const found = (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])
    expect(found).toEqual([])
  }
  await page.getByRole('button', { name: 'list of the day with its working' }).click()
  await expect(page.getByText(/insured values\.xlsx/)).toBeVisible(patient)
})
