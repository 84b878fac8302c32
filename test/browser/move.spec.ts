/** A catalogue goes to another folder where catalogues are chosen, and the window goes on with it there. */
import { existsSync, mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from './host.ts'

test('a catalogue is copied and moved to a typed folder; a folder that is not there is refused', async ({
  page,
  emptyHost: host,
}) => {
  const target = join(host.folder, 'Übersicht 2031')
  await host.open(page, '#/catalogues')
  const folder = page.getByRole('textbox', { name: 'folder' })
  await expect(page.getByRole('button', { name: 'move it there' })).toBeDisabled()
  await folder.fill(target)
  await page.getByRole('button', { name: 'move it there' }).click()
  await expect(page.getByText(`There is no folder ${target}. Make it first, or name another.`)).toBeVisible()
  mkdirSync(target)
  const name = page.getByRole('textbox', { name: 'name there' })
  await name.fill('spare')
  await page.getByRole('button', { name: 'save a copy there' }).click()
  await expect(page.getByText('This catalogue stays where it is.')).toBeVisible()
  expect(existsSync(join(target, 'spare.hangwright'))).toBe(true)
  await name.fill('Low Water')
  await page.getByRole('button', { name: 'move it there' }).click()
  await expect(page.getByText('Nothing of it is left in the old folder.')).toBeVisible()
  await expect(page.getByRole('heading', { name: 'Low Water' })).toBeVisible()
  expect(existsSync(host.file)).toBe(false)
  expect(existsSync(join(target, 'Low Water.hangwright'))).toBe(true)
  const { works } = (await host.call(page, 'work.counts', {})) as { works: number } // the answer of that name
  expect(works).toBe(0)
})
