/** A room made by typing sizes in mixed units, its closure told, its walls and what is fixed on them changed by hand. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, type RunningHost, test } from './host.ts'

interface Placed {
  readonly id: string
  readonly kind: string
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}
interface Wall {
  readonly id: string
  readonly name: string
  readonly length: number
  readonly lengthText: string
  readonly angle: number | null
  readonly floor: readonly (readonly [number, number])[]
  readonly ceiling: readonly (readonly [number, number])[]
  readonly rail: readonly (readonly [number, number])[]
  readonly railKgPerMetre: number | null
  readonly studs: readonly number[]
  readonly joints: readonly number[]
  readonly studFirst: number | null
  readonly studSpacing: number | null
  readonly backingFrom: number | null
  readonly backingTo: number | null
  readonly skirting: number | null
  readonly wallType: string
  readonly datumBy: string
  readonly behindSeen: string
  readonly openings: readonly Placed[]
  readonly keepClears: readonly (Placed & { readonly margin: number; readonly reason: string })[]
}

async function wallsOf(page: Page, host: RunningHost, room: string): Promise<readonly Wall[]> {
  // The answer of that name.
  const { rooms } = (await host.call(page, 'room.list', {})) as { rooms: { name: string; walls: Wall[] }[] }
  return rooms.find(one => one.name === room)?.walls ?? []
}

async function wallOf(page: Page, host: RunningHost, room: string, wall: string): Promise<Wall> {
  const found = (await wallsOf(page, host, room)).find(one => one.name === wall)
  if (found === undefined) throw new Error(`the demo has no ${wall} in ${room}`)
  return found
}

async function standBefore(page: Page, host: RunningHost, room: string, wall: string): Promise<void> {
  await host.open(page, '#/rooms')
  await page.getByRole('navigation', { name: 'Rooms' }).getByRole('button', { name: room }).click()
  await page
    .getByRole('row', { name: wall })
    .getByRole('button', { name: new RegExp(`^\\d+ ${wall}$`) })
    .click()
  await expect(page.getByRole('group', { name: `Elevation of ${wall}` })).toBeVisible()
}

test('a room is typed wall by wall, drawn, added, changed and the change undone', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/rooms')
  await page.getByRole('main').getByRole('textbox', { name: 'name', exact: true }).fill('North room')
  await page.getByRole('textbox', { name: 'height' }).fill('3450')
  const walls = page.getByRole('textbox', { name: /walls from left/ })
  await walls.fill('9140\n5,2 m\n9260\n5200 mm')
  await expect(page.getByText('The walls fail to close by 120 mm. Measure walls 1 and 3 again first')).toBeVisible()
  await walls.fill('9140\n5,2 m\n9140\n17\' 0 3/4"')
  await expect(page.getByText('▲ The walls close')).toHaveCount(0)
  await expect(page.getByText(/● The walls close/)).toBeVisible()
  await walls.fill('9140\nabout five\n9140\n5200')
  await expect(page.getByText(/Line 2/)).toBeVisible()
  await walls.fill('9140 x 5200')
  await expect(page.getByText('● The walls close exactly.')).toBeVisible()
  await page.getByRole('button', { name: 'add the room' }).click()

  const cell = page.getByRole('textbox', { name: 'wall 1, length' })
  await expect(cell).toHaveValue(/9.140/)
  await cell.fill('about nine')
  await cell.press('Enter')
  await expect(page.getByText('“about nine” does not start with a number.')).toBeVisible()
  await cell.fill('29\' 11 1/4"')
  await cell.press('Enter')
  const first = async () => (await wallsOf(page, emptyHost, 'North room'))[0]
  // 29 ft 11 1/4 in = 359.25 in × 25.4
  await expect.poll(async () => (await first())?.length).toBeCloseTo(9124.95, 6)
  expect(await first()).toMatchObject({ lengthText: '29\' 11 1/4"' })
  await page.locator('main').click({ position: { x: 5, y: 5 } })
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await first())?.length).toBe(9140)

  const corner = page.getByRole('textbox', { name: 'wall 1, corner angle' })
  await corner.fill('92,5')
  await corner.press('Enter')
  await expect.poll(async () => (await first())?.angle).toBe(92.5)
  await expect(page.getByText('▲ The walls fail to close by')).toBeVisible()
})

test('a wall is added after another and removed; one with works says why it stays', async ({ page, host }) => {
  await standBefore(page, host, 'River Room', 'south wall')
  const form = page.getByRole('form', { name: 'Add a wall' })
  await form.getByRole('textbox', { name: 'called' }).fill('short wall')
  await form.getByRole('textbox', { name: 'long' }).fill('2\' 6"')
  await form.getByRole('button', { name: 'add the wall' }).click()
  const names = async () => (await wallsOf(page, host, 'River Room')).map(wall => wall.name)
  await expect.poll(names).toEqual(['north wall', 'east wall', 'south wall', 'short wall', 'west wall'])
  await page.getByRole('button', { name: 'remove this wall' }).click()
  await expect.poll(names).toEqual(['north wall', 'east wall', 'south wall', 'west wall'])

  await page
    .getByRole('row', { name: 'south wall' })
    .getByRole('button', { name: /^\d+ south wall$/ })
    .click()
  await page.getByRole('button', { name: 'remove this wall' }).click()
  await expect(page.getByText(/stands? on this wall. Take (it|them) off first/)).toBeVisible()
  await page.getByRole('button', { name: 'remove this room' }).click()
  await expect(page.getByText(/stands? on this wall. Take (it|them) off first/)).toBeVisible()
  expect(await names()).toContain('south wall')
})

test('a wall moves by keys and by its number, the plan with it while it is held, each as one edit', async ({
  page,
  host,
}) => {
  await host.open(page, '#/rooms')
  await page.getByRole('navigation', { name: 'Rooms' }).getByRole('button', { name: 'Mill Room' }).click()
  const names = async () => (await wallsOf(page, host, 'Mill Room')).map(wall => wall.name)
  const rows = page.locator('tbody tr[data-wall]')
  const shown = () =>
    rows
      .getByRole('textbox', { name: /, name$/ })
      .evaluateAll(cells => cells.map(cell => (cell as HTMLInputElement).value)) // text boxes
  const first = await names()
  expect(first.length).toBeGreaterThan(3)
  const [a = '', b = '', c = '', ...rest] = first
  const number = (name: string) => page.getByRole('button', { name: new RegExp(`^\\d+ ${name}$`) })
  const plan = page.getByRole('group', { name: 'Plan of Mill Room' })
  const drawing = () => plan.evaluate(svg => svg.innerHTML)
  const before = await drawing()

  await number(a).focus()
  await page.keyboard.press('Alt+ArrowDown')
  await page.keyboard.press('Alt+ArrowDown')
  await expect.poll(names).toEqual([b, c, a, ...rest])
  await expect(number(a)).toBeFocused()
  await expect(page.getByRole('status').filter({ hasText: `${a} is wall 3 of ${first.length} now.` })).toHaveCount(1)
  await expect.poll(drawing).not.toBe(before)
  await page.keyboard.press('Control+z')
  await expect.poll(names).toEqual([b, a, c, ...rest])
  await page.keyboard.press('Control+z')
  await expect.poll(names).toEqual(first)
  await expect.poll(drawing).toBe(before)

  const edits = async () => ((await host.call(page, 'edit.list', {})) as { edits: unknown[] }).edits.length
  const made = await edits()
  const handle = number(a)
  await handle.scrollIntoViewIfNeeded()
  const from = await handle.boundingBox()
  const under = await rows.nth(2).boundingBox()
  if (from === null || under === null) throw new Error('the table is not drawn')
  const [x, y] = [from.x + 4, from.y + from.height / 2]
  const low = under.y + under.height * 0.8

  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x, low, { steps: 6 })
  await expect.poll(shown).toEqual([b, c, a, ...rest])
  // Nothing is written yet, and the plan turns already.
  expect(await drawing()).not.toBe(before)
  expect(await names()).toEqual(first)
  await page.keyboard.press('Escape')
  await expect.poll(shown).toEqual(first)
  await page.mouse.up()
  expect(await drawing()).toBe(before)
  expect(await edits()).toBe(made)

  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x, low, { steps: 6 })
  await page.mouse.up()
  await expect.poll(names).toEqual([b, c, a, ...rest])
  expect(await shown()).toEqual([b, c, a, ...rest])
  expect(await edits()).toBe(made + 1)

  // A press without a way is still the choice of a wall, and keys move the wall that is chosen.
  await number(b).click()
  await expect(page.getByRole('group', { name: `Elevation of ${b}` })).toBeVisible()
  await page.locator('main').click({ position: { x: 5, y: 5 } })
  await page.keyboard.press('Alt+ArrowDown')
  await expect.poll(names).toEqual([c, b, a, ...rest])
})

test('a window and a sensor are stretched by their edge points, each as one edit', async ({ page, host }) => {
  await standBefore(page, host, 'River Room', 'north wall')
  const wall = () => wallOf(page, host, 'River Room', 'north wall')
  const face = page.getByRole('group', { name: 'Elevation of north wall' })
  const sensor = {
    wall: (await wall()).id,
    kind: 'thermostat',
    x: 3000,
    y: 1200,
    width: 400,
    height: 500,
    margin: 100,
    label: 'stretched',
  }
  const { id } = (await host.call(page, 'keepClear.add', sensor)) as { id: string }
  const pulls = [
    { name: /^window/, of: async () => (await wall()).openings[0] },
    { name: /^thermostat “stretched”/, of: async () => (await wall()).keepClears.find(one => one.id === id) },
  ]
  for (const { name, of } of pulls) {
    const before = await of()
    if (before === undefined) throw new Error('the demo has no window here')
    const drawn = face.getByRole('button', { name }).first()
    await drawn.focus()
    await page.keyboard.press('Enter')
    const box = await drawn.locator(before.kind === 'window' ? '.opening' : '.keepClear').boundingBox()
    const whole = await face.locator('rect.wall').boundingBox()
    if (box === null || whole === null) throw new Error('it is not drawn')
    /** Millimetres a pixel. */
    const scale = (await wall()).length / whole.width
    // By the point in the middle of its right edge, then by its lower left corner; a point that does not lie on the
    // edge stands off a small thing by a few pixels, so each is taken by its own place.
    const points = face.locator('.grip')
    await expect(points).toHaveCount(8)
    const boxes = () => points.evaluateAll(list => list.map(one => one.getBoundingClientRect().toJSON()))
    const right = (await boxes()).reduce(
      (best, one) => (Math.abs(one.y - (box.y + box.height / 2 - 3.5)) < 2 && one.x > best.x ? one : best),
      { x: 0, y: 0 },
    )
    await page.mouse.move(right.x + 3.5, right.y + 3.5)
    await page.mouse.down()
    await page.mouse.move(right.x + 23.5, right.y + 13.5, { steps: 5 })
    await page.mouse.up()
    await expect.poll(async () => (await of())?.width).toBeGreaterThan(before.width)
    const wider = await of()
    expect(wider).toMatchObject({ x: before.x, y: before.y, height: before.height })
    expect(Math.abs((wider?.width ?? 0) - before.width - 20 * scale)).toBeLessThan(1.5 * scale)

    const corner = (await boxes()).reduce((best, one) => (one.x <= best.x && one.y >= best.y ? one : best), {
      x: 1e9,
      y: 0,
    })
    await page.mouse.move(corner.x + 3.5, corner.y + 3.5)
    await page.mouse.down()
    await page.mouse.move(corner.x + 3.5 - 8, corner.y + 3.5 - 10, { steps: 5 })
    await page.mouse.up()
    await expect.poll(async () => (await of())?.x).toBeLessThan(before.x)
    const both = await of()
    if (both === undefined || wider === undefined) throw new Error('it is gone')
    // Its right edge and its top stay.
    expect(both.x + both.width).toBeCloseTo(wider.x + wider.width, 6)
    expect(both.y + both.height).toBeCloseTo(wider.y + wider.height, 6)
    expect(both.y).toBeGreaterThan(wider.y)

    await page.keyboard.press('Control+z')
    await expect.poll(of).toEqual(wider)
    await page.keyboard.press('Control+z')
    await expect.poll(of).toEqual(before)
  }
})

test('a room closes by the house’s own rule, its gap said in the reader’s unit', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/rooms')
  const walls = page.getByRole('textbox', { name: /walls from left/ })
  await walls.fill('9140\n5200\n9260\n5200')
  await expect(page.getByText('▲ The walls fail to close by 120 mm')).toBeVisible()
  await emptyHost.call(page, 'rule.set', { key: 'closesWithin', was: 20, to: 150, source: 'rough stone' })
  await expect(page.getByText('● The walls close within 120 mm.')).toBeVisible()
  await page.getByRole('main').getByRole('textbox', { name: 'name', exact: true }).fill('Store')
  await page.getByRole('textbox', { name: 'height' }).fill('3 m')
  await page.getByRole('button', { name: 'add the room' }).click()
  await expect(page.getByText('● The walls close within 120 mm.')).toBeVisible()
  await emptyHost.call(page, 'rule.set', { key: 'closesWithin', was: 150, to: 10, source: 'new walls' })
  await expect(
    page.getByText('▲ The walls fail to close by 120 mm. Measure wall 1 and wall 3 again first'),
  ).toBeVisible()
})

test('a door is dragged, stretched, nudged and let go of, each as one edit', async ({ page, host }) => {
  await standBefore(page, host, 'River Room', 'east wall')
  const door = async () => (await wallOf(page, host, 'River Room', 'east wall')).openings[0]
  const before = await door()
  if (before === undefined) throw new Error('the demo has no door here')
  const drawn = page.getByRole('group', { name: 'Elevation of east wall' }).getByRole('button', { name: /^door/ })
  await drawn.scrollIntoViewIfNeeded()
  const box = await drawn.boundingBox()
  if (box === null) throw new Error('the door is not drawn')
  /** Pixels of the drawing for a millimetre. */
  const scale = box.width / before.width
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]

  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x - 30, y, { steps: 6 })
  await page.keyboard.press('Escape')
  await page.mouse.up()
  expect(await door()).toEqual(before)

  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x - 12, y, { steps: 4 })
  await page.mouse.move(x - 30, y, { steps: 4 })
  await page.mouse.up()
  await expect.poll(async () => (await door())?.x).toBeLessThan(before.x)
  const moved = await door()
  expect(Math.abs((moved?.x ?? 0) - (before.x - 30 / scale))).toBeLessThan(1.5 / scale)
  expect(moved).toMatchObject({ width: before.width, height: before.height, y: 0 })
  expect(Number.isInteger(moved?.x)).toBe(true)

  await drawn.focus()
  for (let press = 0; press < 3; press++) await page.keyboard.press('ArrowRight')
  await page.keyboard.press('Shift+ArrowRight')
  await expect.poll(async () => (await door())?.x).toBe((moved?.x ?? 0) + 13)
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await door())?.x).toBe(moved?.x)
  await page.keyboard.press('Control+z')
  await expect.poll(door).toEqual(before)
})

test('a thermostat and floor heights are typed in any unit, and changed where somebody else was first', async ({
  page,
  host,
}) => {
  await standBefore(page, host, 'Mill Room', 'north wall')
  const wall = () => wallOf(page, host, 'Mill Room', 'north wall')
  const known = (await wall()).keepClears.map(one => one.id)
  const form = page.getByRole('form', { name: 'Add something to north wall' })
  await form.getByRole('combobox', { name: 'add a' }).selectOption('thermostat')
  await form.getByRole('textbox', { name: 'from the left end' }).fill('4 ft')
  await form.getByRole('textbox', { name: 'above the floor' }).fill('1,42 m')
  await form.getByRole('textbox', { name: 'wide' }).fill('12')
  await form.getByRole('textbox', { name: 'high' }).fill('120')
  await form.getByRole('button', { name: 'add it' }).click()
  await expect(form.getByRole('alert')).toContainText('margin')
  await form.getByRole('textbox', { name: 'margin' }).fill('6 in')
  await form.getByRole('textbox', { name: 'called' }).fill('new sensor')
  await form.getByRole('button', { name: 'add it' }).click()
  const added = async () => (await wall()).keepClears.find(one => !known.includes(one.id))
  await expect.poll(async () => (await added())?.kind).toBe('thermostat')
  // 4 ft and 6 in in millimetres, exact by definition of the inch.
  expect(await added()).toMatchObject({ x: 1219.2, y: 1420, width: 12, height: 120, margin: 152.4 })

  const cell = page.getByRole('textbox', { name: 'new sensor, wide' })
  await cell.fill('90')
  const id = (await added())?.id
  await host.call(page, 'keepClear.update', { id, changes: { width: { was: 12, to: 100 } } })
  await cell.press('Enter')
  await expect(page.getByText('Meanwhile somebody made it “100”.')).toBeVisible()
  await page.getByRole('button', { name: 'write “90”' }).click()
  await expect.poll(async () => (await added())?.width).toBe(90)

  await page.getByRole('button', { name: 'back to the wall' }).click()
  const floor = page.getByRole('form', { name: 'Add a floor height' })
  await floor.getByRole('textbox', { name: 'at' }).fill('3 m')
  await floor.getByRole('textbox', { name: 'height' }).fill('-12')
  await floor.getByRole('button', { name: 'add' }).click()
  await expect.poll(async () => (await wall()).floor).toContainEqual([3000, -12])
})

test('what is behind and above a wall is typed in any unit, drawn, and taken back edit by edit', async ({
  page,
  host,
}) => {
  await standBefore(page, host, 'River Room', 'west wall')
  const wall = () => wallOf(page, host, 'River Room', 'west wall')
  // From a wall of which nothing is known.
  const known = await wall()
  const nothing = {
    studs: [],
    joints: [],
    ceiling: [],
    rail: [],
    floor: [],
    studFirst: null,
    studSpacing: null,
    backingFrom: null,
    backingTo: null,
    skirting: null,
    railKgPerMetre: null,
  }
  const emptied = Object.entries(nothing).map(([field, to]) => [
    field,
    { was: known[field as keyof typeof nothing], to },
  ]) // its keys
  await host.call(page, 'wall.update', { id: known.id, changes: Object.fromEntries(emptied) })
  const before = await wall()
  const behind = page.getByRole('region', { name: 'Behind and above west wall' })
  const face = page.getByRole('group', { name: 'Elevation of west wall' })
  const legend = page.getByRole('list', { name: 'What the lines on the wall mean' })
  const type = async (name: string, text: string) => {
    const cell = behind.getByRole('textbox', { name, exact: true })
    await cell.fill(text)
    await cell.press('Enter')
  }
  // The screen must have heard of it: typing what it still shows from before would rightly write nothing.
  await expect(behind.getByRole('textbox', { name: 'first stud', exact: true })).toHaveValue('')
  // A comb: 16 in on centre is 406.4 mm by the definition of the inch; 200 + k · 406.4 up to 5 400 is 13 studs.
  await type('first stud', '20 cm')
  await expect.poll(async () => (await wall()).studFirst).toBe(200)
  await type('studs apart', '16 in')
  await expect.poll(async () => (await wall()).studSpacing).toBeCloseTo(406.4, 9)
  await expect(legend).toContainText('13 studs, 406 apart')
  await expect(face.locator('.stud')).toHaveCount(13)

  // Found one by one they stand in place of the comb.
  const studs = behind.getByRole('form', { name: 'Add a stud' })
  await studs.getByRole('textbox').fill('2 ft; 0,6 m; abc')
  await studs.getByRole('button', { name: 'add' }).click()
  await expect(behind.getByRole('alert')).toContainText('“abc”')
  expect((await wall()).studs).toEqual(before.studs)
  await studs.getByRole('textbox').fill('2 ft; 0,2 m; 1020')
  await studs.getByRole('button', { name: 'add' }).click()
  await expect.poll(async () => (await wall()).studs).toEqual([200, 609.6, 1020])
  await expect(face.locator('.stud')).toHaveCount(3)
  await type('stud 2', '99 m')
  await expect(behind.getByRole('alert')).toContainText('is not on the wall')
  await behind.getByRole('textbox', { name: 'stud 2' }).press('Escape')
  await type('stud 2', '')
  await expect.poll(async () => (await wall()).studs).toEqual([200, 1020])
  await page.locator('main').click({ position: { x: 5, y: 5 } })
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await wall()).studs).toEqual([200, 609.6, 1020])

  const joints = behind.getByRole('form', { name: 'Add a joint' })
  await joints.getByRole('textbox').fill('4 ft; 8 ft')
  await joints.getByRole('textbox').press('Enter')
  await expect.poll(async () => (await wall()).joints).toEqual([1219.2, 2438.4])
  await expect(face.locator('.joint')).toHaveCount(2)

  await type('backing from', '4 ft')
  await type('backing to', '12 ft')
  await expect.poll(async () => (await wall()).backingTo).toBeCloseTo(3657.6, 9)
  expect((await wall()).backingFrom).toBeCloseTo(1219.2, 9)
  await type('skirting height', '15 cm')
  await expect.poll(async () => (await wall()).skirting).toBe(150)
  await behind.getByRole('combobox', { name: 'what it is built of' }).selectOption('brick')
  await expect.poll(async () => (await wall()).wallType).toBe('brick')
  await type('seen on site: who, how and when', 'detector, O. Fenwright, 2 March')
  await expect.poll(async () => (await wall()).behindSeen).toBe('detector, O. Fenwright, 2 March')

  const ceiling = behind.getByRole('form', { name: 'Add a ceiling height' })
  const point = async (form: typeof ceiling, at: string, height: string) => {
    await form.getByRole('textbox', { name: 'at' }).fill(at)
    await form.getByRole('textbox', { name: 'height' }).fill(height)
    await form.getByRole('button', { name: 'add' }).click()
  }
  await point(ceiling, '0', '3,1 m')
  await expect.poll(async () => (await wall()).ceiling).toEqual([[0, 3100]])
  await point(ceiling, '3 m', '3050')
  await expect
    .poll(async () => (await wall()).ceiling)
    .toEqual([
      [0, 3100],
      [3000, 3050],
    ])
  await type('ceiling point 2, height', '3 060')
  await expect.poll(async () => (await wall()).ceiling[1]).toEqual([3000, 3060])
  const rail = behind.getByRole('form', { name: 'Add a rail height' })
  await point(rail, '0', '4 m')
  await expect(behind.getByRole('alert')).toContainText('the ceiling is 3 100 mm there')
  await expect(rail.getByRole('textbox', { name: 'height' })).toHaveAttribute('aria-invalid', 'true')
  await point(rail, '0', '2900')
  await expect(behind.getByText('Load not known: nothing passes on this rail.')).toBeVisible()
  await type('picture rail, load on each metre', '66 lb')
  // 66 lb × 0.45359237 kg/lb.
  await expect.poll(async () => (await wall()).railKgPerMetre).toBeCloseTo(29.93709642, 8)
  await expect(legend).toContainText('picture rail')
})

test('heights and measures typed faster than they are written are all written', async ({ page, host }) => {
  await standBefore(page, host, 'River Room', 'west wall')
  const behind = page.getByRole('region', { name: 'Behind and above west wall' })
  const wall = () => wallOf(page, host, 'River Room', 'west wall')
  const known = await wall()
  await host.call(page, 'wall.update', {
    id: known.id,
    changes: { studs: { was: known.studs, to: [] }, rail: { was: known.rail, to: [] } },
  })
  await expect(behind.getByRole('textbox', { name: /^(stud|rail point) \d/ })).toHaveCount(0)
  await page.route('**/call', async route => {
    const { name } = JSON.parse(route.request().postData() ?? '{}') as { name?: string }
    if (name === 'wall.update' || name === 'wall.list') await new Promise(resolve => setTimeout(resolve, 1000))
    await route.continue()
  })
  const studs = behind.getByRole('form', { name: 'Add a stud' }).getByRole('textbox')
  for (const at of ['300', '700', '1100']) {
    await studs.fill(at)
    await studs.press('Enter')
  }
  const rail = behind.getByRole('form', { name: 'Add a rail height' })
  for (const [at, height] of [
    ['0', '2500'],
    ['2000', '2490'],
  ] as const) {
    await rail.getByRole('textbox', { name: 'at' }).fill(at)
    await rail.getByRole('textbox', { name: 'height' }).fill(height)
    await rail.getByRole('textbox', { name: 'height' }).press('Enter')
  }
  await expect.poll(async () => (await wall()).studs).toEqual([300, 700, 1100])
  await expect
    .poll(async () => (await wall()).rail)
    .toEqual([
      [0, 2500],
      [2000, 2490],
    ])
  await expect(studs).toHaveValue('')
  await expect(behind.getByRole('alert')).toHaveCount(0)
})

test('the level line is set up by a convention, and what it gives is shown at once', async ({ page, host }) => {
  await standBefore(page, host, 'River Room', 'south wall')
  const wall = () => wallOf(page, host, 'River Room', 'south wall')
  const behind = page.getByRole('region', { name: 'Behind and above south wall' })
  const was = await wall()
  // A floor that rises 30 mm to the middle and falls 50 mm to the right end.
  const floor = [
    [0, 0],
    [was.length / 2, 30],
    [was.length, -20],
  ]
  await host.call(page, 'wall.update', { id: was.id, changes: { floor: { was: was.floor, to: floor } } })
  const line = behind.getByRole('textbox', { name: 'level line, height' })
  await line.fill('1500')
  await line.press('Enter')
  const way = (name: RegExp) => behind.getByRole('radio', { name })
  // Over the left end: 1 500 there, 1 520 over the right. Over the middle or the high point: 30 higher. A ramp: 1 500.
  await expect(way(/over the left end.*1 500.*1 520/)).toBeVisible()
  await expect(way(/over the high point.*1 530.*1 550/)).toBeVisible()
  await expect(way(/over the middle.*1 530.*1 550/)).toBeVisible()
  await expect(way(/along a ramp.*1 500.*1 500/)).toBeVisible()
  await way(/high point/).check()
  await expect.poll(async () => (await wall()).datumBy).toBe('high')
  await expect(behind.getByText(/at its highest point.*At the left end that is 1.530.mm above the floor/)).toBeVisible()
  await page.locator('main').click({ position: { x: 5, y: 5 } })
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await wall()).datumBy).toBe(was.datumBy)
  await behind.getByText('House rules that decide here').click()
  await behind.getByRole('link', { name: /A hole is at least this far/ }).click()
  await expect(page.getByRole('heading', { name: 'House rules' })).toBeVisible()
  await expect(page.getByRole('button', { name: /A hole is at least this far/ })).toBeFocused()
})

test('a room typed by half keeps its walls and shows what is still to close; its floor in square feet', async ({
  page,
  emptyHost,
}) => {
  await emptyHost.open(page, '#/rooms')
  const walls = page.getByRole('textbox', { name: /walls from left/ })
  const drawing = page.getByRole('group', { name: 'The room as typed' })
  await walls.fill('9140\n5200\n9140')
  await expect(drawing.locator('.closing')).toHaveCount(1)
  await expect(page.getByText(/of floor/)).toHaveCount(0)
  await walls.fill('9140\n5200\n9140\n5200')
  await expect(drawing.locator('.closing')).toHaveCount(0)
  await expect(page.getByText('47.5 m² of floor')).toBeVisible()
  await page.getByRole('button', { name: 'in', exact: true }).click()
  await walls.fill("30' × 17'")
  // 30 × 17.
  await expect(page.getByText('510 ft² of floor')).toBeVisible()
})

test('a stored room that is typed by half stands open on the key plan, with a dashed side to close', async ({
  page,
  emptyHost,
}) => {
  await emptyHost.open(page, '#/rooms')
  const sides = [6000, 4000, 6000].map(length => ({ length, angle: 90 }))
  await emptyHost.call(page, 'room.add', { name: 'Half', height: 3000, walls: sides })
  const plan = page.getByRole('navigation', { name: 'Key plan' })
  await expect(plan.locator('line.closing')).toHaveCount(1)
  // Nobody bends what was typed: the long walls are level and half as long again as the short one.
  const ends = await plan
    .locator('line.reach')
    .evaluateAll(lines => lines.map(line => ['x1', 'y1', 'x2', 'y2'].map(key => Number(line.getAttribute(key)))))
  const long = ends.map(([x1 = 0, y1 = 0, x2 = 0, y2 = 0]) => Math.hypot(x2 - x1, y2 - y1))
  expect((long[0] ?? 0) / (long[1] ?? 1)).toBeCloseTo(1.5, 6)
  expect((long[2] ?? 0) / (long[1] ?? 1)).toBeCloseTo(1.5, 6)
  expect(ends[0]?.[1]).toBeCloseTo(ends[0]?.[3] ?? 0, 6)
})

test('a room has one height for its labels, else the house rule, and its walls follow', async ({ page, host }) => {
  await host.open(page, '#/rooms')
  const { rooms } = (await host.call(page, 'room.list', {})) as {
    rooms: { id: string; name: string; labelLine: number | null }[]
  }
  const room = rooms.find(one => one.labelLine === null)
  await page
    .getByRole('navigation', { name: 'Rooms' })
    .getByRole('button', { name: room?.name ?? '' })
    .click()
  const cell = page.getByRole('textbox', { name: 'height of the labels of the room' })
  await expect(cell).toHaveValue('')
  await expect(cell).toHaveAttribute('placeholder', /\d/)
  const now = async () =>
    ((await host.call(page, 'room.list', {})) as { rooms: { id: string; labelLine: number | null }[] }).rooms.find(
      one => one.id === room?.id,
    )?.labelLine
  await cell.fill('very low')
  await cell.press('Enter')
  await expect(page.getByRole('alert').first()).toBeVisible()
  expect(await now()).toBe(null)
  await cell.fill('1.25 m')
  await cell.press('Enter')
  await expect.poll(now).toBe(1250)
  await cell.fill('')
  await cell.press('Enter')
  await expect.poll(now).toBe(null)
})

test('a hand faster than the catalogue loses nothing it typed', async ({ page, host }) => {
  await host.open(page, '#/rooms')
  const labelLines = async () => {
    const { rooms } = (await host.call(page, 'room.list', {})) as {
      rooms: { name: string; labelLine: number | null }[]
    }
    return rooms
  }
  const room = (await labelLines()).find(one => one.labelLine === null)
  await page
    .getByRole('navigation', { name: 'Rooms' })
    .getByRole('button', { name: room?.name ?? '' })
    .click()
  const cell = page.getByRole('textbox', { name: 'height of the labels of the room' })
  await expect(cell).toHaveValue('')
  // A disk that sleeps: every edit of a room takes 1.5 s to be answered.
  await page.route('**/call', async route => {
    const response = await route.fetch()
    if (route.request().postData()?.includes('"room.update"') === true) await page.waitForTimeout(1500)
    await route.fulfill({ response })
  })
  const now = async () => (await labelLines()).find(one => one.name === room?.name)?.labelLine
  await cell.fill('1.25 m')
  await cell.press('Enter')
  await cell.fill('1.3 m')
  await cell.press('Enter')
  await expect.poll(now).toBe(1300)
  // The field was left by nobody, so it is written from what it was last made.
  await cell.fill('')
  await cell.press('Enter')
  await expect.poll(now).toBe(null)
  await expect(page.getByRole('alert')).toHaveCount(0)
  await expect(cell).toHaveValue('')
  await page.unrouteAll({ behavior: 'wait' })
})

test('names on the key plan do not cover each other beside a room of 60 m', async ({ page, host }) => {
  await host.open(page, '#/rooms')
  const walls = [60_000, 3000, 60_000, 3000].map(length => ({ length }))
  await host.call(page, 'room.add', { name: 'Long passage', height: 3000, walls })
  const names = page.getByRole('navigation', { name: 'Key plan' }).locator('svg text')
  await expect(names.filter({ hasText: 'Long passage' })).toHaveCount(1)
  const boxes = await names.evaluateAll(list => list.map(one => one.getBoundingClientRect().toJSON()))
  expect(boxes.length).toBeGreaterThan(3)
  for (const [at, a] of boxes.entries()) {
    for (const b of boxes.slice(at + 1)) {
      const apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top + 4 || b.bottom <= a.top + 4
      expect(apart, `${JSON.stringify(a)} ${JSON.stringify(b)}`).toBe(true)
    }
  }
})

test('the screen is free of barriers, light and dark', async ({ page, host }) => {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    await host.open(page, '#/rooms')
    await expect(page.getByRole('group', { name: /Plan of/ })).toBeVisible()
    const look = async () =>
      (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html])
    expect(await look()).toEqual([])
    await page.getByRole('navigation', { name: 'Rooms' }).getByRole('button', { name: 'River Room' }).click()
    await page
      .getByRole('row', { name: 'east wall' })
      .getByRole('button', { name: /^\d+ east wall$/ })
      .click()
    await page.getByRole('button', { name: /^door/ }).focus()
    await page.keyboard.press('Enter')
    await expect(page.getByRole('heading', { name: 'Door' })).toBeVisible()
    expect(await look()).toEqual([])
    await page.getByRole('button', { name: 'add a room' }).click()
    await expect(page.getByRole('button', { name: 'add the room' })).toBeVisible()
    expect(await look()).toEqual([])
  }
})
