/** The papers: seen as they would print, printed, out of date after a change, void after the next print. */
import AxeBuilder from '@axe-core/playwright'
import { expect, test } from './host.ts'

interface FaceState {
  readonly face: string
  readonly works: number
  readonly printed: { readonly revision: number } | null
  readonly upToDate: boolean
  readonly voids: readonly number[]
}

test('a wall sheet is drawn, printed, goes out of date, and is void after the next print', async ({ page, host }) => {
  await host.open(page, '#/papers')
  const shown = page.getByRole('img', { name: /page 1 of/ })
  await expect(shown).toBeVisible()
  await page.getByRole('button', { name: 'print this sheet' }).click()
  const file = page.getByRole('link', { name: /\.pdf$/ })
  await expect(file).toBeVisible()
  const bytes = await page.evaluate(
    async address => {
      const response = await fetch(address)
      return [...new Uint8Array(await response.arrayBuffer()).slice(0, 5)]
    },
    (await file.getAttribute('href')) ?? '',
  )
  expect(String.fromCharCode(...bytes)).toBe('%PDF-')

  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as {
    exhibitions: { id: string; works: number }[]
  } // the answer of that name
  const exhibition = exhibitions.find(one => one.works > 0)?.id ?? ''
  const state = async () => {
    const { faces } = (await host.call(page, 'sheet.state', { exhibition })) as { faces: FaceState[] } // likewise
    return faces.find(one => one.printed !== null)
  }
  await expect.poll(async () => (await state())?.printed?.revision).toBe(1)
  const face = (await state())?.face ?? ''
  await host.call(page, 'wall.plan', { exhibition, face, changes: { centreLine: { was: null, to: 1490 } } })
  await expect(page.getByText('revision 1 is out of date')).toBeVisible()
  await page.getByRole('button', { name: 'print this sheet' }).click()
  await expect.poll(async () => (await state())?.printed?.revision).toBe(2)
  expect(await state()).toMatchObject({ upToDate: true, voids: [1] })
  await expect(page.getByText('void: 1')).toBeVisible()
})

test('the screen is free of barriers, light and dark', async ({ page, host }) => {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    await host.open(page, '#/papers')
    await expect(page.getByRole('img', { name: /page 1 of/ })).toBeVisible()
    const { violations } = await new AxeBuilder({ page }).analyze()
    expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([])
  }
})
