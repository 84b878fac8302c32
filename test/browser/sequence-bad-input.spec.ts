/**
 * Shows that cannot be planned, or not wholly, on the screen: the sentence that helps stands there, and the screen goes
 * on answering. Walls are 9140 and 5200 long; no work has a picture.
 */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, type RunningHost, test } from './host.ts'
import { askForProposals } from './sequence-screen.ts'

const propose = (page: Page) => page.getByRole('button', { name: 'propose', exact: true })

async function roomWithShow(page: Page, host: RunningHost): Promise<string> {
  const { id } = (await host.call(page, 'exhibition.add', { title: 'Low Water' })) as { id: string }
  const walls = [9140, 5200, 9140, 5200].map(length => ({ length }))
  await host.call(page, 'room.add', { name: 'Room 1', height: 3450, walls })
  await expect(page.locator('[data-today] [data-face]')).toHaveCount(4)
  return id
}

/** Works at the end of the checklist, by one list; the screen shows them. */
async function bring(page: Page, host: RunningHost, exhibition: string, widths: readonly number[]): Promise<void> {
  const rows = widths.map((width, at) => `N ${at + 1},Work ${at + 1},framed 400 x ${width} mm`)
  await host.call(page, 'import.accept', { text: ['No,Title,Dimensions', ...rows].join('\n'), exhibition })
  await expect(page.getByRole('group', { name: 'Works looked at' }).getByRole('status')).toHaveText(
    `${widths.length} works`,
  )
}

/** The screen answers while something else goes on: a part opens and closes. */
async function answers(page: Page): Promise<void> {
  const rules = page.getByRole('button', { name: 'Rules of the hang' })
  await rules.click()
  await expect(rules).toHaveAttribute('aria-expanded', 'true')
  await rules.click()
  await expect(rules).toHaveAttribute('aria-expanded', 'false')
}

test('no show, no wall, no work: each says what to do next', async ({ page, emptyHost }) => {
  await emptyHost.open(page, '#/sequence')
  await expect(page.getByText('There is no show yet.')).toBeVisible()
  await emptyHost.call(page, 'exhibition.add', { title: 'Low Water' })
  await expect(page.getByText('There is no wall yet.')).toBeVisible()
  // Works without a wall: told too, and nothing is searched for.
  await expect(propose(page)).toBeEnabled()
  const walls = [9140, 5200, 9140, 5200].map(length => ({ length }))
  await emptyHost.call(page, 'room.add', { name: 'Room 1', height: 3450, walls })
  await expect(page.locator('[data-today] [data-face]')).toHaveCount(4)
  await expect(page.getByText('The show has no works yet. Bring in a list, or add one.')).toBeVisible()
  await propose(page).click()
  await expect(
    page.getByText('There is nothing to propose: this show has no works yet. Bring in a list, or add one.'),
  ).toBeVisible({ timeout: 60_000 })
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  await answers(page)
})

test('too wide, too many, on one wall, under rules that contradict: told, and what can hang is proposed', async ({
  page,
  emptyHost,
}) => {
  test.slow()
  await emptyHost.open(page, '#/sequence')
  await expect(page.getByText('There is no show yet.')).toBeVisible()
  const exhibition = await roomWithShow(page, emptyHost)
  await bring(page, emptyHost, exhibition, [8841, ...Array.from({ length: 79 }, () => 500)])
  await expect(
    page.getByText(/The works want \d+\.\d m, the walls give \d+\.\d m: \d+\.\d m are missing\./),
  ).toBeVisible()
  await expect(page.getByText(/Wider than every free stretch: Work 1 8\s?841\smm\./)).toBeVisible()
  // One wall alone is on the way of the visit.
  const { rooms } = (await emptyHost.call(page, 'room.list', {})) as {
    rooms: readonly { walls: readonly { face: string }[] }[]
  }
  await emptyHost.call(page, 'wall.plan', {
    exhibition,
    face: rooms[0]?.walls[0]?.face ?? '',
    changes: { visitorOrder: { was: null, to: 1 } },
  })
  await expect(page.locator('[data-today] [data-face]')).toHaveCount(1)
  await askForProposals(page)
  await expect(page.getByText(/^▲ \d+ works find no room: .* and \d+ more\.$/)).toBeVisible()
  await answers(page)
  await page.getByRole('button', { name: 'leave it' }).click()

  const { works } = (await emptyHost.call(page, 'exhibition.frieze', { exhibition })) as {
    works: readonly { work: string }[]
  }
  const pair = works.slice(1, 3).map(({ work }) => work)
  await emptyHost.call(page, 'sequence.addRule', { exhibition, kind: 'side by side', works: pair })
  await emptyHost.call(page, 'sequence.addRule', { exhibition, kind: 'not beside', works: pair })
  await expect(page.getByText(/can’t both be kept; without either the other can/).first()).toBeVisible()
  await propose(page).click()
  await expect(page.getByText(/can’t both be kept; without either the other can/)).toHaveCount(2)
  await expect(propose(page)).toBeEnabled()
  await expect(page.getByRole('heading', { name: 'Ways to hang it' })).toHaveCount(0)
  await answers(page)
})

test('2,000 works are searched for while the screen answers, and the search is cancelled', async ({
  page,
  emptyHost,
}) => {
  test.slow()
  await emptyHost.open(page, '#/sequence')
  await expect(page.getByText('There is no show yet.')).toBeVisible()
  const exhibition = await roomWithShow(page, emptyHost)
  await bring(
    page,
    emptyHost,
    exhibition,
    Array.from({ length: 2000 }, (_, at) => 400 + (at % 9) * 20),
  )
  await expect(page.getByText(/ m are missing\./)).toBeVisible()
  await propose(page).click()
  const progress = page.getByRole('progressbar', { name: 'Looking for ways to hang the show' })
  await expect(progress).toBeVisible()
  await answers(page)
  await expect(progress).toBeVisible()
  await page.getByRole('button', { name: 'cancel', exact: true }).click()
  await expect(progress).toHaveCount(0)
  await expect(propose(page)).toBeEnabled()
  await expect(page.getByRole('heading', { name: 'Ways to hang it' })).toHaveCount(0)
  await answers(page)
})
