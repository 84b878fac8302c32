/** Planned movements: planned by keys, a whole show in one act, recorded from the plan, undone. */
import AxeBuilder from '@axe-core/playwright'
import type { Output } from '../../src/contract/contract.ts'
import { expect, sitDown, test } from './host.ts'

const patient = { timeout: 40_000 } as const
type Found = Output<'location.list'>

test('a work is planned where it is found, changed beside the list, and recorded from its plan by keys', async ({
  page,
  host,
}) => {
  await host.open(page, '#/planned')
  await sitDown(page)
  await expect(page.getByText(/^Nothing is planned\. Tick works or crates/)).toBeVisible(patient)
  const { places } = (await host.call(page, 'location.list', {})) as Found // the answer of that name
  const room = places.find(place => place.kind === 'room')?.words ?? ''

  await host.open(page, '#/record')
  const found = page.locator('main tbody tr')
  await expect(found.first()).toBeVisible(patient)
  const title = (await found.first().locator('button.name').textContent()) ?? ''
  await found.first().getByRole('checkbox').check()
  await page.keyboard.press('p')
  const form = page.getByRole('form', { name: 'Plan a movement' })
  await expect(form.getByLabel('to', { exact: true })).toBeFocused()
  await page.keyboard.type(room)
  await form.getByLabel('hands').fill('two')
  await form.getByRole('button', { name: 'plan it' }).click()
  await expect(form.getByRole('alert')).toContainText('“two” is no number of people')
  await form.getByLabel('hands').fill('2')
  await form.getByLabel('how').fill('on the trolley')
  await page.keyboard.press('Enter')
  await expect(form).toBeHidden(patient)

  await host.open(page, '#/planned')
  const rows = page.getByRole('row').filter({ hasText: title })
  await expect(rows).toContainText('on the trolley, 2 hands', patient)
  await expect(rows).toContainText('in no place')
  await expect(page.getByText(/^▲ One of these has not arrived/)).toBeVisible()
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme })
    const seen = (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])
    expect(seen).toEqual([])
  }
  // Changed beside the list.
  await rows.locator('button.name').click()
  const tag = page.getByRole('complementary')
  await tag.getByLabel('where in it').fill('by the window')
  await tag.getByLabel('where in it').press('Enter')
  await expect(rows).toContainText('by the window', patient)
  // By keys: found, ticked, recorded from what the plan says.
  await page.getByLabel('find a work, a maker, a place').focus()
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('Space')
  await expect(rows.getByRole('checkbox')).toBeChecked()
  await page.keyboard.press('m')
  const record = page.getByRole('form', { name: 'Record a movement' })
  await expect(record.getByLabel('to', { exact: true })).toHaveValue(room)
  await expect(record.getByLabel('how')).toHaveValue('on the trolley')
  await record.getByRole('button', { name: 'record it' }).click()
  await expect(record).toBeHidden(patient)
  await expect(page.getByText(/^Nothing is planned\. Tick works or crates/)).toBeVisible(patient)
  await expect(page.getByRole('region', { name: 'Recorded that day' })).toContainText(`to ${room}`)
})

test('every work on a wall of the show is planned in one act, and undone as one', async ({ page, host }) => {
  await host.open(page, '#/planned')
  await sitDown(page)
  await page.getByRole('button', { name: 'plan them all' }).click(patient)
  const form = page.getByRole('form', { name: 'Plan a movement' })
  await form.getByLabel('carried by').fill('Ulla Brandt')
  await form.getByRole('button', { name: 'plan it' }).click()
  await expect(form).toBeHidden(patient)
  await expect(page.getByRole('heading', { level: 1 })).toContainText(/: \d+ movements/)
  await expect(page.getByRole('button', { name: 'plan them all' })).toHaveCount(0)
  const { total } = (await host.call(page, 'planned.list', {})) as Output<'planned.list'> // the answer of that name
  expect(total).toBeGreaterThan(5)
  await page.keyboard.press('ControlOrMeta+z')
  await expect(page.getByRole('button', { name: 'plan them all' })).toBeVisible(patient)
})

test('a case that by the plan does not pass is asked how it went, when it is recorded and when the record is set right', async ({
  page,
  host,
}) => {
  await host.open(page, '#/record')
  await sitDown(page)
  const { places } = (await host.call(page, 'location.list', {})) as Found // the answer of that name
  const room = places.find(place => place.kind === 'room')?.words ?? ''
  await host.call(page, 'location.add', { kind: 'place', name: 'The yard' })
  await host.call(page, 'location.add', { kind: 'crate', name: 'Case 99', width: 6000, height: 5000, depth: 4000 })
  await page.getByRole('combobox', { name: /^of/ }).selectOption('all')
  await page.getByLabel('find a work, a maker, a place').fill('case 99')
  const row = page.locator('main tbody tr')
  await expect(row).toHaveCount(1, patient)
  await expect(row).toContainText('Case 99')
  await row.getByRole('checkbox').check()
  await page.keyboard.press('m')
  const form = page.getByRole('form', { name: 'Record a movement' })
  const despite = form.getByLabel('went all the same, because')
  await form.getByLabel('to', { exact: true }).fill(room)
  await expect(despite).toBeVisible(patient)
  await form.getByRole('button', { name: 'record it' }).click()
  await expect(form.getByRole('alert')).toContainText('If it went all the same, say how it did')
  await form.getByLabel('to', { exact: true }).fill('The yard')
  await expect(despite).toHaveCount(0, patient)
  await form.getByRole('button', { name: 'record it' }).click()
  await expect(row).toContainText('The yard', patient)
  // Set right to the room: asked the same.
  await row.locator('button.name').click()
  const tag = page.getByRole('complementary')
  await tag.getByRole('button', { name: 'set it right' }).click()
  const right = tag.getByRole('form', { name: 'Set the record right' })
  await right.getByLabel('to', { exact: true }).fill(room)
  await right.getByLabel('why').fill('it was the room')
  await right.getByRole('button', { name: 'set it right' }).click()
  await expect(right.getByRole('alert')).toContainText('If it went all the same')
  await right.getByLabel('went all the same, because').fill('the wall was opened')
  await right.getByRole('button', { name: 'set it right' }).click()
  await expect(row).toContainText(room, patient)
  await expect(tag).toContainText('does not pass by the plan: the wall was opened')
})
