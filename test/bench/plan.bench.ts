/**
 * A building of 60 rooms, 600 walls and 2,000 fixtures on its plan: panned, zoomed, a room carried over it with
 * everything that can hold it, a room drawn in it; one event in every frame, in the real browser on the real program.
 * Two figures, as for the elevation: times from frame to frame (60 frames a second are 16.7 ms), which other work on
 * the machine spoils, and the main thread's own time for a frame, which it hardly does. And how long an edit takes from
 * the hand's letting go to the catalogue's answer on the screen.
 */
import { cpus, loadavg } from 'node:os'
import { dirname } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { categories, perFrame } from './frame-times.ts'
import { fillBuilding } from './full-building.ts'
import { withDemo } from './many-works.ts'
import { openAt, openBrowser, serve } from './served.ts'

const frames = 300
const traced = 120

type Kind = 'pointermove' | 'wheel'

/** One event in each of so many frames, about where the pointer is; gives the times from frame to frame, ms. */
async function events(page: Page, kind: Kind, from: { readonly x: number; readonly y: number }, total: number) {
  const stamps = await page.evaluate(
    ([what, x, y, most]) =>
      new Promise<number[]>(resolve => {
        const drawing = document.querySelector('[aria-label^="Plan of"]')
        const times: number[] = []
        const step = (now: number) => {
          times.push(now)
          if (times.length > most) return resolve(times)
          const turn = times.length / 24
          const clientX = x + 240 * Math.sin(turn)
          const clientY = y + 90 * Math.cos(turn * 1.7)
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
  const times = await events(page, kind, from, frames)
  await browser.startTracing(page, { categories: [...categories] })
  await events(page, kind, from, traced)
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString())
  const main = perFrame(traceEvents, traced)
  const sorted = [...times].sort((a, b) => a - b)
  const at = (part: number) => (sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? 0).toFixed(1)
  const late = times.filter(time => time > 17.5).length
  const mean = times.reduce((sum, time) => sum + time, 0) / times.length
  const of = (what: string) => (main.get(what) ?? 0).toFixed(1)
  console.log(`  ${name}, at a load of ${load}`)
  console.log(
    `    ${(1000 / mean).toFixed(1)} frames a second; from frame to frame median ${at(0.5)} ms, 95 % ${at(0.95)} ms, longest ${at(1)} ms; ${((100 * late) / times.length).toFixed(1)} % of ${times.length} over 16.7 ms (by more than 0.8 ms)`,
  )
  console.log(
    `    main thread, processor time a frame: ${of('whole')} ms; of it script ${of('script')}, style ${of('style')}, layout ${of('layout')}, paint ${of('paint')}`,
  )
}

async function run(browser: Browser, page: Page): Promise<void> {
  await page.locator('[data-room]').nth(59).waitFor()
  await page.waitForTimeout(3000)
  const sheet = await page.locator('[aria-label^="Plan of"]').boundingBox()
  if (sheet === null) throw new Error('the plan is not on the screen')
  const middle = { x: sheet.x + sheet.width / 2, y: sheet.y + sheet.height / 2 }
  const hold = async (button: 'left' | 'middle') => {
    await page.mouse.move(middle.x, middle.y)
    await page.mouse.down({ button })
    await page.mouse.move(middle.x + 6, middle.y + 2)
  }
  await hold('middle')
  await measured('the whole building panned', browser, page, 'pointermove', middle)
  await page.mouse.up({ button: 'middle' })
  await page.keyboard.press('0')
  await measured('zoomed in and out', browser, page, 'wheel', middle)
  await page.keyboard.press('0')
  const room = page.locator('[data-room]').nth(34)
  await room.press('Enter')
  const box = await room.boundingBox()
  if (box === null) throw new Error('the room is not on the screen')
  await page.mouse.move(box.x + box.width * 0.6, box.y + box.height * 0.6)
  await page.mouse.down()
  await page.mouse.move(box.x + box.width * 0.6 + 8, box.y + box.height * 0.6)
  await measured('a room carried over it, with all that can hold it', browser, page, 'pointermove', middle)
  const undo = () => page.locator('header, nav').first().textContent()
  const before = await undo()
  const begun = Date.now()
  await page.mouse.up()
  await page.waitForFunction(words => document.querySelector('header, nav')?.textContent !== words, before)
  console.log(`    put down: ${Date.now() - begun} ms until the window says so`)
  await page.keyboard.press('Escape')
  for (let times = 0; times < 6; times += 1) await page.keyboard.press('+')
  await page.waitForTimeout(500)
  await hold('middle')
  await measured('panned from near, with dimensions and what is on the walls', browser, page, 'pointermove', middle)
  await page.mouse.up({ button: 'middle' })
  await page.keyboard.press('0')
  await page.keyboard.press('d')
  await page.mouse.click(middle.x, middle.y)
  await measured('a room drawn, with all that can hold its corner', browser, page, 'pointermove', middle)
}

console.log(`  ${cpus().length} × ${cpus()[0]?.model ?? 'processor not known'}, drawn without a graphics card`)
await withDemo(async (host, file) => {
  const made = await fillBuilding(host, 60, 2000)
  console.log(`  60 rooms, ${made.walls} walls, ${made.fixtures} fixtures, and the demo's three rooms`)
  await host.close()
  const { child, address } = await serve(file, dirname(file))
  const browser = await openBrowser()
  try {
    const page = await openAt(browser, address, '#/rooms')
    await run(browser, page)
  } finally {
    await browser.close()
    child.kill('SIGTERM')
  }
})
