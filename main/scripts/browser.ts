/** The browser that tests drive: one that is there, else Playwright's own Chromium, fetched once. */
import { existsSync } from 'node:fs'
import { chromium } from 'playwright-core'
import { run, toolOf } from './run.ts'

const places = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
]

/** The program's path; refuses with what to do when there is none. */
export async function findOrInstallBrowser(): Promise<string> {
  const named = process.env.HANGWRIGHT_BROWSER
  if (named) return named
  const there =
    places.find(existsSync) ?? (existsSync(chromium.executablePath()) ? chromium.executablePath() : undefined)
  if (there !== undefined) return there
  console.error('No browser found: fetching Chromium for the tests …')
  await run(process.execPath, [toolOf('playwright-core'), 'install', 'chromium'])
  if (existsSync(chromium.executablePath())) return chromium.executablePath()
  throw new Error('No browser for the tests. Install Chromium, or name one in HANGWRIGHT_BROWSER, and start again.')
}
