/**
 * 300 works with pictures on one wall, one of them dragged, the wall zoomed and shifted: one pointer move or turn of the
 * wheel in every frame, in the real browser on the real program. Two figures: times from frame to frame (60 frames a second are 16.7 ms), which other work on the
 * machine spoils, and the main thread's own time for a frame, which it hardly does.
 */
import { cpus, loadavg } from 'node:os'
import { dirname } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { categories, perFrame } from './frame-times.ts'
import { fillWall } from './full-wall.ts'
import { withDemo } from './many-works.ts'
import { openAt, openBrowser, serve } from './served.ts'

const count = 300
const frames = 600
const traced = 240

type Kind = 'pointermove' | 'wheel'

/** One event in each of so many frames, about where the pointer is; gives the times from frame to frame, ms. */
async function moves(page: Page, kind: Kind, from: { readonly x: number; readonly y: number }, total: number) {
  const stamps = await page.evaluate(
    ([what, x, y, most]) =>
      new Promise<number[]>(resolve => {
        const drawing = document.querySelector('[aria-label^="Elevation"]')
        const times: number[] = []
        const step = (now: number) => {
          times.push(now)
          if (times.length > most) return resolve(times)
          const turn = times.length / 24
          const clientX = x + 260 * Math.sin(turn)
          const clientY = y + 40 * Math.cos(turn * 1.7)
          drawing?.dispatchEvent(
            what === 'wheel'
              ? new WheelEvent('wheel', {
                  bubbles: true,
                  cancelable: true,
                  clientX: x,
                  clientY: y,
                  deltaY: 60 * Math.cos(turn),
                })
              : new PointerEvent('pointermove', { bubbles: true, clientX, clientY, pointerId: 1 }),
          )
          requestAnimationFrame(step)
        }
        requestAnimationFrame(step)
      }),
    [kind, from.x, from.y, total] as const,
  )
  return stamps.slice(1).map((time, at) => time - (stamps[at] ?? 0))
}

async function measured(name: string, browser: Browser, page: Page, kind: Kind, from: { x: number; y: number }) {
  const load = loadavg()[0]?.toFixed(1)
  const times = await moves(page, kind, from, frames)
  await browser.startTracing(page, { categories: [...categories] })
  await moves(page, kind, from, traced)
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString())
  report(name, times, perFrame(traceEvents, traced), load)
}

async function drag(name: string, browser: Browser, page: Page): Promise<void> {
  const shapes = page.locator('[data-placement]')
  await shapes.nth(count - 1).waitFor()
  await page.waitForTimeout(3000)
  const box = await shapes.nth(151).locator('.outline').boundingBox()
  if (box === null) throw new Error('the work is not on the screen')
  const from = { x: box.x + box.width / 2, y: box.y + box.height / 2 }
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  await page.mouse.move(from.x + 6, from.y)
  await measured(name, browser, page, 'pointermove', from)
  const carried = await page.locator('.carried .outline').count()
  await page.keyboard.press('Escape')
  await page.mouse.up()
  if (carried !== 1) throw new Error(`${carried} works were under the hand; it should be one`)
}

async function look(browser: Browser, page: Page): Promise<void> {
  const box = await page.locator('[aria-label^="Elevation"]').boundingBox()
  if (box === null) throw new Error('the wall is not on the screen')
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 }
  await page.mouse.move(middle.x, middle.y)
  await page.mouse.down({ button: 'middle' })
  await page.mouse.move(middle.x + 6, middle.y)
  await measured(`${count} works shifted, seen from near`, browser, page, 'pointermove', middle)
  await page.mouse.up({ button: 'middle' })
  await page.keyboard.press('0')
  await measured(`${count} works zoomed in and out`, browser, page, 'wheel', middle)
}

function report(
  name: string,
  times: readonly number[],
  main: ReadonlyMap<string, number>,
  load: string | undefined,
): void {
  const sorted = [...times].sort((a, b) => a - b)
  const at = (part: number) => (sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? 0).toFixed(1)
  const late = times.filter(time => time > 17.5).length
  const mean = times.reduce((sum, time) => sum + time, 0) / times.length
  const of = (kind: string) => (main.get(kind) ?? 0).toFixed(1)
  console.log(`  ${name}, at a load of ${load}`)
  console.log(
    `    ${(1000 / mean).toFixed(1)} frames a second; from frame to frame median ${at(0.5)} ms, 95 % ${at(0.95)} ms, longest ${at(1)} ms; ${((100 * late) / times.length).toFixed(1)} % of ${times.length} over 16.7 ms (by more than 0.8 ms)`,
  )
  console.log(
    `    main thread, processor time a frame: ${of('whole')} ms; of it script ${of('script')}, style ${of('style')}, layout ${of('layout')}, paint ${of('paint')}`,
  )
}

console.log(`  ${cpus().length} × ${cpus()[0]?.model ?? 'processor not known'}, drawn without a graphics card`)
await withDemo(async (host, file) => {
  const face = await fillWall(host, count)
  await host.close()
  const { child, address } = await serve(file, dirname(file))
  const browser = await openBrowser()
  try {
    const page = await openAt(browser, address, `#/walls/${face}`)
    await drag(`${count} works, the whole wall seen`, browser, page)
    for (let times = 0; times < 7; times += 1) await page.keyboard.press('+')
    await drag(`${count} works, seen from near`, browser, page)
    await look(browser, page)
  } finally {
    await browser.close()
    child.kill('SIGTERM')
  }
})
