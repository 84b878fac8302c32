/** The record: where everything is, a movement by keys, struck with its reason, and the same through the command's calls. */
import AxeBuilder from '@axe-core/playwright'
import type { Output } from '../../src/contract/contract.ts'
import { expect, test } from './host.ts'

const patient = { timeout: 40_000 } as const

test('a movement is recorded by keys, told on its day, and struck with its reason', async ({ page, host }) => {
  await host.open(page, '#/record')
  const rows = page.locator('main tbody tr')
  await expect(rows.first()).toBeVisible(patient)
  const { places } = (await host.call(page, 'location.list', {})) as Output<'location.list'> // the answer of that name
  const room = places.find(place => place.kind === 'room')?.words ?? ''
  await expect(rows.first()).toContainText('in no place')

  await page.getByLabel('find a work, a maker, a place').focus()
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('Space')
  await expect(rows.first().getByRole('checkbox')).toBeChecked()
  await page.keyboard.press('m')
  const form = page.getByRole('form', { name: 'Record a movement' })
  await expect(form.getByLabel('to', { exact: true })).toBeFocused()
  await page.keyboard.type(room)
  await expect(form.getByRole('button', { name: 'record it' })).toBeEnabled()
  await page.keyboard.press('Enter')
  // A record has a name: first nobody is at the desk, then somebody is.
  await expect(form.getByRole('alert')).toContainText('A record has a name')
  await page.getByRole('form', { name: 'Who is at the desk' }).getByRole('button').first().click()
  await expect(page.getByRole('form', { name: 'Who is at the desk' })).toHaveCount(0)
  await form.getByLabel('to', { exact: true }).press('Enter')
  await expect(rows.first()).toContainText(room, patient)
  await expect(form).toBeHidden()

  await rows.first().locator('button.name').click()
  const tag = page.getByRole('complementary')
  await expect(tag.locator('li')).toHaveCount(1)
  await expect(tag).toContainText('Recorded by')
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme })
    const found = (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])
    expect(found).toEqual([])
  }
  // The day before, nobody had put it anywhere.
  await page.getByRole('button', { name: 'a day before' }).click()
  await expect(rows.first()).toContainText('in no place')
  await page.getByRole('button', { name: 'now', exact: true }).click()
  await expect(rows.first()).toContainText(room)

  await tag.getByRole('button', { name: 'this never was' }).click()
  await tag.getByLabel('why').fill('another work')
  await page.keyboard.press('Enter')
  await expect(tag.locator('li')).toHaveCount(2)
  await expect(rows.first()).toContainText('in no place')
})

test('an empty catalogue says what will stand here', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/record')
  await expect(page.getByText(/Each will stand here/)).toBeVisible(patient)
})
