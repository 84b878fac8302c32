/** What the tests of the sequence share: the screen opened as a coordinator, and the show as the host tells it. */
import { expect, type Page } from '@playwright/test'
import { type RunningHost, sitDown, test } from './host.ts'

export interface Wall {
  readonly face: string
  readonly room: string
  readonly name: string
  readonly works: readonly {
    readonly entry: string
    readonly x: number
    readonly y: number
    readonly stays: boolean
  }[]
}

/** The exhibition that is shown. */
export async function openSequence(page: Page, host: RunningHost): Promise<string> {
  await host.open(page)
  await sitDown(page)
  // At once: the demo opens on its best wall, but not under a hand that has gone elsewhere.
  await page.getByRole('link', { name: 'Sequence' }).click()
  await expect(page.locator('[data-today] [data-entry]').first()).toBeVisible()
  const { exhibitions } = (await host.call(page, 'exhibition.list', {})) as { exhibitions: readonly { id: string }[] }
  return exhibitions[0]?.id ?? ''
}

export async function wallsOf(page: Page, host: RunningHost, exhibition: string): Promise<readonly Wall[]> {
  return ((await host.call(page, 'sequence.walls', { exhibition })) as { walls: readonly Wall[] }).walls
}

/** A search takes its time where others work as well. */
export async function askForProposals(page: Page): Promise<void> {
  test.slow()
  await page.getByRole('button', { name: 'propose', exact: true }).click()
  await expect(page.getByRole('heading', { name: 'Ways to hang it' })).toBeVisible({ timeout: 200_000 })
}

/** Whatever is asked for twice or would come off its wall is told, and taking waits until a person has settled it. */
export async function settleAll(page: Page): Promise<void> {
  const settle = page.getByRole('group', { name: 'To settle before it is taken' })
  for (let turn = 0; turn < 40 && (await settle.count()) > 0; turn += 1) {
    await expect(page.getByRole('button', { name: /^take / })).toBeDisabled()
    await settle.getByRole('button').first().click()
  }
}
