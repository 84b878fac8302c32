/** The crew's screen: days to scale, who lifts what, hardware and stock, the order, holes filled, locks, their papers. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import type { CrewHardware, CrewPlanAnswer } from '../../src/contract/areas/crew-shape.ts'
import type { Output } from '../../src/contract/contract.ts'
import { expect, type RunningHost, test } from './host.ts'

const patient = { timeout: 40_000 } as const

async function exhibitionOf(page: Page, host: RunningHost): Promise<string> {
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as Output<'exhibition.list'> // the answer of that name
  return exhibitions.find(one => one.works > 0)?.id ?? ''
}

async function planOf(page: Page, host: RunningHost): Promise<CrewPlanAnswer> {
  return (await host.call(page, 'crew.plan', { exhibition: await exhibitionOf(page, host) })) as CrewPlanAnswer // likewise
}

test('days are drawn to scale with every work, and follow the crew', async ({ page, host }) => {
  await host.open(page, '#/crew')
  const drawing = page.getByRole('group', { name: /Who hangs what when/ })
  await expect(drawing).toBeVisible(patient)
  const plan = await planOf(page, host)
  for (const task of plan.tasks) {
    if (task.placement === null) continue
    const index = plan.tasks.indexOf(task)
    await expect(drawing.locator(`[data-task="${index}"]`).first()).toBeAttached()
  }
  // Work that takes twice as long has a bar twice as wide, over the evenings too.
  const widths = await drawing.locator('[data-task]').evaluateAll(bars => {
    const sums: Record<string, number> = {}
    for (const bar of bars) {
      const key = bar.getAttribute('data-task') ?? ''
      const rect = bar.querySelector('rect')
      sums[key] = (sums[key] ?? 0) + Number(rect?.getAttribute('width')) + 1
    }
    return sums
  })
  const scales = plan.tasks.map((task, index) => (widths[index] ?? 0) / (task.end - task.start))
  const [first = 0] = scales
  expect(first).toBeGreaterThan(1)
  for (const scale of scales) expect(scale).toBeCloseTo(first, 6)

  // One team has nobody to wait for, and no drawing of idle time.
  await page.getByRole('textbox', { name: 'Teams of two' }).fill('1')
  await page.keyboard.press('Enter')
  await expect(page.getByText('nobody idle')).toBeVisible(patient)
  await expect(drawing.getByText('team 2')).toHaveCount(0)
  expect((await planOf(page, host)).crew).toMatchObject({ teams: 1, teamsFrom: 'this show' })
  // Emptied, the house rule stands again.
  await page.getByRole('textbox', { name: 'Teams of two' }).fill('')
  await page.keyboard.press('Enter')
  await expect(drawing.getByText('team 2').first()).toBeVisible(patient)
  expect((await planOf(page, host)).crew).toMatchObject({ teamsFrom: 'house rule' })
})

test('the drawing is read by keyboard', async ({ page, host }) => {
  await host.open(page, '#/crew/days')
  const drawing = page.getByRole('group', { name: /Who hangs what when/ })
  await expect(drawing).toBeVisible(patient)
  const plan = await planOf(page, host)
  await drawing.locator('[tabindex="0"]').focus()
  const target = plan.tasks.findIndex(task => task.placement !== null)
  for (let step = 0; step < target; step += 1) await page.keyboard.press('ArrowRight')
  const work = plan.works.find(each => each.placement === plan.tasks[target]?.placement)
  await expect(page.locator('.said').getByText(work?.title ?? 'none', { exact: true })).toBeVisible()
  await expect(page.locator('.said')).toContainText(`Tag ${work?.tag}.`)
})

test('a house’s own minutes come with their source, and the days follow', async ({ page, host }) => {
  await host.open(page, '#/crew/days')
  await page.getByRole('button', { name: /^Cleat: \d+ minutes\. Change it$/ }).click(patient)
  const form = page.getByRole('form', { name: 'Cleat' })
  await form.getByRole('textbox', { name: 'minutes' }).fill('30')
  await form.getByRole('textbox', { name: 'from where' }).fill('')
  await expect(form.getByRole('button', { name: 'set it' })).toBeDisabled()
  await form.getByRole('textbox', { name: 'from where' }).fill('timed in March')
  await form.getByRole('button', { name: 'set it' }).click()
  await expect(page.getByText('the house’s own: timed in March')).toBeVisible(patient)
  const plan = await planOf(page, host)
  const cleats = plan.works.filter(work => work.method === 'cleat')
  expect(cleats.length).toBeGreaterThan(0)
  expect(cleats.every(work => work.minutes === 30)).toBe(true)
})

test('equipment is listed as its plate says, and works are planned with it', async ({ page, host }) => {
  await host.open(page, '#/crew/lifting')
  const { equipment } = (await host.call(page, 'equipment.list', {})) as Output<'equipment.list'> // the answer of that name
  for (const { id } of equipment) await host.call(page, 'equipment.remove', { id })
  await expect(page.getByText('▲ none on the list').first()).toBeVisible(patient)
  const form = page.getByRole('form', { name: 'Add equipment' })
  await form.getByRole('textbox', { name: 'what' }).fill('stacker lift, hired')
  await form.getByRole('textbox', { name: 'carries' }).fill('heavy')
  await form.getByRole('textbox', { name: 'reaches' }).fill('3.6 m')
  await form.getByRole('button', { name: 'add it' }).click()
  await expect(form.getByRole('alert')).toContainText('Carries:')
  await form.getByRole('textbox', { name: 'carries' }).fill('300 lb')
  await form.getByRole('button', { name: 'add it' }).click()
  await expect(page.getByText('▲ none on the list')).toHaveCount(0, patient)
  const [lift] = (await planOf(page, host)).equipment
  // 300 × 0.45359237 kg (NIST SP 811, from memory).
  expect(lift).toMatchObject({ name: 'stacker lift, hired', carriesKg: 136.077711, reaches: 3600 })
})

test('the lifting check says the published limit and its caution', async ({ page, host }) => {
  await host.open(page, '#/crew/lifting')
  const check = page.getByRole('region', { name: 'Can they lift it?' })
  await check.getByLabel('it weighs').fill('23 kg', patient)
  await check.getByLabel('hands in front of the ankles').fill('25 cm')
  await check.getByLabel('lifted from').fill('75 cm')
  await check.getByLabel('set down at').fill('75 cm')
  await check.getByLabel('grip').selectOption('good')
  await check.getByLabel('people').selectOption('1')
  // NIOSH 94-110: hands at 25 cm out and 75 cm up, no travel, no turn, good grip, once in five minutes: every factor
  // is 1 and the limit is the load constant, 23 kg.
  await expect(check.getByText('● within the limit:')).toBeVisible(patient)
  await expect(check.getByRole('row', { name: /^limit/ })).toContainText('23 kg')
  // At 50 cm out the horizontal factor is 25/50.
  await check.getByLabel('hands in front of the ankles').fill('50 cm')
  await expect(check.getByText('■ too heavy:')).toBeVisible(patient)
  await expect(check.getByText('2.00', { exact: true })).toBeVisible()
  await expect(check.getByText('local codes and trained people decide', { exact: false }).first()).toBeVisible()
})

test('stock is counted in its place, and what is to get follows', async ({ page, host }) => {
  await host.open(page, '#/crew/hardware')
  const exhibition = await exhibitionOf(page, host)
  const hardware = async () => (await host.call(page, 'crew.hardware', { exhibition })) as CrewHardware // the answer of that name
  const line = (await hardware()).lines.find(one => one.fixing !== null && one.toGet > 3)
  const toGet = (line?.toGet ?? 0) + (line?.inStock ?? 0) - 2
  const row = page.getByRole('row').filter({ has: page.getByRole('textbox', { name: `${line?.what}, in stock` }) })
  await row.getByRole('textbox').fill('two', patient)
  await page.keyboard.press('Enter')
  await expect(row.getByRole('alert')).toContainText('no whole number')
  await row.getByRole('textbox').fill('2')
  await page.keyboard.press('Enter')
  await expect(row).toContainText(String(toGet), patient)
  expect((await hardware()).lines.find(one => one.fixing === line?.fixing)).toMatchObject({
    inStock: 2,
    toGet,
  })
  // The boxes hold what the total needs, to the last screw.
  const { lines, boxes } = await hardware()
  for (const { what, needed, tool } of lines) {
    const inBoxes = boxes.flatMap(box => box.lines).filter(each => each.what === what)
    if (inBoxes.length > 0 && tool === '') expect(inBoxes.reduce((sum, each) => sum + each.count, 0)).toBe(needed)
  }
})

test('tables are sorted by any column, up and down', async ({ page, host }) => {
  await host.open(page, '#/crew/order')
  const table = page.getByRole('region', { name: 'Going up' }).getByRole('table')
  await expect(table).toBeVisible(patient)
  const column = () => table.locator('tbody td:first-child').allTextContents()
  const given = (await column()).map(Number)
  expect(given).toEqual(given.toSorted((a, b) => a - b))
  const head = table.getByRole('columnheader', { name: 'Tag', exact: true })
  await head.getByRole('button').click()
  await head.getByRole('button').click()
  await expect(head).toHaveAttribute('aria-sort', 'descending')
  expect((await column()).map(Number)).toEqual(given.toReversed())
  // What hangs last comes down first, with the tag it hung by.
  const down = page.getByRole('region', { name: 'Coming down' }).getByRole('table')
  await expect(down.locator('tbody tr').first().locator('td').nth(1)).toHaveText(String(given.length))
})

test('the register of locks says where, what, with which tool, and by whom it was shut', async ({ page, host }) => {
  await host.open(page, '#/crew/locks')
  await expect(page.getByRole('row').nth(1)).toBeVisible(patient)
  const plan = await planOf(page, host)
  const work = plan.works.find(each => each.method === 'd-rings')
  const { works } = (await host.call(page, 'wall.elevation', {
    exhibition: await exhibitionOf(page, host),
    face: work?.face,
  })) as Output<'wall.elevation'> // the answer of that name
  const placed = works.find(each => each.placement === work?.placement)
  const { id: keeper } = (await host.call(page, 'fixing.add', {
    name: 'lock plate, slotted',
    kind: 'lock',
    holeOffset: 0,
    ratedKg: null,
    tool: 'key no. 4',
  })) as Output<'fixing.add'> // likewise
  await host.call(page, 'work.setBack', {
    work: work?.work,
    method: 'security-hangers',
    seenFrom: 'front',
    data: {
      left: { drop: 40, inset: 60 },
      right: { drop: 40, inset: 60 },
      lock: { up: 30 },
      head: 'upright',
      tool: 'flat-key',
      toolFrom: 'below',
    },
  })
  await host.call(page, 'placement.update', {
    id: placed?.placement,
    changes: { keeper: { was: placed?.keeper?.id ?? null, to: keeper } },
  })
  const row = page.getByRole('row').filter({ hasText: 'lock plate, slotted' }).first()
  await expect(row).toContainText('key no. 4', patient)
  await expect(row).toContainText('▲ open')
  await host.call(page, 'placement.setState', { placements: [placed?.placement], to: 'locked' })
  await expect(row).toContainText('● shut', patient)
})

const papers = [
  { part: 'hardware', button: 'make the hardware list', files: 2 },
  { part: 'order', button: 'make the order and the tags', files: 3 },
  { part: 'holes', button: 'make the patch list', files: 2 },
  { part: 'locks', button: 'make the lock register', files: 2 },
] as const

test('each list becomes papers where it is read', async ({ page, host }) => {
  test.setTimeout(180_000)
  for (const { part, button, files } of papers) {
    await host.open(page, `#/crew/${part}`)
    await page.getByRole('button', { name: button }).click(patient)
    await expect(page.getByRole('link', { name: /\.(pdf|xlsx)$/ })).toHaveCount(files, { timeout: 60_000 })
  }
})

test('an empty catalogue says what to do next on every part', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/crew')
  await expect(page.getByText('There is no show yet.')).toBeVisible(patient)
  await emptyHost.call(page, 'exhibition.add', { title: 'Low Water' })
  await expect(page.getByText('No work stands on a wall yet.')).toBeVisible(patient)
  const said = {
    Lifting: 'No work stands on a wall yet.',
    Hardware: 'No hardware yet.',
    Order: 'No work stands on a wall yet.',
    Holes: 'No holes:',
    Locks: 'No lock is planned.',
  }
  for (const [word, text] of Object.entries(said)) {
    await page.getByRole('link', { name: word, exact: true }).click()
    await expect(page.getByText(text)).toBeVisible(patient)
  }
})

for (const colorScheme of ['light', 'dark'] as const) {
  test(`every part is free of barriers, ${colorScheme}`, async ({ page, host }) => {
    test.setTimeout(180_000)
    await page.emulateMedia({ colorScheme })
    for (const part of ['days', 'lifting', 'hardware', 'order', 'holes', 'locks']) {
      await host.open(page, `#/crew/${part}`)
      await expect(page.locator('.crew table, .crew .empty').first()).toBeVisible(patient)
      const { violations } = await new AxeBuilder({ page }).analyze()
      expect(violations.map(({ id, nodes }) => [part, id, nodes[0]?.html])).toEqual([])
    }
  })
}

test('holes that serve nothing are ticked as filled, one and all, and taken back', async ({ page, host }) => {
  await host.open(page, '#/crew/holes')
  const exhibition = await exhibitionOf(page, host)
  const deadOn = async (face: string) =>
    ((await host.call(page, 'mark.ofFace', { exhibition, face })) as Output<'mark.ofFace'>).dead // the answer of that name
  // A work is drilled for and dropped: its holes serve nothing.
  const plan = await planOf(page, host)
  const work = plan.works.find(each => each.method === 'd-rings')
  const face = work?.face ?? ''
  const { marks } = (await host.call(page, 'mark.ofFace', { exhibition, face })) as Output<'mark.ofFace'> // likewise
  const own = marks.filter(mark => mark.placement === work?.placement)
  const slots = { exhibition, face, marks: own.map(({ placement, slot }) => ({ placement, slot })) }
  await host.call(page, 'mark.services', { ...slots, checked: true })
  await host.call(page, 'mark.set', { ...slots, to: 'drilled' })
  const change = { kind: 'drop', entry: own[0]?.entry }
  await host.call(page, 'late.take', { exhibition, change, key: 'leave-gap', moves: [] })
  const dead = await deadOn(face)
  expect(dead.length).toBeGreaterThan(1)
  const { rooms } = (await host.call(page, 'room.list', {})) as Output<'room.list'> // likewise
  const name = rooms.flatMap(room => room.walls.map(wall => ({ face: wall.face, name: `${room.name}, ${wall.name}` })))
  const heading = name.find(one => one.face === face)?.name ?? ''
  const wall = page.locator('.wall').filter({ has: page.getByRole('heading', { name: heading }) })
  await expect(wall.getByRole('checkbox')).not.toHaveCount(0, patient)
  const hole = dead[0]
  const box = wall.getByRole('checkbox', { name: /^Filled: hole / })
  await expect.poll(() => box.count(), patient).toBeGreaterThanOrEqual(dead.length)
  const open = () => box.and(wall.locator('input:not(:checked)'))
  const before = await open().count()
  await open().first().click()
  await expect(open()).toHaveCount(before - 1, patient)
  await expect.poll(async () => (await deadOn(face)).length, patient).toBe(dead.length - 1)
  // Who filled it stands beside it, and taking the tick away opens the hole again.
  const ticked = wall.getByRole('row').filter({ has: page.locator('input:checked') })
  await expect(ticked.last()).toContainText('●')
  await ticked.last().getByRole('checkbox').click()
  await expect.poll(async () => (await deadOn(face)).length, patient).toBe(dead.length)
  expect((await deadOn(face)).map(each => each.id)).toContain(hole?.id)
  await wall.getByRole('button', { name: /^tick all \d+$/ }).click()
  await expect(wall.getByText('all filled')).toBeVisible(patient)
  await expect.poll(() => deadOn(face), patient).toEqual([])
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await deadOn(face)).length, patient).toBe(dead.length)
})
