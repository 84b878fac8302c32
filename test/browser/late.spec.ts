/** A late change on a half-drilled wall: what it costs is said and drawn before it is taken, and undo takes it back. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, goToWall, type RunningHost, sitDown, test } from './host.ts'

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
  await sitDown(page)
  const hidden = page.getByText('I have read this')
  if (await hidden.count()) await hidden.click()
  await goToWall(page, 'Long Gallery, north wall')
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

test('a whole room 50 mm lower: this wall is drawn beside today, the other walls follow, all as one edit', async ({
  page,
  host,
}) => {
  // Every wall of the room is asked for anew at each look.
  test.slow()
  const wall = await stand(page, host)
  const { rooms } = (await host.call(page, 'room.list', {})) as {
    rooms: readonly { readonly walls: readonly { readonly face: string }[] }[]
  }
  const faces = (rooms.find(room => room.walls.some(one => one.face === wall.face))?.walls ?? []).map(one => one.face)
  const heights = async () => {
    const all = await Promise.all(
      faces.map(face => host.call(page, 'wall.elevation', { exhibition: wall.exhibition, face })),
    )
    return new Map(
      (all as { works: readonly Placed[] }[]).flatMap(({ works }) =>
        works.filter(work => work.size !== null).map(work => [work.placement, { ...work }] as const),
      ),
    )
  }
  const before = await heights()
  expect([...before.keys()].some(id => !wall.works.some(work => work.placement === id))).toBe(true)
  await page.keyboard.press('l')
  await panel(page).getByLabel('everything lower or higher').check()
  await panel(page).getByRole('combobox', { name: /^What/ }).selectOption({ label: 'this room' })
  await panel(page).getByLabel('Length').fill('50 mm')
  await expect(ways(page).getByRole('radio').first()).toBeChecked()
  await expect(ways(page)).toHaveAttribute('aria-busy', 'false')
  const chosen = ways(page).locator('label.chosen')
  await expect(chosen).toContainText(/50 mm|5 cm|1 \d+\/\d+ in/)
  // Every work of this wall that goes lower is drawn where it would stand, 50 mm under where it stands.
  const ghosts = page.locator('.late .ghost')
  expect(await ghosts.count()).toBeGreaterThan(0)
  for (const entry of await ghosts.evaluateAll(shapes => shapes.map(shape => shape.getAttribute('data-entry')))) {
    const work = wall.works.find(each => each.entry === entry)
    const ghost = await page.locator(`.late .ghost[data-entry="${entry}"]`).boundingBox()
    const today = await page.locator(`[data-placement="${work?.placement}"] .outline`).boundingBox()
    const scale = (today?.width ?? 0) / (work?.size?.width ?? 1)
    // To a pixel and a half: both outlines have a width.
    expect(Math.abs((ghost?.y ?? 0) - (today?.y ?? 0) - 50 * scale)).toBeLessThan(1.5)
  }
  await panel(page).getByRole('button', { name: 'Take it' }).click()
  await expect(panel(page)).toHaveCount(0)
  const lower = (now: Awaited<ReturnType<typeof heights>>) =>
    [...before.keys()].filter(id => (now.get(id)?.centreY ?? 0) < (before.get(id)?.centreY ?? 0) - 49)
  await expect.poll(async () => lower(await heights()).length).toBeGreaterThan(0)
  const after = await heights()
  // On another wall too.
  expect(lower(after).some(id => !wall.works.some(work => work.placement === id))).toBe(true)
  for (const [id, was] of before) {
    // What hangs stays; nothing goes anywhere but 50 mm down.
    const by = was.centreY - (after.get(id)?.centreY ?? 0)
    expect([0, 50].some(each => Math.abs(by - each) < 0.01)).toBe(true)
    if (was.state !== 'planned') expect(by).toBeCloseTo(0, 6)
  }
  await page.keyboard.press('Control+z')
  await expect
    .poll(async () => [...(await heights()).values()].map(work => work.centreY))
    .toEqual([...before.values()].map(work => work.centreY))
})

test('a wall changed by another window before the offer is taken: nothing is taken, and the ways are those of now', async ({
  page,
  host,
}) => {
  // This window hears of nothing: as when the other's change comes in the same moment.
  await page.route('**/events', () => {})
  const wall = await stand(page, host)
  const [subject, other] = wall.works.filter(work => work.size !== null && work.state === 'planned')
  await select(page, subject)
  await page.getByRole('button', { name: 'late change', exact: true }).click()
  await panel(page).getByLabel('two works change places').check()
  await select(page, other)
  await expect(ways(page).getByRole('radio').first()).toBeChecked()
  await expect(ways(page)).toHaveAttribute('aria-busy', 'false')
  const { x } = (await wallNow(page, host)).works.find(work => work.placement === other?.placement) ?? { x: 0 }
  await host.call(page, 'placement.put', {
    exhibition: wall.exhibition,
    places: [
      {
        entry: other?.entry,
        face: wall.face,
        x: x + 3,
        rule: 'hand',
        y: other?.centreY,
        was: await placeOf(page, host, wall, other?.placement),
      },
    ],
  })
  const moved = await wallNow(page, host)
  await panel(page).getByRole('button', { name: 'Take it' }).click()
  await expect(panel(page).getByRole('alert')).toContainText('nothing was taken')
  expect((await wallNow(page, host)).works.map(work => [work.placement, work.x])).toEqual(
    moved.works.map(work => [work.placement, work.x]),
  )
  // Asked again as the wall is now, the same change can be taken.
  await expect(ways(page)).toHaveAttribute('aria-busy', 'false')
  await panel(page).getByRole('button', { name: 'Take it' }).click()
  await expect(panel(page)).toHaveCount(0)
  const after = await wallNow(page, host)
  expect(Math.sign((at(after, subject?.placement)?.x ?? 0) - (at(after, other?.placement)?.x ?? 0))).toBe(1)
})

/** Where a work stands as it is stored, which a move is based on. */
async function placeOf(page: Page, host: RunningHost, { exhibition, face }: Wall, placement: string | undefined) {
  const { works } = (await host.call(page, 'wall.elevation', { exhibition, face })) as {
    works: readonly { placement: string; x: number; rule: string; y: number | null }[]
  }
  const work = works.find(each => each.placement === placement)
  return { face, x: work?.x, rule: work?.rule, y: work?.y }
}

test('the tag of a drilled work says why it stays, and asks for its late change', async ({ page, host }) => {
  const wall = await stand(page, host)
  const subject = wall.works.find(
    work => work.back !== null && work.fixing !== null && work.size !== null && work.state === 'planned',
  )
  if (subject === undefined) throw new Error('the demo has a work to drill for')
  await drill(page, host, wall, [subject])
  await select(page, subject)
  await page.getByRole('button', { name: 'Ask for a late change' }).first().click()
  await expect(panel(page).getByLabel('its frame is different')).toBeChecked()
  await expect(panel(page).getByLabel('The work')).toHaveValue(subject.entry)
  await expect(panel(page).getByLabel('Width now')).toBeFocused()
})
