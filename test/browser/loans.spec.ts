/** Loans: an agreement typed in with its works, values and people; what is wrong told in a sentence; one undo back. */
import AxeBuilder from '@axe-core/playwright'
import { expect, test } from './host.ts'

const patient = { timeout: 40_000 } as const

test('a loan is written down with its works, values and people, found, closed and taken back', async ({
  page,
  host,
}) => {
  await host.open(page, '#/loans')
  await expect(page.getByText('No loan is written down yet')).toBeVisible(patient)
  await page.keyboard.press('n')
  const form = page.getByRole('form', { name: 'A new loan' })
  await form.getByLabel('lender or borrower').selectOption({ label: 'Addlewick Weaving Room' })
  await form.getByLabel('agreement no.').fill('AWR 2031/10')
  await form.getByLabel('from').fill('2031-07-20')
  await form.getByLabel('until').fill('2031-03-01')
  await form.getByRole('button', { name: 'add the loan' }).click()
  await expect(form.getByRole('alert')).toContainText('end before it begins')
  await form.getByLabel('until').fill('2031-09-30')
  await form.getByRole('button', { name: 'add the loan' }).click()
  await expect(page.getByRole('heading', { name: 'AWR 2031/10' })).toBeVisible(patient)

  await page.getByRole('button', { name: /put in all \d works of Addlewick/ }).click()
  const rows = page.locator('section[aria-labelledby="loan-works"] tbody tr')
  await expect(rows).toHaveCount(6, patient)
  const value = page.getByLabel('Agreed value of Millrace cloth')
  await value.fill('45000')
  await value.press('Enter')
  await expect(page.getByRole('alert')).toContainText('currency')
  await value.fill('€ 45 000')
  await value.press('Enter')
  await expect(page.getByRole('alert')).toHaveCount(0)
  await expect(page.getByRole('heading', { name: 'Works: 6, 5 without an agreed value' })).toBeVisible(patient)
  for (const [title, item] of [
    ['Millrace cloth', '10'],
    ['Heddle song', '2'],
  ]) {
    await page.getByLabel(`Item number of ${title}`).fill(item ?? '')
    await page.keyboard.press('Enter')
  }
  // By item number as people count, then what has none.
  await expect(rows.locator('cite').first()).toHaveText('Heddle song', patient)
  await expect(rows.locator('cite').nth(1)).toHaveText('Millrace cloth')

  const person = page.getByRole('form', { name: 'Add a person of the loan' })
  await person.getByLabel('name').fill('Ines Farrow')
  await person.getByLabel('role').fill('registrar')
  await page.keyboard.press('Enter')
  await expect(page.getByLabel('Role of Ines Farrow')).toHaveValue('registrar', patient)
  await expect(person.getByLabel('name')).toHaveValue('')

  const until = page.locator('section[aria-labelledby="loan-agreement"]').getByLabel('Until')
  await until.fill('2031-01-01')
  await until.press('Enter')
  await expect(page.getByRole('alert')).toContainText('Put the days in order')
  await until.press('Escape')
  await expect(until).toHaveValue('2031-09-30')
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme })
    const found = (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])
    expect(found).toEqual([])
  }

  await page.getByRole('searchbox', { name: 'find a lender, an agreement, a work' }).fill('heddle')
  await expect(page.getByRole('navigation', { name: 'Lenders and their loans' }).getByRole('heading')).toHaveCount(1)
  await page.keyboard.press('ArrowDown')
  await expect(page.getByRole('link', { name: /AWR 2031\/10/ })).toBeFocused()

  await page.getByRole('button', { name: 'close the loan' }).click()
  await expect(page.getByRole('button', { name: 'open it again' })).toBeVisible(patient)
  await expect(person).toHaveCount(0)
  await page.getByRole('button', { name: /^undo/ }).click()
  await expect(person).toBeVisible(patient)

  await rows.getByRole('link', { name: 'Millrace cloth' }).click()
  const loans = page.locator('section[aria-labelledby="its-loans"]')
  await expect(loans).toContainText('AWR 2031/10', patient)
  await expect(loans).toContainText(/EUR\s45\s000/)
})

test('without lenders the form asks for a name, and the record leads here', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/record')
  await page.getByRole('navigation', { name: 'Of the record' }).getByRole('link', { name: 'Loans' }).click()
  await page.getByRole('button', { name: 'Add the first one' }).click()
  const form = page.getByRole('form', { name: 'A new loan' })
  await form.getByLabel('its name').fill('Quay Collection')
  await form.getByLabel('agreement no.').fill('7')
  await page.keyboard.press('Enter')
  await expect(page.getByText('No work is in this loan yet.')).toBeVisible(patient)
  await expect(page.getByRole('heading', { name: 'Quay Collection' })).toBeVisible()
})
