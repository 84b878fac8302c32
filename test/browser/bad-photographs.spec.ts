/** What is no photograph, or too much of one, brought into a report by hand: chosen, dropped, pasted; told by name. */
import { truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import type { Output } from '../../src/contract/contract.ts'
import { noisy, pngHeader, tiffOfCamera } from '../contract/camera-files.ts'
import { held } from './held-pieces.ts'
import { expect, type RunningHost, test } from './host.ts'

const patient = { timeout: 40_000 } as const

async function aDraft(page: Page, host: RunningHost): Promise<string> {
  const { works } = (await host.call(page, 'work.list', { limit: 1 })) as Output<'work.list'> // the answer of that name
  const asked = { work: works[0]?.id, kind: 'incoming' }
  const { id } = (await host.call(page, 'condition.add', asked)) as Output<'condition.add'> // the same
  return id
}

/** As a hand does it on the heading of the photographs. */
async function bring(page: Page, how: 'drop' | 'paste', name: string, bytes: Buffer): Promise<void> {
  // A browser knows no kind for what a sensor wrote.
  const given = { base64: bytes.toString('base64'), name, kind: name.endsWith('.png') ? 'image/png' : '' }
  const transfer = await page.evaluateHandle(({ base64, name: called, kind }) => {
    const data = new DataTransfer()
    data.items.add(new File([Uint8Array.from(atob(base64), letter => letter.charCodeAt(0))], called, { type: kind }))
    return data
  }, given)
  const heading = page.getByRole('heading', { name: /photograph/i })
  if (how === 'drop') return heading.dispatchEvent('drop', { dataTransfer: transfer })
  await heading.evaluate((at, data) => {
    at.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }))
  }, transfer)
}

test('what cannot be taken is told by its name; what a camera wrote is kept and shown by its preview', async ({
  page,
  host,
}) => {
  test.setTimeout(180_000)
  await host.open(page, '#/checklist')
  await page.getByRole('form', { name: 'Who is at the desk' }).getByRole('button').first().click(patient)
  const report = await aDraft(page, host)
  await host.open(page, `#/condition/${report}`)
  const choose = page.getByLabel('Photographs', { exact: true })
  await expect(page.getByRole('heading', { name: 'No photograph' })).toBeVisible(patient)
  const told = (text: string) => expect(page.getByRole('alert').filter({ hasText: text })).toBeVisible(patient)

  const large = join(host.folder, 'IMG_0500.tif')
  writeFileSync(large, '')
  truncateSync(large, 500e6)
  const carried: string[] = []
  page.on('request', request => request.url().includes('/upload') && carried.push(request.url()))
  await choose.setInputFiles(large)
  await told('IMG_0500.tif has 500 MB; a report takes photographs of up to 268 MB.')
  expect(carried).toEqual([])

  const jpeg = await noisy(900, 700)
  const mimeType = 'image/jpeg'
  await choose.setInputFiles([
    { name: 'empty.jpg', mimeType, buffer: Buffer.alloc(0) },
    { name: 'note.jpg', mimeType, buffer: Buffer.from('The corner, as I remember it.') },
    { name: 'cut.jpg', mimeType, buffer: jpeg.subarray(0, Math.round(jpeg.length / 2)) },
  ])
  await told('empty.jpg is empty')
  await told('note.jpg is no picture that can be shown')
  await told('cut.jpg was taken, but part of its picture cannot be read')
  await expect(page.getByRole('heading', { name: 'One photograph' })).toBeVisible()

  await bring(page, 'paste', 'bomb.png', pngHeader(60_000, 60_000))
  await told('bomb.png has 3600 megapixels')
  await bring(page, 'drop', 'DSC_0007.NEF', tiffOfCamera(Buffer.alloc(0), jpeg))
  await expect(page.getByText('DSC_0007.NEF, kept whole; shown by its preview of 900 × 700 px')).toBeVisible(patient)
  await page.getByRole('button', { name: 'Photograph 2 large: DSC_0007.NEF' }).click()
  await expect(page.getByRole('dialog').getByText('kept whole')).toBeVisible()
  await page.keyboard.press('Escape')
  const { photos } = (await host.call(page, 'condition.get', { id: report })) as Output<'condition.get'> // the same
  expect(photos.map(({ name, preview }) => [name, preview])).toEqual([
    ['cut.jpg', false],
    ['DSC_0007.NEF', true],
  ])
})

test('a large photograph on its way tells how far it is, and cancelled nothing of it stays', async ({ page, host }) => {
  test.setTimeout(120_000)
  await host.open(page, '#/checklist')
  await page.getByRole('form', { name: 'Who is at the desk' }).getByRole('button').first().click(patient)
  const report = await aDraft(page, host)
  await host.open(page, `#/condition/${report}`)
  const large = join(host.folder, 'IMG_0200.tif')
  writeFileSync(large, '')
  truncateSync(large, 200e6)
  const network = await held(page)
  await page.getByLabel('Photographs', { exact: true }).setInputFiles(large)
  const bar = page.getByRole('progressbar', { name: 'Bringing IMG_0200.tif' })
  await network.through()
  await expect(bar).toBeVisible(patient)
  await expect(page.getByText(/^\d+ of 200 MB$/)).toBeVisible(patient)
  await page.getByRole('button', { name: 'cancel' }).click()
  await network.rest()
  await expect(
    page.getByRole('alert').filter({ hasText: 'IMG_0200.tif was not brought: it was cancelled.' }),
  ).toBeVisible(patient)
  await expect(bar).toHaveCount(0)
  await expect(page.getByRole('heading', { name: 'No photograph' })).toBeVisible()
})
