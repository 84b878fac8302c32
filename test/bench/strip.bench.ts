/**
 * The strip of a show of thousands of works, in the real browser on the real program: scrolled along, by keys, folded
 * and filtered; then the walls above it with hundreds of works on them. Frame times are from frame to frame; a
 * frame is blank where a work in view is not drawn. The processor time of the main thread hardly changes with what else
 * the machine does.
 */
import { cpus, loadavg } from 'node:os'
import { dirname } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import type { Host } from '../../main/hosts/host.ts'
import { callOn } from '../contract/fixture.ts'
import { categories, tasksOf } from './frame-times.ts'
import { fillShow } from './long-show.ts'
import { withDemo } from './many-works.ts'
import { openAt, openBrowser, serve } from './served.ts'

const [works, walls, each] = [3000, 60, 8]
const frames = 240

/** So many works of the show on each of its long walls. */
async function hang(host: Host, exhibition: string): Promise<number> {
  const free = (await callOn(host, 'exhibition.frieze', { exhibition })).works.filter(one => one.face === null)
  const long = (await callOn(host, 'sequence.walls', { exhibition })).walls.filter(wall => wall.works.length === 0)
  const places = long.flatMap((wall, at) =>
    free.slice(at * each, (at + 1) * each).map(({ entry }, of) => ({
      entry,
      face: wall.face,
      x: Math.round((wall.length * (of + 0.5)) / each),
      rule: 'face' as const,
      y: null,
      was: null,
    })),
  )
  await callOn(host, 'placement.put', { exhibition, places })
  return places.length
}

/** Scrolls what `selector` finds by so many pixels in each frame; how many frames had no work drawn where one stands. */
async function scrolled(page: Page, selector: string, way: 'scrollLeft' | 'scrollTop', by: number) {
  return page.evaluate(
    ([query, side, step, count]) =>
      new Promise<{ times: number[]; blank: number }>((resolve, reject) => {
        const found = document.querySelector(query)
        if (!(found instanceof HTMLElement)) return reject(new Error(`nothing is ${query}`))
        found[side] = 0
        const seen = found.getBoundingClientRect()
        const stamps: number[] = []
        let [blank, onward] = [0, 1]
        const next = (now: number) => {
          stamps.push(now)
          // Along the middle of the row, somewhere in six places, something of the show stands.
          if (side === 'scrollLeft') {
            const bare = [1, 2, 3, 4, 5, 6].every(part => {
              const at = document.elementsFromPoint(seen.left + (seen.width * part) / 7, seen.top + seen.height * 0.62)
              return at.every(one => one.closest('[data-at]') === null)
            })
            if (bare) blank += 1
          }
          const before = found[side]
          found[side] += step * onward
          if (found[side] === before) onward = -onward
          if (stamps.length <= count) requestAnimationFrame(next)
          else resolve({ times: stamps.slice(1).map((time, at) => time - (stamps[at] ?? 0)), blank })
        }
        requestAnimationFrame(next)
      }),
    [selector, way, by, frames] as const,
  )
}

async function measured(
  name: string,
  browser: Browser,
  page: Page,
  act: () => Promise<{ readonly times: readonly number[]; readonly blank: number }>,
): Promise<void> {
  const load = loadavg()[0]?.toFixed(1)
  // Once without the trace, which costs time itself.
  const { times, blank } = await act()
  await browser.startTracing(page, { categories: [...categories] })
  await act()
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString())
  const tasks = tasksOf(traceEvents).sort((a, b) => b - a)
  const sorted = [...times].sort((a, b) => a - b)
  const at = (part: number) => (sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? 0).toFixed(1)
  const mean = times.reduce((sum, time) => sum + time, 0) / times.length
  console.log(
    `  ${name}, at a load of ${load}: ${(1000 / mean).toFixed(1)} frames a second; median ${at(0.5)} ms, 95 % ${at(0.95)} ms, longest ${at(1)} ms; blank ${blank} of ${times.length}`,
  )
  console.log(
    `    longest tasks of the main thread ${tasks
      .slice(0, 4)
      .map(time => time.toFixed(1))
      .join(', ')} ms of processor time; ${tasks.filter(time => time > 16).length} of ${tasks.length} over 16 ms`,
  )
}

async function run(browser: Browser, page: Page): Promise<void> {
  await page.locator('.frieze [data-at]').first().waitFor()
  await page.locator('[data-today] [data-entry]').first().waitFor()
  await page.waitForTimeout(5000)
  for (const [name, by] of [
    ['the strip scrolled by 20 px a frame', 20],
    ['by 120 px', 120],
    ['flung, by 1,500 px', 1500],
    ['its thumb pulled, by 20,000 px', 20_000],
  ] as const) {
    await measured(name, browser, page, () => scrolled(page, '.frieze .row', 'scrollLeft', by))
  }
  for (const [name, by] of [
    ['the walls scrolled by 20 px a frame', 20],
    ['by 400 px', 400],
  ] as const) {
    await measured(name, browser, page, () => scrolled(page, '#screen', 'scrollTop', by))
  }
  await page.locator('.frieze [data-at]').first().focus()
  for (const key of ['End', 'Home']) {
    const begun = Date.now()
    await page.keyboard.press(key)
    const at = key === 'End' ? works - 1 : 0
    await page.waitForFunction(place => document.activeElement?.getAttribute('data-at') === String(place), at)
    console.log(`  ${key}: ${Date.now() - begun} ms until that work is in hand`)
  }
}

console.log(`  ${cpus().length} × ${cpus()[0]?.model ?? 'processor not known'}, drawn without a graphics card`)
await withDemo(async (host, file) => {
  const exhibition = await fillShow(host, works, walls)
  const hung = await hang(host, exhibition)
  console.log(`  ${works} works on the strip, ${hung} more hung on ${walls} walls`)
  await host.close()
  const { child, address } = await serve(file, dirname(file))
  const browser = await openBrowser()
  try {
    await run(browser, await openAt(browser, address, '#/sequence'))
  } finally {
    await browser.close()
    child.kill('SIGTERM')
  }
})
