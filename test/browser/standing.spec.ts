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
interface Partition {
  readonly id: string
  readonly room: string
  readonly name: string
  readonly length: number
  readonly works: number
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
  const { partitions } = (await host.call(page, 'partition.list', { exhibition })) as { partitions: Partition[] } // of that name
  const partition = partitions.find(({ works }) => works > 0)
  if (partition === undefined) throw new Error('the demo has no partition with works')
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
