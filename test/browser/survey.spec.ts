/**
 * A room surveyed with a tape from the keyboard alone: measures typed by the letters of their corners, the suspect named
 * in words and on the plan, put right; a wall split at a number and joined again; a room copied. Light and dark, narrow.
 */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, type RunningHost, test } from './host.ts'

const long = 9140
const wide = 5200
/** By Pythagoras. */
const across = Math.round(Math.hypot(long, wide))

interface Measure {
  readonly kind: string
  readonly from: number
  readonly to: number
  readonly value: number
  readonly used: boolean
}

/** An oblong room of 9 140 by 5 200 in a catalogue of its own, on show; gives its id. */
async function oblong(page: Page, host: RunningHost): Promise<string> {
  await host.open(page, '#/rooms')
  const walls = [long, wide, long, wide].map((length, at) => ({ length, name: ['north', 'east', 'south', 'west'][at] }))
  const { id } = (await host.call(page, 'room.add', { name: 'Annex', height: 3200, walls })) as { id: string } // the answer of that name
  await host.open(page, `#/rooms/${id}`)
  await expect(page.getByRole('button', { name: 'what was measured' })).toBeVisible()
  return id
}

async function measures(page: Page, host: RunningHost, room: string): Promise<readonly Measure[]> {
  return ((await host.call(page, 'survey.get', { room })) as { measures: Measure[] }).measures // the answer of that name
}

const section = (page: Page) => page.getByRole('region', { name: 'What was measured of Annex' })

test('diagonals typed by letters close a room; the one misread is named, on the plan too, and put right', async ({
  page,
  emptyHost,
}) => {
  const room = await oblong(page, emptyHost)
  await page.keyboard.press('m')
  await expect(section(page)).toContainText('Measure A–C next; it fixes the outline.')
  await expect(section(page).getByRole('textbox', { name: 'between' })).toBeFocused()
  // Letters and figure in one go, then each in its field; Enter leads on.
  await page.keyboard.type(`ac ${across}`)
  await page.keyboard.press('Enter')
  await expect(section(page)).toContainText('Measure B–D next; it checks what nothing checks yet.')
  await expect(section(page).getByRole('textbox', { name: 'between' })).toBeFocused()
  await page.keyboard.type('bd')
  await page.keyboard.press('Enter')
  await expect(section(page).getByRole('textbox', { name: 'measured', exact: true })).toBeFocused()
  await page.keyboard.type(`${across + 340}`)
  await page.keyboard.press('Enter')
  await expect(section(page).getByRole('status').first()).toContainText(
    /The measures fail to close by 34\d mm\. B–D was read 34\d mm long/,
  )
  const row = section(page).getByRole('row', { name: /B–D/ })
  await expect(row).toContainText(/▲ read 34\d mm long/)
  await expect(page.getByRole('group', { name: 'Plan of Annex' })).toContainText(/B–D, read 34\d mm long/)
  await expect(page.getByRole('navigation', { name: 'Rooms' })).toContainText('outline to settle')

  await row.getByRole('textbox', { name: 'B–D, measured' }).fill(`${across}`)
  await page.keyboard.press('Enter')
  await expect(section(page).getByRole('status').first()).toContainText(/^● The measures close (exactly|within [1-9])/)
  await expect(row).not.toContainText('▲')
  expect((await measures(page, emptyHost, room)).filter(one => one.kind === 'diagonal').map(one => one.value)).toEqual([
    across,
    across,
  ])

  // One that is left out stays in the table and counts no more.
  await row.getByRole('checkbox').uncheck()
  await expect(section(page)).toContainText('Measure B–D next')
  await page.keyboard.press('Control+z')
  await expect(row.getByRole('checkbox')).toBeChecked()
})

test('what cannot be read says which piece and writes nothing', async ({ page, emptyHost }) => {
  const room = await oblong(page, emptyHost)
  await page.keyboard.press('m')
  for (const [typed, says] of [
    ['ae 4000', '“e”: The corners of this room are A to D.'],
    ['aa 4000', 'A length runs between two corners.'],
    ['ac four', 'four'],
    ['c 400', 'the angle of a corner lies between'],
  ] as const) {
    await section(page).getByRole('textbox', { name: 'between' }).fill(typed)
    await page.keyboard.press('Enter')
    await expect(section(page).getByRole('alert')).toContainText(says)
  }
  expect((await measures(page, emptyHost, room)).length).toBe(4)
})

test('a wall is split at a number and joined with the next, by keyboard', async ({ page, emptyHost }) => {
  const room = await oblong(page, emptyHost)
  const { rooms } = (await emptyHost.call(page, 'room.list', {})) as { rooms: { walls: { id: string }[] }[] } // the answer of that name
  await emptyHost.call(page, 'opening.add', {
    wall: rooms[0]?.walls[0]?.id,
    kind: 'door',
    x: 3000,
    y: 0,
    width: 1000,
    height: 2100,
  })
  const walls = page.getByRole('region', { name: 'Walls of Annex' })
  await walls.getByRole('button', { name: '1 north' }).press('Enter')
  await page.getByRole('button', { name: 'split here…' }).press('Enter')
  await expect(page.getByRole('form', { name: 'Split north' }).getByRole('textbox')).toBeFocused()
  await page.keyboard.type('3500')
  await page.keyboard.press('Enter')
  await expect(page.getByText(/the door is in the way; it reaches from 3.000 mm to 4.000 mm/)).toBeVisible()
  await page.getByRole('form', { name: 'Split north' }).getByRole('textbox').fill('4,5 m')
  await page.keyboard.press('Enter')
  await expect(walls.getByRole('row')).toHaveCount(1 + 5)
  await expect(walls.getByRole('textbox', { name: 'north, right part, length' })).toHaveValue(/4.640/)
  await page.getByRole('button', { name: /^join with the next/ }).press('Enter')
  await expect(walls.getByRole('row')).toHaveCount(1 + 4)
  await expect(walls.getByRole('textbox', { name: 'north, length' })).toHaveValue(/9.140/)
  expect(await measures(page, emptyHost, room)).toHaveLength(4)
})

test('a room is copied beside itself and shown', async ({ page, emptyHost }) => {
  await oblong(page, emptyHost)
  await page.getByRole('button', { name: 'copy this room' }).click()
  await expect(page.getByRole('group', { name: 'Plan of Annex, copy' })).toBeVisible()
  await expect(page.getByRole('navigation', { name: 'Rooms' }).getByRole('button')).toHaveCount(2)
})

for (const theme of ['light', 'dark'] as const) {
  for (const width of [900, 1440]) {
    test(`the section stands the checks of accessibility, ${theme}, ${width} wide`, async ({ page, emptyHost }) => {
      await page.setViewportSize({ width, height: 1000 })
      await page.emulateMedia({ colorScheme: theme })
      await oblong(page, emptyHost)
      await page.keyboard.press('m')
      await page.keyboard.type(`bd ${across + 340}`)
      await page.keyboard.press('Enter')
      await expect(section(page).getByRole('row', { name: /B–D/ })).toBeVisible()
      await page.keyboard.type(`ac ${across}`)
      await page.keyboard.press('Enter')
      await expect(section(page).getByRole('row', { name: /A–C/ })).toBeVisible()
      await expect(section(page)).toContainText('fail to close')
      const { violations } = await new AxeBuilder({ page }).analyze()
      expect(violations.map(one => `${one.id}: ${one.nodes.map(node => node.target).join(', ')}`)).toEqual([])
      const beyond = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
      expect(beyond).toBeLessThanOrEqual(0)
    })
  }
}
