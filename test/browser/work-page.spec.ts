/** One work's page: facts, sizes, the back measured on its drawing, pictures; what two windows do to one work. */

import { deflateSync } from 'node:zlib'
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, type RunningHost, sitDown, test } from './host.ts'

interface Line {
  readonly id: string
  readonly title: string
  readonly method: string
  readonly size: { readonly height: number; readonly width: number } | null
}
interface Got {
  readonly facts: { readonly title: string; readonly maker: string; readonly medium: string }
  readonly sizes: readonly { readonly kind: string; readonly height: number; readonly width: number }[]
  readonly size: { readonly height: number; readonly width: number } | null
  readonly backs: readonly { readonly method: string; readonly seenFrom: string; readonly data: unknown }[]
  readonly pictures: readonly { readonly hash: string }[]
  readonly lenderName: string
  readonly mass: number | null
  readonly masses: readonly { readonly kg: number }[]
  readonly numbers: readonly { readonly kind: string; readonly text: string }[]
  readonly documents: readonly { readonly name: string }[]
}

async function sit(page: Page, host: RunningHost): Promise<void> {
  await host.open(page)
  await sitDown(page)
}

async function made(page: Page, host: RunningHost): Promise<string> {
  const { id } = (await host.call(page, 'work.add', { title: 'Slack water' })) as { id: string }
  await host.call(page, 'work.addSize', {
    work: id,
    part: 'framed',
    height: 640,
    width: 900,
    raw: '640 x 900 mm',
    kind: 'listed',
  })
  return id
}

async function show(page: Page, id: string): Promise<void> {
  await page.evaluate(to => {
    location.hash = `#/work/${to}`
  }, id)
  await expect(page.getByLabel('Title')).toBeVisible()
}

async function get(page: Page, host: RunningHost, id: string): Promise<Got> {
  return (await host.call(page, 'work.get', { id })) as Got
}

/** The figures of one bearing, in words: from the left edge, below the top edge. */
async function bearing(page: Page, side: string): Promise<readonly string[]> {
  return page.locator(`[data-bearing="${side}"] .figure`).allTextContents()
}

test('a fact is edited in place, is one edit, and undo brings it back', async ({ page, host }) => {
  await sit(page, host)
  const id = await made(page, host)
  await show(page, id)
  const medium = page.getByRole('textbox', { name: 'Medium' })
  await medium.fill('oil on linen')
  await medium.press('Enter')
  await expect.poll(async () => (await get(page, host, id)).facts.medium).toBe('oil on linen')
  await page.getByLabel('Light limit').fill('bright')
  await page.getByLabel('Light limit').press('Enter')
  await expect(page.getByText('“bright” is no number of lux')).toBeVisible()
  await page.getByLabel('Light limit').press('Escape')
  await page.getByRole('heading', { name: 'Facts' }).click()
  await page.locator('body').press('Control+z')
  await expect(medium).toHaveValue('')
  await page.getByRole('heading', { name: 'What was done to it' }).click()
  await expect(page.getByText('medium from “nothing” to “oil on linen”')).toBeVisible()
})

test('two windows edit one work: other fields both survive, the same field is shown and asked', async ({
  page,
  host,
  context,
}) => {
  await sit(page, host)
  const id = await made(page, host)
  await show(page, id)
  const other = await context.newPage()
  await other.goto(`${new URL(page.url()).origin}/#/work/${id}`)
  await expect(other.getByLabel('Title')).toHaveValue('Slack water')

  // Both begin to write before either has saved.
  await page.getByLabel('Maker').fill('Ina Vorr')
  await other.getByRole('textbox', { name: 'Medium' }).fill('etching')
  await other.getByRole('textbox', { name: 'Medium' }).press('Enter')
  await page.getByLabel('Maker').press('Enter')
  await expect
    .poll(async () => (await get(page, host, id)).facts)
    .toMatchObject({ maker: 'Ina Vorr', medium: 'etching' })

  await expect(page.getByRole('textbox', { name: 'Medium' })).toHaveValue('etching')
  await page.getByRole('textbox', { name: 'Medium' }).fill('drypoint')
  await other.getByRole('textbox', { name: 'Medium' }).fill('aquatint')
  await other.getByRole('textbox', { name: 'Medium' }).press('Enter')
  await expect.poll(async () => (await get(page, host, id)).facts.medium).toBe('aquatint')
  await page.getByRole('textbox', { name: 'Medium' }).press('Enter')
  await expect(page.getByText('Meanwhile somebody made the medium “aquatint”; you wrote “drypoint”.')).toBeVisible()
  expect((await get(page, host, id)).facts.medium).toBe('aquatint')
  await page.getByRole('button', { name: 'write mine' }).click()
  await expect.poll(async () => (await get(page, host, id)).facts.medium).toBe('drypoint')
  await expect(other.getByRole('textbox', { name: 'Medium' })).toHaveValue('drypoint')
})

test('a measured size that differs from the list hangs, and is a finding in words', async ({ page, host }) => {
  await sit(page, host)
  const id = await made(page, host)
  await show(page, id)
  await page.getByRole('button', { name: 'add a size' }).click()
  const statement = page.getByLabel('The size as written')
  // No unit: asked, not guessed.
  await statement.fill('framed 24 x 36')
  await expect(page.locator('.question')).toHaveCount(1)
  await expect(page.getByRole('button', { name: 'Add this size' })).toBeDisabled()
  // 24 1/2 in = 622.3 mm, 36 3/4 in = 933.45 mm by the exact inch of 25.4 mm.
  await statement.fill('framed 24 1/2 x 36 3/4 in')
  await expect(page.locator('form .main')).toHaveText('622 × 933')
  await page.getByRole('button', { name: 'Add this size' }).click()
  await expect(page.locator('[data-finding="differs-from-list"]')).toContainText('wider')
  expect((await get(page, host, id)).size).toMatchObject({ height: 622.3, width: 933.45 })

  // Overruled and given back to the rule; the older row was never lost.
  await page.getByRole('button', { name: /choose this: framed 640 × 900/ }).click()
  await expect.poll(async () => (await get(page, host, id)).size?.width).toBe(900)
  await page.getByRole('button', { name: 'let the rule choose' }).click()
  await expect.poll(async () => (await get(page, host, id)).size?.width).toBe(933.45)

  // As figures, in any unit; what can't be read is shown at its field.
  await page.getByRole('button', { name: 'add a size' }).click()
  await page.getByRole('button', { name: 'as figures' }).click()
  await page.getByLabel('height').fill('24 1/0 in')
  await expect(page.locator('.figures [role="alert"]')).toBeVisible()
  await page.getByLabel('height').fill('63,5 cm')
  await page.getByLabel('width').fill('36 in')
  await page.getByRole('button', { name: 'Add this size' }).click()
  await expect.poll(async () => (await get(page, host, id)).size).toMatchObject({ height: 635, width: 914.4 })
})

test('D-rings typed on the drawing from the back: the marks follow, left and right changed over', async ({
  page,
  host,
}) => {
  await sit(page, host)
  const id = await made(page, host)
  await show(page, id)
  await page.getByRole('button', { name: 'D-rings' }).click()
  // The side is asked for; nothing can be typed before it is said.
  await expect(page.getByLabel('Drop of the left ring, on the drawing')).toHaveCount(0)
  await page.getByRole('button', { name: 'from the back' }).click()
  await page.getByLabel('Drop of the left ring, on the drawing').fill('90')
  await page.getByLabel('Inset of the left ring, on the drawing').fill('100')
  await page.getByLabel('Drop of the right ring', { exact: true }).fill('3 1/2 in')
  await page.getByLabel('Inset of the right ring', { exact: true }).fill('7 cm')
  // Seen from the front the ring measured on the left of the back is on the right: 900 − 100 = 800.
  await expect.poll(() => bearing(page, 'left')).toEqual(['70', '89'])
  await expect.poll(() => bearing(page, 'right')).toEqual(['800', '90'])
  await page.getByRole('button', { name: 'from the front' }).click()
  await expect.poll(() => bearing(page, 'left')).toEqual(['100', '90'])
  await page.getByRole('button', { name: 'from the back' }).click()
  await page.getByRole('button', { name: 'Record the back' }).click()
  await expect
    .poll(async () => (await get(page, host, id)).backs[0])
    .toMatchObject({
      method: 'd-rings',
      seenFrom: 'back',
      data: { left: { drop: 90, inset: 100 }, right: { drop: 88.9, inset: 70 } },
    })

  // A second record is a new row; the first is kept below.
  await page.getByLabel('Drop of the left ring', { exact: true }).fill('95')
  await page.getByRole('button', { name: 'Record the back' }).click()
  await expect(page.getByText('One older record of the back')).toBeVisible()

  // What the geometry refuses stands at its field.
  await page.getByLabel('Drop of the left ring', { exact: true }).fill('700')
  await expect(page.locator('.form').getByText('The drop is longer than the work is high')).toBeVisible()
  await page.getByLabel('Drop of the left ring', { exact: true }).fill('nine')
  await expect(page.locator('.form').getByText('does not start with a number')).toBeVisible()
})

test('a weight of nothing and a drop below the work say what to measure again, and nothing is kept', async ({
  page,
  host,
}) => {
  await sit(page, host)
  const id = await made(page, host)
  await show(page, id)
  const before = await get(page, host, id)
  const weight = page.getByRole('region', { name: 'Weight' })
  await weight.getByRole('textbox', { name: 'A new weight' }).fill('0 kg')
  await expect(weight.getByRole('alert')).toContainText('A work weighs more than 0. Weigh it again.')
  await expect(weight.getByRole('button', { name: 'add', exact: true })).toBeDisabled()
  await page.getByRole('button', { name: 'D-rings' }).first().click()
  await page.getByRole('button', { name: 'from the front' }).click()
  await page.getByLabel('Drop of the left ring', { exact: true }).fill('7000')
  await page.getByLabel('Drop of the right ring', { exact: true }).fill('90')
  await page.getByLabel('Inset of the left ring', { exact: true }).fill('70')
  await page.getByLabel('Inset of the right ring', { exact: true }).fill('70')
  await expect(
    page.locator('.form').getByText(/longer than the work is high\. Measure from the top edge/),
  ).toBeVisible()
  const after = await get(page, host, id)
  expect([after.masses, after.backs]).toEqual([before.masses, before.backs])
})

test('a wire measured by one finger: its drop on two hooks, and what the finger would have done', async ({
  page,
  host,
}) => {
  await sit(page, host)
  const id = await made(page, host)
  await show(page, id)
  await page.getByRole('button', { name: 'Wire' }).click()
  await page.getByRole('button', { name: 'from the back' }).click()
  const fill = (label: string, text: string) => page.getByLabel(label, { exact: true }).fill(text)
  await fill('Drop of the left ring', '180')
  await fill('Drop of the right ring', '180')
  await fill('Between the rings', '500')
  await fill('Drop of the wire, pulled up', '78')
  await fill('Between the two fingers', '0')
  await page.getByLabel('try hooks').fill('200')
  // Derived in the design: S 500, d0 180, one finger 78 gives L 540.0 and 100.0 on hooks 200 apart, 22 too high.
  await expect.poll(() => bearing(page, 'left')).toEqual(['350', '100'])
  await expect(page.getByText('would have hung it 22 mm too high')).toBeVisible()
  await page.getByLabel('try hooks').fill('600')
  await expect(page.getByText('The hooks must be closer together than the rings')).toBeVisible()
  await page.getByLabel('try hooks').fill('')
  await page.getByLabel('The wire was measured').selectOption('length')
  await fill('Length of the wire', '540')
  await page.getByRole('button', { name: 'Record the back' }).click()
  await expect
    .poll(async () => (await get(page, host, id)).backs[0]?.data)
    .toEqual({
      left: { drop: 180 },
      right: { drop: 180 },
      spacing: 500,
      wire: { by: 'length', length: 540 },
    })
})

/** A picture of one colour as PNG (W3C PNG, third edition): signature, IHDR, IDAT, IEND. */
function png(width: number, height: number): Buffer {
  const crcOf = (bytes: Buffer) => {
    let crc = ~0
    for (const byte of bytes) {
      crc ^= byte
      for (let bit = 0; bit < 8; bit += 1) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0)
    }
    return ~crc >>> 0
  }
  const chunk = (type: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(type), data])
    const out = Buffer.alloc(body.length + 8)
    out.writeUInt32BE(data.length, 0)
    body.copy(out, 4)
    out.writeUInt32BE(crcOf(body), body.length + 4)
    return out
  }
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width, 0)
  head.writeUInt32BE(height, 4)
  head.set([8, 2, 0, 0, 0], 8)
  const line = Buffer.alloc(1 + width * 3, 120)
  line[0] = 0
  const data = deflateSync(Buffer.concat(Array.from({ length: height }, () => line)))
  return Buffer.concat([
    Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]),
    chunk('IHDR', head),
    chunk('IDAT', data),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

async function drop(page: Page, name: string, type: string, bytes: Buffer): Promise<void> {
  await page.evaluate(
    ([file, mime, coded]) => {
      const data = new DataTransfer()
      data.items.add(new File([Uint8Array.from(atob(coded), sign => sign.charCodeAt(0))], file, { type: mime }))
      document
        .querySelector('article')
        ?.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }))
    },
    [name, type, bytes.toString('base64')] as const,
  )
}

test('a picture dropped on the page shows as thumbnail; a document is attached and taken away', async ({
  page,
  host,
}) => {
  await sit(page, host)
  const id = await made(page, host)
  await show(page, id)
  await drop(page, 'front.png', 'image/png', png(320, 200))
  const image = page.getByAltText('Slack water, front.png')
  await expect(image).toBeVisible()
  await expect
    .poll(() => image.evaluate(node => (node instanceof HTMLImageElement ? node.naturalWidth : 0)))
    .toBeGreaterThan(100)

  await drop(page, 'broken.png', 'image/png', Buffer.from('no picture at all'))
  // Kept as everything that is brought, and said to be no picture that can be shown.
  await expect(page.getByText('▲ broken.png is kept, but can’t be shown here.')).toBeVisible()
  await page.getByRole('button', { name: 'Take off the picture broken.png' }).click()

  await drop(page, 'loan-form.txt', 'text/plain', Buffer.from('signed'))
  const document = page.getByRole('button', { name: 'loan-form.txt', exact: true })
  const [taken] = await Promise.all([page.waitForEvent('download'), document.click()])
  expect(taken.suggestedFilename()).toBe('loan-form.txt')

  await page.getByRole('button', { name: 'Take off the picture front.png' }).click()
  await expect.poll(async () => (await get(page, host, id)).pictures).toEqual([])
  await page.getByRole('button', { name: 'Take off the document loan-form.txt' }).click()
  await expect.poll(async () => (await get(page, host, id)).documents).toEqual([])
})

test('a statement of several parts and a weight is one edit, and one undo takes all of it back', async ({
  page,
  host,
}) => {
  await sit(page, host)
  const id = await made(page, host)
  await show(page, id)
  await page.getByRole('button', { name: 'add a size' }).click()
  await page.getByLabel('The size as written').fill('image 24 x 30 cm; framed 40 x 50 cm; 4 kg')
  await expect(page.locator('form .main')).toHaveText(['240 × 300', '400 × 500', /4/])
  await page.getByRole('button', { name: 'Add these sizes' }).click()
  await expect.poll(async () => (await get(page, host, id)).sizes.length).toBe(3)
  expect((await get(page, host, id)).mass).toBe(4)
  await page.getByRole('heading', { name: 'Facts' }).click()
  await page.locator('body').press('Control+z')
  await expect.poll(async () => (await get(page, host, id)).sizes.length).toBe(1)
  expect((await get(page, host, id)).mass).toBeNull()
  await page.locator('body').press('Control+Shift+z')
  await expect.poll(async () => (await get(page, host, id)).sizes.length).toBe(3)
})

test('a difference from the list is told in the unit of the day', async ({ page, host }) => {
  await sit(page, host)
  const id = await made(page, host)
  const size = { work: id, part: 'framed', height: 640, width: 952, raw: '', kind: 'measured' }
  await host.call(page, 'work.addSize', size)
  await show(page, id)
  const finding = page.locator('[data-finding="differs-from-list"]')
  await expect(finding).toContainText('Measured 52 mm wider than listed')
  await page.getByRole('heading', { name: 'Facts' }).click()
  await page.keyboard.press('u')
  // 52 mm are 2.047 in: 2 1/16 in to the nearest sixteenth.
  await expect(finding).toContainText('Measured 2 1/16 in wider than listed')
})

test('a picture is pasted, and pasting into a field stays text', async ({ page, host }) => {
  await sit(page, host)
  const id = await made(page, host)
  await show(page, id)
  const paste = (selector: string) =>
    page.evaluate(
      ([where, coded]) => {
        const data = new DataTransfer()
        const bytes = Uint8Array.from(atob(coded), sign => sign.charCodeAt(0))
        data.items.add(new File([bytes], 'pasted.png', { type: 'image/png' }))
        document
          .querySelector(where)
          ?.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }))
      },
      [selector, png(300, 220).toString('base64')] as const,
    )
  await paste('article input')
  await paste('article h2')
  await expect(page.getByAltText('Slack water, pasted.png')).toBeVisible()
  expect((await get(page, host, id)).pictures).toHaveLength(1)
})

test('a lender is named and chosen; giving up leaves what was', async ({ page, host }) => {
  await sit(page, host)
  const id = await made(page, host)
  await show(page, id)
  const lender = page.getByRole('combobox', { name: 'Lender' })
  await lender.selectOption({ label: 'a new lender …' })
  const name = page.getByLabel('Name of the new lender')
  await expect(name).toBeFocused()
  await name.press('Escape')
  await expect(name).toHaveCount(0)
  await expect(lender.locator('option:checked')).toHaveText('none, ours')
  await lender.selectOption({ label: 'a new lender …' })
  await name.fill('Ketil Foundry')
  await name.press('Enter')
  await expect(lender.locator('option:checked')).toHaveText('Ketil Foundry')
  await expect.poll(async () => (await get(page, host, id)).lenderName).toBe('Ketil Foundry')
  await lender.selectOption({ label: 'none, ours' })
  await expect.poll(async () => (await get(page, host, id)).lenderName).toBe('')

  // One act is one undo: after the choice of none, the new lender and the choice of it go together.
  await host.call(page, 'edit.undo', {})
  expect((await get(page, host, id)).lenderName).toBe('Ketil Foundry')
  await host.call(page, 'edit.undo', {})
  expect((await get(page, host, id)).lenderName).toBe('')
  const { parties } = (await host.call(page, 'party.list', {})) as { parties: { name: string }[] }
  expect(parties.map(party => party.name)).not.toContain('Ketil Foundry')
  await expect(lender.locator('option:checked')).toHaveText('none, ours')
})

test('numbers are added, corrected and taken off', async ({ page, host }) => {
  await sit(page, host)
  const id = await made(page, host)
  await show(page, id)
  const numbers = async () => (await get(page, host, id)).numbers.map(number => `${number.kind} ${number.text}`)
  await page.getByLabel('Kind of the new number').selectOption('loan')
  await page.getByLabel('A new number').fill('L 12')
  await page.getByLabel('A new number').press('Enter')
  await expect.poll(numbers).toEqual(['loan L 12'])
  await expect(page.getByLabel('A new number')).toHaveValue('')
  const field = page.getByRole('textbox', { name: 'Number, loan', exact: true })
  await field.fill('')
  await field.press('Enter')
  await expect(page.getByText('A number can’t be empty')).toBeVisible()
  await field.fill('L 21')
  await field.press('Enter')
  await expect.poll(numbers).toEqual(['loan L 21'])
  await page.getByRole('button', { name: 'Take off the number L 21' }).click()
  await expect.poll(numbers).toEqual([])
})

test('weights are kept apart: weighed over listed, unless a person chooses', async ({ page, host }) => {
  await sit(page, host)
  const id = await made(page, host)
  await show(page, id)
  const weigh = async (text: string, kind: string) => {
    await page.getByLabel('How the weight was come by').selectOption(kind)
    await page.getByLabel('A new weight').fill(text)
    await page.getByLabel('A new weight').press('Enter')
  }
  await weigh('heavy', 'measured')
  await expect(page.getByText('▲ “heavy”')).toBeVisible()
  await weigh('14 kg', 'measured')
  await expect.poll(async () => (await get(page, host, id)).mass).toBe(14)
  // 30 lb of 0.45359237 kg, the international pound.
  await weigh('30 lb', 'listed')
  await expect.poll(async () => (await get(page, host, id)).masses.length).toBe(2)
  expect((await get(page, host, id)).mass).toBe(14)
  await page.getByRole('button', { name: /^choose this: .*30 lb/ }).click()
  await expect.poll(async () => (await get(page, host, id)).mass).toBeCloseTo(13.6077711, 6)
  await page.getByRole('region', { name: 'Weight' }).getByRole('button', { name: 'let the rule choose' }).click()
  await expect.poll(async () => (await get(page, host, id)).mass).toBe(14)
})

test('nails on a stretcher bar keep clear of braces; a wrong brace is told at its own line', async ({ page, host }) => {
  await sit(page, host)
  const id = await made(page, host)
  await show(page, id)
  await page.getByRole('button', { name: 'Stretcher bar' }).click()
  await page.getByRole('button', { name: 'from the back' }).click()
  await page.getByLabel('Bar at the left nail', { exact: true }).fill('45')
  await page.getByLabel('Bar at the right nail', { exact: true }).fill('45')
  // A third of 900 (common practice, no source).
  await expect.poll(() => bearing(page, 'left')).toEqual(['300', '45'])
  await page.getByRole('button', { name: 'add one' }).click()
  await page.getByLabel('Brace 1 from').fill('280')
  await page.getByLabel('Brace 1 to').fill('330')
  // Counted from the left of the back, so from 570 to 620 seen from the front: 10 mm clear of it is 630.
  await expect.poll(() => bearing(page, 'right')).toEqual(['630', '45'])
  await page.getByRole('button', { name: 'add one' }).click()
  await page.getByLabel('Brace 2 from').fill('500')
  await page.getByLabel('Brace 2 to').fill('480')
  const told = page.locator('.form [role="alert"]')
  await expect(told).toHaveText(/A brace must end after it begins/)
  expect(await told.evaluate(node => node.previousElementSibling?.textContent)).toContain('brace 2')
  await page.getByRole('button', { name: 'drop the last' }).click()
  await page.getByRole('button', { name: 'Record the back' }).click()
  await expect
    .poll(async () => (await get(page, host, id)).backs[0])
    .toMatchObject({
      method: 'stretcher-bar',
      seenFrom: 'back',
      data: { left: { bar: 45 }, right: { bar: 45 }, ranges: [{ from: 280, to: 330 }] },
    })
})

test('a work that stands in a show is not removed, and says why; the next one is a key away', async ({
  page,
  host,
}) => {
  await sit(page, host)
  const { works } = (await host.call(page, 'work.list', { limit: 100 })) as { works: readonly Line[] }
  const first = works.find(work => work.method === 'd-rings')
  if (first === undefined) throw new Error('the demo has no work on D-rings')
  await show(page, first.id)
  await page.getByRole('button', { name: 'remove from the catalogue' }).click()
  await page.getByRole('button', { name: 'remove it' }).click()
  await expect(page.locator('.acts + .settle, p.settle[role="alert"]').first()).toBeVisible()
  expect((await get(page, host, first.id)).facts.title).toBe(first.title)
  await page.keyboard.press('n')
  await expect.poll(() => page.url()).not.toContain(first.id)
  await expect(page.getByLabel('Title')).not.toHaveValue(first.title)
  await page.keyboard.press('p')
  await expect.poll(() => page.url()).toContain(first.id)
  await page.getByRole('button', { name: 'duplicate' }).click()
  await expect.poll(() => page.url()).not.toContain(first.id)
  await expect(page.getByLabel('Title')).toHaveValue(first.title)
})

test('its parts stand in a line above it: one leads to each, keys walk them, and a movement begins there', async ({
  page,
  host,
}) => {
  await sit(page, host)
  const id = await made(page, host)
  await show(page, id)
  const line = page.getByRole('navigation', { name: 'Parts of this page' })
  const here = line.locator('[aria-current]')
  await expect(here).toHaveText('Facts')
  await line.getByRole('button', { name: 'Where it was' }).click()
  const heading = page.getByRole('heading', { name: 'Where it was' })
  await expect(heading).toBeFocused()
  await expect(heading).toBeInViewport()
  await expect(here).toHaveText('Where it was')
  await page.keyboard.press(']')
  await expect(here).toHaveText('Condition')
  await page.keyboard.press('[')
  await expect(here).toHaveText('Where it was')
  await page.locator('main').evaluate(main => main.scrollTo(0, 0))
  await expect(here).toHaveText('Facts')
  await page.locator('main').evaluate(main => main.scrollTo(0, main.scrollHeight))
  await expect(here).toHaveText('What was done to it')

  await page.getByRole('link', { name: 'record a movement' }).click()
  const form = page.getByRole('form', { name: 'Record a movement' })
  await expect(form).toContainText('Slack water')
  await form.getByRole('button', { name: 'not now' }).click()
  await expect(form).toBeHidden()
})

test('what a work is known by is folded while nobody has said it, is written in place and found on the checklist', async ({
  page,
  host,
}) => {
  await sit(page, host)
  const id = await made(page, host)
  await show(page, id)
  const inscriptions = page.getByRole('textbox', { name: 'Inscriptions' })
  await expect(inscriptions).toBeHidden()
  await page.getByRole('heading', { name: 'Identification' }).click()
  await inscriptions.fill('Stamped “Ebbing 1904” behind')
  await inscriptions.press('Control+Enter')
  const origin = page.getByRole('textbox', { name: 'Origin' })
  await origin.fill('Tamble')
  await origin.press('Enter')
  const facts = async () => (await get(page, host, id)).facts as unknown as Record<string, string>
  await expect.poll(async () => (await facts()).placeOfOrigin).toBe('Tamble')
  expect((await facts()).inscriptions).toBe('Stamped “Ebbing 1904” behind')
  // Emptied, the part stays open under the hand.
  await page.getByRole('heading', { name: 'Facts' }).click()
  await page.locator('body').press('Control+z')
  await expect(origin).toHaveValue('')
  await expect(inscriptions).toHaveValue('Stamped “Ebbing 1904” behind')
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  await page.getByRole('heading', { name: 'What was done to it' }).click()
  await expect(page.getByText('inscriptions and marks from “nothing” to “Stamped “Ebbing 1904” behind”')).toBeVisible()
  await page.getByRole('link', { name: 'checklist', exact: true }).first().click()
  // A jar of the demo, by what is scratched into its foot.
  await page.getByLabel('Type to filter').fill('scratched foot')
  await expect(page.getByRole('grid')).toHaveAttribute('aria-rowcount', '2')
  await expect(page.getByRole('grid')).toContainText('Dye jar with two lugs')
})

test('the page is free of barriers, light and dark, wide and narrow', async ({ page, host }) => {
  await sit(page, host)
  const { works } = (await host.call(page, 'work.list', { limit: 100 })) as { works: readonly Line[] }
  const wired = works.find(work => work.method === 'wire')
  if (wired === undefined) throw new Error('the demo has no work on a wire')
  await show(page, wired.id)
  await page.getByRole('button', { name: 'add a size' }).click()
  await page.getByLabel('The size as written').fill('24 x 36')
  for (const [colorScheme, width] of [
    ['light', 1440],
    ['dark', 1440],
    ['light', 900],
  ] as const) {
    await page.emulateMedia({ colorScheme })
    await page.setViewportSize({ width, height: width === 900 ? 700 : 900 })
    const { violations } = await new AxeBuilder({ page }).analyze()
    expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([])
  }
})
