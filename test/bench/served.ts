/** The loopback host in a process of its own, on the screens as their sources are now, for benches in the real browser. */
import { type ChildProcess, spawn } from 'node:child_process'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { type Browser, chromium, type Page } from 'playwright-core'
import { findOrInstallBrowser } from '../../main/scripts/browser.ts'
import { buildRenderer } from '../../main/scripts/build.ts'
import { buildWhenOld } from '../../main/scripts/fresh.ts'

const commandLine = fileURLToPath(new URL('../../main/hosts/command-line/main.ts', import.meta.url))

export interface Served {
  readonly child: ChildProcess
  /** The start address, which gives the cookie. */
  readonly address: string
}

export async function serve(file: string, data: string): Promise<Served> {
  await buildWhenOld('renderer/built', ['renderer', 'src'], async () => {
    console.log('Building the screens …')
    await buildRenderer()
  })
  const child = spawn(process.execPath, [commandLine, 'serve', file], {
    env: { ...process.env, HANGWRIGHT_DATA: data },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const line = await new Promise<string>((resolve, reject) => {
    createInterface({ input: child.stdout }).once('line', resolve)
    child.once('exit', code => reject(new Error(`the host ended with ${code}`)))
  })
  return { child, address: String(JSON.parse(line).address) }
}

/** The browser of the tests, drawing without a graphics card. */
export async function openBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: await findOrInstallBrowser(),
    args: [...(process.getuid?.() === 0 ? ['--no-sandbox'] : []), '--disable-gpu'],
  })
}

/** A page of the program at a screen; it is the first that loads, so nothing that starts the program leads away from it. */
export async function openAt(browser: Browser, address: string, hash: string): Promise<Page> {
  const page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage()
  // The start address gives the cookie.
  await page.context().request.get(address)
  await page.goto(new URL(`/${hash}`, address).href)
  return page
}
