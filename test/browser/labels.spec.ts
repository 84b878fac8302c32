/** Labels on a wall: a side, words, what is in their way, and many at once. */
import AxeBuilder from '@axe-core/playwright'
import { expect, goToWall, sitDown, test } from './host.ts'

interface Placed {
  readonly placement: string
  readonly entry: string
  readonly running: string
  readonly labelSide: string
  readonly label: { readonly text: string; readonly suggestion: string }
}

test('a label is written, stands on the wall, is proofed, and other words take that back', async ({ page, host }) => {
  await host.open(page)
  await sitDown(page)
  const face = await goToWall(page, 'Long Gallery, north wall')
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as { exhibitions: readonly { id: string }[] }
  const exhibition = exhibitions[0]?.id
  const works = async () =>
    ((await host.call(page, 'wall.elevation', { exhibition, face })) as { works: readonly Placed[] }).works
  const work = (await works()).find(each => each.labelSide === '') ?? (await works())[0]
  if (work === undefined) throw new Error('nothing hangs there')
  await host.call(page, 'label.setMany', { entries: (await works()).map(each => each.entry), side: '' })
  await expect(page.locator('[data-label]')).toHaveCount(0)

  await page.locator(`[data-placement="${work.placement}"]`).focus()
  await page.keyboard.press('Enter')
  const its = page.getByRole('region', { name: 'Its label' })
  await its.getByRole('combobox', { name: /^Label/ }).selectOption('right')
  await expect(page.locator(`[data-label="${work.placement}"]`)).toBeVisible()
  await its.getByRole('button', { name: 'take the suggestion' }).click()
  await expect(its.getByLabel('What the label says')).toHaveValue(work.label.suggestion)

  await its.getByLabel('It is').selectOption('proofed')
  await expect(its.getByLabel('It is')).toHaveValue('proofed')
  await its.getByLabel('What the label says').fill('Another text')
  await its.getByLabel('What the label says').blur()
  await expect(its.getByLabel('It is')).toHaveValue('')
  await expect(its.getByText('one line')).toBeVisible()

  // The whole of its gap and more: the finding names the work beside it, in the tag and for the command line alike.
  await host.call(page, 'label.update', {
    entry: work.entry,
    changes: { width: { was: null, to: 1900 } },
  })
  await expect(page.getByText(/too narrow for its label by|beyond the wall’s/).first()).toBeVisible()
  const { findings } = (await host.call(page, 'finding.list', { exhibition, face, unit: 'mm' })) as {
    findings: readonly { code: string; subject: { id: string } }[]
  }
  expect(findings.filter(each => each.code.startsWith('label-')).map(each => each.subject.id)).toContain(work.placement)
  const axe = await new AxeBuilder({ page }).analyze()
  expect(axe.violations).toEqual([])
})

test('many get a side and suggested words as one edit', async ({ page, host }) => {
  await host.open(page)
  await sitDown(page)
  const face = await goToWall(page, 'Long Gallery, north wall')
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as { exhibitions: readonly { id: string }[] }
  const works = async () =>
    (
      (await host.call(page, 'wall.elevation', { exhibition: exhibitions[0]?.id, face })) as {
        works: readonly Placed[]
      }
    ).works
  const [first, second] = await works()
  if (first === undefined || second === undefined) throw new Error('fewer than two works hang there')
  await page.locator(`[data-placement="${first.placement}"]`).focus()
  await page.keyboard.press('Enter')
  await page.locator(`[data-placement="${second.placement}"]`).focus()
  await page.keyboard.press('Shift+Enter')
  await expect(page.getByText('2 works', { exact: true })).toBeVisible()
  await page.getByRole('button', { name: 'left', exact: true }).click()
  await expect.poll(async () => (await works()).slice(0, 2).map(each => each.labelSide)).toEqual(['left', 'left'])
  await page.getByRole('button', { name: /write the suggested words/ }).click()
  await expect
    .poll(async () => (await works()).slice(0, 2).map(each => each.label.text))
    .toEqual([first.label.suggestion, second.label.suggestion])
})
