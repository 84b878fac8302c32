/** The whole file of a work, made on its page. */
import { expect, test } from './host.ts'

test('a work’s whole file is made on its page and fetched as PDF and spreadsheet', async ({ host, page }) => {
  await host.open(page, '#/checklist')
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
})
