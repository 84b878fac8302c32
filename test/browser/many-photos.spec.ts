/** Many photographs dragged at once: in the order of their names, none lost by one that fails, what failed tried again. */
import type { Page } from '@playwright/test'
import sharp from 'sharp'
import type { Output } from '../../src/contract/contract.ts'
import { expect, type RunningHost, sitDown, test } from './host.ts'

const patient = { timeout: 40_000 } as const

/** A draft of a work of which there is none yet. */
async function draft(page: Page, host: RunningHost): Promise<string> {
  const { lines } = (await host.call(page, 'damage.list', { state: 'open' })) as Output<'damage.list'> // the answer of that name
  const work = lines[0]?.work ?? ''
  const { id } = (await host.call(page, 'condition.add', { work, kind: 'outgoing' })) as { id: string } // it answers with its id
  return id
}

async function named(page: Page, host: RunningHost, report: string): Promise<readonly string[]> {
  const { photos } = (await host.call(page, 'condition.get', { id: report })) as Output<'condition.get'> // the same
  return photos.map(({ name }) => name)
}

test('photographs come in by name, and one that fails loses no other and is tried again', async ({ page, host }) => {
  test.setTimeout(180_000)
  await host.open(page, '#/damage')
  await sitDown(page)
  const report = await draft(page, host)
  await page.goto(`${page.url().split('#')[0]}#/condition/${report}`)
  await expect(page.getByRole('heading', { name: 'No photograph' })).toBeVisible(patient)

  const jpeg = async (nth: number) =>
    sharp({ create: { width: 1400 + nth, height: 1000, channels: 3, background: '#607080' } })
      .jpeg()
      .toBuffer()
  const mimeType = 'image/jpeg'
  const files = await Promise.all(
    [10, 9, 11, 2, 1, 12].map(async nth => ({ name: `IMG_${nth}.jpg`, mimeType, buffer: await jpeg(nth) })),
  )
  // The wire breaks under one of them, once.
  let broken = 0
  await page.route(/\/upload\?.*IMG_9\.jpg/, route => {
    broken += 1
    return broken === 1 ? route.abort() : route.continue()
  })
  const wrong = { name: 'IMG_3.jpg', mimeType, buffer: Buffer.from('no picture') }
  await page.getByLabel('Photographs', { exact: true }).setInputFiles([...files, wrong])
  // What was cut off waits for a person, who leaves it; the others behind it come.
  await expect(page.getByText('The connection broke after')).toBeVisible(patient)
  await page.getByRole('button', { name: 'cancel', exact: true }).click()
  await expect(page.getByRole('heading', { name: '5 photographs' })).toBeVisible(patient)
  await expect(page.getByRole('alert').filter({ hasText: 'IMG_3.jpg' })).toBeVisible(patient)
  await expect(page.getByRole('alert').filter({ hasText: 'IMG_9.jpg' })).toBeVisible(patient)
  await expect(page.getByText('2 photographs are not in the report.')).toBeVisible(patient)
  expect(await named(page, host, report)).toEqual([1, 2, 10, 11, 12].map(nth => `IMG_${nth}.jpg`))

  await page.getByRole('button', { name: 'try them again' }).click()
  await expect(page.getByRole('heading', { name: '6 photographs' })).toBeVisible(patient)
  await expect(page.getByText('One photograph is not in the report.')).toBeVisible(patient)
  await expect(page.getByRole('alert').filter({ hasText: 'IMG_9.jpg' })).toHaveCount(0)
  expect((await named(page, host, report)).at(-1)).toBe('IMG_9.jpg')
})

test('a signature keeps its dots and what is drawn after the window has another size, and no second finger breaks it', async ({
  page,
  host,
}) => {
  test.setTimeout(120_000)
  await host.open(page, '#/damage')
  await sitDown(page)
  const report = await draft(page, host)
  const note = { was: '', to: 'Nothing new.' }
  await host.call(page, 'condition.update', { id: report, changes: { note } })
  await page.goto(`${page.url().split('#')[0]}#/condition/${report}`)
  await page.getByRole('button', { name: 'sign', exact: true }).click(patient)
  const form = page.getByRole('form', { name: 'Sign' })
  await form.getByLabel('name').fill('Petra Sollen')
  const pad = form.getByRole('img')
  const within = async (across: number, down: number) => {
    await pad.scrollIntoViewIfNeeded()
    const box = await pad.boundingBox()
    if (box === null) throw new Error('there is nothing to sign in')
    return [box.x + box.width * across, box.y + box.height * down] as const
  }
  const drawn = pad.locator('polyline')
  // A dot alone is no signature, and says so.
  await page.mouse.click(...(await within(0.5, 0.25)))
  await expect(drawn).toHaveCount(1)
  await form.getByRole('button', { name: 'sign it' }).click()
  await expect(form.getByRole('alert')).toBeVisible(patient)

  await page.mouse.move(...(await within(0.1, 0.7)))
  await page.mouse.down()
  await page.mouse.move(...(await within(0.3, 0.3)), { steps: 4 })
  // Another finger comes down and goes while the first draws on.
  const second = { pointerId: 77, pointerType: 'touch', button: 0, bubbles: true, clientX: 5, clientY: 5 }
  await pad.dispatchEvent('pointerdown', second)
  await pad.dispatchEvent('pointerup', second)
  await page.mouse.move(...(await within(0.4, 0.7)), { steps: 4 })
  await page.mouse.up()
  await expect(drawn).toHaveCount(2)

  await page.setViewportSize({ width: 920, height: 800 })
  await page.mouse.move(...(await within(0.6, 0.5)))
  await page.mouse.down()
  await page.mouse.move(...(await within(0.9, 0.5)), { steps: 4 })
  await page.mouse.up()
  await expect(drawn).toHaveCount(3)
  await form.getByRole('button', { name: 'sign it' }).click()
  await expect(page.getByRole('img', { name: 'Signature of Petra Sollen' })).toBeVisible(patient)
  const { signatures } = (await host.call(page, 'condition.get', { id: report })) as Output<'condition.get'> // the answer of that name
  const [dot = [], line = [], late = []] = signatures[0]?.strokes ?? []
  expect(dot).toHaveLength(4)
  expect(dot.slice(0, 2)).toEqual(dot.slice(2))
  const near = (got: number | undefined, wanted: number) => expect(Math.abs((got ?? 0) - wanted)).toBeLessThan(8)
  near(dot[0], 500)
  near(line[0], 100)
  near(line.at(-2), 400)
  near(late[0], 600)
  near(late.at(-2), 900)
})
