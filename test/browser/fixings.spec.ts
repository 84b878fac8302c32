/** The library of fixings: added, copied, rated wall by wall as a packet says, counted, found, and removed once unused. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, type RunningHost, test } from './host.ts'

interface Listed {
  readonly id: string
  readonly name: string
  readonly kind: string
  readonly holeOffset: number
  readonly ratedKg: number | null
  readonly head: number | null
  readonly bit: string
  readonly ratings: readonly { readonly wallType: string; readonly ratedKg: number | null; readonly source: string }[]
}

async function library(page: Page, host: RunningHost): Promise<readonly Listed[]> {
  // The answer of that name.
  return ((await host.call(page, 'fixing.list', {})) as { fixings: Listed[] }).fixings
}

test('a new house takes the usual kinds in, unrated, as one edit', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/fixings')
  await page.getByRole('button', { name: /^take in the \d+ usual kinds$/ }).click()
  await expect(page.getByRole('article', { name: 'hook, two nails', exact: true })).toBeVisible()
  await expect(page.getByRole('button', { name: /usual kinds/ })).toHaveCount(0)
  const taken = await library(page, emptyHost)
  expect(taken.length).toBeGreaterThan(10)
  expect(taken.every(fixing => fixing.ratedKg === null && fixing.ratings.length === 0)).toBe(true)
  await expect(page.getByText('No rating: it never passes a load.')).toHaveCount(taken.length)
  await page.keyboard.press('Control+z')
  await expect(page.getByText('No kind of fixing is known yet.')).toBeVisible()
  expect(await library(page, emptyHost)).toEqual([])
})

test('a fixing is added, measured, rated, copied, taken back and removed', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/fixings')
  await expect(page.getByText('No kind of fixing is known yet.')).toBeVisible()
  const form = page.getByRole('form', { name: 'Add a fixing' })
  await form.getByRole('button', { name: 'add the fixing' }).click()
  await expect(form.getByRole('alert')).toContainText('It needs a name')
  await form.getByRole('textbox', { name: 'name' }).fill('plain hook')
  await form.getByRole('textbox', { name: 'from bearing up to hole' }).fill('up a bit')
  await form.getByRole('button', { name: 'add the fixing' }).click()
  await expect(form.getByRole('alert')).toContainText('From bearing to hole: “up a bit”')
  // 1/2 in is 12.7 mm by the definition of the inch.
  await form.getByRole('textbox', { name: 'from bearing up to hole' }).fill('1/2 in')
  await form.getByRole('button', { name: 'add the fixing' }).click()
  const one = async (name = 'plain hook') => (await library(page, emptyHost)).find(fixing => fixing.name === name)
  await expect.poll(async () => (await one())?.holeOffset).toBeCloseTo(12.7, 9)
  const card = page.getByRole('article', { name: 'plain hook', exact: true })
  await expect(card.getByRole('img', { name: /The hole is 12.7 above where the work bears/ })).toBeVisible()
  await expect(card.getByText('No rating: it never passes a load.')).toBeVisible()
  await expect(card.getByText('stays while it is used')).toHaveCount(0)

  const type = async (name: string, text: string) => {
    const cell = card.getByRole('textbox', { name, exact: true })
    await cell.fill(text)
    await cell.press('Enter')
  }
  await type('plain hook, from bearing to hole, up', '-2,25')
  await expect(card.getByRole('img', { name: /The hole is 2.25 below where the work bears/ })).toBeVisible()
  await type('plain hook, head', '8 apples')
  await expect(card.getByRole('alert')).toContainText('apples')
  await type('plain hook, head', '8.5')
  await expect.poll(async () => (await one())?.head).toBe(8.5)
  await type('plain hook, bit', '3 mm')
  await expect.poll(async () => (await one())?.bit).toBe('3 mm')
  await card.getByRole('combobox', { name: 'plain hook, shape' }).selectOption('screw')
  await expect.poll(async () => (await one())?.kind).toBe('screw')

  await card.getByRole('button', { name: 'rate it in another wall' }).click()
  const rate = card.getByRole('form', { name: 'Rate plain hook in a type of wall' })
  await rate.getByRole('combobox', { name: 'in' }).selectOption('brick')
  await rate.getByRole('textbox', { name: 'rated' }).fill('50 lb')
  await rate.getByRole('button', { name: 'write it down' }).click()
  await expect(rate.getByRole('alert')).toContainText('Say where the figure stands')
  await rate.getByRole('textbox', { name: 'source' }).fill('packet in drawer 3')
  await rate.getByRole('button', { name: 'write it down' }).click()
  // 50 lb × 0.45359237 kg/lb.
  await expect.poll(async () => (await one())?.ratings[0]?.ratedKg).toBeCloseTo(22.6796185, 7)
  await expect(card.getByText('No rating: it never passes a load.')).toHaveCount(0)
  // A quarter of it, by the house factor 4.
  await expect(card.getByRole('row', { name: /brick/ })).toContainText('5.67 kg')
  await type('plain hook, rating in brick', '')
  await expect.poll(async () => (await one())?.ratings[0]).toMatchObject({ wallType: 'brick', ratedKg: null })
  await expect(card.getByText('No rating: it never passes a load.')).toBeVisible()
  await page.getByRole('heading', { name: 'Fixings' }).click()
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await one())?.ratings[0]?.ratedKg).toBeCloseTo(22.6796185, 7)

  await type('plain hook, in stock', 'many')
  await expect(card.getByRole('alert')).toContainText('“many” is no count.')
  await type('plain hook, in stock', '24')
  await card.getByRole('button', { name: 'copy' }).click()
  const second = page.getByRole('article', { name: 'plain hook, another' })
  await expect(second.getByRole('textbox', { name: 'plain hook, another, name' })).toBeFocused()
  await expect.poll(async () => (await one('plain hook, another'))?.ratings).toMatchObject([{ wallType: 'brick' }])
  await second.getByRole('button', { name: 'remove' }).click()
  await expect(second).toHaveCount(0)
  await page.getByRole('heading', { name: 'Fixings' }).click()
  await page.keyboard.press('Control+z')
  await expect(second).toHaveCount(1)
  expect((await one('plain hook, another'))?.ratings).toMatchObject([
    { wallType: 'brick', source: 'packet in drawer 3' },
  ])
})

test('the library is searched and put in order, says where each is used, and keeps what is needed', async ({
  page,
  host,
}) => {
  await host.open(page, '#/rooms')
  await page.getByRole('link', { name: 'fixings', exact: true }).click()
  const cards = page.getByRole('region', { name: 'The library' }).getByRole('article')
  const all = await library(page, host)
  await expect(cards).toHaveCount(all.length)
  await page.getByRole('searchbox', { name: 'find a fixing' }).fill('cleat packet')
  await expect(page.getByRole('status').filter({ hasText: `1 of ${all.length}` })).toBeVisible()
  const cleat = page.getByRole('article', { name: /^cleat/ })
  await expect(cleat.getByText('stays while it is used')).toBeVisible()
  await expect(cleat.getByRole('link', { name: /Gallery|Room/ }).first()).toBeVisible()
  const used = all.find(one => one.kind === 'cleat')
  await expect(host.call(page, 'fixing.remove', { id: used?.id })).rejects.toThrow('fixing-in-use')
  await page.getByRole('searchbox', { name: 'find a fixing' }).fill('zzz')
  await page.getByRole('button', { name: 'Show all' }).click()
  await page.getByRole('combobox', { name: 'order' }).selectOption('rating')
  const strongest = Math.max(...all.map(one => one.ratedKg ?? 0))
  await expect(cards.first()).toHaveAccessibleName(all.find(one => one.ratedKg === strongest)?.name ?? '')
  await cleat.getByRole('link').first().click()
  await expect(page).toHaveURL(/#\/walls\//)
})

test('the library is free of barriers, light and dark, and says what a figure is worth', async ({ page, host }) => {
  // Two whole looks at a long page; a busy machine takes its time.
  test.setTimeout(240_000)
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    await host.open(page, '#/fixings')
    await expect(page.getByRole('article').first()).toBeVisible()
    await page
      .getByRole('button', { name: /rate it in another wall/ })
      .first()
      .click()
    const found = (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])
    expect(found).toEqual([])
  }
  await expect(page.getByRole('region', { name: 'Cautions' })).toContainText('codes and a qualified person decide')
  await page.getByRole('link', { name: /A fixing carries at most its rated load/ }).click()
  await expect(page.getByRole('button', { name: /A fixing carries at most its rated load/ })).toBeFocused()
})
