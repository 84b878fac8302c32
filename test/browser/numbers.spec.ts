/** Numbers: written in a table of a work by keys alone, doubtful ones on top of the list, settled and doubted again. */
import AxeBuilder from '@axe-core/playwright'
import { expect, test } from './host.ts'

const patient = { timeout: 40_000 } as const

test('numbers are written by keys, doubted, settled, and found by any of them', async ({ page, host }) => {
  await host.open(page, '#/numbers')
  await page.getByRole('form', { name: 'Who is at the desk' }).getByRole('button').first().click()
  await expect(page.getByRole('heading', { level: 1, name: /^Numbers: \d+$/ })).toBeVisible(patient)
  await expect(page.getByText(/Nothing is doubtful among \d+ numbers/)).toBeVisible()
  const add = async (title: string) =>
    ((await host.call(page, 'work.add', { title, maker: 'Odo Fell' })) as { id: string }).id
  const [eel, ferry] = [await add('Eel traps'), await add('Ferry rope')]
  const show = async (id: string) => {
    await page.evaluate(to => {
      location.hash = `#/work/${to}`
    }, id)
    await expect(page.getByRole('heading', { name: 'Numbers' })).toBeVisible(patient)
  }

  await show(eel)
  const field = page.getByLabel('A new number', { exact: true })
  await field.focus()
  await page.keyboard.type('2031.7.4')
  await page.keyboard.press('Enter')
  await expect(page.getByLabel('Number, permanent')).toHaveValue('2031.7.4')
  await expect(field).toBeFocused()
  await page.keyboard.press('Shift+Tab')
  await page.keyboard.type('former')
  await page.keyboard.press('Tab')
  await page.keyboard.type('61/4')
  await page.keyboard.press('Tab')
  await page.keyboard.type('in spring')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('alert')).toContainText('expected a day, a month or a year')
  await page.getByLabel('The new number since').fill('1961')
  await page.keyboard.press('Enter')
  await expect(page.getByLabel('Number, former')).toHaveValue('61/4')
  await expect(page.getByLabel('61/4 since')).toHaveValue('1961')
  await expect(page.getByRole('alert')).toHaveCount(0)

  await show(ferry)
  await page.getByLabel('A new number', { exact: true }).fill('2031.07.4')
  await page.keyboard.press('Enter')
  await expect(page.getByText('It is the permanent number of Eel traps too.')).toBeVisible(patient)
  await page.getByRole('link', { name: 'in one list' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('▲ 2 doubtful', patient)
  const rows = page.locator('tbody tr:not(.doubts)')
  await expect(rows.nth(0)).toContainText('Eel traps')
  await expect(rows.nth(1)).toContainText('Ferry rope')
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme })
    const found = (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])
    expect(found).toEqual([])
  }
  await page.getByRole('button', { name: 'both are right…' }).first().click()
  await page.getByLabel('Both are right, because').fill('one number for the pair')
  await page.keyboard.press('Enter')
  await expect(page.getByText('Both are right: one number for the pair').first()).toBeVisible(patient)
  await expect(page.getByRole('heading', { level: 1 })).not.toContainText('doubtful')

  // Another number is another doubt: what was settled is settled no more.
  await show(ferry)
  const its = page.getByLabel('Number, permanent')
  await its.fill('2031.7.04')
  await its.press('Enter')
  await expect(page.getByText('Both are right: one number for the pair')).toBeVisible(patient)
  await its.fill('61/4')
  await its.press('Enter')
  await expect(page.getByText('It is the former number of Eel traps.')).toHaveCount(0)
  await its.fill('2031.7.4a')
  await its.press('Enter')
  await expect(page.getByText('Both are right')).toHaveCount(0)
  await its.fill('2031.7.4')
  await its.press('Enter')
  await expect(page.getByText('Both are right: one number for the pair')).toBeVisible(patient)

  await page.evaluate(() => {
    location.hash = '#/numbers'
  })
  await page.getByRole('searchbox', { name: 'find a number' }).fill('61 / 04')
  await expect(rows).toHaveCount(1, patient)
  await expect(rows).toContainText('Eel traps')
})

test('parts of a set are numbered behind it by one click, taken back by one undo', async ({ page, host }) => {
  await host.open(page)
  await page.getByRole('form', { name: 'Who is at the desk' }).getByRole('button').first().click()
  const works: string[] = []
  for (const title of ['Tide, left', 'Tide, right']) {
    works.push(((await host.call(page, 'work.add', { title })) as { id: string }).id)
  }
  const { id } = (await host.call(page, 'set.make', { works, form: 'row', gapX: 30, gapY: 0 })) as { id: string }
  await host.call(page, 'work.addNumber', { work: id, kind: 'permanent', text: '2031.9' })
  await page.evaluate(to => {
    location.hash = `#/work/${to}`
  }, id)
  await page.getByRole('button', { name: 'number them 2031.9a, 2031.9b' }).click(patient)
  await expect(page.getByText('With its parts: 2031.9 a, b')).toBeVisible(patient)
  const numbers = async (work = '') =>
    ((await host.call(page, 'work.get', { id: work })) as { numbers: { text: string }[] }).numbers.map(one => one.text)
  expect([await numbers(works[0]), await numbers(works[1])]).toEqual([['2031.9a'], ['2031.9b']])
  await host.call(page, 'edit.undo', {})
  expect([await numbers(works[0]), await numbers(works[1])]).toEqual([[], []])
  await page.evaluate(to => {
    location.hash = `#/work/${to}`
  }, works[1] ?? '')
  await page.getByRole('button', { name: '2031.9b: take it' }).click(patient)
  await expect(page.getByLabel('Number, permanent')).toHaveValue('2031.9b')
})
