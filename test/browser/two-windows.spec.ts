/**
 * Two windows on one record: what each wrote in another field survives, what both wrote in one is shown and asked, and
 * a record that the other window took away says so.
 */
import type { BrowserContext, Locator, Page } from '@playwright/test'
import type { Output } from '../../src/contract/contract.ts'
import { expect, type RunningHost, test } from './host.ts'

const patient = { timeout: 40_000 } as const

interface Both {
  readonly page: Page
  readonly host: RunningHost
  readonly context: BrowserContext
}

/** The same screen in both, with somebody at the desk. */
async function open({ page, host, context }: Both, hash: string): Promise<Page> {
  await host.open(page, hash)
  const somebody = page.getByRole('form', { name: 'Who is at the desk' }).getByRole('button').first()
  await somebody.click(patient)
  await expect(somebody).toHaveCount(0, patient)
  const other = await context.newPage()
  await other.goto(page.url())
  return other
}

async function write(field: Locator, text: string): Promise<void> {
  await field.fill(text)
  await field.press('Enter')
}

/**
 * Both begin from the same figure; the other window writes first. Here it is asked, with both; keeping mine then counts
 * in both windows.
 */
async function clash(page: Page, mine: Locator, theirs: Locator, words: readonly [string, string], shown = words) {
  await expect(mine).toBeVisible(patient)
  await expect(theirs).toBeVisible(patient)
  await mine.fill(words[0])
  await write(theirs, words[1])
  await expect(theirs).toHaveValue(shown[1], patient)
  // The other's figure has come here by now, while the hand still writes its own.
  await page.waitForTimeout(700)
  await expect(mine).toHaveValue(words[0])
  await mine.press('Enter')
  const asked = page.getByRole('alert').filter({ hasText: 'somebody' })
  await expect(asked).toContainText(shown[1], patient)
  await asked.getByRole('button', { name: 'write mine' }).click()
  await expect(theirs).toHaveValue(shown[0], patient)
  await expect(asked).toHaveCount(0)
}

test('places: figures and names of a crate', async ({ page, host, context }) => {
  const other = await open({ page, host, context }, '#/record')
  const { places } = (await host.call(page, 'location.list', {})) as Output<'location.list'> // the answer of that name
  const crate = places.find(({ kind }) => kind === 'crate')?.name ?? ''
  for (const window of [page, other]) await window.getByRole('button', { name: crate, exact: true }).click(patient)
  const of = (window: Page, label: string) => window.getByRole('textbox', { name: label, exact: true })
  await clash(page, of(page, 'width'), of(other, 'width'), ['1400', '1500'], ['1\u2009400', '1\u2009500'])
  // Another field of the same place goes through beside it.
  await of(page, 'note').fill('two hands')
  await write(of(other, 'hours shut'), '36')
  await of(page, 'note').press('Enter')
  await expect(of(other, 'note')).toHaveValue('two hands', patient)
  await expect(of(page, 'hours shut')).toHaveValue('36', patient)
})

test('climate: a limit of a room', async ({ page, host, context }) => {
  const other = await open({ page, host, context }, '#/climate')
  const of = (window: Page, label: string) => window.getByLabel(label, { exact: true })
  await clash(page, of(page, 'not damper than'), of(other, 'not damper than'), ['52', '58'], ['52.0 %', '58.0 %'])
  await of(page, 'why').fill('prints')
  await write(of(other, 'not drier than'), '44')
  await of(page, 'why').press('Enter')
  await expect(of(other, 'why')).toHaveValue('prints', patient)
  await expect(of(page, 'not drier than')).toHaveValue('44.0 %', patient)
})

test('light: hours of a show, and hours that the other window takes away', async ({ page, host, context }) => {
  const other = await open({ page, host, context }, '#/light')
  const of = (window: Page) => window.getByLabel(/^hours a day: open from/u)
  await expect(of(page)).toHaveValue('8', patient)
  await expect(of(other)).toHaveValue('8', patient)
  await of(page).fill('7')
  await write(of(other), '9')
  await page.waitForTimeout(700)
  await of(page).press('Enter')
  await expect(page.getByRole('alert')).toContainText('9', patient)
  await page.getByRole('alert').getByRole('button').last().click()
  await expect(of(other)).toHaveValue('7', patient)
  await of(page).fill('6')
  await other.getByRole('button', { name: /^take away: open from/u }).click()
  await expect(of(page)).toHaveCount(0, patient)
})

/** Some work of the demo. */
async function someWork(page: Page, host: RunningHost): Promise<string> {
  const { lines } = (await host.call(page, 'movement.where', {})) as Output<'movement.where'> // the answer of that name
  return lines.find(({ kind, parts }) => kind === 'work' && parts === 0)?.id ?? ''
}

test('a loan: its facts, the figure of a term, and a loan that is gone', async ({ page, host, context }) => {
  await host.open(page, '#/loans')
  const { parties } = (await host.call(page, 'loan.list', {})) as Output<'loan.list'> // the answer of that name
  const party = parties[0]?.id ?? ''
  const { id } = (await host.call(page, 'loan.add', { party, number: 'TW 1' })) as Output<'loan.add'> // the answer of that name
  await host.call(page, 'loan.addTerm', { loan: id, kind: 'light', high: 50, said: 'no more than 50 lux' })
  const other = await open({ page, host, context }, `#/loans/${id}`)
  const of = (window: Page, label: string) => window.getByLabel(label, { exact: true })
  await clash(page, of(page, 'Purpose'), of(other, 'Purpose'), ['the show', 'conservation'])
  await of(page, 'Note').fill('asked twice')
  await write(of(other, 'Credit line'), 'Lent by nobody')
  await of(page, 'Note').press('Control+Enter')
  await expect(of(other, 'Note')).toHaveValue('asked twice', patient)
  const most = (window: Page) => window.getByLabel(/^At most, of/u)
  await expect(most(page)).toHaveValue(/50/u, patient)
  await clash(page, most(page), most(other), ['60', '70'], ['60 lx', '70 lx'])
  await host.call(other, 'loan.remove', { id })
  await expect(page.getByRole('alert').first()).toContainText(/no loan|not here|removed|There is/u, patient)
})

test('a work: its numbers, one of which the other window takes off, and what it is worth', async ({
  page,
  host,
  context,
}) => {
  await host.open(page, '#/record')
  const work = await someWork(page, host)
  await host.call(page, 'work.addNumber', { work, kind: 'former', text: 'TW 7' })
  const other = await open({ page, host, context }, `#/work/${work}`)
  const of = (window: Page, label: string) => window.getByLabel(label, { exact: true })
  await clash(page, of(page, 'TW 7 since'), of(other, 'TW 7 since'), ['1961', '1962'])
  await of(page, 'TW 7 written down by').fill('Ina Vorr')
  await write(of(other, 'Note on TW 7'), 'in pencil')
  await of(page, 'TW 7 written down by').press('Enter')
  await expect(of(other, 'TW 7 written down by')).toHaveValue('Ina Vorr', patient)
  await expect(of(page, 'Note on TW 7')).toHaveValue('in pencil', patient)

  // Of one day there is one value: the second window is told of the first, says another day, and both stand.
  const value = (window: Page) => window.getByRole('form', { name: 'Value it' })
  for (const [window, amount] of [
    [page, 'EUR 45 000'],
    [other, 'EUR 48 000'],
  ] as const) {
    await value(window).getByLabel('value').fill(amount)
    await value(window).getByRole('button', { name: 'value it' }).click()
    if (window === page) await expect(value(page).getByLabel('value')).toHaveValue('', patient)
  }
  await expect(other.locator('section[aria-labelledby="its-values"]').getByRole('alert')).toContainText(
    'already',
    patient,
  )
  await value(other).getByLabel('from').fill('2026-01-05')
  await value(other).getByRole('button', { name: 'value it' }).click()
  for (const window of [page, other]) {
    const values = window.locator('section[aria-labelledby="its-values"]')
    await expect(values).toContainText(/45.000/u, patient)
    await expect(values).toContainText(/48.000/u, patient)
  }
  await other.getByRole('button', { name: 'Take off the number TW 7' }).click()
  await expect(of(page, 'TW 7 since')).toHaveCount(0, patient)
})

test('a draft condition report: what two wrote, and a draft that is gone', async ({ page, host, context }) => {
  await host.open(page, '#/record')
  const work = await someWork(page, host)
  const draft = { work, kind: 'check', examiner: 'Tamsin Oake' }
  const { id } = (await host.call(page, 'condition.add', draft)) as Output<'condition.add'> // the answer of that name
  const other = await open({ page, host, context }, `#/condition/${id}`)
  const of = (window: Page, label: string) => window.getByLabel(label, { exact: true })
  await clash(page, of(page, 'Where'), of(other, 'Where'), ['the bench', 'the store'])
  await of(page, 'Note').fill('by daylight')
  await write(of(other, 'Examined by'), 'Bo Lind')
  await of(page, 'Note').press('Control+Enter')
  await expect(of(other, 'Note')).toHaveValue('by daylight', patient)
  await expect(of(page, 'Examined by')).toHaveValue('Bo Lind', patient)
  await host.call(other, 'condition.remove', { id })
  await expect(page.getByRole('alert')).toContainText('report', patient)
})

test('a damage: entries of both windows stand, and one that was struck says by whom', async ({
  page,
  host,
  context,
}) => {
  await host.open(page, '#/record')
  const work = await someWork(page, host)
  const found = { work, foundAt: '2026-01-14T10:05:00Z', reporter: 'Bo Lind', how: 'knocked', by: 'Bo Lind' }
  const { id } = (await host.call(page, 'damage.add', found)) as Output<'damage.add'> // the answer of that name
  const other = await open({ page, host, context }, `#/damage/${id}`)
  for (const [window, note] of [
    [page, 'it leaned on the trolley'],
    [other, 'the corner is kept in a bag'],
  ] as const) {
    const form = window.getByRole('form', { name: 'Record an entry' })
    await form.getByLabel('entry').selectOption('note', patient)
    await form.getByRole('textbox').last().fill(note)
    await form.getByRole('button').last().click()
    await expect(window.getByText(note)).toBeVisible(patient)
  }
  await expect(page.getByText('the corner is kept in a bag')).toBeVisible(patient)
  await expect(other.getByText('it leaned on the trolley')).toBeVisible(patient)
  const line = (window: Page) => window.locator('li').filter({ hasText: 'it leaned on the trolley' })
  await line(page).getByRole('button', { name: 'strike' }).click()
  await line(page).getByLabel('why').fill('it did not')
  await line(other).getByRole('button', { name: 'strike' }).click()
  await write(line(other).getByLabel('why'), 'another trolley')
  await expect(line(page)).toContainText('another trolley', patient)
})
