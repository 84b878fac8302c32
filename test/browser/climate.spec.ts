/** The air of a room: a logger's file brought in after its questions, zoomed, read out, held to a limit, withdrawn. */
import AxeBuilder from '@axe-core/playwright'
import { expect, test } from './host.ts'

const patient = { timeout: 40_000 } as const

/** Six days of a reading every ten minutes; an evening of it damp. Days and months could be either way round. */
function logged(): Buffer {
  const rows = ['Logger 12', 'Date;Time;Temperature °C;Relative humidity %']
  for (let i = 0; i < 6 * 144; i++) {
    const time = `${String(Math.floor((i % 144) / 6)).padStart(2, '0')}:${(i % 6) * 10 || '00'}`
    const damp = i >= 420 && i < 432
    rows.push(`0${1 + Math.floor(i / 144)}/03/2031;${time};20,${i % 7};${damp ? '66,0' : '50,5'}`)
  }
  rows.push('07/03/2031;00:00;20,0;900')
  return Buffer.from(rows.join('\r\n'))
}

test('a logger’s file is asked about, drawn, read out and withdrawn', async ({ page, host }) => {
  await host.open(page, '#/climate')
  await expect(page.getByRole('region', { name: 'What Logger 3 says' })).toContainText('told as', patient)
  await page.getByLabel('the air of').selectOption({ label: '2 Long Gallery, nothing read' })
  await expect(page.getByText('Nothing is known of the air of')).toBeVisible(patient)
  const choose = page.getByLabel('a logger’s file', { exact: true })

  await choose.setInputFiles({ name: 'rubbish.csv', mimeType: 'text/csv', buffer: Buffer.from('a,b\nc,d\n') })
  await expect(page.getByRole('alert')).toContainText('no logger’s file that can be read', patient)
  await choose.setInputFiles({ name: 'room.csv', mimeType: 'text/csv', buffer: logged() })
  const file = page.getByRole('region', { name: 'A logger’s file' })
  await expect(file).toContainText('could be day and month or month and day', patient)
  await expect(file.getByRole('button', { name: 'bring it in' })).toBeDisabled()
  await file.getByLabel('dates have').selectOption('day first')
  await file.getByLabel('the logger’s clock').fill('+00:00')
  await file.getByLabel('logger', { exact: true }).fill('L12')
  await expect(file).toContainText('864 readings', patient)
  await expect(file).toContainText('a relative humidity of 900 % cannot be')
  await file.getByRole('button', { name: 'bring it in' }).click()
  await expect(page.getByRole('alert')).toContainText('A record has a name')
  await page.getByRole('form', { name: 'Who is at the desk' }).getByRole('button').first().click()
  await file.getByRole('button', { name: 'bring it in' }).click()

  const drawing = page.getByRole('application', { name: 'Relative humidity and temperature over time' })
  await expect(drawing).toBeVisible(patient)
  const told = page.getByRole('region', { name: 'What L12 says' })
  await expect(told).toContainText('Beyond a limit for 2 h of 6 days', patient)
  await expect(told.getByRole('row', { name: /too damp/ })).toContainText('66.0 %')
  await expect(drawing.locator('rect.beyond')).toHaveCount(1)

  await told.getByRole('button', { name: /^show too damp/ }).click()
  await expect(page.locator('p.read')).toContainText('66.0 %')
  await expect(told).not.toContainText('of 6 days', patient)
  await drawing.focus()
  await page.keyboard.press('ArrowLeft')
  await expect(page.locator('p.read')).toContainText('50.5 %')
  await page.keyboard.press('0')
  await expect(told).toContainText('of 6 days', patient)

  await page.getByLabel('not damper than').fill('70')
  await page.keyboard.press('Enter')
  await expect(told).toContainText('Never beyond a limit', patient)
  await page.getByLabel('not damper than').fill('30')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('alert')).toContainText('is not below the highest')
  await page.keyboard.press('Escape')
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme })
    const found = (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])
    expect(found).toEqual([])
  }

  await page.getByRole('button', { name: 'withdraw' }).click()
  await page.getByLabel('why', { exact: true }).last().fill('of another room')
  await page.keyboard.press('Enter')
  await expect(page.getByText('of another room')).toBeVisible(patient)
  await expect(drawing).toHaveCount(0)
})

test('lines carried while a hand zooms and shifts are drawn at rest as they are drawn afresh, and read out meanwhile', async ({
  page,
  host,
}) => {
  const drawing = page.getByRole('application', { name: 'Relative humidity and temperature over time' })
  const lines = drawing.locator('g.lines')
  /** As a person sees them: what is drawn, and where it is carried to. */
  const drawn = () =>
    lines.evaluateAll(all =>
      all.map(one => [one.getAttribute('transform'), ...[...one.children].map(path => path.getAttribute('d'))]),
    )
  const atRest = async () => {
    await expect.poll(async () => (await drawn()).every(([transform]) => !transform?.includes('scale'))).toBe(true)
    return drawn()
  }
  await host.open(page, '#/climate')
  await expect(page.getByRole('region', { name: 'What Logger 3 says' })).toContainText('told as', patient)
  await expect(lines).toHaveCount(2)
  const whole = await atRest()
  await drawing.focus()
  await page.keyboard.press('+')
  // The first frame of it carries what was drawn.
  await expect.poll(drawn).not.toEqual(whole)
  const nearer = await atRest()
  expect(nearer).not.toEqual(whole)
  await page.keyboard.press('0')
  await expect.poll(drawn).toEqual(whole)

  const box = await drawing.boundingBox()
  if (box === null) throw new Error('nothing is drawn')
  await page.mouse.move(box.x + box.width / 2, box.y + 90)
  const read = page.locator('p.read')
  const before = await read.textContent()
  for (const turn of [-300, -200, -250, 300, -150]) await page.mouse.wheel(0, turn)
  await page.mouse.wheel(40, 0)
  await expect.poll(() => read.textContent()).not.toBe(before)
  const shifted = await atRest()
  expect(shifted).not.toEqual(whole)
  await drawing.focus()
  await page.keyboard.press('0')
  await expect.poll(drawn).toEqual(whole)
  await page.mouse.move(4, 4)
  await page.keyboard.press('+')
  await expect.poll(drawn).toEqual(nearer)
})
