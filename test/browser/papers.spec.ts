/** The papers: seen as they would print, printed, out of date after a change, void after the next print. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import AxeBuilder from '@axe-core/playwright'
import type { Output } from '../../src/contract/contract.ts'
import { papers } from '../../src/sheets/shapes.ts'
import { cases, writeCase } from '../unit/sheets/cases.ts'
import { expect, test } from './host.ts'
import { openDrawer, withoutInk } from './sheet-ink.ts'

interface FaceState {
  readonly face: string
  readonly works: number
  readonly printed: { readonly revision: number } | null
  readonly upToDate: boolean
  readonly voids: readonly number[]
}

test('a wall sheet is drawn, printed, goes out of date, and is void after the next print', async ({ page, host }) => {
  test.setTimeout(120_000)
  await host.open(page, '#/papers')
  const shown = page.getByRole('img', { name: /page 1 of/ })
  await expect(shown).toBeVisible()
  await page.getByRole('button', { name: 'print this sheet' }).click()
  const file = page.getByRole('link', { name: /\.pdf$/ })
  await expect(file).toBeVisible()
  const bytes = await page.evaluate(
    async address => {
      const response = await fetch(address)
      return [...new Uint8Array(await response.arrayBuffer()).slice(0, 5)]
    },
    (await file.getAttribute('href')) ?? '',
  )
  expect(String.fromCharCode(...bytes)).toBe('%PDF-')

  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as {
    exhibitions: { id: string; works: number }[]
  } // the answer of that name
  const exhibition = exhibitions.find(one => one.works > 0)?.id ?? ''
  const state = async () => {
    const { faces } = (await host.call(page, 'sheet.state', { exhibition })) as { faces: FaceState[] } // likewise
    return faces.find(one => one.printed !== null)
  }
  // A sheet is made by a worker of its own, which has to begin.
  await expect.poll(async () => (await state())?.printed?.revision, { timeout: 30_000 }).toBe(1)
  const face = (await state())?.face ?? ''
  await host.call(page, 'wall.plan', { exhibition, face, changes: { centreLine: { was: null, to: 1490 } } })
  await expect(page.getByText('revision 1 is out of date')).toBeVisible()
  await page.getByRole('button', { name: 'print this sheet' }).click()
  await expect.poll(async () => (await state())?.printed?.revision, { timeout: 30_000 }).toBe(2)
  expect(await state()).toMatchObject({ upToDate: true, voids: [1] })
  await expect(page.getByText('revision 1 is void')).toBeVisible()
  await expect(page.getByText('● revision 2 is up to date')).toBeVisible()
  await expect(page.getByText('printing makes it revision 2 again: nothing changed')).toBeVisible()
})

test('the plan of a storey goes out at the scale asked for, as the next revision of its show', async ({
  page,
  host,
}) => {
  test.setTimeout(120_000)
  await host.open(page, '#/papers')
  const sheets = page.getByRole('navigation', { name: 'Sheets' })
  await expect(sheets.getByText(/rooms?, not printed yet/)).toBeVisible()
  await sheets.getByRole('button', { name: /^the building/ }).click()
  const drawn = page.getByRole('img', { name: 'The building’s plan, page 1 of 1' })
  await expect(drawn.getByText(/^revision 1 · /)).toBeVisible({ timeout: 30_000 })
  await sheets.getByLabel('scale').selectOption('1:500')
  await expect(drawn.getByText('1:500', { exact: true })).toBeVisible({ timeout: 30_000 })
  // The zones that the catalogue has stand in its legend with their limits.
  const { zones } = (await host.call(page, 'plan.get', { exhibition: null })) as Output<'plan.get'>
  for (const zone of zones) await expect(drawn.getByText(`${zone.kind} zone: ${zone.note}`)).toBeVisible()
  await sheets.getByRole('button', { name: 'PDF', exact: true }).click()
  await expect(page.getByRole('link', { name: /plan.* revision 1\.pdf$/ })).toBeVisible({ timeout: 30_000 })
  await expect(sheets.getByText('● revision 1 is up to date').last()).toBeVisible()
  const made = page.getByRole('complementary', { name: 'Tag of what is selected' })
  await expect(made.getByText(/look on the spot before anything is built/)).toBeVisible()
  await expect(made.getByText(/before drilling/)).toHaveCount(0)
  // A room that stands elsewhere is another plan.
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as { exhibitions: { id: string }[] }
  const plan = (await host.call(page, 'plan.get', { exhibition: null })) as Output<'plan.get'>
  const room = plan.rooms.find(one => one.at !== null)
  const [x, y] = room?.at ?? [0, 0]
  await host.call(page, 'plan.placeRoom', {
    rooms: [{ id: room?.id, changes: { at: { was: [x, y], to: [x + 40, y] } } }],
  })
  await expect(sheets.getByText('▲ revision 1 is out of date').last()).toBeVisible()
  await sheets.getByRole('button', { name: 'DXF at full size' }).click()
  await expect(page.getByRole('link', { name: /plan.* revision 2\.dxf$/ })).toBeVisible({ timeout: 30_000 })
  await expect(sheets.getByText('● revision 2 is up to date').last()).toBeVisible()
  const state = (await host.call(page, 'sheet.state', { exhibition: exhibitions[0]?.id })) as Output<'sheet.state'>
  expect(state.plans).toMatchObject([{ printed: { revision: 2 }, upToDate: true, voids: [1] }])
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
})

test('the sheet is drawn in ink on white whatever the window looks like, on the paper and in the unit asked for', async ({
  page,
  host,
}) => {
  await page.emulateMedia({ colorScheme: 'dark' })
  await host.open(page, '#/papers')
  const shown = page.getByRole('img', { name: /page 1 of/ })
  await expect(shown).toBeVisible()
  const colours = await shown
    .locator('text')
    .evaluateAll(all => [...new Set(all.map(one => getComputedStyle(one).fill))])
  // The inks of paper, none of the dark window's.
  const inks = [
    'rgb(31, 34, 36)',
    'rgb(75, 79, 82)',
    'rgb(102, 101, 95)',
    'rgb(210, 69, 43)',
    'rgb(46, 110, 78)',
    'rgb(143, 90, 0)',
  ]
  expect(colours.filter(colour => !inks.includes(colour))).toEqual([])
  expect(colours).toContain('rgb(31, 34, 36)')
  await page.getByRole('combobox', { name: 'on', exact: true }).first().selectOption('Tabloid')
  // 17 × 11 in, ANSI/ASME Y14.1 size B.
  await expect(shown).toHaveAttribute('viewBox', '0 0 431.8 279.4')
  await page.getByRole('combobox', { name: 'in', exact: true }).first().selectOption('inches')
  await expect(shown.getByText('in large, mm small')).toBeVisible()
})

test('the whole set is made with one button, lists as spreadsheets among it', async ({ page, host }) => {
  test.setTimeout(150_000)
  await host.open(page, '#/papers')
  // The answers of those names.
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as { exhibitions: { id: string }[] }
  const { rooms } = (await host.call(page, 'room.plan', { exhibition: exhibitions[0]?.id })) as {
    rooms: { walls: { works: number }[] }[]
  }
  const hung = rooms.flatMap(room => room.walls).filter(wall => wall.works > 0).length
  expect(hung).toBeGreaterThan(10)
  await page.getByRole('button', { name: 'make the whole set' }).click()
  await expect(page.getByRole('link', { name: /\.pdf$/ })).toHaveCount(hung + 1, { timeout: 90_000 })
  const lists = page.getByRole('link', { name: /\.xlsx$/ })
  await expect(lists).toHaveCount(2)
  for (const link of await lists.all()) {
    const first = await page.evaluate(
      async address => [...new Uint8Array(await (await fetch(address)).arrayBuffer()).slice(0, 4)],
      (await link.getAttribute('href')) ?? '',
    )
    // PK 03 04, the local file header of a ZIP (APPNOTE.TXT 4.3.7), which a workbook is.
    expect(first).toEqual([0x50, 0x4b, 3, 4])
  }
  // Every wall's, and the plan's.
  await expect(page.getByText('● revision 1 is up to date')).toHaveCount(hung + 1)
  await expect(page.getByRole('link', { name: /plan revision 1\.pdf$/ })).toBeVisible()
  const made = page.getByRole('complementary', { name: 'Tag of what is selected' })
  await expect(made.getByText(/before drilling/)).toBeVisible()
})

test('the screen is free of barriers, light and dark', async ({ page, host }) => {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    await host.open(page, '#/papers')
    await expect(page.getByRole('img', { name: /page 1 of/ })).toBeVisible()
    const { violations } = await new AxeBuilder({ page }).analyze()
    expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([])
  }
})

for (const one of cases) {
  test(`pdf.js draws ink for every text of the sheet ${one.name}, and tells a text that has none`, async ({
    context,
  }) => {
    test.setTimeout(120_000)
    const folder = mkdtempSync(join(tmpdir(), 'hangwright-ink-'))
    try {
      const path = join(folder, 'sheet.pdf')
      const sheet = await writeCase(one, path)
      const pdf = readFileSync(path)
      const pages = sheet.boxes.map(texts => ({ ...papers[one.paper], texts }))
      const drawer = await openDrawer(context)
      expect(await withoutInk(drawer, pdf, pages)).toEqual([])
      expect(sheet.boxes.flat().length).toBeGreaterThan(100)
      // The same look at a corner of the paper where nothing is.
      const nowhere = { name: 'nowhere', text: 'nothing', x: 1, y: 1, w: 3, h: 3 }
      const lacking = pages.map((each, index) => (index === 0 ? { ...each, texts: [...each.texts, nowhere] } : each))
      expect(await withoutInk(drawer, pdf, lacking)).toEqual(['page 1: nowhere “nothing”'])
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  })
}
