/** What stands in a room, moved by hand and by keys, and a partition that is too short for its works. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, type RunningHost, test } from './host.ts'

interface Thing {
  readonly id: string
  readonly room: string
  readonly exhibition: string | null
  readonly kind: string
  readonly name: string
  readonly at: readonly [number, number]
}
interface Ends {
  readonly ends: readonly [readonly [number, number], readonly [number, number]]
}
interface Partition extends Ends {
  readonly id: string
  readonly room: string
  readonly name: string
  readonly length: number
  readonly works: number
  readonly faces: { readonly a: string; readonly b: string }
}
interface Face {
  readonly name: string
  readonly length: number
  readonly openings: readonly {
    readonly id: string
    readonly kind: string
    readonly x: number
    readonly width: number
  }[]
  readonly keepClears: readonly { readonly kind: string; readonly x: number; readonly y: number }[]
}

async function showOf(page: Page, host: RunningHost): Promise<string> {
  // The answer of that name.
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as { exhibitions: { id: string }[] }
  return exhibitions[0]?.id ?? ''
}

async function thingsOf(page: Page, host: RunningHost): Promise<readonly Thing[]> {
  const exhibition = await showOf(page, host)
  const { things } = (await host.call(page, 'standing.list', { exhibition })) as { things: Thing[] } // of that name
  return things
}

async function hungPartition(page: Page, host: RunningHost): Promise<Partition> {
  const exhibition = await showOf(page, host)
  const { partitions } = (await host.call(page, 'partition.list', { exhibition })) as { partitions: Partition[] } // of that name
  const partition = partitions.find(({ works }) => works > 0)
  if (partition === undefined) throw new Error('the demo has no partition with works')
  return partition
}

async function faceOf(page: Page, host: RunningHost, face: string): Promise<Face> {
  const exhibition = await showOf(page, host)
  const { wall } = (await host.call(page, 'wall.elevation', { exhibition, face })) as { wall: Face } // of that name
  return wall
}

test('a bench is dragged and nudged on the plan, each one edit that undo takes back', async ({ page, host }) => {
  await host.open(page, '#/rooms')
  const bench = (await thingsOf(page, host)).find(thing => thing.kind === 'bench' && thing.exhibition !== null)
  if (bench === undefined) throw new Error('the demo has no bench')
  const at = async () => (await thingsOf(page, host)).find(({ id }) => id === bench.id)?.at
  await host.open(page, `#/rooms/${bench.room}`)
  const drawn = page.getByRole('button', { name: new RegExp(`^${bench.name}, .* across`) })
  const box = await drawn.boundingBox()
  if (box === null) throw new Error('the bench is not drawn')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + 30, y + 20, { steps: 4 })
  await page.mouse.up()
  await expect.poll(async () => (await at())?.[0]).toBeGreaterThan(bench.at[0])
  const dragged = await at()
  expect(dragged?.[1]).toBeGreaterThan(bench.at[1])

  await drawn.focus()
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('Shift+ArrowRight')
  await expect.poll(at).toEqual([(dragged?.[0] ?? 0) + 11, dragged?.[1]])
  await host.call(page, 'edit.undo', {})
  expect(await at()).toEqual(dragged)
  await host.call(page, 'edit.undo', {})
  expect(await at()).toEqual(bench.at)
})

test('a partition cut short by a figure keeps its works and says which no longer fit', async ({ page, host }) => {
  await host.open(page, '#/rooms')
  const exhibition = await showOf(page, host)
  const partition = await hungPartition(page, host)
  await host.open(page, `#/rooms/${partition.room}`)
  const stands = page.locator('section.stands')
  const long = stands.getByLabel(`${partition.name}, long`, { exact: true })
  await long.fill(String(partition.length / 2))
  await long.press('Enter')
  await expect(stands.getByRole('alert')).toContainText('beyond the wall’s right end')
  const after = (await host.call(page, 'partition.list', { exhibition })) as { partitions: Partition[] } // of that name
  expect(after.partitions.find(({ id }) => id === partition.id)).toMatchObject({
    length: partition.length / 2,
    works: partition.works,
  })
  const { violations } = await new AxeBuilder({ page }).include('section.stands').analyze()
  expect(violations.map(({ id }) => id)).toEqual([])
})

test('either side of a partition is stood before, with doors and sockets by number, by hand and by keys', async ({
  page,
  host,
}) => {
  await host.open(page, '#/rooms')
  const partition = await hungPartition(page, host)
  const [a, b] = [() => faceOf(page, host, partition.faces.a), () => faceOf(page, host, partition.faces.b)]
  await host.open(page, `#/rooms/${partition.room}`)
  const drawn = page.getByRole('button', { name: new RegExp(`^${partition.name}, from `) })
  await drawn.focus()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('group', { name: `Elevation of ${(await a()).name}` })).toBeVisible()
  await page.keyboard.press('Enter')
  const elevation = page.getByRole('group', { name: `Elevation of ${(await b()).name}` })
  await expect(elevation).toBeVisible()
  // What hides behind the wall is written on side a alone.
  await expect(page.getByRole('region', { name: /^Behind and above/ })).toHaveCount(0)

  const form = page.getByRole('form', { name: `Add something to ${(await b()).name}` })
  for (const [field, figure] of [
    ['from the left end', '200'],
    ['above the floor', '0'],
    ['wide', '800'],
    ['high', '2100'],
  ] as const) {
    await form.getByLabel(field).fill(figure)
  }
  await form.getByRole('button', { name: 'add it' }).click()
  await expect.poll(async () => (await b()).openings).toMatchObject([{ kind: 'door', x: 200, width: 800 }])
  expect((await a()).openings).toMatchObject([{ x: partition.length - 1000 }])

  // By its right edge, then the whole by keys; as it is seen from here.
  const door = elevation.getByRole('button', { name: /^door/ })
  await door.scrollIntoViewIfNeeded()
  const box = await door.boundingBox()
  if (box === null) throw new Error('the door is not drawn')
  const middle = box.y + box.height / 2
  await page.mouse.move(box.x + box.width, middle)
  await page.mouse.down()
  await page.mouse.move(box.x + box.width + 20, middle, { steps: 4 })
  await page.mouse.up()
  await expect.poll(async () => (await b()).openings[0]?.width).toBeGreaterThan(800)
  expect((await b()).openings[0]?.x).toBe(200)
  await door.focus()
  await page.keyboard.press('Shift+ArrowRight')
  await expect.poll(async () => (await b()).openings[0]?.x).toBe(210)

  // A socket is on the side that one stands before.
  await form.getByLabel('add a').selectOption('keepClear outlet')
  for (const [field, figure] of [
    ['from the left end', '1300'],
    ['above the floor', '300'],
    ['wide', '90'],
    ['high', '90'],
    ['margin', '50'],
  ] as const) {
    await form.getByLabel(field).fill(figure)
  }
  await form.getByRole('button', { name: 'add it' }).click()
  await expect.poll(async () => (await b()).keepClears).toMatchObject([{ kind: 'outlet', x: 1300, y: 300 }])
  expect((await a()).keepClears).toEqual([])
  const { violations } = await new AxeBuilder({ page }).include('.rooms').analyze()
  expect(violations.map(({ id }) => id)).toEqual([])

  // Pressed on its other side: one stands there.
  const [from = [0, 0], to = [0, 0]] = partition.ends
  await drawn.scrollIntoViewIfNeeded()
  const turned = await drawn.boundingBox()
  if (turned === null) throw new Error('the partition is not drawn')
  const [cx, cy] = [turned.x + turned.width / 2, turned.y + turned.height / 2]
  const run = Math.hypot(to[0] - from[0], to[1] - from[1])
  await page.mouse.click(cx - ((to[1] - from[1]) / run) * 4, cy + ((to[0] - from[0]) / run) * 4)
  await expect(page.getByRole('group', { name: `Elevation of ${(await a()).name}` })).toBeVisible()
  for (const _ of ['Escape', 'Escape']) await page.keyboard.press('Escape')
  await expect(page.getByRole('group', { name: /^Elevation of/ })).toHaveCount(0)
})

test('either side of a partition is chosen on the building’s plan, straight on in the strip below', async ({
  page,
  host,
}) => {
  await host.open(page, '#/rooms')
  const partition = await hungPartition(page, host)
  const [a, b] = [await faceOf(page, host, partition.faces.a), await faceOf(page, host, partition.faces.b)]
  const { rooms } = (await host.call(page, 'room.list', {})) as { rooms: { id: string; name: string }[] } // of that name
  const room = rooms.find(({ id }) => id === partition.room)?.name ?? ''
  const sheet = page.getByRole('group', { name: /^Plan of/ })
  await sheet.getByRole('button', { name: new RegExp(`^${room}, `) }).press('Enter')
  const side = (name: string) => sheet.getByRole('button', { name: new RegExp(`^${name}, `) })
  await side(b.name).press('Enter')
  await expect(page.getByRole('region', { name: `Elevation of ${room}, ${b.name}` })).toBeVisible()
  const tag = page.getByRole('complementary', { name: 'Tag of what is selected' })
  await tag.getByRole('button', { name: /^\d+ works?$/ }).click()
  await expect(page.getByRole('region', { name: `Elevation of ${room}, ${a.name}` })).toBeVisible()
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])

  // Pressed beside its other side, the hand says the same as the keys.
  await page.keyboard.press('Escape')
  const drawn = await side(b.name).boundingBox()
  if (drawn === null) throw new Error('the partition is not drawn')
  const facing = Math.sign(partition.ends[1][0] - partition.ends[0][0])
  expect(facing, 'the demo’s partition runs across the page').not.toBe(0)
  await page.mouse.click(drawn.x + drawn.width / 2, drawn.y + drawn.height / 2 - facing * 5)
  await expect(page.getByRole('region', { name: `Elevation of ${room}, ${b.name}` })).toBeVisible()
})

test('on the building’s plan a thing is chosen, dragged and stepped as in its room', async ({ page, host }) => {
  await host.open(page, '#/rooms')
  const exhibition = await showOf(page, host)
  const { rooms } = (await host.call(page, 'plan.get', { exhibition })) as {
    rooms: { id: string; name: string; turn: number; at: unknown; storey: string; things: { id: string }[] }[]
  } // of that name
  const room = rooms.find(
    one => one.at !== null && one.turn === 0 && one.storey === rooms[0]?.storey && one.things.length > 0,
  )
  if (room === undefined) throw new Error('the demo has no placed room with something in it')
  const before = (await thingsOf(page, host)).find(({ id }) => id === room.things[0]?.id)
  if (before === undefined) throw new Error('a thing of the plan is listed')
  const now = async () => (await thingsOf(page, host)).find(({ id }) => id === before.id)?.at
  const plan = page.getByRole('group', { name: /^Plan of/ })
  await plan.locator(`[data-room="${room.id}"]`).focus()
  await page.keyboard.press('Enter')
  const called = before.name === '' ? before.kind : before.name
  const thing = plan.getByRole('button', { name: new RegExp(`^${called}, .* across`) }).first()
  await thing.focus()
  await page.keyboard.press('ArrowRight')
  await expect.poll(async () => (await now())?.[0]).toBe(before.at[0] + 1)
  await expect(page.getByRole('complementary').getByRole('heading', { name: called })).toBeVisible()

  const box = await thing.locator('.body').boundingBox()
  if (box === null) throw new Error('it is drawn')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + 10, y + 6, { steps: 4 })
  await page.mouse.up()
  await expect.poll(async () => (await now())?.[0] ?? 0).toBeGreaterThan(before.at[0] + 20)
  const after = await now()
  expect(after?.[1] ?? 0).toBeGreaterThan(before.at[1])
  await page.keyboard.press('Control+z')
  await expect.poll(now).toEqual([before.at[0] + 1, before.at[1]])
})

test('on the building’s plan a fixture is chosen, dragged along its wall, stepped, typed and taken away', async ({
  page,
  emptyHost,
}) => {
  await emptyHost.open(page, '#/rooms')
  const room = (await emptyHost.call(page, 'room.add', {
    name: 'Store',
    height: 3000,
    place: { at: [0, 0], turn: 90, storey: '' },
    walls: [6000, 4000, 6000, 4000].map((length, at) => ({ length, name: ['n', 'e', 's', 'w'][at] })),
  })) as { walls: string[] } // of that name
  const wall = room.walls[0] ?? ''
  const outlet = { kind: 'outlet', x: 2000, y: 300, width: 300, height: 80, margin: 100 }
  await emptyHost.call(page, 'keepClear.add', { wall, ...outlet })
  const now = async () => {
    const { rooms } = (await emptyHost.call(page, 'plan.get', { exhibition: null })) as {
      rooms: { walls: { fixtures: { x: number; y: number }[] }[] }[]
    } // likewise
    return rooms[0]?.walls[0]?.fixtures.map(({ x, y }) => [x, y])
  }
  const sheet = page.getByRole('group', { name: /^Plan of/ })
  await sheet.getByRole('button', { name: /^Store, / }).press('Enter')
  await page.keyboard.press('0')
  const fixture = sheet.getByRole('button', { name: /^outlet on n, / })
  await fixture.press('Enter')
  await expect(page.getByRole('complementary').getByRole('heading', { name: 'Outlet' })).toBeVisible()
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  // Turned a quarter, the room has its wall n at the right of the page, and its right end below.
  await fixture.press('ArrowRight')
  await fixture.press('Shift+ArrowDown')
  await expect.poll(now).toEqual([[2010, 300]])
  await expect(fixture).toHaveAccessibleName(/^outlet on n, 2.010 mm/)

  const box = await fixture.boundingBox()
  if (box === null) throw new Error('it is drawn')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + 14, y + 30, { steps: 4 })
  await page.mouse.up()
  await expect.poll(async () => (await now())?.[0]?.[0] ?? 0).toBeGreaterThan(2100)
  expect((await now())?.[0]?.[1]).toBe(300)
  await page.keyboard.press('Control+z')
  await expect.poll(now).toEqual([[2010, 300]])
  await expect(fixture).toHaveAccessibleName(/^outlet on n, 2.010 mm/)

  await page.getByRole('textbox', { name: /^outlet from the left end of n/ }).fill('1,5 m')
  await page.keyboard.press('Enter')
  await expect.poll(now).toEqual([[1500, 300]])
  await expect(fixture).toHaveAccessibleName(/^outlet on n, 1.500 mm/)
  await fixture.focus()
  await page.keyboard.press('Delete')
  await expect.poll(now).toEqual([])
  await expect(fixture).toHaveCount(0)
  await page.keyboard.press('Control+z')
  await expect.poll(now).toEqual([[1500, 300]])
})
