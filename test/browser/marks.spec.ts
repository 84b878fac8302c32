/** At the wall with a pencil and a drill: marks ticked, holes that stay, what is behind, the nearest place that works. */
import AxeBuilder from '@axe-core/playwright'
import type { Locator, Page } from '@playwright/test'
import { expect, goToWall, type RunningHost, sitDown, test } from './host.ts'

interface Placed {
  readonly placement: string
  readonly entry: string
  readonly work: string
  readonly running: string
  readonly x: number
  readonly centreY: number
  readonly state: string
  readonly hooksApart: number | null
  readonly lockTool: string
  readonly keeper: { readonly name: string } | null
  readonly size: { readonly width: number; readonly height: number } | null
}
interface Made {
  readonly slot: string
  readonly placement: string | null
  readonly x: number
  readonly y: number
  readonly state: string
  readonly services: { readonly by: string } | null
  readonly filled: unknown
  readonly note: string
}
interface Facts {
  readonly exhibition: string
  readonly wall: {
    readonly id: string
    readonly face: string
    readonly length: number
    readonly height: number
    readonly joints: readonly number[]
    readonly ceiling: readonly (readonly [number, number])[]
    readonly rail: readonly (readonly [number, number])[]
  }
  readonly works: readonly Placed[]
  readonly made: readonly Made[]
}

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

/** What is behind and above a wall, in place of what was there. */
async function behind(
  page: Page,
  host: RunningHost,
  face: string,
  to: Partial<Pick<Facts['wall'], 'joints' | 'ceiling' | 'rail'>>,
): Promise<void> {
  const { wall } = await facts(page, host, face)
  const changes = Object.fromEntries(
    (['joints', 'ceiling', 'rail'] as const).flatMap(key =>
      to[key] === undefined ? [] : [[key, { was: wall[key], to: to[key] }]],
    ),
  )
  await host.call(page, 'wall.update', { id: wall.id, changes })
}

async function madeOf(page: Page, host: RunningHost, face: string, work: Placed): Promise<readonly Made[]> {
  return (await facts(page, host, face)).made.filter(mark => mark.placement === work.placement)
}

const shape = (page: Page, work: Placed): Locator => page.locator(`[data-placement="${work.placement}"]`)
const tick = (page: Page, name: string | RegExp): Locator => page.getByRole('checkbox', { name })
const drawn = (page: Page, kind: string): Locator => page.locator(`[data-drawn="${kind}"]`)

async function select(page: Page, host: RunningHost, face: string, running: string): Promise<Placed> {
  const work = await placed(page, host, face, running)
  await shape(page, work).click()
  await expect(shape(page, work)).toHaveAttribute('aria-pressed', 'true')
  return work
}

/** Services looked for, marked and drilled, by keys alone. */
async function drill(page: Page): Promise<void> {
  await page.keyboard.press('v')
  await expect(tick(page, /^all 2 marks: looked/)).toBeChecked()
  await page.keyboard.press('d')
  await expect(tick(page, 'all 2 marks: drilled')).toBeChecked()
}

test('marks are ticked one by one, with who and when, and undo takes the last tick back', async ({ page, host }) => {
  const face = await stand(page, host)
  const two = await select(page, host, face, '2')
  await tick(page, 'left mark: marked on the wall').click()
  await expect(tick(page, 'left mark: marked on the wall')).toBeChecked()
  await expect(tick(page, 'right mark: marked on the wall')).not.toBeChecked()
  await expect(tick(page, 'all 2 marks: marked on the wall')).toHaveAttribute('aria-checked', 'mixed')
  await expect(drawn(page, 'marked')).toHaveCount(1)
  await expect(page.getByRole('region', { name: 'Marks as they are made' })).toContainText(
    /marked Orla Fenwright, \d+.\w+/,
  )
  await expect(shape(page, two)).toHaveAttribute('aria-label', /1 of 2 marked/)
  expect((await madeOf(page, host, face, two)).map(mark => [mark.slot, mark.state])).toEqual([['left', 'marked']])
  await page.keyboard.press('Control+z')
  await expect(tick(page, 'left mark: marked on the wall')).not.toBeChecked()
  await expect(drawn(page, 'marked')).toHaveCount(0)
})

test('drilling before anybody looked for services is refused in words, and the button beside it does both', async ({
  page,
  host,
}) => {
  const face = await stand(page, host)
  const two = await select(page, host, face, '2')
  await tick(page, 'all 2 marks: drilled').click()
  await expect(page.getByRole('alert')).toContainText('Look for pipes and cables first')
  expect(await madeOf(page, host, face, two)).toEqual([])
  // The answer has the focus: whoever came by keyboard goes on by keyboard.
  await page.keyboard.press('Enter')
  await expect(tick(page, 'all 2 marks: drilled')).toBeChecked()
  await expect(page.getByRole('alert')).toHaveCount(0)
  const made = await madeOf(page, host, face, two)
  expect(made.map(mark => [mark.state, mark.services?.by])).toEqual([
    ['drilled', 'Orla Fenwright'],
    ['drilled', 'Orla Fenwright'],
  ])
  await expect(drawn(page, 'drilled')).toHaveCount(2)
})

test('what was found at one mark is written there as one edit, and stands in the work’s record', async ({
  page,
  host,
}) => {
  const face = await stand(page, host)
  const two = await select(page, host, face, '2')
  const ticks = page.getByRole('region', { name: 'Marks as they are made' })
  await tick(page, 'left mark: marked on the wall').click()
  await ticks.getByRole('button', { name: 'Write a note at the left mark' }).click()
  const field = ticks.getByRole('textbox', { name: 'Note at the left mark' })
  await field.fill('hit metal at 20 mm, moved 12 mm right')
  await field.press('Enter')
  await expect(ticks.getByText('hit metal at 20 mm, moved 12 mm right')).toBeVisible()
  const note = async () =>
    (await facts(page, host, face)).made.find(mark => mark.placement === two.placement && mark.slot === 'left')?.note
  expect(await note()).toBe('hit metal at 20 mm, moved 12 mm right')
  // Escape leaves what is written.
  await ticks.getByRole('button', { name: 'Change the note at the left mark' }).click()
  await field.fill('nothing')
  await field.press('Escape')
  await expect(ticks.getByText('hit metal at 20 mm, moved 12 mm right')).toBeVisible()
  await page.goto(new URL(`/#/work/${two.work}`, page.url()).href)
  await expect(page.getByRole('region', { name: 'Written at its marks' })).toContainText(
    'left mark: hit metal at 20 mm, moved 12 mm right',
  )
  await page.keyboard.press('Control+z')
  await expect(page.getByRole('region', { name: 'Written at its marks' })).toHaveCount(0)
  expect(await note()).toBe('')
})

test('a hole is taken back with a reason only, which stays on record', async ({ page, host }) => {
  const face = await stand(page, host)
  const two = await select(page, host, face, '2')
  await drill(page)
  await tick(page, 'left mark: drilled').click()
  const why = page.getByRole('textbox', { name: /It was, because/ })
  await expect(why).toBeFocused()
  await expect(page.getByRole('button', { name: 'Take it back' })).toBeDisabled()
  await why.fill('Ticked on the wrong work')
  await why.press('Enter')
  await expect(tick(page, 'left mark: drilled')).not.toBeChecked()
  const made = await madeOf(page, host, face, two)
  expect(made.find(mark => mark.slot === 'left')).toMatchObject({ state: 'marked', note: 'Ticked on the wrong work' })
  expect(made.find(mark => mark.slot === 'right')).toMatchObject({ state: 'drilled' })
})

test('a drilled work does not move by hand, keys or figures, and says so', async ({ page, host }) => {
  const face = await stand(page, host)
  const two = await select(page, host, face, '2')
  await drill(page)
  await page.keyboard.press('ArrowRight')
  await expect(page.getByRole('status').filter({ hasText: 'is drilled here' })).toContainText('late change')
  await expect(page.getByRole('textbox', { name: 'Left edge' })).toBeDisabled()
  await expect(page.getByRole('region', { name: 'Where it stands' })).toContainText('its holes stay where they are')
  const box = await shape(page, two).locator('.outline').boundingBox()
  await page.mouse.move((box?.x ?? 0) + 20, (box?.y ?? 0) + 40)
  await page.mouse.down()
  await page.mouse.move((box?.x ?? 0) + 120, (box?.y ?? 0) + 40, { steps: 6 })
  await page.mouse.up()
  await page.waitForTimeout(900)
  expect((await placed(page, host, face, '2')).x).toBe(two.x)
})

test('the plan moves under a pencil mark: how far is said, and it is marked anew', async ({ page, host }) => {
  const face = await stand(page, host)
  const three = await select(page, host, face, '3')
  await page.keyboard.press('m')
  await expect(tick(page, 'all 2 marks: marked on the wall')).toBeChecked()
  await page.keyboard.press('Shift+ArrowRight')
  await page.keyboard.press('Shift+ArrowRight')
  await expect.poll(async () => (await placed(page, host, face, '3')).x).toBeCloseTo(three.x + 20, 6)
  const row = page.getByRole('region', { name: 'Marks as they are made' })
  await expect(row).toContainText(/marked 20\smm off the plan/)
  await expect(page.locator('.made text')).toHaveText('marked 20 off the plan')
  // A hole would go where the pencil is, not where the plan is now.
  await page.keyboard.press('v')
  await page.keyboard.press('d')
  await expect(page.getByRole('alert')).toContainText('The plan has moved this mark')
  await page.getByRole('button', { name: 'Mark it anew', exact: true }).click()
  await expect(row).not.toContainText('off the plan')
  const moved = await placed(page, host, face, '3')
  // What was looked at is the place where the mark was.
  await expect(tick(page, 'all 2 marks: looked for pipes and cables')).not.toBeChecked()
  for (const mark of await madeOf(page, host, face, moved)) {
    expect(Math.abs(mark.x - moved.x)).toBeLessThan((moved.size?.width ?? 0) / 2)
  }
  await expect(page.locator('.made text')).toHaveCount(0)
})

test('two keys pressed quickly are written in their order, however slow the first is', async ({ page, host }) => {
  const face = await stand(page, host)
  await select(page, host, face, '3')
  const meant: string[] = []
  await page.route('**/call', async route => {
    const { name } = JSON.parse(route.request().postData() ?? '{}') as { name?: string }
    if (name?.startsWith('mark.') === true && name !== 'mark.ofFace') meant.push(name)
    if (name === 'mark.services') await new Promise(resolve => setTimeout(resolve, 1500))
    await route.continue()
  })
  await page.keyboard.press('m')
  await expect(tick(page, 'all 2 marks: marked on the wall')).toBeChecked()
  await page.keyboard.press('v')
  await page.keyboard.press('d')
  await expect(tick(page, 'all 2 marks: drilled')).toBeChecked()
  await expect(page.getByRole('alert')).toHaveCount(0)
  expect(meant).toEqual(['mark.set', 'mark.services', 'mark.set'])
})

test('the steps on the wall: hung, level, and checked by a second person only', async ({ page, host }) => {
  const face = await stand(page, host)
  await select(page, host, face, '2')
  await page.keyboard.press('h')
  await expect(tick(page, '2 is hung')).toBeChecked()
  await expect(page.getByRole('region', { name: 'How far it is hung' })).toContainText('Orla Fenwright')
  await page.keyboard.press('h')
  await expect(tick(page, '2 is level')).toBeChecked()
  await tick(page, '2 is checked by a second person').click()
  await expect(page.getByRole('alert')).toContainText('somebody else checks it')
  await expect(page.getByRole('link', { name: 'Let the second person sit down' })).toBeVisible()
  expect((await placed(page, host, face, '2')).state).toBe('level')
  await page.keyboard.press('ArrowRight')
  await expect(page.getByRole('status').filter({ hasText: '2 is level here' })).toBeVisible()
  await tick(page, '2 is hung').click()
  await expect(tick(page, '2 is hung')).not.toBeChecked()
  expect((await placed(page, host, face, '2')).state).toBe('planned')
})

test('marks of several works are ticked at once', async ({ page, host }) => {
  const face = await stand(page, host)
  await select(page, host, face, '2')
  await shape(page, await placed(page, host, face, '3')).click({ modifiers: ['Shift'] })
  await page.keyboard.press('m')
  await expect(tick(page, 'all 4 marks: marked on the wall')).toBeChecked()
  await expect(drawn(page, 'marked')).toHaveCount(4)
})

test('holes that serve nothing are drawn, counted and filled', async ({ page, host }) => {
  const face = await stand(page, host)
  const two = await select(page, host, face, '2')
  await drill(page)
  const { exhibition } = await facts(page, host, face)
  const change = { kind: 'drop', entry: two.entry }
  const { offers } = (await host.call(page, 'late.offer', { exhibition, change })) as {
    offers: readonly { key: string; deadHoles: unknown[]; moves: readonly { entry: string; x: number; y: number }[] }[]
  }
  const offer = offers.find(each => each.deadHoles.length === 2)
  const moves = offer?.moves.map(({ entry, x, y }) => ({ entry, x, y }))
  await host.call(page, 'late.take', { exhibition, change, key: offer?.key, moves })
  await expect(drawn(page, 'dead')).toHaveCount(2)
  await page.getByRole('button', { name: '2 holes that serve nothing' }).click()
  const list = page.getByRole('region', { name: 'Holes that serve nothing' })
  await expect(list.getByRole('listitem')).toHaveCount(2)
  await list
    .getByRole('button', { name: /is filled/ })
    .first()
    .click()
  await expect(drawn(page, 'dead')).toHaveCount(1)
  await page.keyboard.press('Control+z')
  await expect(drawn(page, 'dead')).toHaveCount(2)
  await list.getByRole('button', { name: 'All are filled' }).click()
  await expect(drawn(page, 'dead')).toHaveCount(0)
  expect((await facts(page, host, face)).made.filter(mark => mark.filled !== null)).toHaveLength(2)
})

test('a mark in conflict is offered the nearest place that works, with its price, and a key takes it', async ({
  page,
  host,
}) => {
  const face = await stand(page, host)
  const two = await placed(page, host, face, '2')
  // A joint of the boards straight through its left hole, 1 mm beside it.
  const { marks } = (await host.call(page, 'mark.ofFace', {
    exhibition: (await facts(page, host, face)).exhibition,
    face,
  })) as { marks: readonly { placement: string; slot: string; planned: { x: number } }[] }
  const left = marks.find(mark => mark.placement === two.placement && mark.slot === 'left')?.planned.x ?? 0
  await behind(page, host, face, { joints: [left + 1] })
  await shape(page, two).click()
  const offers = page.getByRole('region', { name: 'Nearest place that works' })
  await expect(offers.getByRole('listitem').first()).toContainText(/move it [\d.]+\smm to the left/)
  await expect(offers).toContainText(/price: gap at its left/)
  const said = Number(/move it ([\d.]+)/.exec((await offers.textContent()) ?? '')?.[1])
  await page.keyboard.press('n')
  await expect.poll(async () => (await placed(page, host, face, '2')).x).toBeLessThan(two.x)
  const moved = await placed(page, host, face, '2')
  expect(Math.abs(two.x - moved.x - said)).toBeLessThan(0.51)
  await expect(offers).toHaveCount(0)
  // The joint is as far off as the house rule wants, and undo is one step.
  const after = (await host.call(page, 'finding.list', {
    exhibition: (await facts(page, host, face)).exhibition,
    face,
  })) as { findings: readonly { code: string; subject: { id: string } }[] }
  expect(
    after.findings.filter(found => found.code === 'mark-near-joint' && found.subject.id === two.placement),
  ).toEqual([])
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await placed(page, host, face, '2')).x).toBe(two.x)
})

test('hooks on a wire are set closer where that is nearer than moving the work', async ({ page, host }) => {
  const face = await stand(page, host)
  const one = await placed(page, host, face, '1')
  const { exhibition } = await facts(page, host, face)
  const { marks } = (await host.call(page, 'mark.ofFace', { exhibition, face })) as {
    marks: readonly { placement: string; slot: string; planned: { x: number } }[]
  }
  const right = marks.find(mark => mark.placement === one.placement && mark.slot === 'right')?.planned.x ?? 0
  await behind(page, host, face, { joints: [right + 20] })
  await shape(page, one).click()
  const offers = page.getByRole('region', { name: 'Nearest place that works' })
  const spacing = offers.getByRole('listitem').filter({ hasText: /set its hooks [\d.]+\smm apart instead of/ })
  await spacing.getByRole('button', { name: /Take it/ }).click()
  await expect.poll(async () => (await placed(page, host, face, '1')).hooksApart).not.toBe(null)
  expect((await placed(page, host, face, '1')).x).toBe(one.x)
  await expect(offers).toHaveCount(0)
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await placed(page, host, face, '1')).hooksApart).toBe(one.hooksApart)
})

test('cables from the rail, a lock with its tool, the section and the way down stand in the tag', async ({
  page,
  host,
}) => {
  const face = await stand(page, host)
  const [two, three] = [await placed(page, host, face, '2'), await placed(page, host, face, '3')]
  const { wall } = await facts(page, host, face)
  await behind(page, host, face, {
    rail: [
      [0, 3000],
      [wall.length, 3000],
    ],
  })
  const sides = { left: { drop: 100, inset: 60 }, right: { drop: 100, inset: 60 } }
  await host.call(page, 'work.setBack', {
    work: two.work,
    method: 'picture-rail',
    seenFrom: 'front',
    data: { ...sides, way: 'upright', by: { with: 'cable', hook: 40 } },
  })
  await host.call(page, 'work.setBack', {
    work: three.work,
    method: 'security-hangers',
    seenFrom: 'front',
    data: { ...sides, lock: { up: 40 }, head: 'upright', tool: 'hex-key', toolFrom: 'below' },
  })
  await host.call(page, 'fixing.add', { name: 'quarter-turn lock screw', kind: 'lock', holeOffset: 0, ratedKg: null })
  await shape(page, two).click()
  await expect(page.locator('[data-hanger]').first()).toContainText(/long/)
  const cables = await page.locator('.drawing g > path > title', { hasText: 'cable or rod' }).count()
  expect(cables).toBe(await page.locator('[data-hanger]').count())
  await page.getByText('How it comes down').click()
  await expect(page.getByText('Take hooks and hangers off the rail')).toBeVisible()
  await page.getByText('Section through wall, fixing and work').click()
  await expect(page.getByRole('img', { name: /Section through wall/ }).first()).toBeVisible()
  await shape(page, three).click()
  await expect(page.locator('[data-lock]')).toContainText('opened with')
  await page.getByLabel('Kept by').selectOption({ label: 'quarter-turn lock screw' })
  await expect(page.locator('[data-lock]')).toContainText('quarter-turn lock screw')
  await page.getByRole('textbox', { name: 'Opened with' }).fill('hex key 4 mm, long arm')
  await page.getByRole('textbox', { name: 'Opened with' }).press('Tab')
  await expect(page.locator('[data-lock]')).toContainText('opened with hex key 4 mm, long arm')
  await expect.poll(async () => (await placed(page, host, face, '3')).keeper?.name).toBe('quarter-turn lock screw')
  // The lock is a mark of its own, ticked like the others, and a step of the work.
  await expect(tick(page, 'lock: marked on the wall')).toBeVisible()
  await expect(tick(page, '3 is locked')).toBeVisible()
  await expect(page.getByRole('list', { name: /shapes on the drawing/ })).toContainText('lock or plate')
})

test('what is behind the wall is shown and hidden by a key', async ({ page, host }) => {
  const face = await stand(page, host)
  const { wall } = await facts(page, host, face)
  await behind(page, host, face, {
    joints: [1220, 2440],
    ceiling: [
      [0, wall.height - 100],
      [wall.length, wall.height],
    ],
  })
  await expect(page.locator('line.joint')).toHaveCount(2)
  expect(await page.locator('line.stud').count()).toBeGreaterThan(5)
  await expect(page.getByRole('list', { name: /shapes on the drawing/ })).toContainText('joint of boards')
  await page.keyboard.press('b')
  await expect(page.getByRole('button', { name: 'behind the wall hidden' })).toBeVisible()
  await expect(page.locator('line.joint, line.stud')).toHaveCount(0)
  await page.keyboard.press('b')
  await expect(page.locator('line.joint')).toHaveCount(2)
  await page.keyboard.press('?')
  await expect(page.getByRole('heading', { name: 'On a wall' })).toBeVisible()
  await expect(page.getByText('what is behind the wall, shown or hidden')).toBeVisible()
})

for (const look of ['light', 'dark'] as const) {
  test(`nothing stands in anybody’s way while marks are made, ${look}`, async ({ page, host }) => {
    await page.emulateMedia({ colorScheme: look })
    const face = await stand(page, host)
    const check = async () =>
      expect(
        (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html]),
      ).toEqual([])
    await select(page, host, face, '2')
    await page.keyboard.press('d')
    await expect(page.getByRole('alert')).toBeVisible()
    await check()
    await page.keyboard.press('Enter')
    await expect(tick(page, 'all 2 marks: drilled')).toBeChecked()
    await tick(page, 'left mark: drilled').click()
    await check()
  })
}
