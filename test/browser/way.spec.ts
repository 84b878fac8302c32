/** The visitor's way on the plan: proposed, walked by pointing at walls, stepped by keys, undone; walls named by the compass. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, type RunningHost, test } from './host.ts'

interface Room {
  readonly id: string
  readonly name: string
  readonly walls: readonly {
    readonly id: string
    readonly face: string
    readonly name: string
    readonly order: number | null
  }[]
}

/** Two rooms side by side with a door in both walls, the left one with a door to the outside; north is up the page. */
async function building(page: Page, host: RunningHost): Promise<string> {
  await host.open(page)
  const add = async (name: string, input: unknown) =>
    (await host.call(page, name, input)) as { id: string; walls: string[] }
  const { id: show } = await add('exhibition.add', { title: 'Ebb' })
  const walls = (a: number, b: number) => [{ length: a }, { length: b }, { length: a }, { length: b }]
  const left = await add('room.add', { name: 'Fore room', height: 3600, walls: walls(6000, 4000) })
  const right = await add('room.add', { name: 'Back room', height: 3600, walls: walls(5000, 4000) })
  const door = { kind: 'door', y: 0, width: 1000, height: 2100 }
  // In from the south; through the east wall of the one, which is the west wall of the other.
  await add('opening.add', { wall: left.walls[2], x: 2500, ...door })
  await add('opening.add', { wall: left.walls[1], x: 1500, ...door })
  await add('opening.add', { wall: right.walls[3], x: 1500, ...door })
  await add('plan.placeRoom', {
    rooms: [
      { id: left.id, changes: { at: { was: null, to: [0, 0] } } },
      { id: right.id, changes: { at: { was: null, to: [6150, 0] } } },
    ],
  })
  await add('plan.setNorth', { was: null, to: 0 })
  return show
}

async function orderOf(page: Page, host: RunningHost, exhibition: string): Promise<readonly string[]> {
  const { rooms } = (await host.call(page, 'room.plan', { exhibition })) as { rooms: readonly Room[] }
  return rooms
    .flatMap(room => room.walls.map(wall => ({ ...wall, called: `${room.name}, ${wall.name}` })))
    .filter(wall => wall.order !== null)
    .sort((a, b) => (a.order ?? 0) - (b.order ?? 0))
    .map(wall => wall.called)
}

const tag = (page: Page) => page.getByRole('complementary', { name: 'Tag of what is selected' })
const listed = (page: Page) =>
  tag(page).getByRole('list', { name: 'Walls in the visitor’s order' }).getByRole('listitem')

test('walls get their names by the compass, the way is proposed, stepped by keys and taken back', async ({
  page,
  emptyHost: host,
}) => {
  const show = await building(page, host)
  await host.open(page, '#/rooms')
  await page
    .getByRole('group', { name: /^Plan of/ })
    .getByRole('button', { name: /^Fore room/ })
    .focus()
  await page.keyboard.press('Enter')
  await tag(page).getByRole('button', { name: 'name its walls by the compass' }).click()
  await tag(page).getByRole('button', { name: 'call them so' }).click()
  await expect(tag(page).getByRole('listitem')).toHaveText([/north wall/, /east wall/, /south wall/, /west wall/])
  await page.keyboard.press('Escape')

  await page.keyboard.press('w')
  await expect(tag(page).getByRole('heading', { name: 'The visitor’s way' })).toBeVisible()
  await expect(tag(page).getByText('No wall has a place on it yet.')).toBeVisible()
  await tag(page).getByRole('button', { name: 'to the left hand' }).click()
  await expect(listed(page)).toHaveCount(8)
  // In by the south door, facing north: the west wall is at the left hand.
  const proposed = [
    'Fore room, west wall',
    'Fore room, north wall',
    'Fore room, east wall',
    'Fore room, south wall',
    'Back room, wall 1',
    'Back room, wall 2',
    'Back room, wall 3',
    'Back room, wall 4',
  ]
  await expect.poll(() => orderOf(page, host, show)).toEqual(proposed)
  await expect(tag(page).getByText(/The plan shows no way/)).toHaveCount(0)
  await expect(tag(page).getByText(/^8 walls, \d+.* on foot/)).toBeVisible()

  await tag(page).getByRole('link', { name: 'Fore room, west wall' }).focus()
  await page.keyboard.press('Alt+ArrowDown')
  await expect(listed(page).first()).toContainText('Fore room, north wall')
  await expect.poll(() => orderOf(page, host, show)).toEqual([proposed[1], proposed[0], ...proposed.slice(2)])
  await page.keyboard.press('Control+z')
  await expect(listed(page).first()).toContainText('Fore room, west wall')
  await expect.poll(() => orderOf(page, host, show)).toEqual(proposed)
})

test('the way is walked by pointing at walls, with the keyboard alone', async ({ page, emptyHost: host }) => {
  const show = await building(page, host)
  await host.open(page, '#/rooms')
  await page.getByRole('button', { name: /visitor’s way/ }).press('Enter')
  await tag(page).getByRole('button', { name: 'walk it on the plan' }).press('Enter')
  const sheet = page.getByRole('group', { name: /^Plan of/ })
  const wall = (name: string) => sheet.getByRole('button', { name: new RegExp(`^${name}, (number|not on)`) })
  await wall('Fore room, wall 1').press('Enter')
  await wall('Back room, wall 2').press('Enter')
  await wall('Fore room, wall 3').press('Enter')
  await wall('Fore room, wall 3').press('Enter')
  await expect(listed(page)).toHaveText([/Fore room, wall 1/, /Back room, wall 2/])
  expect(await orderOf(page, host, show)).toEqual([])
  await tag(page).getByRole('button', { name: 'that is the way' }).press('Enter')
  await expect.poll(() => orderOf(page, host, show)).toEqual(['Fore room, wall 1', 'Back room, wall 2'])

  // Escape leaves a walk as if it had not been.
  await tag(page).getByRole('button', { name: 'walk it on the plan' }).press('Enter')
  await wall('Fore room, wall 3').press('Enter')
  await page.keyboard.press('Escape')
  await expect(listed(page)).toHaveText([/Fore room, wall 1/, /Back room, wall 2/])
})

test('what the plan shows no way to is told', async ({ page, emptyHost: host }) => {
  await building(page, host)
  const { rooms } = (await host.call(page, 'room.list', {})) as {
    rooms: readonly {
      readonly name: string
      readonly walls: readonly { readonly openings: readonly { readonly id: string }[] }[]
    }[]
  }
  for (const { id } of rooms.find(room => room.name === 'Back room')?.walls.flatMap(wall => wall.openings) ?? [])
    await host.call(page, 'opening.remove', { id })
  await host.open(page, '#/rooms')
  await page.getByRole('button', { name: /visitor’s way/ }).click()
  await tag(page).getByRole('button', { name: 'to the right hand' }).click()
  await expect(tag(page).getByText(/The plan shows no way from Fore room, .* to Back room, /)).toBeVisible()
})

for (const scheme of ['light', 'dark'] as const) {
  test(`nothing stands in anybody’s way, ${scheme}`, async ({ page, emptyHost: host }) => {
    await page.emulateMedia({ colorScheme: scheme })
    await building(page, host)
    await host.open(page, '#/rooms')
    await page.getByRole('button', { name: /visitor’s way/ }).click()
    await tag(page).getByRole('button', { name: 'to the left hand' }).click()
    await expect(listed(page)).toHaveCount(8)
    for (const width of [1440, 900]) {
      await page.setViewportSize({ width, height: 900 })
      expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
    }
  })
}
