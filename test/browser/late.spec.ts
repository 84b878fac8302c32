/** A late change on a half-drilled wall: what it costs is said and drawn before it is taken, and undo takes it back. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, type RunningHost, test } from './host.ts'

interface Placed {
  readonly placement: string
  readonly entry: string
  readonly running: string
  readonly state: string
  readonly x: number
  readonly centreY: number
  readonly back: object | null
  readonly fixing: { readonly id: string } | null
  readonly size: { readonly width: number; readonly height: number } | null
}
interface Wall {
  readonly face: string
  readonly exhibition: string
  readonly works: readonly Placed[]
}
interface Mark {
  readonly placement: string
  readonly slot: string
}

/** Stands in front of the demo's long wall, somebody at the desk. */
async function stand(page: Page, host: RunningHost): Promise<Wall> {
  await host.open(page)
  await page.getByRole('button', { name: /coordinator/ }).click()
  const hidden = page.getByText('I have read this')
  if (await hidden.count()) await hidden.click()
  await page.getByRole('link', { name: /Long Gallery, north wall/ }).click()
  await expect(page.locator('[data-placement]').first()).toBeVisible()
  return wallNow(page, host)
}

async function wallNow(page: Page, host: RunningHost): Promise<Wall> {
  const face = decodeURIComponent(new URL(page.url()).hash.split('/')[2] ?? '')
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as { exhibitions: readonly { id: string }[] }
  const exhibition = exhibitions[0]?.id ?? ''
  const { works } = (await host.call(page, 'wall.elevation', { exhibition, face })) as { works: readonly Placed[] }
  return { face, exhibition, works: [...works].sort((a, b) => a.x - b.x) }
}

/** Drills every mark of some works, services looked for first; what has no marks yet is passed over. */
async function drill(page: Page, host: RunningHost, { exhibition, face }: Wall, works: readonly Placed[]) {
  const ids = new Set(works.map(work => work.placement))
  const found = (await host.call(page, 'mark.ofFace', { exhibition, face })) as { marks: readonly Mark[] }
  const marks = found.marks.filter(mark => ids.has(mark.placement)).map(({ placement, slot }) => ({ placement, slot }))
  expect(marks.length).toBeGreaterThan(0)
  await host.call(page, 'mark.services', { exhibition, face, marks, checked: true })
  await host.call(page, 'mark.set', { exhibition, face, marks, to: 'drilled' })
}

const select = async (page: Page, ...works: readonly (Placed | undefined)[]) => {
  for (const [at, work] of works.entries()) {
    await page.locator(`[data-placement="${work?.placement}"]`).focus()
    await page.keyboard.press(at === 0 ? 'Enter' : 'Shift+Enter')
  }
}
const ways = (page: Page) => page.getByRole('radiogroup', { name: 'Ways out, cheapest first' })
const panel = (page: Page) => page.getByRole('region', { name: 'Late change' })
const at = (wall: Wall, placement: string | undefined) => wall.works.find(work => work.placement === placement)

test('another frame: each way is drawn beside today, taken as one edit, and undo takes it back', async ({
  page,
  host,
}) => {
  const wall = await stand(page, host)
  const measured = wall.works.filter(work => work.back !== null && work.fixing !== null && work.size !== null)
  const [subject] = measured
  await drill(page, host, wall, measured.slice(0, Math.ceil(measured.length / 2)))
  await select(page, subject)
  await page.getByRole('button', { name: 'late change', exact: true }).click()
  const width = (subject?.size?.width ?? 0) + 52
  await panel(page)
    .getByLabel('Width now')
    .fill(`${width / 10} cm`)
  await expect(ways(page).getByRole('radio').first()).toBeChecked()
  await expect(page.locator('.late .ghost').first()).toBeAttached()
  await expect(ways(page)).toHaveAttribute('aria-busy', 'false')
  // The centre kept: rings 26 mm further out on both sides, so two holes left and two to drill.
  const centre = ways(page).getByText(/about the same centre/)
  await centre.click()
  await expect(panel(page).locator('label.chosen')).toContainText('2 new holes')
  await expect(panel(page).locator('label.chosen')).toContainText('2 dead holes')
  await expect(page.locator('.late .new')).toHaveCount(2)
  await expect(page.locator('.late .dead')).toHaveCount(2)
  await expect(page.locator('.late .gap').first()).toHaveText(/\d/)
  const ghost = page.locator(`.late .ghost[data-entry="${subject?.entry}"]`)
  const [box, today] = [
    await ghost.boundingBox(),
    await page.locator(`[data-placement="${subject?.placement}"] .outline`).boundingBox(),
  ]
  expect((box?.width ?? 0) / (today?.width ?? 1)).toBeCloseTo(width / (width - 52), 1)
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  await panel(page).getByRole('button', { name: 'Take it' }).click()
  await expect(panel(page)).toHaveCount(0)
  await expect.poll(async () => at(await wallNow(page, host), subject?.placement)?.size?.width).toBe(width)
  await page.keyboard.press('Control+z')
  await expect.poll(async () => at(await wallNow(page, host), subject?.placement)?.size?.width).toBe(width - 52)
})

test('two works change places; one picked on the wall is the second', async ({ page, host }) => {
  const wall = await stand(page, host)
  const [one, , other] = wall.works.filter(work => work.size !== null && work.state === 'planned')
  await select(page, one)
  await page.getByRole('button', { name: 'late change', exact: true }).click()
  await panel(page).getByLabel('two works change places').check()
  await select(page, other)
  await expect(ways(page).getByRole('radio').first()).toBeChecked()
  await expect(page.locator('.late .ghost')).not.toHaveCount(0)
  await expect(ways(page)).toHaveAttribute('aria-busy', 'false')
  await panel(page).getByRole('button', { name: 'Take it' }).click()
  await expect(panel(page)).toHaveCount(0)
  const after = await wallNow(page, host)
  expect(Math.sign((at(after, one?.placement)?.x ?? 0) - (at(after, other?.placement)?.x ?? 0))).toBe(1)
})

test('a work dropped leaves its gap or has it closed; printed sheets are named as untrue and listed so', async ({
  page,
  host,
}) => {
  const wall = await stand(page, host)
  await page.request.storageState()
  const printed = await page.evaluate(
    async ([exhibition, face]) => {
      const answered = await fetch('/call', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ name: 'sheet.wall', input: { exhibition, faces: [face] } }),
      })
      return answered.text()
    },
    [wall.exhibition, wall.face] as const,
  )
  expect(printed).not.toContain('refusal')
  const gone = wall.works.find(work => work.state === 'planned' && work.size !== null)
  await select(page, gone)
  await page.keyboard.press('l')
  await panel(page).getByLabel('it is not shown after all').check()
  await ways(page).getByText('Leave its place empty').click()
  await expect(page.locator('.late .gone')).toHaveCount(1)
  await expect(panel(page)).toContainText(/Printed sheets that become untrue: .*revision 1/)
  await expect(ways(page)).toHaveAttribute('aria-busy', 'false')
  await panel(page).getByRole('button', { name: 'Take it' }).click()
  await expect.poll(async () => at(await wallNow(page, host), gone?.placement)).toBe(undefined)
  await page.goto(new URL(`/#/papers/${wall.face}`, page.url()).href)
  await expect(page.getByText('▲ revision 1 is out of date')).toBeVisible()
})

test('keyboard only: a whole wall 2 inches lower, moved through with the arrow keys', async ({ page, host }) => {
  const wall = await stand(page, host)
  const free = wall.works.filter(work => work.state === 'planned')
  await page.keyboard.press('l')
  await expect(panel(page)).toBeVisible()
  if (!(await panel(page).getByLabel('everything lower or higher').isChecked()))
    await panel(page).getByLabel('everything lower or higher').focus()
  await page.keyboard.press('Tab')
  await panel(page).getByLabel('Length').focus()
  await page.keyboard.type('2 in')
  await expect(ways(page).getByRole('radio').first()).toBeChecked()
  await expect(ways(page)).toHaveAttribute('aria-busy', 'false')
  await page.keyboard.press('Enter')
  await expect(ways(page).getByRole('radio').first()).toBeFocused()
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('ArrowUp')
  await expect(ways(page).getByRole('radio').first()).toBeChecked()
  await expect(page.locator('.late .ghost')).not.toHaveCount(0)
  await page.keyboard.press('Enter')
  await expect(panel(page)).toHaveCount(0)
  const after = await wallNow(page, host)
  const lower = free.filter(work => Math.abs(work.centreY - 50.8 - (at(after, work.placement)?.centreY ?? 0)) < 0.01)
  expect(lower.length).toBeGreaterThan(0)
  await page.keyboard.press('Control+z')
  await expect
    .poll(async () => (await wallNow(page, host)).works.map(work => work.centreY))
    .toEqual(wall.works.map(work => work.centreY))
  // Escape leaves everything as it was.
  await page.keyboard.press('l')
  await page.keyboard.press('Escape')
  await expect(panel(page)).toHaveCount(0)
})

test('half a figure asks nothing, what cannot fit says why, and another hand’s change is followed', async ({
  page,
  host,
}) => {
  const wall = await stand(page, host)
  const subject = wall.works.find(work => work.size !== null && work.state === 'planned')
  await select(page, subject)
  await page.getByRole('button', { name: 'late change', exact: true }).click()
  const field = panel(page).getByLabel('Width now')
  await field.fill('wide')
  await expect(panel(page).getByRole('alert')).toBeVisible()
  await field.fill('90 m')
  await expect(panel(page).getByText(/Nothing fits with gaps of/)).toBeVisible()
  await expect(panel(page).getByRole('button', { name: 'Take it' })).toBeDisabled()
  await field.fill(String((subject?.size?.width ?? 0) + 10))
  await expect(ways(page).getByRole('radio').first()).toBeChecked()
  const before = wall.works.find(work => work !== subject && work.state === 'planned')
  await host.call(page, 'placement.remove', { placements: [before?.placement] })
  await expect(ways(page)).toHaveAttribute('aria-busy', 'false')
  await panel(page).getByRole('button', { name: 'Take it' }).click()
  await expect
    .poll(async () => at(await wallNow(page, host), subject?.placement)?.size?.width)
    .toBe((subject?.size?.width ?? 0) + 10)
})
