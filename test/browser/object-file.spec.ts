/** The whole file of a work, made on its page. */
import { expect, test } from './host.ts'

test('a work’s whole file is made on its page and fetched as PDF and spreadsheet', async ({ host, page }) => {
  await host.open(page, '#/checklist')
  const { people } = (await host.call(page, 'person.list', {})) as { people: readonly { id: string }[] }
  await host.call(page, 'desk.sit', { person: people[0]?.id })
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as { exhibitions: readonly { id: string }[] }
  const { works } = (await host.call(page, 'exhibition.frieze', { exhibition: exhibitions[0]?.id })) as {
    works: readonly { work: string; running: string }[]
  }
  await host.open(page, `#/work/${works.find(({ running }) => running === '27')?.work}`)
  const part = page.getByRole('region', { name: 'Its whole file' })
  await part.getByRole('button', { name: 'make it' }).click()
  for (const ending of ['pdf', 'xlsx']) {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      part.getByRole('link', { name: new RegExp(`${ending}$`) }).click(),
    ])
    expect(download.suggestedFilename()).toMatch(/object file/)
  }
  await part.getByRole('button', { name: 'put these away' }).click()
  await expect(part.getByRole('link')).toHaveCount(0)
  await part.getByLabel('a copy to give away').check()
  await expect(part.getByText(/these stay in the house/)).toBeVisible()
  await part.getByRole('button', { name: 'make it' }).click()
  await expect(part.getByRole('link', { name: /xlsx$/ })).toBeVisible({ timeout: 40_000 })
  // Asked for once, values on a checklist are asked for at this desk until somebody says otherwise.
  await host.open(page, '#/papers')
  const valued = page.getByLabel('the checklist with values')
  await expect(valued).not.toBeChecked()
  await valued.check()
  await page.reload()
  await expect(valued).toBeChecked()
})
