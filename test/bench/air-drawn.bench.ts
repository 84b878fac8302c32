/**
 * A year of the air of two rooms drawn in the real browser: two loggers a minute apart, and three every five minutes;
 * zoomed in and out by the wheel and shifted, a step a frame. Processor time of the main thread hardly changes with what
 * else the machine does; wanted is less than 16 ms a frame.
 */
import { writeFileSync } from 'node:fs'
import { cpus, loadavg } from 'node:os'
import { dirname } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import type { Host } from '../../main/hosts/host.ts'
import { callOn } from '../contract/fixture.ts'
import { categories, perFrame } from './frame-times.ts'
import { withDemo } from './many-works.ts'
import { openAt, openBrowser, serve } from './served.ts'

const frames = 100
const yearOfMinutes = 365 * 24 * 60

async function bringIn(host: Host, room: string, logger: string, minutes: number): Promise<void> {
  const lines = ['Date and time;Temperature °C;Relative humidity %']
  for (let at = 0; at < yearOfMinutes; at += minutes) {
    const moment = new Date(Date.UTC(2027, 0, 1) + at * 60_000).toISOString().slice(0, 16)
    const celsius =
      20 + (logger.charCodeAt(0) % 8) / 4 + 3 * Math.sin(at / 9000) + Math.sin(at / 230) + ((at * 7919) % 13) / 40
    const humidity = 50 + 8 * Math.sin(at / 31_000) + 3 * Math.sin(at / 410) + ((at * 6007) % 17) / 20
    lines.push(`${moment}Z;${celsius.toFixed(2)};${humidity.toFixed(2)}`)
  }
  const { handle, path } = host.handles.create(`${logger}.csv`)
  writeFileSync(path, lines.join('\n'))
  await callOn(host, 'climate.takeFile', { handle, room, logger, by: 'Tamsin Oake' })
}

/** Wheel events, one a frame; times from frame to frame. */
async function turned(page: Page, deltaX: number, deltaY: number): Promise<readonly number[]> {
  return page.evaluate(
    ([x, y, count]) =>
      new Promise<number[]>((resolve, reject) => {
        const drawing = document.querySelector('svg[role="application"]')
        if (drawing === null) return reject(new Error('nothing is drawn'))
        const seen = drawing.getBoundingClientRect()
        const stamps: number[] = []
        const next = (now: number) => {
          stamps.push(now)
          // There and back again.
          const way = stamps.length <= count / 2 ? 1 : -1
          const at = { clientX: seen.left + seen.width * 0.4, clientY: seen.top + 80, bubbles: true, cancelable: true }
          drawing.dispatchEvent(new WheelEvent('wheel', { ...at, deltaX: x * way, deltaY: y * way }))
          if (stamps.length <= count) requestAnimationFrame(next)
          else resolve(stamps.slice(1).map((time, n) => time - (stamps[n] ?? 0)))
        }
        requestAnimationFrame(next)
      }),
    [deltaX, deltaY, frames] as const,
  )
}

async function measured(name: string, browser: Browser, page: Page, deltaX: number, deltaY: number): Promise<void> {
  const load = loadavg()[0]?.toFixed(1)
  const times = [...(await turned(page, deltaX, deltaY))].sort((a, b) => a - b)
  await browser.startTracing(page, { categories: [...categories] })
  await turned(page, deltaX, deltaY)
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString())
  const sums = [...perFrame(traceEvents, frames)].map(([kind, ms]) => `${kind} ${ms.toFixed(1)}`)
  const at = (part: number) => (times[Math.min(times.length - 1, Math.floor(part * times.length))] ?? 0).toFixed(1)
  console.log(`  ${name}, at a load of ${load}: frames of ${at(0.5)} ms, 95 % ${at(0.95)} ms`)
  console.log(`    processor time of the main thread a frame, ms: ${sums.join(', ')}`)
}

console.log(`  ${cpus().length} × ${cpus()[0]?.model ?? 'processor not known'}, drawn without a graphics card`)
await withDemo(async (host, file) => {
  const { rooms } = await callOn(host, 'climate.rooms', {})
  const [fine, coarse] = rooms.filter(({ count }) => count === 0)
  if (fine === undefined || coarse === undefined) throw new Error('the demo has too few rooms without readings')
  for (const logger of ['A', 'B']) await bringIn(host, fine.id, logger, 1)
  for (const logger of ['A', 'B', 'C']) await bringIn(host, coarse.id, logger, 5)
  await host.close()
  const { child, address } = await serve(file, dirname(file))
  const browser = await openBrowser()
  try {
    for (const [words, room] of [
      ['two loggers, a minute', fine.id],
      ['three loggers, five minutes', coarse.id],
    ] as const) {
      const begun = Date.now()
      const page = await openAt(browser, address, `#/climate/${room}`)
      await page.locator('svg[role="application"] text.tick').first().waitFor()
      console.log(`  ${words}: drawn after ${Date.now() - begun} ms`)
      await page.waitForTimeout(3000)
      await measured('zoomed near and out again', browser, page, 0, -40)
      await page.locator('svg[role="application"]').focus()
      for (let at = 0; at < 2; at++) await page.keyboard.press('+')
      await measured('shifted, five months in sight', browser, page, 6, 0)
      await page.close()
    }
  } finally {
    await browser.close()
    child.kill('SIGTERM')
  }
})
