/** Standing in front of a wall: what a hand and a keyboard do to works, and what the screen says about it at once. */
import AxeBuilder from '@axe-core/playwright'
import type { Locator, Page } from '@playwright/test'
import { expect, goToWall, type RunningHost, sitDown, test } from './host.ts'

interface Placed {
  readonly placement: string
  readonly entry: string
  readonly work: string
  readonly running: string
  readonly x: number
  readonly rule: string
  readonly y: number | null
  readonly centreY: number
  readonly held: boolean
  readonly size: { readonly width: number; readonly height: number } | null
}
interface Facts {
  readonly exhibition: string
  readonly wall: {
    readonly id: string
    readonly face: string
    readonly length: number
    readonly height: number
    readonly floor: readonly (readonly [number, number])[]
    readonly datumBy: string
  }
  readonly works: readonly Placed[]
  readonly layouts: readonly { readonly id: string; readonly name: string }[]
}

/** Opens the demo on its best wall, with somebody at the desk. */
async function stand(page: Page, host: RunningHost): Promise<string> {
  await host.open(page)
  await sitDown(page)
  const hidden = page.getByText('I have read this')
  if (await hidden.count()) await hidden.click()
  return goToWall(page, 'Long Gallery, north wall')
}

async function facts(page: Page, host: RunningHost, face: string): Promise<Facts> {
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as { exhibitions: readonly { id: string }[] }
  return (await host.call(page, 'wall.elevation', { exhibition: exhibitions[0]?.id, face })) as Facts
}

async function placed(page: Page, host: RunningHost, face: string, running: string): Promise<Placed> {
  const found = (await facts(page, host, face)).works.find(work => work.running === running)
  if (found === undefined) throw new Error(`no work ${running}`)
  return found
}

function shape(page: Page, work: Pick<Placed, 'placement'>): Locator {
  return page.locator(`[data-placement="${work.placement}"]`)
}

async function middle(of: Locator): Promise<{ readonly x: number; readonly y: number; readonly width: number }> {
  const box = await of.locator('.outline').boundingBox()
  if (box === null) throw new Error('not on the screen')
  return { x: box.x + box.width / 2, y: box.y + box.height / 2, width: box.width }
}

/** Drags by millimetres of the wall, in many moves as a hand does. */
async function drag(page: Page, work: Placed, dx: number, dy: number, end: 'drop' | 'stay' = 'drop'): Promise<void> {
  const from = await middle(shape(page, work))
  const scale = from.width / (work.size?.width ?? 1)
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  for (let step = 1; step <= 10; step += 1)
    await page.mouse.move(from.x + (dx * scale * step) / 10, from.y - (dy * scale * step) / 10)
  if (end === 'drop') await page.mouse.up()
}

const figureOf = (text: string | null) => Number((text ?? '').replaceAll(/[^\d]/g, ''))

test('a drag snaps to the line and to an equal gap, is one edit, and undo takes it back', async ({ page, host }) => {
  const face = await stand(page, host)
  const before = await placed(page, host, face, '2')
  await drag(page, before, 100, 40, 'stay')
  await expect(page.locator('.snaps path').first()).toBeAttached()
  await expect(page.locator('.snaps text').first()).toHaveText(/\d/)
  await page.mouse.up()
  await expect.poll(async () => (await placed(page, host, face, '2')).x).not.toBe(before.x)
  const after = await placed(page, host, face, '2')
  // Lifted by a hair it falls back to the line and goes on following the wall.
  expect(after.rule).toBe('face')
  expect(after.centreY).toBeCloseTo(1480, 6)
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await placed(page, host, face, '2')).x).toBe(before.x)
})

test('with snapping off the work stands where the hand put it', async ({ page, host }) => {
  const face = await stand(page, host)
  const before = await placed(page, host, face, '2')
  await page.keyboard.press('s')
  await expect(page.getByRole('button', { name: 'snapping off' })).toBeVisible()
  await drag(page, before, 40, 30)
  await expect.poll(async () => (await placed(page, host, face, '2')).rule).toBe('hand')
  const after = await placed(page, host, face, '2')
  expect(Math.abs(after.x - before.x - 40)).toBeLessThan(2)
  expect(Math.abs(after.centreY - before.centreY - 30)).toBeLessThan(2)
})

test('along a ramp a work carried level climbs with the line at once, and lands where it is drawn', async ({
  page,
  host,
}) => {
  const face = await stand(page, host)
  const { wall } = await facts(page, host, face)
  const slope = 1 / 8
  await host.call(page, 'wall.update', {
    id: wall.id,
    changes: {
      floor: {
        was: wall.floor,
        to: [
          [0, 0],
          [wall.length, wall.length * slope],
        ],
      },
      datumBy: { was: wall.datumBy, to: 'ramp' },
    },
  })
  const before = await placed(page, host, face, '2')
  expect(before.rule).toBe('face')
  const drawnAt = (work: Placed) =>
    expect(shape(page, work).locator('.outline')).toHaveAttribute(
      'y',
      String(-work.centreY - (work.size?.height ?? 0) / 2),
    )
  await drawnAt(before)
  await page.keyboard.press('s')
  const from = await middle(shape(page, before))
  await drag(page, before, 400, 0, 'stay')
  const held = await middle(page.locator('.carried'))
  const scale = from.width / (before.size?.width ?? 1)
  expect(held.x - from.x).toBeCloseTo(400 * scale, 0)
  expect(from.y - held.y).toBeCloseTo(400 * slope * scale, 0)
  await page.mouse.up()
  await expect.poll(async () => (await placed(page, host, face, '2')).x).not.toBe(before.x)
  const after = await placed(page, host, face, '2')
  expect(after.rule).toBe('face')
  expect(after.centreY - before.centreY).toBeCloseTo((after.x - before.x) * slope, 6)
  await drawnAt(after)
  expect((await middle(shape(page, after))).y).toBeCloseTo(held.y, 0)
})

test('Escape ends a drag as if it had not been', async ({ page, host }) => {
  const face = await stand(page, host)
  const before = await placed(page, host, face, '2')
  const at = await middle(shape(page, before))
  await drag(page, before, 300, 200, 'stay')
  await page.keyboard.press('Escape')
  await page.mouse.up()
  expect((await middle(shape(page, before))).x).toBeCloseTo(at.x, 0)
  expect(await placed(page, host, face, '2')).toEqual(before)
})

test('arrow keys move 1 mm and 10 mm, a burst is one edit, and the marks change at once', async ({ page, host }) => {
  const face = await stand(page, host)
  const before = await placed(page, host, face, '2')
  await shape(page, before).click()
  const mark = page.locator('[data-mark="along"] .big').first()
  const first = figureOf(await mark.textContent())
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('Shift+ArrowRight')
  // Before the burst is over nothing is written, yet the marks are those of the new place.
  await expect.poll(async () => figureOf(await mark.textContent())).toBe(first + 12)
  await expect.poll(async () => (await placed(page, host, face, '2')).x).toBeCloseTo(before.x + 12, 6)
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await placed(page, host, face, '2')).x).toBe(before.x)
})

test('in inches the keys move a sixteenth and an inch', async ({ page, host }) => {
  const face = await stand(page, host)
  const before = await placed(page, host, face, '2')
  await page.keyboard.press('u')
  await expect(page.getByText('running, from the left end, in inches')).toBeVisible()
  await shape(page, before).click()
  await page.keyboard.press('ArrowLeft')
  await page.keyboard.press('Shift+ArrowLeft')
  await expect.poll(async () => (await placed(page, host, face, '2')).x).toBeCloseTo(before.x - 25.4 - 25.4 / 16, 6)
})

test('a gap is typed on the drawing, in any unit; what cannot be read is shown', async ({ page, host }) => {
  const face = await stand(page, host)
  const one = await placed(page, host, face, '1')
  const edge = one.x + (one.size?.width ?? 0) / 2
  await page.locator('.chains .gap').nth(1).click()
  const field = page.getByRole('textbox', { name: 'Gap' })
  await field.fill('12 parsecs')
  await field.press('Enter')
  await expect(page.getByRole('alert')).toContainText('parsecs')
  await field.fill('16 in')
  await field.press('Enter')
  await expect
    .poll(async () => {
      const two = await placed(page, host, face, '2')
      return two.x - (two.size?.width ?? 0) / 2 - edge
    })
    .toBeCloseTo(406.4, 6)
})

test('a position is typed in the tag, and the chain adds up to the wall', async ({ page, host }) => {
  const face = await stand(page, host)
  const two = await placed(page, host, face, '2')
  await shape(page, two).click()
  const field = page.getByRole('textbox', { name: 'Left edge' })
  await field.fill('1700')
  await field.press('Enter')
  await expect
    .poll(async () => (await placed(page, host, face, '2')).x)
    .toBeCloseTo(1700 + (two.size?.width ?? 0) / 2, 6)
  const figures = await page.locator('.chains .gap text, .chains text.width').allTextContents()
  const { wall } = await facts(page, host, face)
  expect(figures.reduce((sum, text) => sum + figureOf(text), 0)).toBe(Math.round(wall.length))
})

test('an overlap is said with its figures while the hand still holds the work', async ({ page, host }) => {
  const face = await stand(page, host)
  const two = await placed(page, host, face, '2')
  const three = await placed(page, host, face, '3')
  await page.keyboard.press('s')
  const reach = (two.size?.width ?? 0) / 2 + (three.size?.width ?? 0) / 2
  await drag(page, two, three.x - two.x - reach + 60, 0, 'stay')
  const list = page.getByRole('region', { name: 'Findings of this wall' })
  const told = async () => Number(/2 and 3 overlap by ([\d.]+)\smm/.exec((await list.textContent()) ?? '')?.[1])
  // The list follows the hand a dozen times a second.
  await expect.poll(async () => Math.abs((await told()) - 60)).toBeLessThan(13)
  // The chain says the same: a gap below nothing, as large.
  const said = await told()
  const gaps = await page.locator('.chains .gap text').allTextContents()
  expect(gaps.filter(text => text.startsWith('−')).map(figureOf)).toEqual([expect.closeTo(said, 0)])
  await expect(page.locator('.notes')).toContainText('overlap')
  await page.keyboard.press('Escape')
  await page.mouse.up()
  await expect(list).not.toContainText('overlap')
})

test('a held work does not move, and says why', async ({ page, host }) => {
  const face = await stand(page, host)
  const two = await placed(page, host, face, '2')
  await shape(page, two).click()
  await page.getByRole('button', { name: 'hold here' }).click()
  await expect.poll(async () => (await placed(page, host, face, '2')).held).toBe(true)
  await expect(page.getByRole('button', { name: 'let go' })).toBeVisible()
  await drag(page, two, 300, 0)
  await expect(page.getByRole('status').filter({ hasText: 'is held here' })).toBeVisible()
  await page.keyboard.press('ArrowRight')
  await page.waitForTimeout(900)
  expect((await placed(page, host, face, '2')).x).toBe(two.x)
})

test('an arrangement stands on the wall before it is taken, and is one edit', async ({ page, host }) => {
  const face = await stand(page, host)
  const before = await facts(page, host, face)
  await page.getByRole('button', { name: 'arrange' }).click()
  await page.getByRole('radio', { name: 'set margins at the ends' }).check()
  const left = page.getByRole('textbox', { name: 'Left margin' })
  await left.fill('900')
  await left.press('Enter')
  const right = page.getByRole('textbox', { name: 'Right margin' })
  await right.fill('900')
  await right.press('Enter')
  await expect(page.locator('.chains .gap text').first()).toHaveText('900')
  expect((await facts(page, host, face)).works).toEqual(before.works)
  await page.getByRole('button', { name: 'Take it' }).click()
  const widths = before.works.reduce((sum, work) => sum + (work.size?.width ?? 0), 0)
  const gap = (before.wall.length - 1800 - widths) / (before.works.length - 1)
  await expect
    .poll(async () => {
      const works = [...(await facts(page, host, face)).works].sort((a, b) => a.x - b.x)
      return works.slice(1).map((work, index) => {
        const other = works[index]
        return work.x - (work.size?.width ?? 0) / 2 - ((other?.x ?? 0) + (other?.size?.width ?? 0) / 2)
      })
    })
    .toEqual(Array.from({ length: before.works.length - 1 }, () => expect.closeTo(gap, 6)))
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await facts(page, host, face)).works).toEqual(before.works)
})

test('several are lined up, and a kept layout is compared and taken back', async ({ page, host }) => {
  const face = await stand(page, host)
  const before = await facts(page, host, face)
  await page.getByRole('textbox', { name: /Keep today/ }).fill('Before the move')
  await page.getByRole('button', { name: 'Keep', exact: true }).click()
  await expect(page.getByText('Before the move', { exact: true })).toBeVisible()
  await page.locator('[data-placement]').first().focus()
  await page.keyboard.press('Control+a')
  await page.getByRole('button', { name: 'bottoms' }).click()
  await expect
    .poll(
      async () =>
        new Set(
          (await facts(page, host, face)).works.map(work => Math.round(work.centreY - (work.size?.height ?? 0) / 2)),
        ).size,
    )
    .toBe(1)
  const kept = page.getByRole('listitem').filter({ hasText: 'Before the move' })
  await kept.getByRole('button', { name: 'compare' }).click()
  await expect(page.locator('.ghost rect')).toHaveCount(before.works.length)
  await expect(
    kept
      .locator('dd')
      .filter({ hasText: /higher|lower/ })
      .first(),
  ).toBeVisible()
  await kept.getByRole('button', { name: 'take back' }).click()
  await expect
    .poll(async () => (await facts(page, host, face)).works.map(work => work.centreY))
    .toEqual(before.works.map(work => work.centreY))
})

test('what another window moved meanwhile is asked, not overwritten', async ({ page, host }) => {
  const face = await stand(page, host)
  const two = await placed(page, host, face, '2')
  const { exhibition } = await facts(page, host, face)
  await drag(page, two, 300, 0, 'stay')
  // The other window's edit lands while this hand still holds the work; its answer is kept from this page.
  await page.route('**/call', async route => {
    const asked = route.request().postDataJSON()
    if (asked.name === 'wall.elevation') await route.abort()
    else await route.continue()
  })
  await host.call(page, 'placement.put', {
    exhibition,
    places: [
      {
        entry: two.entry,
        face,
        x: two.x - 50,
        rule: 'face',
        y: null,
        was: { face, x: two.x, rule: two.rule, y: two.y },
      },
    ],
  })
  await page.mouse.up()
  await expect(page.getByRole('heading', { name: /Somebody else moved/ })).toBeVisible()
  await page.unroute('**/call')
  expect((await placed(page, host, face, '2')).x).toBe(two.x - 50)
  await page.getByRole('button', { name: 'Move it to mine' }).click()
  await expect.poll(async () => (await placed(page, host, face, '2')).x).toBeGreaterThan(two.x + 200)
})

test('works are taken off and hung again by keyboard alone', async ({ page, host }) => {
  const face = await stand(page, host)
  const { works } = await facts(page, host, face)
  await page.locator('[data-placement]').first().focus()
  await page.keyboard.press(']')
  await page.keyboard.press('Delete')
  await expect.poll(async () => (await facts(page, host, face)).works.length).toBe(works.length - 1)
  await expect(page.getByRole('button', { name: /^hang .* here$/ })).toBeVisible()
  await page.keyboard.press('p')
  await expect.poll(async () => (await facts(page, host, face)).works.length).toBe(works.length)
})

test('a work is dragged up from the frieze', async ({ page, host }) => {
  const face = await stand(page, host)
  const { works } = await facts(page, host, face)
  const loose = page.locator('.frieze .work:not(.placed):not(.sizeless)').first()
  await loose.scrollIntoViewIfNeeded()
  await loose.dragTo(page.locator('[aria-label^="Elevation"]'), { targetPosition: { x: 500, y: 150 } })
  await expect.poll(async () => (await facts(page, host, face)).works.length).toBe(works.length + 1)
})

test('a finding is settled with a reason and taken back', async ({ page, host }) => {
  await stand(page, host)
  const list = page.getByRole('region', { name: 'Findings of this wall' })
  const item = list.getByRole('listitem').filter({ hasText: 'thermostat' }).first()
  await item.getByRole('button', { name: 'settle with a reason' }).click()
  await page.getByRole('textbox', { name: /It may stay/ }).fill('The thermostat is switched off.')
  await page.getByRole('button', { name: 'Settle', exact: true }).click()
  await expect(list.getByRole('heading', { name: 'Settled' })).toBeVisible()
  await expect(list.getByText('The thermostat is switched off.')).toBeVisible()
  await list.getByRole('button', { name: 'take back' }).click()
  await expect(list.getByRole('listitem').filter({ hasText: 'thermostat’s margin' }).first()).toBeVisible()
})

for (const look of ['light', 'dark'] as const) {
  test(`nothing stands in anybody’s way, ${look}`, async ({ page, host }) => {
    await page.emulateMedia({ colorScheme: look })
    const face = await stand(page, host)
    const check = async () =>
      expect(
        (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html]),
      ).toEqual([])
    await check()
    await shape(page, await placed(page, host, face, '2')).click()
    await check()
    await page.getByRole('button', { name: 'arrange' }).click()
    await check()
  })
}

test('every sentence on the drawing keeps clear of the others, at any width', async ({ page, host }) => {
  await stand(page, host)
  for (const width of [1440, 1024, 700]) {
    await page.setViewportSize({ width, height: 900 })
    await page.waitForTimeout(250)
    const boxes = await page.locator('.notes text, .chains text, .line text').evaluateAll(texts =>
      texts.map(text => {
        const { left, right, top, bottom } = text.getBoundingClientRect()
        return { text: text.textContent ?? '', left: left + 0.5, right: right - 0.5, top: top + 2, bottom: bottom - 2 }
      }),
    )
    const crossing = boxes.flatMap((a, index) =>
      boxes
        .slice(index + 1)
        .filter(b => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
        .map(b => [a.text, b.text]),
    )
    expect(crossing, `at ${width}`).toEqual([])
    const drawing = await page.locator('[aria-label^="Elevation"]').boundingBox()
    expect(drawing?.height).toBeGreaterThanOrEqual(360)
  }
})

test('Escape ends the nearest thing first, also where the wall is the first screen that loads', async ({
  page,
  host,
}) => {
  const face = await stand(page, host)
  const before = await placed(page, host, face, '2')
  await host.open(page, `#/walls/${face}`)
  await expect(shape(page, before)).toBeVisible()
  await drag(page, before, 200, 0, 'stay')
  await page.keyboard.press('Escape')
  await page.mouse.up()
  // The drag ended, and nothing else: the work is where it was and is still selected.
  await expect(page.locator('.carried')).toHaveCount(0)
  await expect(shape(page, before)).toHaveAttribute('aria-pressed', 'true')
  expect((await placed(page, host, face, '2')).x).toBe(before.x)
  await page.getByRole('button', { name: 'arrange', exact: true }).click()
  await page.getByRole('heading', { name: 'To settle on this wall' }).click()
  await page.keyboard.press('Escape')
  await expect(page.getByRole('region', { name: 'Arrange' })).toHaveCount(0)
  await expect(shape(page, before)).toHaveAttribute('aria-pressed', 'true')
  await page.keyboard.press('Escape')
  await expect(shape(page, before)).toHaveAttribute('aria-pressed', 'false')
})
