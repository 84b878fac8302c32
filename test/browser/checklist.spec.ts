/** The checklist: filtered as one types, a field written in place and undone across a restart, nothing in anybody's way. */
import AxeBuilder from '@axe-core/playwright'
import { expect, test } from './host.ts'

test('typing filters, and the words of the whole show come back', async ({ page, host }) => {
  await host.open(page, '#/checklist')
  await expect(page.getByRole('heading', { level: 1, name: /64 works/ })).toBeVisible()
  const filter = page.getByPlaceholder('type to filter')
  await filter.fill('ferry')
  await expect(page.getByText('The ferry rope')).toBeVisible()
  await expect(page.getByText('Millrace cloth')).toHaveCount(0)
  await filter.fill('')
  await expect(page.getByText('Millrace cloth').first()).toBeVisible()
})

test('yesterday’s last change is undone after closing and opening again', async ({ page, host }) => {
  await host.open(page, '#/checklist')
  const { works } = (await host.call(page, 'work.list', { search: 'ferry rope' })) as {
    works: { id: string; title: string }[]
  } // the answer of that name
  const [work] = works
  if (work === undefined) throw new Error('the demo has the ferry rope')
  await host.call(page, 'work.update', { id: work.id, changes: { title: { was: work.title, to: 'The ferry chain' } } })
  await expect(page.getByText('The ferry chain').first()).toBeVisible()
  await host.restart()
  await host.open(page, '#/checklist')
  await expect(page.getByText('The ferry chain').first()).toBeVisible()
  await page.locator('main').click({ position: { x: 5, y: 5 } })
  await page.keyboard.press('Control+z')
  await expect(page.getByText(work.title).first()).toBeVisible()
})

test('every screen of the shell is free of barriers, light and dark, wide and narrow', async ({ page, host }) => {
  test.setTimeout(180_000)
  for (const [width, height] of [
    [1440, 900],
    [900, 700],
  ] as const) {
    await page.setViewportSize({ width, height })
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      for (const screen of ['checklist', 'exhibitions', 'history', 'rules', 'catalogues', 'person', 'keys']) {
        await host.open(page, `#/${screen}`)
        await expect(page.locator('main')).not.toBeEmpty()
        const { violations } = await new AxeBuilder({ page }).analyze()
        expect(violations.map(({ id, nodes }) => [screen, width, colorScheme, id, nodes[0]?.html])).toEqual([])
      }
    }
  }
})
