/**
 * A condition report from its beginning to its end: findings drawn by hand and by keys, said in words, signed by two,
 * complete; then the outgoing one held against it. What it reads it reads from the catalogue.
 */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import sharp from 'sharp'
import type { Output } from '../../src/contract/contract.ts'
import { expect, type RunningHost, test } from './host.ts'

const patient = { timeout: 40_000 } as const

/** A measured work of the show. */
async function aWork(page: Page, host: RunningHost): Promise<{ id: string; width: number; height: number }> {
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as Output<'exhibition.list'> // the answer of that name
  const asked = { exhibition: exhibitions[0]?.id ?? '' }
  const { works } = (await host.call(page, 'exhibition.frieze', asked)) as Output<'exhibition.frieze'> // the same
  const found = works.find(each => each.width !== null && each.height !== null)
  if (found?.width == null || found.height == null) throw new Error('no work of the demo is measured')
  return { id: found.work, width: found.width, height: found.height }
}

async function sit(page: Page): Promise<void> {
  await page.getByRole('form', { name: 'Who is at the desk' }).getByRole('button').first().click(patient)
  await expect(page.getByRole('form', { name: 'Who is at the desk' })).toHaveCount(0)
}

const reportOf = (page: Page) => page.url().split('#/condition/')[1] ?? ''

/** A field of the finding whose fields are open. */
async function choose(page: Page, label: string, option: string): Promise<void> {
  // Its label holds its choices too, so it is named by how it begins.
  const field = page.getByRole('list').getByRole('combobox', { name: new RegExp(`^${label}`) })
  await field.selectOption({ label: option })
  await expect(field.locator('option:checked')).toHaveText(option)
}

async function signAs(page: Page, role: string, name: string): Promise<void> {
  await page.getByRole('button', { name: 'sign', exact: true }).click()
  const form = page.getByRole('form', { name: 'Sign' })
  await form.getByLabel('as').selectOption(role)
  await form.getByLabel('name').fill(name)
  await expect(form.getByRole('button', { name: 'sign it' })).toBeDisabled()
  const pad = form.getByRole('img')
  await pad.scrollIntoViewIfNeeded()
  const box = await pad.boundingBox()
  if (box === null) throw new Error('there is nothing to sign in')
  await page.mouse.move(box.x + 40, box.y + 60)
  await page.mouse.down()
  await page.mouse.move(box.x + 120, box.y + 20, { steps: 5 })
  await page.mouse.move(box.x + 180, box.y + 80, { steps: 5 })
  await page.mouse.up()
  await form.getByRole('button', { name: 'sign it' }).click()
  await expect(page.getByRole('img', { name: `Signature of ${name}` })).toBeVisible(patient)
}

/** Two photographs chosen and one dropped, of which one is no picture; one seen at full size, one taken off. */
async function photograph(page: Page, host: RunningHost, report: string): Promise<void> {
  const jpeg = async (width: number, taken: string) =>
    sharp({ create: { width, height: 900, channels: 3, background: '#806040' } })
      .withExif({ IFD2: { DateTimeOriginal: taken, OffsetTimeOriginal: '+00:00' } })
      .jpeg()
      .toBuffer()
  const files = page.getByLabel('Photographs', { exact: true })
  const mimeType = 'image/jpeg'
  await files.setInputFiles([
    { name: 'IMG_0412.jpg', mimeType, buffer: await jpeg(3000, '2026:03:02 10:15:30') },
    { name: 'none.jpg', mimeType, buffer: Buffer.from('no picture') },
  ])
  await expect(page.getByRole('alert').filter({ hasText: 'none.jpg is no picture' })).toBeVisible(patient)
  await expect(page.getByRole('heading', { name: 'One photograph' })).toBeVisible(patient)
  const dropped = (await jpeg(1200, '2026:03:02 10:20:00')).toString('base64')
  const transfer = await page.evaluateHandle(base64 => {
    const data = new DataTransfer()
    const bytes = Uint8Array.from(atob(base64), letter => letter.charCodeAt(0))
    data.items.add(new File([bytes], 'IMG_0413.jpg', { type: 'image/jpeg' }))
    return data
  }, dropped)
  await page.getByRole('heading', { name: 'One photograph' }).dispatchEvent('drop', { dataTransfer: transfer })
  await expect(page.getByRole('heading', { name: '2 photographs' })).toBeVisible(patient)
  await page.getByLabel('Shows').first().fill('the joint in raking light')
  await page.keyboard.press('Control+Enter')
  await page.getByRole('group', { name: 'Findings that photograph 1 shows' }).getByRole('button').first().click()
  await page.getByRole('button', { name: 'later: photograph 1' }).click()
  await expect(page.getByRole('button', { name: 'Photograph 2 large: the joint in raking light' })).toBeVisible(patient)
  await page.getByRole('button', { name: 'take it off: photograph 1' }).click()
  await expect(page.getByRole('heading', { name: 'One photograph' })).toBeVisible(patient)
  await page.getByRole('button', { name: /^Photograph 1 large/ }).click()
  const large = page.getByRole('dialog', { name: /the joint in raking light/ })
  await page.keyboard.press('1')
  await expect(large.getByText('100 %')).toBeVisible()
  const box = await large.getByRole('img').boundingBox()
  expect(Math.round(box?.width ?? 0)).toBe(3000)
  await page.keyboard.press('Escape')
  await expect(large).toHaveCount(0)
  const { photos, findings } = (await host.call(page, 'condition.get', { id: report })) as Output<'condition.get'> // the answer of that name
  const of = { shows: 'the joint in raking light', findings: [findings[0]?.id], name: 'IMG_0412.jpg' }
  expect(photos).toMatchObject([{ ...of, takenAt: '2026-03-02T10:15:30.000Z', takenFrom: 'camera' }])
}

test('a report is drawn by hand and keys, signed by two, complete, and held against the next', async ({
  page,
  host,
}) => {
  test.setTimeout(240_000)
  await host.open(page, '#/checklist')
  await sit(page)
  const work = await aWork(page, host)
  await host.open(page, `#/work/${work.id}`)
  await page.getByRole('button', { name: 'an incoming report' }).click(patient)
  await page.waitForURL(/#\/condition\//)
  const incoming = reportOf(page)
  const face = page.getByRole('application')
  await expect(face).toBeVisible(patient)

  // By hand: a mark where it is pressed.
  await face.click({ position: { x: 120, y: 130 } })
  await expect(page.getByRole('heading', { name: 'One finding' })).toBeVisible(patient)
  await choose(page, 'Word', 'open joint · frame')
  await choose(page, 'Age', 'old')
  await choose(page, 'How serious', 'slight')
  await page.getByRole('list').getByLabel('Across').fill('2')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('button', { name: /open joint, 2 mm across, old, slight/ })).toBeVisible(patient)

  // By keys: an outline of 20 mm from the middle to the right.
  await face.focus()
  await page.keyboard.press('o')
  await page.keyboard.press('Space')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('Space')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { name: '2 findings' })).toBeVisible(patient)
  const drawn = (await host.call(page, 'condition.get', { id: incoming })) as Output<'condition.get'> // the answer of that name
  expect(drawn.findings.map(({ form }) => form)).toEqual(['mark', 'outline'])
  expect(drawn.findings[1]?.along).toBe(20)
  expect(Math.abs((drawn.findings[1]?.points[0]?.x ?? 0) - work.width / 2)).toBeLessThan(0.1)
  await expect(page.getByText('2 has no word: say what it is.').first()).toBeVisible()
  // A word of the house, beside those that are there.
  await page.getByRole('button', { name: 'add a word' }).click()
  const adding = page.getByRole('form', { name: 'Add a word' })
  await adding.getByLabel('for').selectOption('frame')
  await adding.getByLabel('word').fill('hairline')
  await adding.getByLabel('what it means').fill('a scratch that is seen in raking light alone')
  await adding.getByRole('button', { name: 'add the word' }).click()
  await expect(adding).toHaveCount(0, patient)
  await expect(page.getByRole('combobox', { name: /^Word/ }).locator('option:checked')).toHaveText('hairline · frame')
  await choose(page, 'Age', 'old')
  await choose(page, 'How serious', 'marked')
  await page.getByRole('button', { name: 'add a word' }).click()
  await adding.getByLabel('word').fill('craze')
  await adding.getByRole('button', { name: 'add the word' }).click()
  await expect(adding).toHaveCount(0, patient)
  await choose(page, 'Word', 'hairline · frame')
  await page.getByRole('button', { name: 'add a word' }).click()
  // While a finding is called by it a word of the house stays; one that nothing is called by goes.
  const house = page.getByRole('list', { name: 'Words of the house' })
  await page.getByRole('button', { name: 'take it away: hairline' }).click()
  await expect(page.locator('.notice')).toContainText('hairline', patient)
  await page.getByRole('button', { name: 'take it away: craze' }).click()
  await expect(house.getByRole('listitem')).toHaveCount(1, patient)
  await expect(house).toContainText('hairline')
  await adding.getByRole('button', { name: 'leave it' }).click()
  await expect(page.getByRole('combobox', { name: /^Word/ }).locator('option:checked')).toHaveText('hairline · frame')

  await photograph(page, host, incoming)

  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme })
    const found = (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])
    expect(found).toEqual([])
  }

  // One signature is not enough; the second is another person's.
  await signAs(page, 'registrar', 'Ines Varga')
  await expect(page.getByText(/Signed by Ines Varga, registrar, alone/)).toBeVisible(patient)
  await expect(page.getByRole('button', { name: 'complete it' })).toBeDisabled()
  await signAs(page, 'courier', 'Bo Lind')
  await page.getByRole('button', { name: 'complete it' }).click(patient)
  await expect(page.getByText(/^● Complete since/)).toBeVisible(patient)
  await expect(page.getByRole('application')).toHaveCount(0)
  await expect(page.getByText('the joint in raking light')).toBeVisible()
  await expect(page.getByRole('button', { name: /^take it off: photograph/ })).toHaveCount(0)

  // Outgoing: what was found is dotted and listed until it is seen again; what is new is told.
  await host.open(page, `#/work/${work.id}`)
  await page.getByRole('button', { name: 'an outgoing report' }).click(patient)
  await page.waitForURL(url => url.hash.startsWith('#/condition/') && !url.hash.endsWith(incoming))
  await page.getByRole('button', { name: /^seen again: open joint/ }).click(patient)
  await expect(page.getByRole('heading', { name: 'One finding' })).toBeVisible(patient)
  await page.getByRole('application').click({ position: { x: 70, y: 300 } })
  await expect(page.getByRole('heading', { name: '2 findings' })).toBeVisible(patient)
  await expect(page.getByRole('heading', { name: /1 same, 0 grown, 1 new, 1 not seen/ })).toBeVisible(patient)
  const lines = page.getByRole('row')
  await expect(lines.filter({ hasText: 'said to be the same' })).toContainText('open joint')
  await expect(lines.filter({ hasText: 'not seen' })).toContainText('hairline')
  const axe = (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])
  expect(axe).toEqual([])
})

test('an empty catalogue says where the first report begins', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/record')
  await page.getByRole('link', { name: 'Condition', exact: true }).click(patient)
  await expect(page.getByText(/No work has been examined yet/)).toBeVisible(patient)
  await expect(page.getByRole('button', { name: 'begin a report' })).toBeVisible()
})
