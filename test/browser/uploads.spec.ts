/**
 * Large files on their way to the host: a list, a logger's file, a drawing of a room. How far they are is told, a broken
 * connection is told and goes on where it was, and what is cancelled leaves nothing. The network is held in the hand:
 * each piece waits until the test lets it through.
 */
import type { Page } from '@playwright/test'
import { dxfOf, oneRoom, oneRoomWords } from '../contract/dxf-files.ts'
import { held } from './held-pieces.ts'
import { expect, test } from './host.ts'

const patient = { timeout: 40_000 } as const

async function chosen(page: Page, name: string, bytes: Buffer, label: string): Promise<void> {
  await page.getByLabel(label, { exact: true }).setInputFiles({ name, mimeType: 'text/plain', buffer: bytes })
}

/** As a hand drops it: made in the page, since half the size again as text would pass the bridge to it. */
async function dropped(page: Page, name: string, bytes: Buffer): Promise<void> {
  await page.evaluate(() => {
    const input = document.createElement('input')
    input.type = 'file'
    input.id = 'dropped'
    document.body.append(input)
  })
  await page.locator('#dropped').setInputFiles({ name, mimeType: 'application/octet-stream', buffer: bytes })
  await page.evaluate(() => {
    const input = document.getElementById('dropped') as HTMLInputElement // made above
    const data = new DataTransfer()
    for (const file of input.files ?? []) data.items.add(file)
    input.remove()
    document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }))
  })
}

/** Whether the host still has what the last piece that arrived belongs to. */
async function gone(page: Page, handle: string): Promise<boolean> {
  return page.evaluate(async under => !(await fetch(`/download/${under}`)).ok, handle)
}

/**
 * Brings a file by `bring`: cancelled in the middle, then brought again, its connection broken once, gone on with.
 * `again` brings it once more after it was cancelled.
 */
async function carries(page: Page, name: string, bytes: Buffer, bring: () => Promise<void>): Promise<void> {
  const all = Math.round(bytes.length / 1e6)
  const far = (pieces: number) => `${Math.round((pieces * 4 * 1024 * 1024) / 1e6)} of ${all} MB`
  const bar = page.getByRole('progressbar', { name: `Bringing ${name}`, exact: true })
  const handles: string[] = []
  page.on('response', async response => {
    if (!response.url().includes('/upload?') || response.url().includes('what=stop')) return
    handles.push((await response.json()).value.handle)
  })
  const net = await held(page)

  await bring()
  await net.through()
  await net.through()
  await expect(bar).toBeVisible(patient)
  await expect(page.getByText(far(2), { exact: true })).toBeVisible(patient)
  await page.getByRole('button', { name: 'cancel', exact: true }).click()
  const refused = page.getByRole('alert').filter({ hasText: `${name} was not brought: it was cancelled.` })
  await expect(refused).toBeVisible(patient)
  await expect(bar).toHaveCount(0)
  await expect.poll(() => gone(page, handles[0] ?? '')).toBe(true)

  await net.rest()
  net.hold()
  const before = net.pieces()
  await refused.getByRole('button', { name: 'bring it again' }).click()
  await net.through()
  await net.through()
  await net.broken()
  await expect(
    page.getByRole('alert').filter({ hasText: `The connection broke after ${far(2)}; these are kept.` }),
  ).toBeVisible(patient)
  await net.rest()
  await page.getByRole('button', { name: 'go on', exact: true }).click()
  await expect(bar).toHaveCount(0, patient)
  // Every piece once, and the broken one a second time.
  expect(net.pieces() - before).toBe(Math.ceil(bytes.length / (4 * 1024 * 1024)) + 1)
}

test('a list of 21 MB', async ({ page, emptyHost }) => {
  test.setTimeout(180_000)
  const medium = 'oil on canvas, relined, '.repeat(40)
  const rows = Array.from(
    { length: 22_000 },
    (_, i) => `Q ${i + 1},Study ${i + 1},Ina Vorr,1931,"${medium}",498 x 692 mm`,
  )
  const bytes = Buffer.from(`Loan no.,Title,Artist,Date,Medium,Dimensions\n${rows.join('\n')}\n`)
  await emptyHost.open(page, '#/checklist')
  await carries(page, 'long.csv', bytes, () => dropped(page, 'long.csv', bytes))
  await expect(page.getByText('22000 rows, 0 with a question.')).toBeVisible({ timeout: 120_000 })
  expect(await emptyHost.call(page, 'work.list', {})).toMatchObject({ total: 0 })
})

test('a logger’s file of 23 MB', async ({ page, host }) => {
  test.setTimeout(180_000)
  const rows = ['Date;Time;Temperature °C;Relative humidity %;Remark']
  const two = (figure: number) => String(figure).padStart(2, '0')
  for (let i = 0; i < 45_000; i++) {
    const at = new Date(Date.UTC(2030, 0, 1, 0, i * 10))
    const day = `${two(at.getUTCDate())}/${two(at.getUTCMonth() + 1)}/${at.getUTCFullYear()}`
    rows.push(`${day};${two(at.getUTCHours())}:${two(at.getUTCMinutes())};20,${i % 7};50,5;${'no remark '.repeat(48)}`)
  }
  const bytes = Buffer.from(rows.join('\r\n'))
  await host.open(page, '#/climate')
  await page.getByLabel('the air of').selectOption({ label: '2 Long Gallery, nothing read' })
  await expect(page.getByText('Nothing is known of the air of')).toBeVisible(patient)
  await carries(page, 'year.csv', bytes, () => chosen(page, 'year.csv', bytes, 'a logger’s file'))
  await expect(page.getByRole('region', { name: 'A logger’s file' })).toContainText('45000 readings', {
    timeout: 120_000,
  })
})

test('a drawing of a room, of 20 MB', async ({ page, emptyHost }) => {
  test.setTimeout(180_000)
  const remarks = Buffer.from('999\nNothing that is drawn.\n'.repeat(770_000))
  const bytes = Buffer.concat([remarks, dxfOf(oneRoom, oneRoomWords, 4)])
  await emptyHost.open(page, '#/rooms')
  await carries(page, 'east.dxf', bytes, () => dropped(page, 'east.dxf', bytes))
  await expect(page.getByRole('textbox', { name: 'name of 1' })).toHaveValue('East Cabinet', { timeout: 120_000 })
  expect(await emptyHost.call(page, 'room.list', {})).toMatchObject({ rooms: [] })
})
