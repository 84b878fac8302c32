/** Arranging by stacks and as a salon hang: looked at on the wall first, taken as one edit, undone as one. */
import type { Page } from '@playwright/test'
import { expect, goToWall, type RunningHost, sitDown, test } from './host.ts'

interface Placed {
  readonly placement: string
  readonly work: string
  readonly running: string
  readonly x: number
  readonly centreY: number
  readonly held: boolean
  readonly state: string
  readonly size: { readonly width: number; readonly height: number } | null
}
interface Facts {
  readonly wall: { readonly face: string; readonly length: number; readonly height: number }
  readonly works: readonly Placed[]
}
interface Box {
  readonly left: number
  readonly right: number
  readonly bottom: number
  readonly top: number
}

async function facts(page: Page, host: RunningHost, face: string): Promise<Facts> {
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as { exhibitions: readonly { id: string }[] }
  return (await host.call(page, 'wall.elevation', { exhibition: exhibitions[0]?.id, face })) as Facts
}

/** In front of the demo's long wall, with nothing selected. */
async function stand(page: Page, host: RunningHost): Promise<string> {
  await host.open(page)
  await sitDown(page)
  const hidden = page.getByText('I have read this')
  if (await hidden.count()) await hidden.click()
  return goToWall(page, 'Long Gallery, north wall')
}

function boxOf({ x, centreY, size }: Placed): Box {
  const [width, height] = [size?.width ?? 0, size?.height ?? 0]
  return { left: x - width / 2, right: x + width / 2, bottom: centreY - height / 2, top: centreY + height / 2 }
}

function apart(a: Box, b: Box): number {
  const dx = Math.max(b.left - a.right, a.left - b.right, 0)
  const dy = Math.max(b.bottom - a.top, a.bottom - b.top, 0)
  return Math.hypot(dx, dy)
}

async function type(page: Page, name: string, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name })
  await field.fill(text)
  await field.press('Enter')
}

test('two works are stacked on one axis, with the order they hang in, as one edit', async ({ page, host }) => {
  const face = await stand(page, host)
  const before = await facts(page, host, face)
  const [one, two] = [...before.works].sort((a, b) => a.x - b.x)
  if (one === undefined || two === undefined) throw new Error('the wall has no two works')
  await page.locator(`[data-placement="${one.placement}"]`).click()
  await page.locator(`[data-placement="${two.placement}"]`).click({ modifiers: ['Shift'] })
  await page.keyboard.press('a')
  await page.getByRole('radio', { name: 'one above the other' }).check()
  await type(page, 'Gap above each other', '4 in')
  await type(page, 'About the axis at', '2000')
  const order = page.getByRole('list', { name: 'In which order they hang' })
  await expect(order).toContainText(/Hang in this order: /)
  await expect(page.locator('.stood rect')).toHaveCount(2)
  expect((await facts(page, host, face)).works).toEqual(before.works)
  await page.getByRole('button', { name: 'Take it' }).click()
  const now = async (placement: string) => {
    const found = (await facts(page, host, face)).works.find(work => work.placement === placement)
    if (found === undefined) throw new Error('gone')
    return found
  }
  await expect.poll(async () => (await now(one.placement)).x).toBeCloseTo(2000, 6)
  const [a, b] = [await now(one.placement), await now(two.placement)]
  expect(b.x).toBeCloseTo(2000, 6)
  const [upper, lower] = a.centreY > b.centreY ? [boxOf(a), boxOf(b)] : [boxOf(b), boxOf(a)]
  expect(upper.bottom - lower.top).toBeCloseTo(101.6, 6)
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await facts(page, host, face)).works).toEqual(before.works)
})

test('a salon hang stands on the wall first, keeps its distance, leaves held works, is one edit', async ({
  page,
  host,
}) => {
  const face = await stand(page, host)
  const start = await facts(page, host, face)
  const [held] = [...start.works].sort((a, b) => b.x - a.x)
  if (held === undefined) throw new Error('the wall has no works')
  await page.locator(`[data-placement="${held.placement}"]`).click()
  await page.getByRole('button', { name: 'hold here' }).click()
  await expect(page.getByRole('button', { name: 'let go' })).toBeVisible()
  await page.keyboard.press('Escape')
  const before = await facts(page, host, face)
  await page.keyboard.press('a')
  await page.getByRole('radio', { name: 'salon hang' }).check()
  await type(page, 'Clear distance of any two', '80 mm')
  await expect(page.getByText(/Nearest two /)).toContainText('80')
  expect((await facts(page, host, face)).works).toEqual(before.works)
  await page.getByRole('button', { name: 'Take it' }).click()
  await expect.poll(async () => (await facts(page, host, face)).works).not.toEqual(before.works)
  const after = await facts(page, host, face)
  const boxes = after.works.map(boxOf)
  const gaps = boxes.flatMap((a, at) => boxes.slice(at + 1).map(b => apart(a, b)))
  expect(Math.min(...gaps)).toBeGreaterThanOrEqual(80 - 1e-6)
  for (const box of boxes) {
    expect(box.left).toBeGreaterThanOrEqual(0)
    expect(box.right).toBeLessThanOrEqual(after.wall.length)
    expect(box.top).toBeLessThanOrEqual(after.wall.height)
  }
  const stays = after.works.find(work => work.placement === held.placement)
  expect([stays?.x, stays?.centreY]).toEqual([held.x, held.centreY])
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await facts(page, host, face)).works).toEqual(before.works)
})

test('what does not fit says by how much, and one press takes what would', async ({ page, host }) => {
  const face = await stand(page, host)
  const { wall, works } = await facts(page, host, face)
  await page.keyboard.press('a')
  await page.getByRole('radio', { name: 'one fixed gap' }).check()
  await type(page, 'Gap', `${Math.round(wall.length / 2)} mm`)
  await expect(page.getByText(/is .* too long/).first()).toBeVisible()
  await expect(page.getByRole('button', { name: 'Take it' })).toBeDisabled()
  const cure = page.getByRole('list', { name: 'What would make it fit' }).getByRole('button', { name: /a gap of/ })
  await cure.click()
  await expect(page.getByRole('button', { name: 'Take it' })).toBeEnabled()
  const widths = works.reduce((sum, work) => sum + (work.size?.width ?? 0), 0)
  const most = (wall.length - widths) / (works.length - 1)
  const field = page.getByRole('textbox', { name: 'Gap', exact: true })
  expect(Number((await field.inputValue()).replaceAll(/[^\d.]/g, ''))).toBeCloseTo(most, -1)
})
