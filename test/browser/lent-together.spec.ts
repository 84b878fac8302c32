/** What a loan says alike of several works of a wall: told once, laid open, settled together and taken back. */
import { expect, goToWall, test } from './host.ts'

const patient = { timeout: 40_000 } as const

test('a loan shorter than the show is told once for the works of a wall', async ({ page, host }) => {
  await host.open(page)
  await page.getByRole('button', { name: /coordinator/ }).click()
  const hidden = page.getByText('I have read this')
  if (await hidden.count()) await hidden.click()
  const face = await goToWall(page, 'Long Gallery, north wall')
  type Said = {
    exhibitions: { id: string }[]
    loans: unknown[]
    parties: { id: string; name: string }[]
    works: { work: string }[]
  }
  const ask = async (name: string, input: object) => (await host.call(page, name, input)) as Said & { id: string }
  const exhibition = (await ask('exhibition.list', {})).exhibitions[0]?.id ?? ''
  const works: string[] = []
  for (const { work } of (await ask('wall.elevation', { exhibition, face })).works) {
    if (works.length < 3 && (await ask('loan.ofWork', { work })).loans.length === 0) works.push(work)
  }
  const party = (await ask('party.list', {})).parties[0]?.id
  const loan = await ask('loan.add', { party, number: 'SHORT 1', last: '2020-01-31' })
  await ask('loan.addWorks', { loan: loan.id, works })

  const list = page.getByRole('region', { name: 'Findings of this wall' })
  const told = list.getByRole('listitem').filter({ hasText: '3 works are lent until 31 January 2020, by loan SHORT 1' })
  await expect(told).toHaveCount(1, patient)
  // The strip of walls counts it once.
  const strip = page.getByRole('link', { name: /^Long Gallery, north wall/ })
  await expect(strip).toHaveAccessibleName(/, 3 things to settle$/, patient)
  await told.getByRole('button', { name: 'each by itself' }).click()
  await expect(told.getByText(/ is lent until 31 January 2020/)).toHaveCount(3)
  // One of them first, by its own reason.
  const first = told.getByRole('listitem').first()
  await first.getByRole('button', { name: 'settle with a reason' }).click()
  await first.getByLabel(/It may stay/).fill('It goes home first.')
  await page.keyboard.press('Enter')
  const left = list.getByRole('listitem').filter({ hasText: '2 works are lent until 31 January 2020' })
  await expect(left).toHaveCount(1, patient)
  await left.getByRole('button', { name: 'settle with a reason' }).first().click()
  await left.getByLabel(/It may stay/).fill('The lender prolongs it.')
  await page.keyboard.press('Enter')
  const settled = list.getByRole('listitem').filter({ hasText: 'The lender prolongs it.' })
  await expect(settled).toHaveCount(1, patient)
  await expect(list.getByText(/lent until 31 January 2020/)).toHaveCount(0)
  await settled.getByRole('button', { name: 'take back' }).click()
  await expect(left).toHaveCount(1, patient)
  await expect(settled).toHaveCount(0)
  await page.getByRole('button', { name: /^undo/ }).click()
  await expect(settled).toHaveCount(1, patient)

  // The loan's own page lists them on demand.
  await page.goto(page.url().replace(/#.*/, `#/loans/${loan.id}`))
  const short = page.locator('section[aria-labelledby="loan-periods"]')
  await expect(short.getByText('3 works are lent until 31 January 2020')).toBeVisible(patient)
  await short.getByRole('button', { name: 'which they are' }).click()
  await expect(short.getByRole('link')).toHaveCount(3)
})
