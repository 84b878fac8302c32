/** A plan from an architect, from a file dropped to rooms on the plan: looked at, chosen, taken in, taken back, taken out. */
import AxeBuilder from '@axe-core/playwright'
import sharp from 'sharp'
import type { Output } from '../../src/contract/contract.ts'
import { dxfOf, oneRoom, oneRoomWords } from '../contract/dxf-files.ts'
import { expect, test } from './host.ts'

async function drop(page: import('@playwright/test').Page, name: string, bytes: Uint8Array): Promise<void> {
  await page.evaluate(
    ([given, base64]) => {
      const data = new DataTransfer()
      data.items.add(new File([Uint8Array.from(atob(base64), sign => sign.charCodeAt(0))], given))
      document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }))
    },
    [name, Buffer.from(bytes).toString('base64')] as const,
  )
}

test('a drawing without a unit is asked about, its room taken in as drawn, and taken back by one undo', async ({
  page,
  emptyHost,
}) => {
  await emptyHost.open(page, '#/rooms')
  await drop(page, 'east.dxf', dxfOf(oneRoom, oneRoomWords, null))
  await expect(page.getByText('Say the unit first')).toBeVisible()
  await expect(page.getByRole('checkbox', { name: 'A-WALL' })).toBeChecked()
  await page.getByLabel('one unit of the drawing is').selectOption('mm')
  const name = page.getByRole('textbox', { name: 'name of 1' })
  await expect(name).toHaveValue('East Cabinet')
  await expect(page.getByRole('cell', { name: '20.0' })).toBeVisible()
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  // Nothing is written before it is taken.
  expect(await emptyHost.call(page, 'room.list', {})).toMatchObject({ rooms: [] })

  await name.fill('East Room')
  await name.press('Tab')
  await page.getByLabel('height of the walls').fill('3 200')
  await page.getByRole('button', { name: 'take 1 room' }).click()
  await expect(page.getByRole('heading', { name: 'East Room is taken in' })).toBeVisible()
  // As the contract says it.
  const { rooms } = (await emptyHost.call(page, 'plan.get', { exhibition: null })) as Output<'plan.get'>
  expect(rooms.map(room => [room.name, room.number, room.at !== null, room.area])).toEqual([
    ['East Room', '104', true, 20],
  ])
  expect(rooms[0]?.walls.map(wall => [wall.length, wall.thickness])).toEqual([
    [5000, 200],
    [4000, 200],
    [5000, 200],
    [4000, 200],
  ])
  await page.getByRole('button', { name: 'to the plan' }).click()
  await expect(page.getByRole('button', { name: /^East Room, 104/ })).toBeVisible()

  await page.getByRole('button', { name: 'take out', exact: true }).click()
  await page.getByRole('button', { name: 'DXF at full size' }).click()
  await expect(page.getByRole('link', { name: /plan\.dxf$/ })).toBeVisible()
  await page.keyboard.press('ControlOrMeta+z')
  await expect
    .poll(async () => ((await emptyHost.call(page, 'room.list', {})) as Output<'room.list'>).rooms.length)
    .toBe(0)
})

test('what is no drawing is refused in a sentence, and nothing is written', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/rooms')
  await drop(page, 'plan.dxf', new TextEncoder().encode('Dear Sir,\nhere is the plan.\n'))
  await expect(page.getByRole('alert')).toContainText('This is not a DXF drawing')
  await page.getByRole('button', { name: 'put it away' }).click()
  expect(await emptyHost.call(page, 'room.list', {})).toMatchObject({ rooms: [] })
})

test('a picture laid under the plan is scaled by two points that are shown on it', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/rooms')
  await emptyHost.call(page, 'room.add', {
    name: 'Hall',
    height: 3000,
    walls: [{ length: 6000 }, { length: 4000 }, { length: 6000 }, { length: 4000 }],
  })
  await expect(page.getByRole('button', { name: /^Hall/ }).first()).toBeVisible()
  await page.getByRole('button', { name: 'underlay', exact: true }).click()
  await page.getByLabel('a picture of a plan').setInputFiles({
    name: 'scan.png',
    mimeType: 'image/png',
    buffer: await sharp({ create: { width: 400, height: 300, channels: 3, background: '#ddd' } })
      .png()
      .toBuffer(),
  })
  await expect(page.getByText('Show the first of two points')).toBeVisible()
  const before = ((await emptyHost.call(page, 'underlay.list', {})) as Output<'underlay.list'>).underlays[0]
  const sheet = page.getByRole('application', { name: 'Show two points of the picture' })
  await sheet.click({ position: { x: 100, y: 100 } })
  await sheet.click({ position: { x: 300, y: 100 } })
  await page.getByLabel('they are apart').fill('2 000')
  await page.getByRole('button', { name: 'scale the picture' }).click()
  await expect(sheet).toBeHidden()
  await expect
    .poll(
      async () => ((await emptyHost.call(page, 'underlay.list', {})) as Output<'underlay.list'>).underlays[0]?.mmPerPx,
    )
    .not.toBe(before?.mmPerPx)
})
