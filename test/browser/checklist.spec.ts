/** The checklist as a coordinator and a registrar work in it: found, sorted, written, ordered, taken back. */
import AxeBuilder from '@axe-core/playwright'
import type { Locator, Page } from '@playwright/test'
import { expect, type RunningHost, sitDown, test } from './host.ts'

interface Frieze {
  readonly sections: readonly { readonly id: string; readonly title: string }[]
  readonly works: readonly {
    readonly entry: string
    readonly work: string
    readonly section: string | null
    readonly title: string
  }[]
}

async function sit(page: Page, host: RunningHost): Promise<void> {
  await host.open(page, '#/checklist')
  await sitDown(page)
  await page.getByRole('button', { name: 'I have read this' }).click()
  await expect(row(page, 0)).toBeVisible()
  await expect(row(page, 0).locator('cite')).not.toBeEmpty()
}

function row(page: Page, index: number): Locator {
  return page.locator(`[data-index="${index}"]`)
}

async function exhibition(page: Page, host: RunningHost): Promise<string> {
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as { exhibitions: readonly { id: string }[] }
  const [first] = exhibitions
  if (first === undefined) throw new Error('the demo has no exhibition')
  return first.id
}

async function frieze(page: Page, host: RunningHost): Promise<Frieze> {
  return (await host.call(page, 'exhibition.frieze', { exhibition: await exhibition(page, host) })) as Frieze
}

async function lists(page: Page, host: RunningHost, asked: object): Promise<readonly Record<string, unknown>[]> {
  const input = { exhibition: await exhibition(page, host), limit: 200, ...asked }
  return ((await host.call(page, 'work.list', input)) as { works: readonly Record<string, unknown>[] }).works
}

async function fact(page: Page, host: RunningHost, id: string, field: string): Promise<unknown> {
  const { facts } = (await host.call(page, 'work.get', { id })) as { facts: Record<string, unknown> }
  return facts[field]
}

async function at<T>(list: readonly T[], index: number): Promise<T> {
  const one = list[index]
  if (one === undefined) throw new Error(`nothing at ${index}`)
  return one
}

test('typing filters, a lender and a kind narrow it, and the counts agree with the list', async ({ page, host }) => {
  await sit(page, host)
  const all = await lists(page, host, {})
  await expect(page.getByRole('heading', { level: 1 })).toContainText(`${all.length} works`)

  const prints = page.getByRole('group', { name: 'Filter the list' }).getByRole('button', { name: /^print/ })
  await prints.click()
  const expected = await lists(page, host, { kind: 'print' })
  await expect(prints).toContainText(String(expected.length))
  await expect(page.getByText(`${expected.length} works`, { exact: true })).toBeVisible()
  await expect(page.getByRole('grid')).toHaveAttribute('aria-rowcount', String(expected.length + 1))
  await prints.click()

  const sought = String((await at(all, 5)).title)
  await page.keyboard.press('f')
  await page.getByLabel('Type to filter').fill(sought)
  await expect(row(page, 0).locator('cite')).toHaveText(sought)
  await page.getByLabel('Type to filter').fill('no such thing anywhere')
  await expect(page.getByText('No work answers to that.')).toBeVisible()
  await page.getByRole('button', { name: 'Show all again' }).click()
  await expect(page.getByRole('grid')).toHaveAttribute('aria-rowcount', /^\d\d/)
})

test('a heading sorts, and sorts the other way', async ({ page, host }) => {
  await sit(page, host)
  const byTitle = await lists(page, host, { sort: 'title' })
  const head = page.getByRole('columnheader', { name: /^Title/ })
  await head.getByRole('button').click()
  await expect(head).toHaveAttribute('aria-sort', 'ascending')
  await expect(row(page, 0).locator('cite')).toHaveText(String(byTitle[0]?.title))
  await head.getByRole('button').click()
  await expect(head).toHaveAttribute('aria-sort', 'descending')
  await expect(row(page, 0).locator('cite')).toHaveText(String(byTitle.at(-1)?.title))
})

test('a title and a size are written in the list, and undo takes them back', async ({ page, host }) => {
  await sit(page, host)
  const [first] = await lists(page, host, {})
  const id = String(first?.id)
  const before = String(first?.title)

  await row(page, 0).click()
  await page.keyboard.press('Enter')
  await page.getByLabel(`Title of ${before}`).fill('Weir, third state')
  await page.keyboard.press('Enter')
  await expect(row(page, 0).locator('cite')).toHaveText('Weir, third state')
  expect(await fact(page, host, id, 'title')).toBe('Weir, third state')

  await page.keyboard.press('Control+z')
  await expect(row(page, 0).locator('cite')).toHaveText(before)
  await page.keyboard.press('Control+Shift+z')
  await expect(row(page, 0).locator('cite')).toHaveText('Weir, third state')

  await row(page, 0).getByRole('gridcell').filter({ hasText: '×' }).dblclick()
  const size = page.getByLabel('H × W × D of Weir, third state')
  await size.fill('24 1/2 x 18 in')
  await size.press('Enter')
  // 24 1/2 in is 622.3 mm and 18 in is 457.2 mm exactly (1 in = 25.4 mm, NIST SP 811).
  await expect(row(page, 0)).toContainText('622 × 457')
  const { size: hanging } = (await host.call(page, 'work.get', { id })) as { size: { height: number; width: number } }
  expect(hanging.height).toBeCloseTo(622.3, 9)
  expect(hanging.width).toBeCloseTo(457.2, 9)
})

test('a double click writes in the column it began on, and what cannot be read is said there and writes nothing', async ({
  page,
  host,
}) => {
  await sit(page, host)
  const [first] = await lists(page, host, {})
  await row(page, 0).locator('.limit').dblclick()
  const field = page.getByLabel(/^Limit of/)
  await field.fill('bright')
  await field.press('Enter')
  await expect(page.getByRole('alert')).toContainText('“bright” is no number of lux')
  await field.press('Escape')
  expect(await fact(page, host, String(first?.id), 'lightLimit')).toBe(first?.lightLimit)
})

test('a change by another window is shown and asked', async ({ page, host }) => {
  await sit(page, host)
  const [first] = await lists(page, host, {})
  const id = String(first?.id)
  await row(page, 0).click()
  await page.keyboard.press('Enter')
  const field = page.getByLabel(`Title of ${String(first?.title)}`)
  await field.fill('Mine')
  await host.call(page, 'work.update', { id, changes: { title: { was: first?.title, to: 'Theirs' } } })
  await field.press('Enter')
  await expect(page.getByText('Meanwhile somebody made it “Theirs”.')).toBeVisible()
  expect(await fact(page, host, id, 'title')).toBe('Theirs')
  await page.getByRole('button', { name: 'write “Mine”' }).click()
  await expect(row(page, 0).locator('cite')).toHaveText('Mine')
  expect(await fact(page, host, id, 'title')).toBe('Mine')
})

test('keys change the order of the show, and over the edge of a section', async ({ page, host }) => {
  await sit(page, host)
  const before = await frieze(page, host)
  const second = await at(before.works, 1)
  await row(page, 1).click()
  await page.keyboard.press('Alt+ArrowUp')
  await expect(row(page, 0).locator('cite')).toHaveText(second.title)
  await expect.poll(async () => (await frieze(page, host)).works[0]?.entry).toBe(second.entry)
  await page.keyboard.press('Alt+ArrowDown')
  await expect
    .poll(async () => (await frieze(page, host)).works.map(work => work.entry))
    .toEqual(before.works.map(work => work.entry))

  const edge = before.works.findIndex(work => work.section !== before.works[0]?.section)
  const first = await at(before.works, edge)
  const strange = await at(before.works, 0)
  await row(page, edge).scrollIntoViewIfNeeded()
  await row(page, edge).click()
  await page.keyboard.press('Alt+ArrowUp')
  await expect
    .poll(async () => (await frieze(page, host)).works.find(work => work.entry === first.entry)?.section)
    .toBe(strange.section)
})

test('from the filter the keys go on to the list, and go on after it was scrolled away', async ({ page, host }) => {
  await sit(page, host)
  await page.keyboard.press('f')
  const filter = page.getByLabel('Type to filter')
  await expect(filter).toBeFocused()
  await filter.press('ArrowDown')
  await expect(row(page, 0)).toBeFocused()
  await expect(row(page, 0)).toHaveAttribute('aria-selected', 'true')
  // Scrolled by hand, the work that has the keyboard is out of sight; the next key brings its neighbour back.
  await page.getByRole('grid').evaluate(node => {
    node.scrollTop = node.scrollHeight
  })
  await expect(row(page, 67)).toBeInViewport()
  await page.keyboard.press('ArrowDown')
  await expect(row(page, 1)).toBeFocused()
  await expect(row(page, 1)).toBeInViewport()
})

test('a hand drags a work to another place', async ({ page, host }) => {
  await sit(page, host)
  const before = await frieze(page, host)
  const third = await at(before.works, 2)
  await row(page, 2).dragTo(row(page, 0), { targetPosition: { x: 300, y: 4 } })
  await expect.poll(async () => (await frieze(page, host)).works[0]?.entry).toBe(third.entry)
})

test('works are added, duplicated, and leave the show without leaving the catalogue', async ({ page, host }) => {
  await sit(page, host)
  const before = (await frieze(page, host)).works.length
  await page.getByRole('button', { name: 'add a work' }).click()
  const form = page.getByRole('form', { name: 'Add a work' })
  await form.getByLabel('title').fill('Sluice gate')
  await form.getByLabel('maker').fill('Isaura Penbrack')
  await page.keyboard.press('Enter')
  await expect.poll(async () => (await frieze(page, host)).works.length).toBe(before + 1)
  const tag = page.getByRole('complementary', { name: /^Tag/ })
  await expect(tag).toContainText('Sluice gate')
  await tag.getByRole('button', { name: 'duplicate' }).click()
  await expect.poll(async () => (await frieze(page, host)).works.length).toBe(before + 2)
  await tag.getByRole('button', { name: 'take out of the show' }).click()
  await page.getByRole('button', { name: 'take out', exact: true }).click()
  await expect.poll(async () => (await frieze(page, host)).works.length).toBe(before + 1)
  const { total } = (await host.call(page, 'work.list', { search: 'Sluice gate' })) as { total: number }
  expect(total).toBe(2)
})

test('a question of a list is settled beside its raw words', async ({ page, host }) => {
  await sit(page, host)
  const show = await exhibition(page, host)
  const open = async () =>
    ((await host.call(page, 'import.questions', { exhibition: show })) as { total: number }).total
  const before = await open()
  expect(before).toBeGreaterThan(0)
  await page.getByRole('button', { name: /questions? from a list/ }).click()
  const asked = page.getByRole('region', { name: /not say clearly/ })
  await asked.locator('li').first().locator('button.choice').first().click()
  await expect.poll(open).toBe(before - 1)
})

for (const scheme of ['light', 'dark'] as const) {
  for (const size of [
    { width: 1440, height: 900 },
    { width: 900, height: 700 },
  ]) {
    test(`nothing is out of reach of a reader: ${scheme}, ${size.width} wide`, async ({ page, host }) => {
      await page.emulateMedia({ colorScheme: scheme })
      await page.setViewportSize(size)
      await sit(page, host)
      await row(page, 3).click()
      await expect(page.getByRole('complementary', { name: /^Tag/ })).toContainText('light limit')
      expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
      // Nothing is cut off sideways: the page itself never scrolls.
      const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
      expect(over).toBeLessThanOrEqual(0)
    })
  }
}

test('an empty catalogue says what to do next', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/checklist')
  await expect(page.getByText('The checklist will stand here.')).toBeVisible()
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
})

test('one field is written into many works as one edit', async ({ page, host }) => {
  await sit(page, host)
  const works = (await lists(page, host, {})).slice(1, 4).map(work => String(work.id))
  await row(page, 1).click()
  await row(page, 3).click({ modifiers: ['Shift'] })
  const tag = page.getByRole('complementary', { name: /^Tag/ })
  await expect(tag).toContainText('works selected')
  await tag.getByRole('combobox', { name: 'field' }).selectOption('creditLine')
  await tag.getByLabel('value for all').fill('Lent for the season')
  await tag.getByRole('button', { name: 'write' }).click()
  await expect(tag.getByRole('status')).toContainText('Written into 3 works')
  for (const id of works) expect(await fact(page, host, id, 'creditLine')).toBe('Lent for the season')
  await row(page, 1).press('Control+z')
  await expect.poll(async () => fact(page, host, await at(works, 2), 'creditLine')).not.toBe('Lent for the season')
})

test('a section is made, named anew, moved and removed', async ({ page, host }) => {
  await sit(page, host)
  await page.getByRole('button', { name: 'add a section' }).click()
  await page.getByLabel('Title of the new section').fill('Afterwards')
  await page.keyboard.press('Enter')
  await expect.poll(async () => (await frieze(page, host)).sections.at(-1)?.title).toBe('Afterwards')
  await page.getByRole('grid').evaluate(grid => grid.scrollTo(0, grid.scrollHeight))
  await page.getByRole('button', { name: 'rename Afterwards' }).click()
  await page.getByLabel('Title of the section').fill('Coda')
  await page.keyboard.press('Enter')
  await expect.poll(async () => (await frieze(page, host)).sections.at(-1)?.title).toBe('Coda')
  await page.getByRole('button', { name: 'up Coda' }).click()
  await expect.poll(async () => (await frieze(page, host)).sections.at(-2)?.title).toBe('Coda')
  await page.getByRole('grid').evaluate(grid => grid.scrollTo(0, 0))
  const count = (await frieze(page, host)).sections.length
  const [section] = (await frieze(page, host)).sections
  await page.getByRole('button', { name: `remove ${section?.title}` }).click()
  await page.getByRole('button', { name: 'remove the section' }).click()
  await expect.poll(async () => (await frieze(page, host)).sections.length).toBe(count - 1)
})

test('a list pulled by its thumb says where it stands until its lines come', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/checklist')
  const rows = Array.from({ length: 5000 }, (_, n) => `T-${n}\tTide table ${n}\tIna Vorr`)
  await emptyHost.call(page, 'import.accept', { text: ['Inv. No.\tTitle\tArtist', ...rows].join('\n') })
  const grid = page.getByRole('grid', { name: 'Works' })
  await expect(grid).toContainText('Tide table')
  const seen = await grid.evaluate(
    node =>
      new Promise<string[]>(done => {
        const words: string[] = []
        const step = () => {
          node.scrollTop += 20_000
          requestAnimationFrame(() => {
            words.push(node.textContent ?? '')
            if (words.length < 6) step()
            else done(words)
          })
        }
        step()
      }),
  )
  expect(seen.some(words => /\d\u2009\d{3} of 5\u2009000/.test(words))).toBe(true)
  // At rest every line is there, and nothing but lines.
  await expect(grid).not.toContainText('of 5\u2009000')
  await expect(grid).toContainText('Tide table')
})
