/** Rules of the hang on the sequence: read, given to works chosen, contradicting, switched off, found, removed, undone. */
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, type RunningHost, sitDown, test } from './host.ts'

interface Rule {
  readonly id: string
  readonly kind: string
  readonly works: readonly { readonly work: string; readonly entry: string | null }[]
  readonly says: string
  readonly state: string
  readonly from: string
}
interface Read {
  readonly rules: readonly Rule[]
  readonly contradiction: { readonly rules: readonly string[]; readonly says: string } | null
}

async function open(page: Page, host: RunningHost) {
  await host.open(page)
  await sitDown(page)
  // The demo opens on its best wall, which a click before it would lose to.
  await expect(page.locator('[data-placement]').first()).toBeVisible({ timeout: 30_000 })
  await page.getByRole('link', { name: 'Sequence' }).click()
  await expect(page.locator('[data-entry]').first()).toBeVisible()
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as { exhibitions: readonly { id: string }[] }
  const exhibition = exhibitions[0]?.id ?? ''
  const read = async () => (await host.call(page, 'sequence.rules', { exhibition })) as Read
  await page.getByRole('button', { name: 'Rules of the hang' }).click()
  const list = page.getByRole('list', { name: 'Rules', exact: true })
  const before = await read()
  await expect(list.getByRole('listitem')).toHaveCount(before.rules.length)
  return { exhibition, read, list, before }
}

test('each rule is a sentence with how it stands today, found by words, and shows its works', async ({
  page,
  host,
}) => {
  const { list, before } = await open(page, host)
  const broken = before.rules.find(rule => rule.state === 'broken' && rule.from === 'given')
  if (broken === undefined) throw new Error('no given rule is broken')
  await page.keyboard.press('r')
  await page.keyboard.type('broken')
  await expect(list.getByRole('listitem')).toHaveCount(before.rules.filter(rule => rule.state === 'broken').length)
  const line = list.getByRole('listitem').filter({ hasText: broken.says })
  await expect(line).toContainText('broken today')
  await line.getByRole('button', { name: broken.says }).click()
  for (const { entry } of broken.works)
    await expect(page.locator(`[data-today] [data-entry="${entry}"]`)).toHaveClass(/selected/)
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
})

test('works chosen get a rule by keys; what contradicts it is told at once, switched off and removed', async ({
  page,
  host,
}) => {
  const { read, list, before } = await open(page, host)
  const held = before.rules.find(rule => rule.kind === 'one wall' || rule.kind === 'in this order')
  if (held === undefined) throw new Error('no rule keeps works together')
  const n = before.rules.length
  await list.getByRole('button', { name: held.says }).click()
  await page.keyboard.press('Shift+R')
  const form = page.getByRole('form', { name: 'Give a rule' })
  await form.getByLabel('what holds').selectOption(held.kind === 'one wall' ? 'not on' : 'not beside')
  if (held.kind === 'one wall') {
    // Nowhere at all: every room is forbidden, one after the other.
    const where = form.getByLabel('where')
    const rooms = await where.locator('option').evaluateAll(all => all.map(one => (one as HTMLOptionElement).value))
    for (const room of rooms.filter(value => value !== '')) await where.selectOption(room)
  }
  await form.getByLabel('why').fill('to try it')
  await form.getByRole('button', { name: 'give it' }).click()
  await expect(list.getByRole('listitem')).toHaveCount(n + 1)
  const { contradiction, rules } = await read()
  if (contradiction === null) throw new Error('no contradiction')
  await expect(page.getByRole('region', { name: /Rules of the hang/ }).getByRole('status')).toContainText(
    contradiction.says,
  )

  // Asked for proposals, it says the same and proposes nothing.
  await page.getByRole('button', { name: 'propose', exact: true }).click()
  await expect(page.getByText('can’t').last()).toBeVisible()
  await expect(page.getByRole('heading', { name: 'Ways to hang it' })).toHaveCount(0)

  const added = rules.find(rule => !before.rules.some(one => one.id === rule.id))
  if (added === undefined) throw new Error('nothing was added')
  const line = list.getByRole('listitem').filter({ hasText: 'to try it' })
  await expect(line.getByRole('button', { name: 'switch off' })).toBeVisible()
  await line.getByRole('button', { name: 'switch off' }).click()
  await expect(line).toContainText('switched off')
  expect((await read()).contradiction).toBeNull()
  await line.getByRole('button', { name: 'remove' }).click()
  await expect(list.getByRole('listitem')).toHaveCount(n)
  await page.keyboard.press('Control+z')
  await expect(list.getByRole('listitem')).toHaveCount(n + 1)
  await page.keyboard.press('Control+z')
  await page.keyboard.press('Control+z')
  await expect(list.getByRole('listitem')).toHaveCount(n)
})

test('a rule is changed where it stands: its works in their order, its place and reason in one edit, by keys', async ({
  page,
  host,
}) => {
  const { exhibition, read, list, before } = await open(page, host)
  const { walls } = (await host.call(page, 'sequence.walls', { exhibition })) as {
    walls: readonly { face: string; works: readonly { entry: string }[] }[]
  }
  const { works } = (await host.call(page, 'exhibition.frieze', { exhibition })) as {
    works: { work: string; entry: string }[]
  }
  const named = works.slice(0, 3)
  const { id } = (await host.call(page, 'sequence.addRule', {
    ...{ exhibition, kind: 'only on', works: named.slice(0, 2).map(({ work }) => work), reason: 'as it was' },
    places: [{ kind: 'wall', id: walls[0]?.face ?? '' }],
  })) as { id: string }
  const line = list.getByRole('listitem').filter({ hasText: 'as it was' })
  const says = async () => (await read()).rules.find(rule => rule.id === id)
  const first = (await says())?.says ?? ''
  await line.getByRole('button', { name: first }).focus()
  await page.keyboard.press('F2')
  const form = page.getByRole('form', { name: 'Change the rule' })
  await expect(form.getByRole('list', { name: 'Works it names' }).getByRole('listitem')).toHaveCount(2)
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
  // Left by a key, nothing is changed.
  await form.getByLabel('why').focus()
  await page.keyboard.press('Escape')
  await expect(form).toHaveCount(0)
  expect((await says())?.says).toBe(first)
  await line.getByRole('button', { name: first }).focus()
  await page.keyboard.press('F2')
  await form
    .getByRole('button', { name: /^without/ })
    .first()
    .press('Enter')
  await expect(form.getByRole('list', { name: 'Works it names' }).getByRole('listitem')).toHaveCount(1)
  await form.getByLabel('where').selectOption({ index: 1 })
  await form.getByRole('list', { name: 'Its places' }).getByRole('button').first().press('Enter')
  await form.getByLabel('why').fill('as it is')
  await page.keyboard.press('Enter')
  await expect(list.getByRole('listitem').filter({ hasText: 'as it is' })).toBeVisible()
  const changed = await says()
  expect(changed?.works.map(({ work }) => work)).toEqual([named[1]?.work])
  expect(changed?.says).not.toBe(first)
  await expect(list.getByRole('listitem')).toHaveCount(before.rules.length + 1)
  // One edit: taken back at once.
  await page.keyboard.press('Control+z')
  await expect(list.getByRole('listitem').filter({ hasText: 'as it was' })).toBeVisible()
  expect((await says())?.says).toBe(first)
})

test('a note of a work becomes a rule by hand, and proposals keep it', async ({ page, host }) => {
  const { exhibition, read, before, list } = await open(page, host)
  const notes = page.getByRole('list', { name: 'Notes of works' }).getByRole('listitem')
  const n = await notes.count()
  expect(n).toBeGreaterThan(0)
  await notes
    .filter({ hasText: 'not beside' })
    .first()
    .getByRole('button', { name: /make (a|another) rule/ })
    .click()
  const form = page.getByRole('form', { name: 'Give a rule' })
  // Benches of the floor beside doorways, sides of partitions beside walls.
  const { things } = (await host.call(page, 'standing.list', { exhibition })) as {
    things: { id: string; kind: string }[]
  }
  await form.getByLabel('what holds').selectOption('axis')
  for (const { id } of things.filter(({ kind }) => kind === 'bench'))
    await expect(form.getByLabel('where').locator(`option[value="${id}"]`)).toHaveCount(1)
  const { partitions } = (await host.call(page, 'partition.list', { exhibition })) as {
    partitions: { faces: { a: string; b: string } }[]
  }
  expect(things.length + partitions.length).toBeGreaterThan(0)
  await form.getByLabel('what holds').selectOption('only on')
  for (const { faces } of partitions)
    await expect(form.getByLabel('where').locator(`option[value="${faces.b}"]`)).toHaveCount(1)
  await form.getByLabel('where').selectOption({ index: 1 })
  await form.getByRole('button', { name: 'give it' }).click()
  await expect(list.getByRole('listitem')).toHaveCount(before.rules.length + 1)
  await expect(notes).toHaveCount(n - 1)
  expect((await read()).contradiction).toBeNull()
  await page.getByRole('button', { name: 'propose', exact: true }).click()
  await expect(page.getByRole('heading', { name: 'Ways to hang it' })).toBeVisible({ timeout: 90_000 })
  await expect(page.getByText(/Every rule of the hang is kept|rules are kept; the others? waits?/)).toBeVisible()
  await page.emulateMedia({ colorScheme: 'dark' })
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
})

test('loan terms are read sentence by sentence: given as they are offered, taken as a limit, settled, flagged when they change', async ({
  page,
  host,
}) => {
  const { exhibition, read, list, before } = await open(page, host)
  const { works } = (await host.call(page, 'exhibition.frieze', { exhibition })) as {
    works: { work: string; title: string }[]
  }
  const alone = works.filter(one => works.filter(({ title }) => title === one.title).length === 1)
  const [own, other] = alone
  if (own === undefined || other === undefined) throw new Error('no two works with titles of their own')
  const words = `Not beside “${other.title}”. At most 40 lux. Hang alone. Courier on arrival.`
  const { facts } = (await host.call(page, 'work.get', { id: own.work })) as {
    facts: { loanTerms: string; lightLimit: number | null }
  }
  const write = (was: string, to: string) =>
    host.call(page, 'work.update', { id: own.work, changes: { loanTerms: { was, to } } })
  await write(facts.loanTerms, words)
  const note = page
    .getByRole('list', { name: 'Notes of works' })
    .getByRole('listitem')
    .filter({ hasText: 'Hang alone' })
  await expect(note).toContainText(`“Not beside “${other.title}””`)
  await expect(note).not.toContainText('Courier')
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])

  await note.getByRole('button', { name: /^give this rule/ }).press('Enter')
  await expect(list.getByRole('listitem')).toHaveCount(before.rules.length + 1)
  await expect(note).not.toContainText('Not beside')
  await note.getByRole('button', { name: 'take it as its light limit' }).click()
  await expect(note).not.toContainText('At most 40 lux')
  const after = (await host.call(page, 'work.get', { id: own.work })) as { facts: { lightLimit: number | null } }
  expect(after.facts.lightLimit).toBe(40)
  await note.getByRole('button', { name: 'needs no rule' }).click()
  await note.getByLabel('why, and who agreed').fill('the lender waived it')
  await page.keyboard.press('Enter')
  await expect(note).toHaveCount(0)
  await page.getByRole('button', { name: /ask nothing further|asks nothing further/ }).click()
  const aside = page.getByRole('list', { name: 'Sentences that ask nothing further' })
  await expect(aside).toContainText('the lender waived it')
  await expect(aside).toContainText('Courier on arrival')

  await write(words, 'Courier on arrival.')
  const line = list.getByRole('listitem').filter({ hasText: 'no longer says' })
  await expect(line).toContainText(`Made from “Not beside “${other.title}””`)
  expect((await read()).rules.length).toBeGreaterThan(before.rules.length)
})

test('a work’s tag beside the list and on its wall names its rules, with how they stand', async ({ page, host }) => {
  const { before } = await open(page, host)
  const broken = before.rules.find(rule => rule.state === 'broken' && rule.from === 'given')
  const [one] = broken?.works ?? []
  if (broken === undefined || one === undefined) throw new Error('no given rule is broken')
  const own = page.getByRole('list', { name: 'Rules of the hang for this work' })
  const got = (await host.call(page, 'work.get', { id: one.work })) as { facts: { title: string } }
  await page.getByRole('link', { name: 'Walls' }).click()
  await expect(page.locator('[data-placement]').first()).toBeVisible({ timeout: 30_000 })
  await page.getByRole('combobox', { name: 'Find a work, wall or number' }).fill(got.facts.title)
  await page.getByRole('option', { name: got.facts.title }).first().click()
  await expect(own).toContainText(broken.says, { timeout: 30_000 })
  await expect(own).toContainText('broken today')
  await page.getByRole('link', { name: 'Checklist' }).click()
  await expect(own).toContainText(broken.says)
})
