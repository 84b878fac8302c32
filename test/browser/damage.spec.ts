/**
 * A work is found damaged: recorded under its reference, photographed, its owner told, held back from the van, closed,
 * opened again. What it reads it reads from the catalogue.
 */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import sharp from 'sharp'
import type { Output } from '../../src/contract/contract.ts'
import { expect, type RunningHost, sitDown, test } from './host.ts'

const patient = { timeout: 40_000 } as const

/** A lender's measured work of the show of which no damage is on record. */
async function lentWork(page: Page, host: RunningHost): Promise<string> {
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as Output<'exhibition.list'> // the answer of that name
  const { lines } = (await host.call(page, 'leaving.list', {
    exhibition: exhibitions[0]?.id ?? '',
  })) as Output<'leaving.list'> // the same
  const { lines: damages } = (await host.call(page, 'damage.list', {})) as Output<'damage.list'> // the same
  const found = lines.find(each => each.lent && each.title !== '' && !damages.some(({ work }) => work === each.id))
  if (found === undefined) throw new Error('no work of the demo is lent and whole')
  return found.id
}

async function broken(page: Page): Promise<unknown> {
  return (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])
}

/** The report of a work signed by two and complete. */
async function signed(page: Page, host: RunningHost, work: string): Promise<void> {
  const { reports } = (await host.call(page, 'condition.list', { work })) as Output<'condition.list'> // the answer of that name
  const report = reports[0]?.id ?? ''
  const note = { was: '', to: 'A joint of the frame has opened, 2 mm.' }
  await host.call(page, 'condition.update', { id: report, changes: { note } })
  const strokes = [[100, 200, 300, 100, 500, 220]]
  for (const [role, name] of [
    ['registrar', 'Tamsin Oake'],
    ['courier', 'Bo Lind'],
  ])
    await host.call(page, 'condition.sign', { report, role, name, strokes })
  await host.call(page, 'condition.complete', { report })
}

test('a damage is recorded, photographed, told, closed; until then the work stays', async ({ page, host }) => {
  test.setTimeout(180_000)
  await host.open(page, '#/damage')
  await sitDown(page)
  await expect(page.getByRole('row', { name: /D-0002/ })).toContainText('owner not told', patient)
  await expect(page.getByRole('row', { name: /D-0001/ })).toContainText('closed')
  const work = await lentWork(page, host)

  await page.goto(`${page.url().split('#')[0]}#/work/${work}`)
  await page.getByRole('link', { name: 'record damage' }).click(patient)
  const form = page.getByRole('form', { name: 'Record damage' })
  await form.getByLabel('reference').fill('D-0007')
  await form.getByLabel('how it came about').fill('a joint of the frame opened')
  await form.getByLabel('circumstances').fill('When it was taken down, 2 mm at the lower left.')
  expect(await broken(page)).toEqual([])
  await form.getByRole('button', { name: 'record it' }).click()
  await expect(page.getByRole('heading', { name: /^D-0007 damage of/ })).toBeVisible(patient)
  await expect(page.getByRole('heading', { name: /owner to be told within 23 h/ })).toBeVisible(patient)

  // A van cannot take it, and says why before anything is recorded.
  const { id: van } = (await host.call(page, 'location.add', { kind: 'vehicle', name: 'Van 9' })) as { id: string }
  const held = await host
    .call(page, 'movement.add', { works: [work], to: van })
    .catch((error: unknown) => String(error))
  expect(String(held)).toContain('D-0007')

  await page.getByRole('button', { name: 'begin a report for them' }).click()
  const jpeg = await sharp({ create: { width: 1200, height: 900, channels: 3, background: '#806040' } })
    .jpeg()
    .toBuffer()
  await page
    .getByLabel('Photographs', { exact: true })
    .setInputFiles([{ name: 'joint.jpg', mimeType: 'image/jpeg', buffer: jpeg }])
  await expect(page.getByRole('button', { name: /Photograph 1 large/ })).toBeVisible(patient)

  const entry = page.getByRole('form', { name: 'Record an entry' })
  await entry.getByLabel('who was told').fill('Ines Maro')
  await entry.getByLabel('by what means').fill('telephone')
  await entry.getByRole('button', { name: 'record it' }).click()
  await expect(page.getByRole('heading', { name: /owner told .* after it was found/ })).toBeVisible(patient)
  await entry.getByRole('textbox', { name: 'what was done' }).fill('Laid flat in the store.')
  await entry.getByRole('button', { name: 'record it' }).click()
  await expect(page.getByText('Laid flat in the store.')).toBeVisible(patient)
  expect(await broken(page)).toEqual([])

  // What the photographs stand in is a draft; a second window signs it.
  await expect(page.getByText(/Its condition report is still a draft/)).toBeVisible(patient)
  await expect(page.getByRole('form', { name: 'Close it' })).toHaveCount(0)
  await signed(page, host, work)
  const closing = page.getByRole('form', { name: 'Close it' })
  await expect(closing).toBeVisible(patient)
  await closing.getByLabel('why').fill('its owner agrees to the journey')
  await closing.getByLabel('when').fill('2026-01-02T10:00')
  await closing.getByRole('button', { name: 'close it' }).click()
  await expect(page.getByRole('alert').filter({ hasText: 'so it cannot have been closed on' })).toBeVisible(patient)
  await closing.getByLabel('when').fill('')
  await closing.getByLabel('why').fill('its owner agrees to the journey')
  await closing.getByRole('button', { name: 'close it' }).click()
  await expect(page.getByRole('form', { name: 'Open it again' })).toBeVisible(patient)
  const { lines } = (await host.call(page, 'damage.list', { work })) as Output<'damage.list'> // the answer of that name
  expect(lines).toMatchObject([{ reference: 'D-0007', lacks: [] }])
  expect(lines[0]?.closedAt).not.toBeNull()

  await page.getByRole('link', { name: 'records of damage' }).click()
  await page.getByRole('searchbox').fill('joint d-0007')
  await expect(page.getByRole('row', { name: /D-0007/ })).toContainText('closed', patient)
  expect(await broken(page)).toEqual([])
  await page.getByRole('searchbox').press('ArrowDown')
  await expect(page.getByRole('link', { name: 'D-0007' })).toBeFocused()
})
