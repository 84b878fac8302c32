/** A messy list from a lender, from a paste to works in the show: read, corrected, answered, taken in, taken back. */
import AxeBuilder from '@axe-core/playwright'
import type { FileChooser, Page } from '@playwright/test'
import { expect, test } from './host.ts'

// Invented rows in the ways lenders write sizes.
const list = [
  ['Loan no.', 'Title', 'Artist', 'Date', 'Medium', 'Dimensions'],
  ['Q 1', 'Slack water', 'Ina Vorr', '1931', 'oil on canvas', 'framed 24 1/2 x 36 3/4 in.'],
  ['Q 2', 'Groyne', 'Ina Vorr', '1932', 'etching', '49,8 x 69,2 cm'],
  ['Q 3', 'Nets drying', 'Ina Vorr', '1933', 'watercolour', '61 x 91.5'],
]
const pasted = list.map(row => row.join('\t')).join('\n')

async function paste(page: Page, text: string): Promise<void> {
  await page.evaluate(words => {
    const data = new DataTransfer()
    data.setData('text/plain', words)
    document.body.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }))
  }, text)
}

async function dropFile(page: Page, name: string, bytes: Buffer): Promise<void> {
  await page.evaluate(
    ([given, base64]) => {
      const data = new DataTransfer()
      data.items.add(new File([Uint8Array.from(atob(base64), sign => sign.charCodeAt(0))], given))
      document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }))
    },
    [name, bytes.toString('base64')] as const,
  )
}

test('a pasted list is shown, answered, taken in once, and taken back by one undo', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/checklist')
  await paste(page, pasted)
  await expect(page.getByText('3 rows, 1 with a question.')).toBeVisible()
  await expect(page.getByText('framed 622 × 933')).toBeVisible()
  await expect(page.getByText('498 × 692')).toBeVisible()

  // Nothing is written before it is taken.
  expect(await emptyHost.call(page, 'work.list', {})).toMatchObject({ total: 0 })
  const question = page.locator('.question')
  await expect(question.locator('cite')).toHaveText('61 x 91.5')
  await question.getByRole('button').first().click()
  await expect(page.getByText('3 rows, 0 with a question.')).toBeVisible()

  await page.getByRole('button', { name: 'take it in' }).click()
  await expect(page.getByRole('heading', { name: '3 added' })).toBeVisible()
  expect(await emptyHost.call(page, 'work.list', {})).toMatchObject({ total: 3 })

  await page.getByRole('button', { name: 'to the checklist' }).click()
  await paste(page, pasted)
  await expect(page.getByText('unchanged 3')).toBeVisible()
  await page.getByRole('button', { name: 'put it away' }).click()

  await page.keyboard.press('Control+z')
  await expect.poll(() => emptyHost.call(page, 'work.list', {})).toMatchObject({ total: 0 })
})

test('a list makes the exhibition it is for, in the same edit', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/checklist')
  await paste(page, pasted)
  await page.getByLabel('into').selectOption('a new exhibition')
  const take = page.getByRole('button', { name: 'take it in' })
  await expect(page.getByText('give it a title')).toBeVisible()
  await expect(take).toBeDisabled()
  await page.getByLabel('its title').fill('Slack and spring')
  await page.keyboard.press('Tab')
  await expect(take).toBeEnabled()
  await take.click()
  await expect(page.getByRole('heading', { name: '3 added' })).toBeVisible()
  await page.getByRole('button', { name: 'to the checklist' }).click()
  await expect(page.getByRole('link', { name: 'Slack and spring' })).toBeVisible()
  const shows = () => emptyHost.call(page, 'exhibition.list', {})
  expect(await shows()).toMatchObject({ exhibitions: [{ title: 'Slack and spring', works: 3 }] })

  await page.keyboard.press('Control+z')
  await expect.poll(shows).toMatchObject({ exhibitions: [] })
  expect(await emptyHost.call(page, 'work.list', {})).toMatchObject({ total: 0 })
})

test('at 900 wide, sizes stay in their column and each question of a row is asked', async ({ page, emptyHost }) => {
  await page.setViewportSize({ width: 900, height: 760 })
  await emptyHost.open(page, '#/checklist')
  const rows = [
    ['Loan no.', 'Title', 'Dimensions'],
    ['Q 7', 'Spit', '61.5 x 82.3 cm (framed 78 x 99 x 6.5 cm, sheet 65 x 85 cm)'],
    ['Q 8', 'Bar', '24 x 36 in (62 x 93 cm)'],
  ]
  await paste(page, rows.map(row => row.join('\t')).join('\n'))
  const row = page.getByRole('row', { name: /Spit/ })
  await expect(row).toContainText('780 × 990 × 65')
  const column = await row.getByRole('cell').nth(5).boundingBox()
  for (const size of await row.getByRole('cell').nth(5).locator('.figure').all()) {
    const box = await size.boundingBox()
    expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual((column?.x ?? 0) + (column?.width ?? 0))
  }
  const question = page.locator('.question')
  await expect(question).toHaveCount(2)
  await question.first().getByRole('button').first().click()
  await expect(question).toHaveCount(1)
  await question.getByRole('button').nth(1).click()
  await expect(page.getByText('2 rows, 0 with a question.')).toBeVisible()
  await expect(page.getByRole('row', { name: /Bar/ })).toContainText('610 × 930')
})

test('a list is chosen from the system’s files, by a key and by the words on an empty checklist', async ({
  page,
  emptyHost,
}) => {
  await emptyHost.open(page, '#/checklist')
  const buffer = Buffer.from(list.map(row => row.map(cell => `"${cell.replaceAll('"', '""')}"`).join(',')).join('\n'))
  const file = { name: 'list.csv', mimeType: 'text/csv', buffer }
  await expect(page.getByRole('heading', { name: 'The checklist will stand here.' })).toBeVisible()
  // Listened to from the first to the last: begun anew for each, a browser may open its own window before it hears of it.
  const choosers: FileChooser[] = []
  page.on('filechooser', chooser => choosers.push(chooser))
  await page.getByRole('button', { name: 'choose its file' }).click()
  await expect.poll(() => choosers.length).toBe(1)
  await choosers[0]?.setFiles(file)
  await expect(page.getByText('3 rows, 1 with a question.')).toBeVisible()
  await page.getByRole('button', { name: 'put it away' }).click()
  await expect(page.getByRole('heading', { name: 'The checklist will stand here.' })).toBeVisible()
  await page.keyboard.press('b')
  await expect.poll(() => choosers.length).toBe(2)
  expect(choosers[1]?.isMultiple()).toBe(true)
  await choosers[1]?.setFiles(file)
  await expect(page.getByText('3 rows, 1 with a question.')).toBeVisible()
})

test('another screen hides the list being read, and nothing of it is lost', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/checklist')
  await paste(page, pasted)
  const question = page.locator('.question')
  await question.getByRole('button').first().click()
  await expect(page.getByText('3 rows, 0 with a question.')).toBeVisible()
  await page.getByRole('button', { name: 'new 3' }).click()

  await page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name: 'Rooms' }).click()
  const rows = page.getByRole('region', { name: 'Rows of the list' })
  const waiting = page.getByRole('link', { name: 'a pasted table is being read: 3 rows, 0 questions' })
  await expect(waiting).toBeVisible()
  await expect(rows).toBeHidden()
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([])

  // A second list does not take its place.
  await paste(page, 'Title\tArtist\nKelp\tIna Vorr')
  await expect(page.getByText('This is still being looked at.')).toBeVisible()
  await expect(rows).toContainText('Slack water')

  await page.keyboard.press('2')
  await waiting.click()
  // The answer given before and the rows chosen are as they were.
  await expect(page.getByText('3 rows, 0 with a question.')).toBeVisible()
  await expect(page.getByRole('button', { name: 'new 3' })).toHaveAttribute('aria-pressed', 'true')
  await expect(rows).toContainText('Nets drying')
  await expect(waiting).toBeHidden()

  await page.keyboard.press('1')
  await page.getByRole('status').getByRole('button', { name: 'put it away' }).click()
  await expect(waiting).toBeHidden()
  expect(await emptyHost.call(page, 'work.list', {})).toMatchObject({ total: 0 })

  // Put away on its own screen, one is back where it was brought.
  await page.keyboard.press('2')
  await paste(page, pasted)
  await expect(page.getByText('3 rows, 1 with a question.')).toBeVisible()
  await page.getByRole('button', { name: 'put it away' }).click()
  await expect(page).toHaveURL(/#\/rooms$/)
})

test('columns that a person names once are known in the lender’s next list, and in no other’s', async ({
  page,
  emptyHost,
}) => {
  // Words that say nothing to a reader of headings.
  const lists = (order: readonly number[], rows: readonly (readonly string[])[]) =>
    [['Sig', 'Betitelt', 'Von', 'Gauge'], ...rows].map(row => order.map(at => row[at] ?? '').join('\t')).join('\n')
  const first = lists([0, 1, 2, 3], [['Q 1', 'Slack water', 'Ina Vorr', '50 × 70 cm']])
  const second = lists([3, 2, 1, 0], [['Q 2', 'Groyne', 'Oda Ketil', '40 × 60 cm']])
  const lender = page.getByLabel('lender, where the list names none')
  const name = async (whose: string) => {
    await lender.fill(whose)
    await lender.press('Tab')
  }
  const rows = page.getByRole('region', { name: 'Rows of the list' })
  const take = page.getByRole('button', { name: 'take it in' })

  await emptyHost.open(page, '#/checklist')
  await paste(page, first)
  // Nothing says what the columns are: they are asked for at once, and nothing can be taken in.
  await expect(page.getByText('No row with headings was found')).toBeVisible()
  await expect(take).toBeDisabled()
  await name('Quay Collection')
  await page.getByLabel('headings in row').fill('1')
  await page.getByLabel('headings in row').press('Tab')
  await expect(page.getByRole('cell', { name: 'Betitelt', exact: true })).toBeVisible()
  for (const [column, field] of [
    ['A', 'lenderNumber'],
    ['B', 'title'],
    ['C', 'maker'],
    ['D', 'size'],
  ] as const) {
    await page.getByLabel(`Column ${column} is`).selectOption(field)
    await expect(page.getByLabel(`Column ${column} is`)).toHaveValue(field)
    // The first that is named leaves the others to be named, however long its reading takes.
    await expect(take).toBeEnabled()
  }
  await expect(rows).toContainText('500 × 700')
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([])
  await take.click()
  await expect(page.getByRole('heading', { name: '1 added' })).toBeVisible()
  await page.getByRole('button', { name: 'to the checklist' }).click()

  await paste(page, second)
  await expect(take).toBeDisabled()
  await name('Mole House')
  await expect(page.getByText('a new lender, added with the list')).toBeVisible()
  await expect(take).toBeDisabled()
  await name('quay collection')
  await expect(page.getByText('a known lender')).toBeVisible()
  await expect(take).toBeEnabled()
  await expect(rows).toContainText('400 × 600')
  await take.click()
  await expect(page.getByRole('heading', { name: '1 added' })).toBeVisible()
  const { works } = (await emptyHost.call(page, 'work.list', {})) as {
    works: readonly { title: string; maker: string }[]
  }
  expect(works.map(({ title, maker }) => [title, maker])).toEqual(
    expect.arrayContaining([
      ['Slack water', 'Ina Vorr'],
      ['Groyne', 'Oda Ketil'],
    ]),
  )
})

test('the preview is free of barriers, light and dark', async ({ page, emptyHost }) => {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    await emptyHost.open(page, '#/checklist')
    await paste(page, pasted)
    await expect(page.getByText('3 rows, 1 with a question.')).toBeVisible()
    await page.getByRole('button', { name: 'columns' }).click()
    const { violations } = await new AxeBuilder({ page }).analyze()
    expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([])
  }
})

/** Files that people send instead of a list, each with the words that must be shown. */
const refused: readonly {
  readonly about: string
  readonly name: string
  readonly bytes: () => Buffer
  readonly says: RegExp
}[] = [
  {
    // A compound file whose directory names an encrypted package, as [MS-OFFCRYPTO] 2.3.4.4 has it.
    about: 'protected by a password',
    name: 'list.xlsx',
    bytes: () =>
      Buffer.concat([
        Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]),
        Buffer.alloc(1016),
        Buffer.from('EncryptedPackage', 'utf16le'),
        Buffer.alloc(480),
      ]),
    says: /password/,
  },
  {
    // A local file header of a ZIP archive and nothing after it: no central directory.
    about: 'cut off half way',
    name: 'list.xlsx',
    bytes: () => Buffer.concat([Buffer.from('PK\u0003\u0004', 'latin1'), Buffer.alloc(600, 0x41)]),
    says: /damaged|cut off|incomplete|again/i,
  },
  {
    about: 'text called a workbook',
    name: 'list.xlsx',
    bytes: () => Buffer.from('Title,Artist\nSlack water,Ina Vorr\n'),
    says: /called \.xlsx but is not a workbook/,
  },
]

for (const { about, name, bytes, says } of refused) {
  test(`a file ${about} is refused in words, and nothing is written`, async ({ page, emptyHost }) => {
    await emptyHost.open(page, '#/checklist')
    await dropFile(page, name, bytes())
    await expect(page.locator('.flow .settle')).toContainText(says)
    await expect(page.getByRole('button', { name: 'take it in' })).toHaveCount(0)
    expect(await emptyHost.call(page, 'work.list', {})).toMatchObject({ total: 0 })
    expect(await emptyHost.call(page, 'import.runs', {})).toMatchObject({ total: 0 })
    await page.getByRole('button', { name: 'put it away' }).click()
    await expect(page.locator('.flow')).toHaveCount(0)
  })
}

test('a question is put to a known lender and stands in the letter to copy', async ({ page, emptyHost }) => {
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write'])
  await emptyHost.open(page, '#/checklist')
  await emptyHost.call(page, 'party.add', { kind: 'lender', name: 'Quay Collection' })
  await paste(page, pasted)
  await expect(page.getByText('3 rows, 1 with a question.')).toBeVisible()
  const lender = page.getByLabel('lender, where the list names none')
  await lender.fill('quay collection')
  await lender.press('Tab')
  await expect(lender).toHaveValue('Quay Collection')
  await expect(page.getByText('a known lender')).toBeVisible()
  await page.locator('.question').getByRole('button', { name: 'ask the lender' }).click()
  await expect(page.locator('.question').getByRole('button', { name: 'ask the lender' })).toHaveAttribute(
    'aria-pressed',
    'true',
  )
  await page.getByRole('button', { name: 'take it in' }).click()
  await page.getByText('1 question for Quay Collection').click()
  const letter = page.getByLabel('Letter to Quay Collection')
  await expect(letter).toContainText('1. Q 3, Nets drying, Ina Vorr')
  await expect(letter).toContainText('says: 61 x 91.5')
  await page.getByRole('button', { name: 'copy the text' }).click()
  await expect(page.getByText('Copied.')).toBeVisible()
  expect(await page.evaluate(() => navigator.clipboard.readText())).toContain('To Quay Collection')
  const saved = page.waitForEvent('download')
  await page.getByRole('button', { name: 'save as a text file' }).click()
  expect((await saved).suggestedFilename()).toBe('Questions for Quay Collection.txt')
  // One lender, and the same one.
  expect(await emptyHost.call(page, 'party.list', {})).toMatchObject({
    parties: [{ name: 'Quay Collection', works: 3 }],
  })
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([])
})

test('a preview of 5,000 rows rolls to its end, where a question is answered before it is taken in', async ({
  page,
  emptyHost,
}) => {
  const count = 5000
  const rows = Array.from({ length: count }, (_, i) => [
    `R ${i + 1}`,
    `Study ${i + 1}`,
    'Ina Vorr',
    String(1900 + (i % 90)),
    'etching',
    i === count - 1 ? '61 x 91.5' : `${20 + (i % 40)} x ${30 + (i % 50)} cm`,
  ])
  const text = [list[0] ?? [], ...rows].map(row => row.join(',')).join('\n')
  await emptyHost.open(page, '#/checklist')
  await dropFile(page, 'studies.csv', Buffer.from(text))
  await expect(page.getByText('5000 rows, 1 with a question.')).toBeVisible({ timeout: 60_000 })
  const table = page.getByRole('region', { name: 'Rows of the list' })
  await expect(table.getByText('Study 1', { exact: true })).toBeVisible()
  // Only what is in view is drawn.
  expect(await table.locator('tbody[data-at]').count()).toBeLessThan(200)
  const half = table.getByText('Study 2500', { exact: true })
  await table.evaluate(box => box.scrollTo(0, box.scrollHeight * 0.4999))
  await expect(half).toBeVisible({ timeout: 30_000 })
  await table.focus()
  await page.keyboard.press('End')
  await expect(table.getByText('Study 5000', { exact: true })).toBeVisible({ timeout: 30_000 })
  await page.keyboard.press('End')
  const question = table.locator('.question')
  await expect(question.locator('cite')).toHaveText('61 x 91.5')
  await question.getByRole('button').first().click()
  await expect(page.getByText('5000 rows, 0 with a question.')).toBeVisible({ timeout: 60_000 })
  // The answer left the reader where they were.
  await expect(table.getByText('Study 5000', { exact: true })).toBeVisible({ timeout: 30_000 })
  await page.getByRole('button', { name: 'take it in' }).click()
  await expect(page.getByRole('heading', { name: '5000 added' })).toBeVisible({ timeout: 60_000 })
  const last = await emptyHost.call(page, 'work.list', { search: 'Study 5000' })
  expect(last).toMatchObject({ total: 1 })
})
