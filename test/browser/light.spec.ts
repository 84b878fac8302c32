/**
 * Light: hours typed in for a show and changed where they stand, a reading recorded in footcandles and struck, what is
 * wrong told in a sentence; the list sorted and across shows; a lender's budget beside the house's.
 */
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
  await expect(page.getByLabel('hours a day: open from 1 Jan 2026')).toHaveValue('8', patient)
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

test('hours are changed where they stand, and undo takes that back', async ({ page, host }) => {
  await host.open(page, '#/light')
  const hours = page.getByLabel(/^hours a day: open from/u)
  await expect(hours).toHaveValue('8', patient)
  await hours.fill('25')
  await hours.press('Enter')
  await expect(page.getByRole('alert')).toContainText('24 hours', patient)
  await hours.fill('9.5')
  await hours.press('Enter')
  await expect(page.getByRole('alert')).toHaveCount(0)
  const weekdays = page.getByRole('button', { name: /open from .*: choose weekdays/u })
  await weekdays.click()
  await page
    .getByRole('group', { name: /^on these weekdays: open from/u })
    .getByLabel('Tue')
    .uncheck()
  await page.getByRole('button', { name: 'done' }).click()
  await expect(weekdays).toHaveText('Wed–Sun', patient)
  await page.getByLabel(/^until: closed from/u).fill('2020-01-01')
  await page.getByLabel(/^until: closed from/u).press('Enter')
  await expect(page.getByRole('alert')).toContainText('before the first')
  await page.getByLabel(/^until: closed from/u).press('Escape')
  await page.locator('body').click({ position: { x: 5, y: 400 } })
  await page.keyboard.press('Control+z')
  await expect(weekdays).toHaveText('Tue–Sun', patient)
  await page.keyboard.press('Control+z')
  await expect(hours).toHaveValue('8', patient)
})

test('the list is sorted by its columns, across all shows too', async ({ page, host }) => {
  await host.open(page, '#/light')
  const rows = page.locator('section[aria-labelledby="budgets"] tbody tr')
  const cell = (row: number, column: number) => rows.nth(row).locator('td').nth(column)
  await expect(cell(0, 3)).toContainText('%', patient)
  const share = async (row: number) => Number.parseInt((await cell(row, 3).textContent()) ?? '', 10)
  expect(await share(0)).toBeGreaterThanOrEqual(await share(1))
  const head = page.getByRole('columnheader', { name: 'sensitivity' })
  await head.getByRole('button').click()
  await expect(head).toHaveAttribute('aria-sort', 'ascending')
  await expect(cell(0, 2)).toHaveText('high', patient)
  await head.getByRole('button').click()
  await expect(cell(0, 2)).not.toHaveText('high', patient)
  await page.getByLabel('works of').selectOption('all')
  await expect(page.getByRole('heading', { name: 'Budgets across all shows' })).toBeVisible()
  await page.getByRole('searchbox', { name: 'find a work, a lender, a sensitivity' }).fill('ferry landing')
  await expect(cell(0, 3)).toHaveText('high', patient)
  await expect(cell(0, 2)).toHaveText('What the Weir Keeps')
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme })
    const found = (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])
    expect(found).toEqual([])
  }
})

test('a lender’s budget holds where it is the stricter, in the loan’s words', async ({ page, host }) => {
  await host.open(page, '#/light')
  const call = async (name: string, input: unknown) => (await host.call(page, name, input)) as never // each answers as the contract says
  const [{ id: work }] = ((await call('light.list', { words: 'ferry landing' })) as { lines: [{ id: string }] }).lines
  const [{ id: party }] = ((await call('party.list', {})) as { parties: [{ id: string }] }).parties
  const { id: loan } = (await call('loan.add', { party, number: 'LR 31' })) as { id: string }
  await call('loan.addWorks', { loan, works: [work] })
  const said = 'Nine thousand lux-hours in any year.'
  await call('loan.addTerm', { loan, kind: 'dose', high: 9000, said })
  await call('loan.addTerm', { loan, kind: 'uv', high: 10 })
  await host.open(page, `#/work/${work}`)
  const section = page.locator('section[aria-labelledby="light-received"]')
  const row = (name: RegExp) => section.getByRole('row', { name })
  await expect(row(/the stricter/u)).toContainText(`loan LR 31`, patient)
  await expect(row(/the stricter/u)).toContainText(said)
  await expect(row(/the house, high sensitivity/u)).toContainText('15\u2009000 lx h')
  await expect(row(/10 µW\/lm/u)).toContainText('above it')
  const reading = page.getByRole('form', { name: 'Record a reading of light' })
  await reading.getByLabel('meter shows').fill('48')
  await reading.getByLabel('UV').fill('3 lm')
  await reading.getByRole('button', { name: 'record it' }).click()
  await expect(page.getByRole('alert')).toContainText('0.6 mW/m²')
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme })
    const { violations } = await new AxeBuilder({ page }).include('section[aria-labelledby="light-received"]').analyze()
    expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([])
  }
})
