/**
 * The host that a browser test drives: the real loopback host in a process of its own, on a fresh copy of the demo or
 * on an empty catalogue, with a data folder of its own. `open` gives a page that is past the start address.
 */
import { spawn } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { test as base, expect, type Page } from '@playwright/test'

const root = fileURLToPath(new URL('../..', import.meta.url))
const commandLine = join(root, 'main', 'hosts', 'command-line', 'main.ts')

/** Answers come late by up to so many milliseconds: whatever races with one shows itself. Asked for by hand. */
const late = Number(process.env.HANGWRIGHT_LATE ?? 0)

async function answerLate(page: Page): Promise<void> {
  await page.route('**/call', async route => {
    await new Promise(done => setTimeout(done, Math.random() * late))
    // A page that has gone waits for no answer.
    await route.continue().catch(() => {})
  })
}

export interface RunningHost {
  readonly address: string
  readonly file: string
  readonly folder: string
  /** A page on the program, signed in as somebody unless told otherwise. */
  readonly open: (page: Page, hash?: string) => Promise<void>
  /** Calls a procedure from outside the page, as a second window would. */
  readonly call: (page: Page, name: string, input: unknown) => Promise<unknown>
  /** Stops the host and starts it again on the same file; the page must be opened anew. */
  readonly restart: () => Promise<void>
}

/** The demo takes seconds to write, so it is written once for all tests of this run and copied. */
function demoCatalogue(): string {
  const folder = join(root, 'test', 'out', 'demo')
  const file = join(folder, 'demo.hangwright')
  if (existsSync(file)) return file
  throw new Error(`there is no demo at ${file}; test/browser/setup.ts writes it`)
}

async function serve(file: string, data: string) {
  const child = spawn(process.execPath, [commandLine, 'serve', file], {
    env: { ...process.env, HANGWRIGHT_DATA: data },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const lines = createInterface({ input: child.stdout })
  const first = await new Promise<string>((resolve, reject) => {
    lines.once('line', resolve)
    child.once('exit', code => reject(new Error(`the host ended with ${code}`)))
  })
  const { address } = JSON.parse(first)
  const stop = () =>
    new Promise<void>(resolve => {
      child.once('exit', () => resolve())
      child.kill('SIGTERM')
    })
  return { address: String(address), stop }
}

async function run(kind: 'demo' | 'empty', use: (host: RunningHost) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-browser-'))
  const file = join(folder, kind === 'demo' ? 'demo.hangwright' : 'empty.hangwright')
  const data = join(folder, 'data')
  mkdirSync(data)
  if (kind === 'demo') {
    const demo = demoCatalogue()
    cpSync(demo, file)
    const files = demo.replace(/\.hangwright$/, '.hangwright-files')
    if (existsSync(files) && statSync(files).isDirectory())
      cpSync(files, file.replace(/\.hangwright$/, '.hangwright-files'), { recursive: true })
  } else {
    const { createCatalogue } = await import('../../main/database/catalogue.ts')
    const { machineClock } = await import('../../main/services/clock.ts')
    createCatalogue(file, machineClock).close()
  }
  let served = await serve(file, data)
  const host: RunningHost = {
    get address() {
      return served.address
    },
    file,
    folder,
    async open(page, hash = '') {
      if (late > 0) await answerLate(page)
      if (hash === '') {
        await page.goto(served.address)
        await page.waitForURL(url => url.pathname === '/')
        return
      }
      // The start address gives the cookie; the screen asked for is then the first that loads.
      await page.goto('about:blank')
      await page.context().request.get(served.address)
      await page.goto(new URL(`/${hash}`, served.address).href)
    },
    async call(page, name, input) {
      const response = await page.evaluate(
        async ([procedure, given]) => {
          const answered = await fetch('/call', {
            method: 'POST',
            headers: { 'content-type': 'application/json' },
            body: JSON.stringify({ name: procedure, input: given }),
          })
          return answered.json()
        },
        [name, input] as const,
      )
      if (response.ok !== true) throw new Error(`${name}: ${JSON.stringify(response.refusal)}`)
      return response.value
    },
    async restart() {
      await served.stop()
      served = await serve(file, data)
    },
  }
  try {
    await use(host)
  } finally {
    await served.stop()
    rmSync(folder, { recursive: true, force: true })
  }
}

export const test = base.extend<{ host: RunningHost; emptyHost: RunningHost }>({
  // Playwright reads the fixture's needs from its first argument, which must be a pattern.
  // biome-ignore lint/correctness/noEmptyPattern: see above
  host: async ({}, use) => run('demo', use),
  // biome-ignore lint/correctness/noEmptyPattern: see above
  emptyHost: async ({}, use) => run('empty', use),
})
export { expect }

/**
 * Goes to a wall of the demo by its name on the key plan; gives its face. The demo opens on a wall by itself, which would
 * take the place of one that was chosen before, and which stays on the screen until the one asked for has come.
 */
export async function goToWall(page: Page, name: string): Promise<string> {
  await expect(page.locator('[data-placement]').first()).toBeVisible({ timeout: 30_000 })
  const link = page.getByRole('link', { name })
  const address = await link.getAttribute('href')
  await link.click()
  await page.waitForURL(url => url.hash === address)
  const elevation = page.getByRole('group', { name: `Elevation of ${name}` })
  await expect(elevation.locator('[data-placement]').first()).toBeVisible()
  return decodeURIComponent(address?.split('/')[2] ?? '')
}

/** The demo's coordinator sits down at the desk; what follows is written in their name. */
export async function sitDown(page: Page): Promise<void> {
  const asked = page.getByRole('form', { name: 'Who is at the desk' })
  await asked.getByRole('button', { name: /coordinator/ }).click()
  await expect(asked).toHaveCount(0)
}
