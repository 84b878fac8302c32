/** A section that asks for stacks: asked on the screen, proposed, taken, looked at on its wall, and undone. */
import AxeBuilder from '@axe-core/playwright'
import { expect, test } from './host.ts'
import { askForProposals, openSequence, settleAll, wallsOf } from './sequence-screen.ts'

interface Section {
  readonly section: string
  readonly title: string
  readonly hang: string
  readonly units: readonly { readonly works: readonly string[]; readonly height: number }[]
}
interface Found {
  readonly code: string
  readonly severity: string
  readonly subject: { readonly id: string }
}

test('a section in stacks is proposed, taken, drawn one above the other on its wall, and undone', async ({
  page,
  host,
}) => {
  const exhibition = await openSequence(page, host)
  const before = await wallsOf(page, host, exhibition)
  const sectionsOf = async () =>
    ((await host.call(page, 'sequence.sections', { exhibition })) as { sections: readonly Section[] }).sections
  // Of a section with works that are alike enough on the machine's demo; whichever that is.
  await page.getByRole('button', { name: 'Stacks and grids' }).click()
  const part = page.getByRole('region', { name: /Stacks and grids/ })
  const which = part.getByLabel('Section')
  const how = part.getByLabel('Its works hang')
  let asking: Section | undefined
  for (const { section } of await sectionsOf()) {
    await which.selectOption(section)
    await how.selectOption('stacks')
    await expect.poll(async () => (await sectionsOf()).find(one => one.section === section)?.hang).toBe('stacks')
    asking = (await sectionsOf()).find(one => one.section === section)
    if (asking !== undefined && asking.units.length > 0) break
    await how.selectOption('row')
    await expect.poll(async () => (await sectionsOf()).find(one => one.section === section)?.hang).toBe('row')
  }
  if (asking === undefined || asking.units.length === 0) throw new Error('no section of the demo makes a stack')
  const stacked = asking.units.flatMap(({ works }) => works)
  await expect(part.getByRole('status')).toContainText(`${stacked.length} of its works make`)
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])

  await askForProposals(page)
  await settleAll(page)
  await page.getByRole('button', { name: 'take it', exact: true }).click({ timeout: 30_000 })
  await expect(page.getByText(/as proposed/).first()).toBeVisible()
  const after = await wallsOf(page, host, exhibition)
  const spotOf = (entry: string) =>
    after.flatMap(({ face, works }) => works.filter(one => one.entry === entry).map(one => ({ face, ...one })))[0]
  const hung = asking.units.flatMap(({ works }) => {
    const spots = works.map(spotOf)
    return spots.some(spot => spot === undefined) ? [] : [spots.flatMap(spot => spot ?? [])]
  })
  expect(hung.length).toBeGreaterThan(0)
  for (const stack of hung) {
    expect(new Set(stack.map(({ face }) => face)).size).toBe(1)
    // From the top of the list downwards.
    expect(stack.map(({ y }) => y)).toEqual(stack.map(({ y }) => y).toSorted((a, b) => b - a))
  }

  const [stack] = hung
  const face = stack?.[0]?.face ?? ''
  await page.goto(`${new URL(host.address).origin}/#/walls/${face}`)
  await expect(page.locator('[data-placement]')).toHaveCount(after.find(one => one.face === face)?.works.length ?? 0, {
    timeout: 30_000,
  })
  const { findings } = (await host.call(page, 'finding.list', { exhibition, face, unit: 'mm' })) as {
    findings: readonly Found[]
  }
  const { works } = (await host.call(page, 'wall.elevation', { exhibition, face })) as {
    works: readonly { entry: string; placement: string; title: string }[]
  }
  const own = new Set(
    works.filter(work => stack?.some(one => one.entry === work.entry)).map(({ placement }) => placement),
  )
  const said = findings.filter(({ subject, severity }) => own.has(subject.id) && severity !== 'fits')
  expect(said.filter(({ code }) => ['overlap', 'gap-small', 'stack-off-line'].includes(code))).toEqual([])
  // Drawn as they hang: on one upright line, the first above the second.
  const boxes: { x: number; y: number; width: number; height: number }[] = []
  for (const { entry } of stack ?? []) {
    const placement = works.find(work => work.entry === entry)?.placement
    const box = await page.locator(`[data-placement="${placement}"]`).first().boundingBox()
    if (box === null) throw new Error('a work of the stack is not drawn')
    boxes.push(box)
  }
  const [upper, lower] = boxes
  expect((upper?.y ?? 0) + (upper?.height ?? 0) / 2).toBeLessThan(lower?.y ?? 0)
  await page.keyboard.press('Control+z')
  await expect.poll(() => wallsOf(page, host, exhibition)).toEqual(before)
})
