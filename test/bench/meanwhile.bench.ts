/**
 * What the interface does while proposals are searched for 300 works on 60 walls: the real program, the sequence in the
 * real browser. Each task of the main thread by its own processor time, which what else the machine does hardly changes,
 * and times from frame to frame beside those of the same screen at rest, which it does.
 */
import { cpus, loadavg } from 'node:os'
import { dirname } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { categories, tasksOf } from './frame-times.ts'
import { fillShow } from './long-show.ts'
import { withDemo } from './many-works.ts'
import { openAt, openBrowser, serve } from './served.ts'

const [works, walls] = [300, 60]
const answersWithin = 16

/** Times from frame to frame while something runs, ms. */
async function frames(page: Page, meanwhile: () => Promise<unknown>): Promise<number[]> {
  const counted = page.evaluate(
    () =>
      new Promise<number[]>(resolve => {
        const times: number[] = []
        const step = (now: number) => {
          times.push(now)
          if (document.documentElement.dataset.benchEnds === undefined) requestAnimationFrame(step)
          else resolve(times)
        }
        requestAnimationFrame(step)
      }),
  )
  await meanwhile()
  await page.evaluate(() => {
    document.documentElement.dataset.benchEnds = ''
  })
  const stamps = await counted
  await page.evaluate(() => {
    delete document.documentElement.dataset.benchEnds
  })
  return stamps.slice(1).map((time, at) => time - (stamps[at] ?? 0))
}

async function measured(name: string, browser: Browser, page: Page, meanwhile: () => Promise<unknown>) {
  const load = loadavg()[0]?.toFixed(1)
  await browser.startTracing(page, { categories: [...categories] })
  const times = await frames(page, meanwhile)
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString())
  const tasks = tasksOf(traceEvents).sort((a, b) => b - a)
  const late = times.filter(time => time > 17.5).length
  console.log(`  ${name}, at a load of ${load}`)
  console.log(
    `    ${tasks.length} tasks of the main thread, the longest ${tasks
      .slice(0, 4)
      .map(time => time.toFixed(1))
      .join(', ')} ms of processor time; ${tasks.filter(time => time > answersWithin).length} over ${answersWithin} ms`,
  )
  console.log(
    `    ${times.length} frames, ${((100 * late) / times.length).toFixed(1)} % over 16.7 ms (by more than 0.8 ms), the longest ${Math.max(...times).toFixed(0)} ms`,
  )
}

console.log(`  ${cpus().length} × ${cpus()[0]?.model ?? 'processor not known'}, drawn without a graphics card`)
await withDemo(async (host, file) => {
  await fillShow(host, works, walls)
  await host.close()
  const { child, address } = await serve(file, dirname(file))
  const browser = await openBrowser()
  try {
    const page = await openAt(browser, address, '#/sequence')
    await page.locator('[data-today] [data-entry]').first().waitFor()
    await page.waitForTimeout(6000)
    await measured('at rest', browser, page, () => page.waitForTimeout(5000))
    const start = performance.now()
    await measured(`${works} works on ${walls} walls searched`, browser, page, async () => {
      // Not by role: the browser's driver looks for roles in the page itself, in a task longer than any of ours.
      await page.locator('.acts > button').click()
      // While it searches, what is asked for is disabled; then the proposals are drawn, wall by wall.
      await page.locator('fieldset[disabled]').waitFor()
      await page.locator('fieldset[disabled]').waitFor({ state: 'detached', timeout: 300_000 })
      await page
        .locator('input[aria-label^="this wall: "]')
        .nth(walls - 1)
        .waitFor()
    })
    console.log(`    the search took ${((performance.now() - start) / 1000).toFixed(1)} s`)
  } finally {
    await browser.close()
    child.kill('SIGTERM')
  }
})
