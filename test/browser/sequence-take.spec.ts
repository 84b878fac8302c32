/** Two hangs side by side, and one gathered from both: one wall from one, others from the other, taken as one edit. */
import AxeBuilder from '@axe-core/playwright'
import { expect, test } from './host.ts'
import { askForProposals, openSequence, settleAll, type Wall, wallsOf } from './sequence-screen.ts'

test('two proposals stand side by side, and what differs is drawn and said', async ({ page, host }) => {
  await openSequence(page, host)
  await askForProposals(page)
  await page.getByRole('group', { name: 'Proposals' }).getByRole('button').nth(1).click()
  await expect(page.locator('.work .differs').first()).toBeAttached()
  await expect(page.getByRole('button', { name: /, comes from / }).first()).toBeAttached()
  await page.getByLabel('beside it').selectOption({ label: 'In order' })
  await expect(page.locator('[data-today]')).toHaveCount(0)
  await expect(page.getByRole('button', { name: /, goes to / }).first()).toBeAttached()
  await expect(page.getByRole('img', { name: /^In order above, Freer below\. .* on another wall/ })).toBeVisible()
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
})

test('one wall from one proposal and two from another are one edit, settled before', async ({ page, host }) => {
  const exhibition = await openSequence(page, host)
  const before = await wallsOf(page, host, exhibition)
  await askForProposals(page)
  const ways = page.getByRole('group', { name: 'Proposals' }).getByRole('button')
  const boxes = page.getByRole('checkbox', { name: /^this wall: / })
  const picked = before.flatMap((wall, index) => (wall.works.some(work => !work.stays) ? [index] : [])).slice(0, 3)
  expect(picked.length).toBe(3)
  const [one, two, three] = picked
  await ways.nth(0).click()
  await boxes.nth(one ?? 0).check()
  await ways.nth(1).click()
  await boxes.nth(two ?? 0).check()
  await boxes.nth(three ?? 0).check()
  await expect(page.getByText(/^Gathered: one wall from In order, 2 walls from Freer/)).toBeVisible()

  const take = page.getByRole('button', { name: 'take 3 walls' })
  await settleAll(page)
  await take.click()
  await expect(page.getByText(/as proposed/).first()).toBeVisible()
  const after = await wallsOf(page, host, exhibition)
  for (const wall of before) {
    const now = after.find(each => each.face === wall.face)
    for (const work of wall.works.filter(each => each.stays)) expect(now?.works).toContainEqual(work)
  }
  const entries = after.flatMap(wall => wall.works.map(work => work.entry))
  expect(new Set(entries).size).toBe(entries.length)
  const untouched = before.filter((_, index) => !picked.includes(index))
  for (const wall of untouched) {
    const came = after.find(each => each.face === wall.face)?.works ?? []
    for (const work of came) expect(wall.works).toContainEqual(work)
  }
  await page.keyboard.press('Control+z')
  await expect.poll(() => wallsOf(page, host, exhibition)).toEqual(before)
})

interface PlacedWork {
  readonly entry: string
  readonly work: string
  readonly section: string | null
}

const placedOf = (walls: readonly Wall[], entries: ReadonlySet<string>) =>
  walls.flatMap(({ face, works }) =>
    works.filter(({ entry }) => entries.has(entry)).map(({ entry, x, stays }) => ({ face, entry, x, stays })),
  )

test('each section is ready to be taken alone, or says whose place it would stand in', async ({ page, host }) => {
  const exhibition = await openSequence(page, host)
  const { works } = (await host.call(page, 'exhibition.frieze', { exhibition })) as { works: readonly PlacedWork[] }
  await askForProposals(page)
  await page.getByText('By section').click()
  const sections = page.locator('details').getByRole('checkbox')
  const order = [...new Set(works.map(work => work.section))]
  await expect(sections).toHaveCount(order.length)
  const take = page.getByRole('button', { name: 'take what is gathered' })
  const settle = page.getByRole('group', { name: 'To settle before it is taken' })
  for (const index of order.keys()) {
    await sections.nth(index).check()
    await expect(page.getByText(/^Gathered: one section from /)).toBeVisible()
    if (await settle.isVisible()) {
      await expect(settle).toContainText('would stand in')
      await expect(take).toBeDisabled()
    } else await expect(take).toBeEnabled()
    await sections.nth(index).uncheck()
    await expect(page.getByText(/^Gathered: /)).toHaveCount(0)
  }
})

test('a section alone is taken, and works of others stay where they are', async ({ page, host }) => {
  const exhibition = await openSequence(page, host)
  const { works } = (await host.call(page, 'exhibition.frieze', { exhibition })) as { works: readonly PlacedWork[] }
  const walls = await wallsOf(page, host, exhibition)
  // A wall that the section may not hang on keeps what others have there; on all others only what stays is in its way,
  // and no work of its own that finds no room.
  const free = (wall: Wall) => wall.works.filter(({ stays }) => !stays)
  const kept = walls.toSorted((a, b) => free(b).length - free(a).length)[0]
  const there = new Set(kept?.works.map(({ entry }) => entry))
  const sections = [...new Set(works.map(({ section }) => section))].map(id => ({
    id,
    works: works.filter(({ section }) => section === id),
  }))
  const own = sections
    .filter(one => one.id !== null && !one.works.some(({ entry }) => there.has(entry)))
    .toSorted((a, b) => a.works.length - b.works.length)[0]
  if (kept === undefined || own === undefined) throw new Error('every section has works on that wall')
  await host.call(page, 'sequence.addRule', {
    exhibition,
    kind: 'not on',
    works: own.works.map(({ work }) => work),
    places: [{ kind: 'wall', id: kept.face }],
  })
  const mine = new Set(own.works.map(({ entry }) => entry))
  const cleared: string[] = []
  for (const wall of walls.filter(({ face }) => face !== kept.face)) {
    const gone = new Set(free(wall).map(({ entry }) => entry))
    const { works: hung } = (await host.call(page, 'wall.elevation', { exhibition, face: wall.face })) as {
      works: readonly { entry: string; placement: string }[]
    }
    cleared.push(...hung.filter(({ entry }) => gone.has(entry)).map(({ placement }) => placement))
  }
  if (cleared.length > 0) await host.call(page, 'placement.remove', { placements: cleared })
  const before = await wallsOf(page, host, exhibition)
  await expect(page.locator('[data-today] [data-entry]')).toHaveCount(before.flatMap(wall => wall.works).length)
  const others = new Set(works.filter(({ entry }) => !mine.has(entry)).map(({ entry }) => entry))
  expect(placedOf(before, others).filter(({ stays }) => !stays).length).toBeGreaterThan(0)

  await askForProposals(page)
  await page.getByText('By section').click()
  await page.locator('details').getByRole('checkbox').nth(sections.indexOf(own)).check()
  const take = page.getByRole('button', { name: 'take what is gathered' })
  await expect(take).toBeEnabled()
  await take.click()
  await expect(page.getByText(/as proposed/).first()).toBeVisible()
  const after = await wallsOf(page, host, exhibition)
  expect(placedOf(after, others)).toEqual(placedOf(before, others))
  expect(placedOf(after, mine).length).toBeGreaterThan(0)
  expect(placedOf(after, mine)).not.toEqual(placedOf(before, mine))
  for (const { face, stays } of placedOf(after, mine)) if (!stays) expect(face).not.toBe(kept.face)
  await page.keyboard.press('Control+z')
  await expect.poll(() => wallsOf(page, host, exhibition)).toEqual(before)
})
