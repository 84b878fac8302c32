/**
 * 300 works with pictures on one wall, one of them dragged: one pointer move in every frame, times from frame to frame,
 * in the real browser on the real program. 60 frames a second are 16.7 ms.
 */
import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { cpus, loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { chromium, type Page } from 'playwright-core'
import { writeDemo } from '../../main/demo/write.ts'
import { findOrInstallBrowser } from '../../main/scripts/browser.ts'
import { machineClock } from '../../main/services/clock.ts'

const commandLine = fileURLToPath(new URL('../../main/hosts/command-line/main.ts', import.meta.url))
const count = 300
const tiers = 3
const frames = 600

async function serve(file: string, data: string): Promise<{ readonly child: ChildProcess; readonly address: string }> {
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

async function call<T>(page: Page, name: string, input: unknown): Promise<T> {
  const answer = await page.evaluate(
    async ([procedure, given]) => {
      const response = await fetch('/call', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ name: procedure, input: given }),
      })
      return response.json()
    },
    [name, input] as const,
  )
  if (answer.ok !== true) throw new Error(`${name}: ${JSON.stringify(answer.refusal)}`)
  return answer.value
}

/** A wall of 60 m in a room of its own, full of works that were copied from the demo with backs and pictures. */
async function fill(page: Page): Promise<string> {
  const { exhibitions } = await call<{ exhibitions: readonly { id: string }[] }>(page, 'exhibition.list', {})
  const exhibition = exhibitions[0]?.id ?? ''
  const { works } = await call<{ works: readonly { work: string; picture: string | null; face: string | null }[] }>(
    page,
    'exhibition.frieze',
    { exhibition },
  )
  const sources = works.filter(work => work.picture !== null && work.face !== null).slice(0, 20)
  await call(page, 'room.add', {
    name: 'Bench',
    height: 4000,
    walls: [{ length: 60_000 }, { length: 8000 }, { length: 60_000 }, { length: 8000 }],
  })
  const { rooms } = await call<{ rooms: readonly { name: string; walls: readonly { face: string }[] }[] }>(
    page,
    'room.list',
    {},
  )
  const face = rooms.find(room => room.name === 'Bench')?.walls[0]?.face ?? ''
  const places: unknown[] = []
  for (let at = 0; at < count; at += 1) {
    const source = sources[at % sources.length]
    if (source === undefined) throw new Error('the demo has no pictures')
    const { id, entry } = await call<{ id: string; entry: string }>(page, 'work.duplicate', {
      id: source.work,
      exhibition,
    })
    await call(page, 'work.addSize', {
      work: id,
      part: 'framed',
      height: 500 + (at % 7) * 40,
      width: 360 + (at % 5) * 40,
      raw: '',
      kind: 'measured',
    })
    const handle = await page.evaluate(async hash => {
      const picture = await fetch(`/picture/${hash}/480`)
      const sent = await fetch('/upload?name=work.jpg', {
        method: 'PUT',
        headers: { 'Content-Type': 'application/octet-stream' },
        body: await picture.blob(),
      })
      return String((await sent.json()).value.handle)
    }, source.picture)
    await call(page, 'work.addPicture', { work: id, handle })
    const tier = at % tiers
    places.push({ entry, face, x: 400 + Math.floor(at / tiers) * 592, rule: 'hand', y: 700 + tier * 1000, was: null })
  }
  await call(page, 'placement.put', { exhibition, places })
  return face
}

async function dragFor(page: Page): Promise<readonly number[]> {
  const shapes = page.locator('[data-placement]')
  await shapes.nth(count - 1).waitFor()
  await page.waitForTimeout(3000)
  const box = await shapes.nth(151).locator('.outline').boundingBox()
  if (box === null) throw new Error('the work is not on the screen')
  const from = { x: box.x + box.width / 2, y: box.y + box.height / 2 }
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  await page.mouse.move(from.x + 6, from.y)
  const times = await page.evaluate(
    ([x, y, total]) =>
      new Promise<number[]>(resolve => {
        const svg = document.querySelector('[aria-label^="Elevation"]')
        const stamps: number[] = []
        const step = (now: number) => {
          stamps.push(now)
          if (stamps.length > total) return resolve(stamps)
          const turn = stamps.length / 24
          svg?.dispatchEvent(
            new PointerEvent('pointermove', {
              bubbles: true,
              clientX: x + 260 * Math.sin(turn),
              clientY: y + 40 * Math.cos(turn * 1.7),
              pointerId: 1,
            }),
          )
          requestAnimationFrame(step)
        }
        requestAnimationFrame(step)
      }),
    [from.x, from.y, frames] as const,
  )
  const moved = await page.evaluate(() => document.querySelectorAll('.carried .outline').length)
  await page.keyboard.press('Escape')
  await page.mouse.up()
  if (moved !== 1) throw new Error(`${moved} works were under the hand; it should be one`)
  return times.slice(1).map((time, at) => time - (times[at] ?? 0))
}

function report(name: string, times: readonly number[]): void {
  const sorted = [...times].sort((a, b) => a - b)
  const at = (part: number) => (sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? 0).toFixed(1)
  const late = times.filter(time => time > 17.5).length
  const mean = times.reduce((sum, time) => sum + time, 0) / times.length
  console.log(
    `  ${name}: ${(1000 / mean).toFixed(1)} frames a second; median ${at(0.5)} ms, 95 % ${at(0.95)} ms, 99 % ${at(0.99)} ms, longest ${at(1)} ms; ${late} of ${times.length} later than 17.5 ms`,
  )
}

const folder = mkdtempSync(join(tmpdir(), 'hangwright-bench-'))
const file = join(folder, 'bench.hangwright')
console.log(`  ${cpus().length} × ${cpus()[0]?.model ?? 'processor not known'}, drawn without a graphics card`)
console.log(`  load before: ${loadavg()[0]?.toFixed(1)} (what else the machine does slows the frames)`)
await writeDemo(file, machineClock)
const { child, address } = await serve(file, folder)
const browser = await chromium.launch({
  executablePath: await findOrInstallBrowser(),
  args: [...(process.getuid?.() === 0 ? ['--no-sandbox'] : []), '--disable-gpu'],
})
try {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
  await page.goto(address)
  await page.waitForURL(url => url.pathname === '/')
  const face = await fill(page)
  await page.evaluate(to => {
    location.hash = `#/walls/${to}`
  }, face)
  report(`${count} works, the whole wall seen`, await dragFor(page))
  for (let times = 0; times < 7; times += 1) await page.keyboard.press('+')
  report(`${count} works, seen from near`, await dragFor(page))
} finally {
  await browser.close()
  child.kill('SIGTERM')
  rmSync(folder, { recursive: true, force: true })
}
