/** The record: where everything is, a movement by keys, struck with its reason, and the same through the command's calls. */
import AxeBuilder from '@axe-core/playwright'
import type { Output } from '../../src/contract/contract.ts'
import { expect, sitDown, test } from './host.ts'

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

  // Set right with another name, the record stays legible; then struck.
  await tag.getByRole('button', { name: 'set it right' }).click()
  await tag.getByLabel('carried by').fill('Ulla Brandt')
  await tag.getByLabel('why').fill('the other team')
  await page.keyboard.press('Enter')
  await expect(tag.locator('li')).toHaveCount(2)
  await expect(tag).toContainText('Carried by Ulla Brandt')
  await expect(tag).toContainText('Set right by a later record')
  await tag.getByRole('button', { name: 'set it right' }).click()
  await tag.getByLabel('this never was').check()
  await tag.getByLabel('why').fill('another work')
  await page.keyboard.press('Enter')
  await expect(tag.locator('li')).toHaveCount(3)
  await expect(rows.first()).toContainText('in no place')
})

test('a set goes as one, with a part that stays behind and how the other arrived', async ({ page, host }) => {
  await host.open(page, '#/record')
  await sitDown(page)
  const { places } = (await host.call(page, 'location.list', {})) as Output<'location.list'> // the answer of that name
  const rooms = places.filter(place => place.kind === 'room').map(place => place.words)
  const rows = page.locator('main tbody tr')
  await page.getByLabel('find a work, a maker, a place').fill('the ford')
  await expect(rows).toHaveCount(1, patient)
  await expect(rows).toContainText('set of 2')
  const form = page.getByRole('form', { name: 'Record a movement' })
  async function move(room: string, then: () => Promise<void>) {
    await rows.getByRole('checkbox').check()
    await page.keyboard.press('m')
    await form.getByLabel('to', { exact: true }).fill(room)
    await then()
    await form.getByRole('button', { name: 'record it' }).click()
    await expect(form).toBeHidden(patient)
  }
  const [first = '', second = ''] = rooms
  const part = (nth: number) => form.getByRole('group').getByRole('checkbox').nth(nth)
  await move(first, async () => {
    await expect(part(0)).toBeChecked()
    await form.getByRole('group').getByRole('textbox').last().fill('corner rubbed')
  })
  await expect(rows).toContainText(first, patient)
  await move(second, async () => {
    await part(1).uncheck()
    await expect(form).toContainText(`stays behind at ${first}`)
    await expect(form.getByRole('group')).toContainText(`stays at ${first}`)
  })
  await expect(rows).toContainText('Its parts are apart', patient)
  // The way of the part that stayed: with its set, and how it arrived.
  await page.locator('.tools select').first().selectOption('all')
  await expect(rows).toHaveCount(3, patient)
  await rows.filter({ hasNotText: 'set of 2' }).last().locator('button.name').click()
  await expect(page.getByRole('complementary')).toContainText('With the set The ford')
})

test('an agreed place is given another name, and its figures', async ({ page, host }) => {
  await host.open(page, '#/record')
  await sitDown(page)
  await host.call(page, 'location.add', { kind: 'crate', name: 'Crate 5', height: 1000 })
  await page.getByRole('button', { name: 'Crate 5', exact: true }).click(patient)
  const name = page.getByLabel('name', { exact: true }).last()
  await name.fill('Crate 15')
  await name.press('Enter')
  await expect(page.getByRole('button', { name: 'Crate 15', exact: true })).toBeVisible(patient)
  await page.getByLabel('hours shut').fill('a day')
  await page.getByLabel('hours shut').press('Enter')
  await expect(page.getByText('“a day” is no number of hours. Write it like 24.')).toBeVisible()
  await page.getByLabel('hours shut').fill('24')
  await page.getByLabel('hours shut').press('Enter')
  const places = async () =>
    ((await host.call(page, 'location.list', {})) as { places: readonly Record<string, unknown>[] }).places
  await expect
    .poll(async () => (await places()).find(one => one.name === 'Crate 15'))
    .toMatchObject({ kind: 'crate', height: 1000, holdHours: 24 })
})

test('an empty catalogue says what will stand here', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/record')
  await expect(page.getByText(/Each will stand here/)).toBeVisible(patient)
})
