/**
 * The elevation while it moves: works under a hand and a view that is zoomed or shifted are carried as pictures. At rest
 * nothing of that may be left: the drawing is the one that would be drawn afresh.
 */
import type { Page } from '@playwright/test'
import { expect, goToWall, type RunningHost, test } from './host.ts'

const drawing = (page: Page) => page.locator('[aria-label^="Elevation of"]')

async function stand(page: Page, host: RunningHost): Promise<string> {
  await host.open(page)
  return goToWall(page, 'Long Gallery, north wall')
}

/** What stands, what is said of it and its chain, as the page has them, once nothing is carried. */
async function drawn(page: Page): Promise<string> {
  const sheets = drawing(page).locator('svg:not(.tape, .pointed)')
  const read = () =>
    sheets.evaluateAll(all => ({
      carried: all.some(svg => getComputedStyle(svg).transform !== 'matrix(1, 0, 0, 1, 0, 0)'),
      text: all.map(svg => svg.innerHTML.replaceAll(/<!--.*?-->/g, '')).join('\n'),
    }))
  let last = await read()
  await expect
    .poll(async () => {
      const before = last
      last = await read()
      return !last.carried && last.text === before.text
    })
    .toBe(true)
  return last.text
}

async function middleOf(page: Page, at: number) {
  const box = await drawing(page).locator('[data-placement]').nth(at).locator('.outline').first().boundingBox()
  if (box === null) throw new Error('not on the screen')
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

/** Turns the wheel over a point, one turn in each frame; gives how much the works have grown while it turned. */
async function turn(page: Page, at: { readonly x: number; readonly y: number }, turns: number, deltaY: number) {
  return drawing(page).evaluate(
    async (table, [clientX, clientY, count, by]) => {
      const wide = () => table.querySelector('.still .outline')?.getBoundingClientRect().width ?? 0
      const before = wide()
      for (let times = 0; times < count; times += 1) {
        table.dispatchEvent(new WheelEvent('wheel', { bubbles: true, cancelable: true, clientX, clientY, deltaY: by }))
        await new Promise(requestAnimationFrame)
      }
      return wide() / before
    },
    [at.x, at.y, turns, deltaY] as const,
  )
}

/** Sizes on the screen that are the same at any scale: numbers of works, 11 px. */
async function numbers(page: Page): Promise<readonly number[]> {
  return drawing(page)
    .locator('.still')
    .evaluate(still => {
      const scale = still.querySelector('g')?.transform.baseVal.consolidate()?.matrix.a ?? 0
      return [...still.querySelectorAll('.work text')].map(text => Number(text.getAttribute('font-size')) * scale)
    })
}

test('a drag that Escape ends, and one that is taken back, leave the drawing as it was; a drop leaves what is drawn afresh', async ({
  page,
  host,
}) => {
  await stand(page, host)
  await drawn(page)
  const at = await middleOf(page, 2)
  await page.mouse.click(at.x, at.y)
  const before = await drawn(page)
  await page.mouse.move(at.x, at.y)
  await page.mouse.down()
  await page.mouse.move(at.x + 8, at.y - 30)
  await page.mouse.move(at.x + 40, at.y - 90)
  await expect(page.locator('.carried .outline').first()).toBeVisible()
  await page.keyboard.press('Escape')
  await page.mouse.up()
  await expect(page.locator('.carried')).toHaveCount(0)
  expect(await drawn(page)).toBe(before)

  await page.mouse.move(at.x, at.y)
  await page.mouse.down()
  await page.mouse.move(at.x + 8, at.y - 30)
  await page.mouse.move(at.x + 40, at.y - 90)
  await page.mouse.up()
  await expect(page.getByRole('button', { name: /^undo Place/ })).toBeVisible()
  const dropped = await drawn(page)
  expect(dropped).not.toBe(before)
  await page.reload()
  await expect(drawing(page).locator('[data-placement]').first()).toBeVisible()
  await drawn(page)
  const there = await middleOf(page, 2)
  await page.mouse.click(there.x, there.y)
  await expect.poll(() => drawn(page)).toBe(dropped)

  await page.keyboard.press('Control+z')
  await expect(page.getByRole('button', { name: /^undo Place/ })).toHaveCount(0)
  // The line that says what was taken back leaves the drawing less height; it is gone with the page.
  await page.reload()
  await expect(drawing(page).locator('[data-placement]').first()).toBeVisible()
  await drawn(page)
  await page.mouse.click(at.x, at.y)
  await expect.poll(() => drawn(page)).toBe(before)
})

test('the wall follows wheel and hand at once, and is sharp at rest', async ({ page, host }) => {
  await stand(page, host)
  const before = await drawn(page)
  const at = await middleOf(page, 2)
  // 60 px of wheel at 0.0016 a pixel, in one turn after the other.
  expect(await turn(page, at, 5, -60)).toBeCloseTo(Math.exp(5 * 60 * 0.0016), 2)
  await drawn(page)
  for (const size of await numbers(page)) expect(size).toBeCloseTo(11, 3)
  const near = await middleOf(page, 2)
  expect(near.x).toBeCloseTo(at.x, 0)
  expect(near.y).toBeCloseTo(at.y, 0)
  await page.mouse.move(at.x, at.y)
  await page.mouse.down({ button: 'middle' })
  await page.mouse.move(at.x + 60, at.y + 20)
  expect((await middleOf(page, 2)).x).toBeCloseTo(at.x + 60, 0)
  expect((await middleOf(page, 2)).y).toBeCloseTo(at.y + 20, 0)
  await page.mouse.up({ button: 'middle' })
  await page.mouse.move(2, 2)
  await page.keyboard.press('0')
  expect(await drawn(page)).toBe(before)
})

test('a wall of many works, drawn anew a slice at a time, is whole at rest', async ({ page, host }) => {
  const face = await stand(page, host)
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as { exhibitions: readonly { id: string }[] }
  const exhibition = exhibitions[0]?.id ?? ''
  const { works, wall } = (await host.call(page, 'wall.elevation', { exhibition, face })) as {
    works: readonly { work: string; size: unknown }[]
    wall: { length: number }
  }
  const of = works.find(work => work.size !== null)?.work
  // While they are made the wall is not looked at: it would be drawn anew after each of them.
  const { hash } = new URL(page.url())
  await page.evaluate(() => location.replace('#/keys'))
  await expect(drawing(page)).toHaveCount(0)
  const made = await Promise.all(
    Array.from({ length: 60 }, () => host.call(page, 'work.duplicate', { id: of, exhibition })),
  )
  const places = made.map((one, at) => {
    const { entry } = one as { entry: string }
    return { entry, face, x: (wall.length * (at + 0.5)) / made.length, rule: 'hand', y: 1500, was: null }
  })
  await host.call(page, 'placement.put', { exhibition, places })
  await page.evaluate(to => location.replace(to), hash)
  await expect(drawing(page).locator('[data-placement]')).toHaveCount(works.length + made.length)
  const fitted = await drawn(page)
  const at = await middleOf(page, works.length)
  await turn(page, at, 14, -60)
  await drawn(page)
  const sizes = await numbers(page)
  expect(sizes.length).toBeGreaterThan(0)
  for (const size of sizes) expect(size).toBeCloseTo(11, 3)
  await page.keyboard.press('0')
  expect(await drawn(page)).toBe(fitted)
})
