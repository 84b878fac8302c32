/** How a wall balances and how heavy a work looks: figures beside the drawing, against sums of the test's own. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, type RunningHost, sitDown, test } from './host.ts'

interface Weighed {
  readonly placement: string
  readonly weight: number
  readonly right: number
  readonly hand: number
}
interface Weights {
  readonly works: readonly Weighed[]
  readonly axes: readonly { readonly kind: string; readonly x: number; readonly from: number; readonly to: number }[]
}
interface Facts {
  readonly wall: { readonly length: number }
  readonly works: readonly {
    readonly placement: string
    readonly work: string
    readonly x: number
    readonly held: boolean
    readonly state: string
  }[]
}

interface Plan {
  readonly rooms: readonly {
    readonly walls: readonly { readonly face: string; readonly works: readonly unknown[] }[]
  }[]
}

/** Opens the demo before the wall that has most works, of those that may be balanced about so many axes. */
async function stand(page: Page, host: RunningHost, axes = 1) {
  await host.open(page)
  await sitDown(page)
  // The demo opens on its best wall by itself.
  await expect(page.locator('[data-placement]').first()).toBeVisible({ timeout: 30_000 })
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as { exhibitions: readonly { id: string }[] }
  const exhibition = exhibitions[0]?.id ?? ''
  const { rooms } = (await host.call(page, 'plan.get', { exhibition })) as Plan
  const walls = rooms.flatMap(room => room.walls).sort((a, b) => b.works.length - a.works.length)
  for (const { face } of walls) {
    const weights = (await host.call(page, 'wall.weights', { exhibition, face })) as Weights
    if (weights.axes.length < axes) continue
    await page.evaluate(at => {
      location.hash = `#/walls/${at}`
    }, face)
    await expect(page).toHaveURL(new RegExp(`${face}$`))
    await expect(
      page
        .getByRole('group', { name: /^Elevation of/ })
        .locator('[data-placement]')
        .first(),
    ).toBeVisible()
    return { exhibition, face }
  }
  throw new Error(`no wall has ${axes} axes`)
}

/** How far the weight sits from an axis, mm, added up here from the answers of two calls. */
async function offOf(page: Page, host: RunningHost, at: { exhibition: string; face: string }, axis = 0) {
  const weights = (await host.call(page, 'wall.weights', at)) as Weights
  const facts = (await host.call(page, 'wall.elevation', at)) as Facts
  const about = weights.axes[axis]
  if (about === undefined) throw new Error(`no axis ${axis}`)
  let mass = 0
  let moment = 0
  for (const { placement, weight, right } of weights.works) {
    const x = facts.works.find(work => work.placement === placement)?.x ?? Number.NaN
    if (x < about.from || x > about.to) continue
    mass += weight
    moment += weight * (x + right)
  }
  return moment / mass - about.x
}

const plumb = (page: Page) => page.locator('[data-off]')
const figure = async (page: Page) =>
  Number(((await plumb(page).getAttribute('data-off')) ?? '').replace(/[\s\u2009]/g, '').replace('−', '-'))

test('the plumb mark hangs where the weight sits, follows a move and goes with a key', async ({ page, host }) => {
  const at = await stand(page, host)
  await expect(plumb(page)).toBeVisible()
  expect(Math.abs((await figure(page)) - (await offOf(page, host, at)))).toBeLessThan(1)

  const facts = (await host.call(page, 'wall.elevation', at)) as Facts
  const free = facts.works.find(work => !work.held && work.state === 'planned')
  if (free === undefined) throw new Error('no free work on the wall')
  const before = await figure(page)
  await page.locator(`[data-placement="${free.placement}"]`).press('Enter')
  await page.keyboard.press('Shift+ArrowRight')
  await expect.poll(() => figure(page)).not.toBe(before)
  await expect.poll(async () => Math.abs((await figure(page)) - (await offOf(page, host, at)))).toBeLessThan(1)

  await page.keyboard.press('Escape')
  await page.keyboard.press('w')
  await expect(plumb(page)).toHaveCount(0)
  await page.keyboard.press('w')
  await expect(plumb(page)).toBeVisible()
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
})

test('another axis gives another deviation', async ({ page, host }) => {
  const at = await stand(page, host, 2)
  const { axes } = (await host.call(page, 'wall.weights', at)) as Weights
  await expect(plumb(page)).toBeVisible()
  await page
    .getByRole('region', { name: 'Balance' })
    .getByRole('combobox')
    .selectOption(String(axes.length - 1))
  await expect
    .poll(async () => Math.abs((await figure(page)) - (await offOf(page, host, at, axes.length - 1))))
    .toBeLessThan(1)
})

test('a hand’s factor has the last word on how heavy a work looks', async ({ page, host }) => {
  const at = await stand(page, host)
  const facts = (await host.call(page, 'wall.elevation', at)) as Facts
  const work = facts.works[0]
  if (work === undefined) throw new Error('no work on the wall')
  await page.locator(`[data-placement="${work.placement}"]`).press('Enter')
  await page.getByText('How heavy it looks').click()
  const told = page.getByText(/It looks like/)
  await expect(told).toBeVisible()
  const read = async () => Number(/like ([\d.]+)/.exec((await told.textContent()) ?? '')?.[1])
  const before = await read()
  await host.call(page, 'work.update', { id: work.work, changes: { handWeight: { was: null, to: 2 } } })
  await expect(told).toContainText('by hand')
  expect(await read()).toBeCloseTo(2 * before, 1)
  const seen = (await host.call(page, 'work.weightSeen', { work: work.work, ...at })) as {
    weight: { area: number; lightness: number; colour: number; detail: number; weight: number }
  }
  const { area, lightness, colour, detail, weight } = seen.weight
  expect(weight).toBeCloseTo(2 * area * (1 + lightness + colour + detail), 4)
})
