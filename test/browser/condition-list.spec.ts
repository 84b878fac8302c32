/** The list of condition reports: found, narrowed, ordered, walked by keys, and a report begun from it. */
import AxeBuilder from '@axe-core/playwright'
import { expect, sitDown, test } from './host.ts'

const patient = { timeout: 40_000 } as const

test('reports are begun from their list, found by words, narrowed and ordered, and walked by keys', async ({
  page,
  emptyHost: host,
}) => {
  await host.open(page, '#/condition')
  const asked = page.getByRole('form', { name: 'Who is at the desk' })
  await asked.getByRole('textbox', { name: 'name' }).fill('Ina Oake')
  await asked.getByRole('button', { name: 'sit down' }).click()
  await expect(asked).toHaveCount(0)
  await expect(page.getByText(/No work has been examined yet/)).toBeVisible(patient)
  for (const [title, number] of [
    ['Slack water', 'LH 2'],
    ['Groyne', 'LH 10'],
  ]) {
    const { id } = (await host.call(page, 'work.add', { title })) as { id: string }
    await host.call(page, 'work.addNumber', { work: id, kind: 'permanent', text: number })
    await host.call(page, 'work.addSize', {
      work: id,
      part: 'framed',
      kind: 'measured',
      height: 640,
      width: 900,
      raw: '640 x 900 mm',
    })
  }

  await page.keyboard.press('n')
  const of = page.getByRole('searchbox', { name: 'of which work' })
  await expect(of).toBeFocused()
  await of.fill('nothing such')
  await expect(page.getByText('No work is called so.')).toBeVisible()
  await of.press('Escape')
  await expect(of).toHaveValue('')
  await of.fill('groyne')
  await expect(page.getByRole('button', { name: /LH 10 Groyne/ })).toBeVisible()
  await of.press('Enter')
  await expect(page.getByRole('heading', { name: /Incoming report/ })).toBeVisible(patient)

  await page.goto(`${page.url().split('#')[0]}#/condition`)
  await expect(page.getByText('▲ 1 draft to sign')).toBeVisible(patient)
  await page.getByRole('button', { name: 'begin a report' }).click()
  await page.getByRole('combobox', { name: /^begin/ }).selectOption('check')
  await of.fill('LH 2')
  await page.getByRole('button', { name: /LH 2 Slack water/ }).click()
  await expect(page.getByRole('heading', { name: /Check in between/ })).toBeVisible(patient)
  await page.goto(`${page.url().split('#')[0]}#/condition`)
  const rows = page.locator('tbody tr')
  await expect(rows).toHaveText([/Slack water.*Check/, /Groyne.*Incoming/], patient)
  await page.getByRole('columnheader', { name: 'examined' }).getByRole('button').click()
  await expect(rows).toHaveText([/Groyne/, /Slack water/])
  // By figures, not by letters: 2 comes before 10.
  await page.getByRole('columnheader', { name: 'work' }).getByRole('button').click()
  await expect(rows).toHaveText([/LH 2/, /LH 10/])
  await page.getByRole('columnheader', { name: 'work' }).getByRole('button').click()
  await expect(rows).toHaveText([/LH 10/, /LH 2/])

  await page.keyboard.press('f')
  await page.keyboard.type('slack')
  await expect(rows).toHaveText([/Slack water/])
  await page.keyboard.press('ArrowDown')
  await expect(rows.first().getByRole('link', { name: 'Check in between' })).toBeFocused()
  await page.getByRole('combobox', { name: /^show/ }).selectOption('complete')
  await expect(page.getByText('No report of that name, kind or state.')).toBeVisible()
  await page.getByRole('button', { name: 'Show all' }).click()
  await expect(rows).toHaveCount(2)
  await page.getByRole('combobox', { name: /^kind/ }).selectOption('incoming')
  await expect(rows).toHaveText([/Groyne/])
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme })
    const found = (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])
    expect(found).toEqual([])
  }
})

test('Escape in the field begins none', async ({ page, host }) => {
  await host.open(page, '#/condition')
  await sitDown(page)
  await expect(page.getByRole('button', { name: 'begin a report' })).toBeVisible(patient)
  await page.keyboard.press('n')
  await expect(page.getByRole('searchbox', { name: 'of which work' })).toBeFocused()
  await page.keyboard.press('Escape')
  await expect(page.getByRole('button', { name: 'begin a report' })).toBeVisible()
})
