/** The unpacked program in real Electron: a window opens, the bridge answers, navigation and new windows are refused. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { _electron, type ElectronApplication, expect, type Page, test } from '@playwright/test'
import { electronHere } from '../../main/scripts/electron-program.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const program = electronHere()
test.skip(program === null, 'Electron’s runtime is not on this machine')
test.skip(process.platform === 'linux' && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY, 'there is no display')

let data = ''
let app: ElectronApplication
let page: Page

test.beforeAll(async () => {
  data = mkdtempSync(join(tmpdir(), 'hangwright-desktop-'))
  const { ELECTRON_RUN_AS_NODE: _, ...env } = process.env
  app = await _electron.launch({
    executablePath: program ?? '',
    args: [
      root,
      `--user-data-dir=${data}`,
      ...(process.platform === 'linux' ? ['--ozone-platform=x11'] : []),
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
    ],
    env: Object.fromEntries(
      Object.entries(env).flatMap(([name, value]) => (value === undefined ? [] : [[name, value]])),
    ),
  })
  page = await app.firstWindow()
  await page.getByRole('navigation').first().waitFor()
})

test.afterAll(async () => {
  await app?.close()
  rmSync(data, { recursive: true, force: true })
})

test('the window shows the demo over our own scheme', async () => {
  expect(page.url()).toMatch(/^hangwright:\/\/app\//)
})

test('the page has no Node and answers through the bridge alone', async () => {
  const seen = await page.evaluate(async () => ({
    node: typeof (globalThis as Record<string, unknown>).process,
    answer: await (
      globalThis as unknown as { hangwright: { call: (text: string) => Promise<string> } }
    ).hangwright.call(JSON.stringify({ name: 'desk.state', input: {} })),
  }))
  expect(seen.node).toBe('undefined')
  expect(JSON.parse(seen.answer)).toMatchObject({ ok: true, value: { host: 'desktop' } })
})

test('going elsewhere and opening windows is refused', async () => {
  const before = page.url()
  await page.evaluate(() => {
    location.href = 'https://example.com/?hangwright://app/'
    window.open('https://example.com/')
  })
  await page.waitForTimeout(500)
  expect(page.url()).toBe(before)
  expect(app.windows()).toHaveLength(1)
})
