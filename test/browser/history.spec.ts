/** What was done: found by words and by who did it, laid open to each field, led to from the record's own page. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, type RunningHost, test } from './host.ts'

async function changedWork(page: Page, host: RunningHost): Promise<string> {
  await host.open(page, '#/history')
  const form = page.getByRole('form', { name: 'Who is at the desk' })
  await form.getByLabel('name').fill('Ada Tarn')
  await form.getByRole('button', { name: 'sit down' }).click()
  await expect(form).toHaveCount(0)
  const { id } = (await host.call(page, 'work.add', { title: 'Slack water' })) as { id: string } // of that name
  await host.call(page, 'work.update', { id, changes: { medium: { was: '', to: 'etching' } } })
  await host.call(page, 'work.addNumber', { work: id, kind: 'loan', text: 'L.31.4' })
  return id
}

test('an edit is found, laid open to its fields by the keyboard, and kept by its address', async ({
  page,
  emptyHost: host,
}) => {
  await changedWork(page, host)
  const edits = page.getByRole('table').getByRole('button')
  await expect(edits.first()).toBeVisible()
  await page.getByRole('searchbox', { name: 'find' }).fill('number slack')
  await expect(edits).toHaveCount(1)
  await edits.first().focus()
  await page.keyboard.press('Enter')
  const changed = page.getByRole('list', { name: 'What it changed' })
  await expect(changed).toContainText('number of a work, added')
  await expect(changed).toContainText('number L.31.4')
  await expect(page).toHaveURL(/#\/history\/\d+$/)
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  await page.keyboard.press('Enter')
  await expect(changed).toHaveCount(0)
  await page.getByRole('searchbox', { name: 'find' }).fill('nothing of the kind')
  await expect(
    page.getByText('No edit is so called, of that person, in those days. Less asked finds more.'),
  ).toBeVisible()
  await page.getByRole('searchbox', { name: 'find' }).fill('')
  await page.getByRole('combobox', { name: 'by', exact: true }).selectOption('Ada Tarn')
  await expect(edits).toHaveCount(3)
  await page.getByLabel('until').fill('2019-04-01')
  await expect(edits).toHaveCount(0)
  await page.getByLabel('until').fill('')
  // Why it was done stays beside the edit, under the name of who is at the desk, and the edit is found by it.
  await edits.first().click()
  await page.getByLabel('why was it done?').fill('the lender’s own list says so')
  await page.keyboard.press('Enter')
  await expect(page.getByText('because the lender’s own list says so')).toContainText('Ada Tarn')
  await page.getByLabel('and because').fill('seen on its back')
  await page.getByRole('button', { name: 'say it' }).click()
  await expect(page.getByText('because seen on its back')).toBeVisible()
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  await page.getByRole('searchbox', { name: 'find' }).fill('own list back')
  // The heads of the columns, and the edit.
  await expect(page.getByRole('row')).toHaveCount(2)
})

test('a work’s page tells what was done to it and to what belongs to it, and leads to the whole edit', async ({
  page,
  emptyHost: host,
}) => {
  const id = await changedWork(page, host)
  await host.open(page, `#/work/${id}`)
  const told = page.locator('details', { hasText: 'What was done to it' })
  await told.getByText('What was done to it').click()
  await expect(told).toContainText('medium from “nothing” to “etching”')
  await expect(told).toContainText('number of a work, added')
  await told.getByRole('link').first().click()
  await expect(page.getByRole('list', { name: 'What it changed' })).toContainText('Slack water')
})
