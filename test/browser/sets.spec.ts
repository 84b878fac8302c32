/** Sets in front of a wall: made of what is chosen, laid out otherwise, carried as one object, undone. */
import AxeBuilder from '@axe-core/playwright'
import type { Locator, Page } from '@playwright/test'
import { expect, type RunningHost, sitDown, test } from './host.ts'

interface Size {
  readonly width: number
  readonly height: number
}
interface Placed {
  readonly placement: string
  readonly title: string
  readonly x: number
  readonly centreY: number
  readonly state: string
  readonly held: boolean
  readonly size: Size | null
  readonly set: {
    readonly gapX: number
    readonly keeps: string
    readonly parts: readonly { readonly work: string; readonly title: string; readonly size: Size | null }[]
  } | null
}

async function stand(page: Page, host: RunningHost): Promise<void> {
  await host.open(page)
  await sitDown(page)
  const hidden = page.getByText('I have read this')
  if (await hidden.count()) await hidden.click()
}

async function worksOn(page: Page, host: RunningHost, face: string): Promise<readonly Placed[]> {
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as { exhibitions: readonly { id: string }[] }
  const { works } = (await host.call(page, 'wall.elevation', { exhibition: exhibitions[0]?.id, face })) as {
    works: readonly Placed[]
  }
  return [...works].sort((a, b) => a.x - b.x)
}

/** Stands in front of the first wall that such works are on. */
async function wallWith(page: Page, host: RunningHost, wanted: (works: readonly Placed[]) => boolean): Promise<string> {
  const { rooms } = (await host.call(page, 'room.list', {})) as {
    rooms: readonly { walls: readonly { face: string }[] }[]
  }
  for (const { face } of rooms.flatMap(room => room.walls)) {
    if (!wanted(await worksOn(page, host, face))) continue
    await page.goto(new URL(`/#/walls/${encodeURIComponent(face)}`, page.url()).href)
    await expect(page.locator('[data-placement]').first()).toBeVisible()
    return face
  }
  throw new Error('no such wall in the demo')
}

const shape = (page: Page, { placement }: Pick<Placed, 'placement'>) => page.locator(`[data-placement="${placement}"]`)

async function boxOf(of: Locator) {
  const box = await of.boundingBox()
  if (box === null) throw new Error('not on the screen')
  return box
}

/** Free works on one line, the first three of them of three widths: then gaps and centres cannot both stay equal. */
const threeUnlike = (works: readonly Placed[]) =>
  works.length > 3 &&
  works.every(work => work.set === null && work.state === 'planned' && !work.held) &&
  new Set(works.map(work => work.centreY)).size === 1 &&
  new Set(works.slice(0, 3).map(work => work.size?.width)).size === 3

test('by keyboard: three works become a set, what to keep is asked, its gap is typed in inches, two undos take it back', async ({
  page,
  host,
}) => {
  await stand(page, host)
  const face = await wallWith(page, host, threeUnlike)
  const before = await worksOn(page, host, face)
  const chosen = before.slice(0, 3)
  for (const [at, work] of chosen.entries()) {
    await shape(page, work).focus()
    await page.keyboard.press(at === 0 ? 'Enter' : 'Shift+Enter')
  }
  await page.getByRole('button', { name: 'make a set of these 3' }).focus()
  await page.keyboard.press('Enter')
  const asked = page.getByRole('group', { name: /What stays equal/ })
  const [a = 0, b = 0, c = 0] = chosen.map(work => work.size?.width ?? 0)
  // Centres as far apart as the closest two and 30 mm want.
  const apart = Math.max(a + b, b + c) / 2 + 30
  await expect(asked).toContainText(`centres ${Math.round(apart)} along`)
  await asked.getByRole('button', { name: 'keep centres' }).focus()
  await page.keyboard.press('Enter')
  const tag = page.getByRole('region', { name: 'Set', exact: true })
  await expect(tag.getByRole('heading', { name: 'Set of 3' })).toBeVisible()
  const theSet = async () => (await worksOn(page, host, face)).find(work => work.set !== null)
  const made = await theSet()
  expect(made?.set).toMatchObject({ keeps: 'centres', gapX: 30 })
  expect(made?.set?.parts.map(part => part.title)).toEqual(chosen.map(work => work.title))
  expect(made?.size?.width).toBeCloseTo(a / 2 + 2 * apart + c / 2, 6)
  expect((await worksOn(page, host, face)).length).toBe(before.length - 2)

  const gap = tag.getByLabel('Gap along')
  await gap.focus()
  await gap.fill('3/4 in')
  await gap.press('Enter')
  await expect.poll(async () => (await theSet())?.set?.gapX).toBeCloseTo(19.05, 6)
  expect((await theSet())?.size?.width).toBeCloseTo(a / 2 + 2 * (apart - 30 + 19.05) + c / 2, 6)
  await expect(gap).toHaveValue('19')

  await shape(page, made ?? { placement: '' }).focus()
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await theSet())?.set?.gapX).toBe(30)
  await expect(gap).toHaveValue('30')
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await theSet()) === undefined).toBe(true)
  expect(await worksOn(page, host, face)).toEqual(before)
  for (const work of chosen) await expect(shape(page, work)).toBeVisible()
})

test('a hand takes a set between its parts and carries it as one object', async ({ page, host }) => {
  await stand(page, host)
  const face = await wallWith(page, host, works => works.some(work => (work.set?.parts.length ?? 0) > 2))
  const grid = (works: readonly Placed[]) => works.find(work => (work.set?.parts.length ?? 0) > 2)
  const before = grid(await worksOn(page, host, face))
  if (before === undefined || before.size === null) throw new Error('no grid')
  const parts = shape(page, before).locator('.set image')
  await expect(parts).toHaveCount(before.set?.parts.length ?? 0)
  const lefts = async () => Promise.all((await parts.all()).map(async part => (await boxOf(part)).x))
  const from = await lefts()
  await page.keyboard.press('s')
  await expect(page.getByRole('button', { name: 'snapping off' })).toBeVisible()
  const ground = await boxOf(shape(page, before).locator('.ground'))
  const scale = ground.width / before.size.width
  // Its middle is in a gap: between two columns.
  const [x, y] = [ground.x + ground.width / 2, ground.y + ground.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  for (let step = 1; step <= 10; step++) await page.mouse.move(x + (80 * scale * step) / 10, y)
  await page.mouse.up()
  await expect.poll(async () => grid(await worksOn(page, host, face))?.x).not.toBe(before.x)
  const after = grid(await worksOn(page, host, face))
  expect(Math.abs((after?.x ?? 0) - before.x - 80)).toBeLessThan(2)
  expect(after?.set).toEqual(before.set)
  await expect(async () => {
    const moved = (await lefts()).map((left, index) => left - (from[index] ?? 0))
    for (const by of moved) expect(Math.abs(by - 80 * scale)).toBeLessThan(2)
  }).toPass()
  await page.keyboard.press('Control+z')
  await expect.poll(async () => grid(await worksOn(page, host, face))?.x).toBe(before.x)
})

test('its tag is free of barriers, in both lights, wide and narrow', async ({ page, host }) => {
  // Four whole looks at a long tag; a busy machine takes its time.
  test.setTimeout(240_000)
  await stand(page, host)
  const face = await wallWith(page, host, works => works.some(work => work.set !== null))
  const sets = (await worksOn(page, host, face)).filter(work => work.set !== null)
  for (const colorScheme of ['light', 'dark'] as const) {
    for (const width of [1440, 900]) {
      await page.emulateMedia({ colorScheme })
      await page.setViewportSize({ width, height: 900 })
      for (const set of sets) {
        await shape(page, set).focus()
        await page.keyboard.press('Enter')
        const heading = page.getByRole('heading', { name: `Set of ${set.set?.parts.length}` })
        await expect(heading).toBeVisible()
        const found = (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])
        expect(found, `${colorScheme} ${width}`).toEqual([])
      }
    }
  }
})
