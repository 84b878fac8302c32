/**
 * A list of 70,000 works in the real browser on the real program: scrolled, filtered as it is typed, sorted. Frame
 * times are from frame to frame; a blank row is one in view whose work has not come yet. Wanted: rows within 100 ms of
 * a key, and no row blank for more than two frames.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { cpus, loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { writeDemo } from '../../main/demo/write.ts'
import { createHost } from '../../main/hosts/host.ts'
import { machineClock } from '../../main/services/clock.ts'
import { openAt, openBrowser, serve } from './served.ts'

const count = 70_000

const nouns = ['Harbour', 'Slack water', 'Window', 'Ladder', 'Orchard', 'Ferry', 'Quarry', 'Loom', 'Kiln', 'Ridge']
const rests = ['at dusk', 'in rain', 'with figures', 'study', 'from the north', 'unfinished', 'after the thaw']
const firsts = ['Ina', 'Oda', 'Per', 'Lise', 'Tomas', 'Aune', 'Mirek', 'Sanna', 'Edda', 'Jori', 'Vilma']
const lasts = ['Vorr', 'Ketil', 'Asmund', 'Ruel', 'Tamsin', 'Ostrow', 'Breck', 'Lind', 'Halm', 'Sedge', 'Quist', 'Noor']
const media = ['oil on canvas', 'etching', 'gelatin silver print', 'watercolour on paper', 'wool tapestry']
const headings = ['Inv. No.', 'Artist', 'Title', 'Date', 'Medium', 'Dimensions', 'Weight (kg)', 'Lender']

function line(i: number): readonly string[] {
  const pick = (from: readonly string[], step: number) => from[(i * step) % from.length] ?? ''
  return [
    `${1900 + (i % 120)}.${100_000 + i}`,
    `"${pick(lasts, 1)}, ${pick(firsts, 7)}"`,
    `${pick(nouns, 3)} ${pick(rests, 5)} ${i % 300}`,
    String(1880 + (i % 140)),
    pick(media, 1),
    `framed ${20 + (i % 90)}.${i % 10} x ${30 + (i % 80)} cm`,
    String((i % 200) / 10 + 0.5),
    `Lender ${i % 8}`,
  ]
}

/** The demo with 70,000 more works, brought by a list as anyone would bring them. */
async function write(folder: string, file: string): Promise<void> {
  await writeDemo(file, machineClock)
  const host = createHost({ kind: 'command line', data: join(folder, 'data') })
  try {
    host.openFile(file)
    const { handle, path } = host.handles.create('list.csv')
    writeFileSync(path, [headings, ...Array.from({ length: count }, (_, i) => line(i))].map(String).join('\n'))
    await host.run('import.accept', { handle })
  } finally {
    await host.close()
  }
}

interface Scrolled {
  readonly times: readonly number[]
  /** For each frame, how many rows in view had no work yet. */
  readonly blank: readonly number[]
}

/** Scrolls by so many pixels in each frame and looks at each frame what is blank, as it was painted before. */
async function scroll(page: Page, perFrame: number, frames: number): Promise<Scrolled> {
  return page.evaluate(
    ([by, total]) =>
      new Promise<Scrolled>(resolve => {
        const grid = document.querySelector('[role="grid"]')
        if (grid === null) throw new Error('there is no list')
        const stamps: number[] = []
        const blank: number[] = []
        const step = (now: number) => {
          stamps.push(now)
          const box = grid.getBoundingClientRect()
          const inView = [...grid.querySelectorAll('[data-index]')].filter(row => {
            const { top, bottom } = row.getBoundingClientRect()
            return bottom > box.top + 28 && top < box.bottom
          })
          const filled = inView.filter(row => row.querySelector('.unread') === null).length
          blank.push(Math.max(0, Math.floor((box.height - 28) / 43) - filled))
          if (stamps.length > total)
            return resolve({ times: stamps.slice(1).map((time, at) => time - (stamps[at] ?? 0)), blank })
          grid.scrollTop += by
          requestAnimationFrame(step)
        }
        requestAnimationFrame(step)
      }),
    [perFrame, frames] as const,
  )
}

/** Milliseconds from what `act` does until a frame shows the answer to the question it asked. */
async function untilRows(
  page: Page,
  act: () => Promise<void>,
): Promise<{ readonly ms: number; readonly rows: string }> {
  await page.evaluate(() => {
    const grid = document.querySelector('[role="grid"]')
    if (grid === null) throw new Error('there is no list')
    const from: { at: number | null } = { at: null }
    const begin = (event: Event) => {
      from.at ??= event.timeStamp
    }
    for (const kind of ['keydown', 'click']) addEventListener(kind, begin, { capture: true, once: true })
    let asked = false
    const shown = new Promise<number>(resolve => {
      const step = () => {
        const busy = grid.getAttribute('aria-busy') === 'true'
        asked ||= busy
        if (asked && !busy && grid.querySelector('.unread') === null) {
          // The next frame is the first that has been painted with these rows.
          requestAnimationFrame(() => resolve(performance.now() - (from.at ?? Number.NaN)))
        } else requestAnimationFrame(step)
      }
      new MutationObserver(() => {
        asked ||= grid.getAttribute('aria-busy') === 'true'
      }).observe(grid, { attributes: true })
      requestAnimationFrame(step)
    })
    Object.assign(globalThis, { shown })
  })
  await act()
  const ms = await page.evaluate(() => (globalThis as unknown as { shown: Promise<number> }).shown) // set just above
  return { ms, rows: String(Number(await page.locator('[role="grid"]').getAttribute('aria-rowcount')) - 1) }
}

function say(name: string, { times, blank }: Scrolled): void {
  const sorted = [...times].sort((a, b) => a - b)
  const at = (part: number) => (sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? 0).toFixed(1)
  const mean = times.reduce((sum, time) => sum + time, 0) / times.length
  let [longest, run] = [0, 0]
  for (const rows of blank) {
    run = rows > 0 ? run + 1 : 0
    longest = Math.max(longest, run)
  }
  const seen = blank.filter(rows => rows > 0).length
  console.log(
    `  ${name}: ${(1000 / mean).toFixed(1)} frames a second; median ${at(0.5)} ms, 95 % ${at(0.95)} ms, longest ${at(1)} ms; blank rows in ${seen} of ${blank.length} frames, ${longest} in a row at most`,
  )
}

const folder = mkdtempSync(join(tmpdir(), 'hangwright-bench-'))
const file = join(folder, 'bench.hangwright')
console.log(`  ${cpus().length} × ${cpus()[0]?.model ?? 'processor not known'}, drawn without a graphics card`)
await write(folder, file)
console.log(`  load before: ${loadavg()[0]?.toFixed(1)} (what else the machine does slows the frames)`)
const { child, address } = await serve(file, folder)
const browser = await openBrowser()
try {
  const page = await openAt(browser, address, '#/checklist')
  await page.getByRole('button', { name: /coordinator/ }).click()
  const whole = page.getByRole('button', { name: 'the whole catalogue' })
  await whole.waitFor()
  const opened = await untilRows(page, () => whole.click())
  console.log(`  the whole catalogue, ${opened.rows} works: ${opened.ms.toFixed(0)} ms`)
  await page.waitForTimeout(500)
  say('scrolled by 20 px a frame', await scroll(page, 20, 240))
  say('scrolled by 120 px a frame', await scroll(page, 120, 240))
  say('flung, 1,500 px a frame', await scroll(page, 1500, 240))
  say('the thumb pulled, 20,000 px a frame', await scroll(page, 20_000, 120))
  const grid = page.locator('[role="grid"]')
  await grid.evaluate(node => {
    node.scrollTop = 0
  })
  for (const word of ['orchard', 'vorr ina', '1950.1', 'oil']) {
    await page.getByLabel('Type to filter').fill('')
    await page.waitForTimeout(700)
    await page.getByLabel('Type to filter').focus()
    const keys: string[] = []
    for (const key of word) {
      if (key === ' ') {
        await page.keyboard.type(' ')
        continue
      }
      const { ms, rows } = await untilRows(page, () => page.keyboard.press(key))
      keys.push(`${key} ${ms.toFixed(0)} ms (${rows})`)
    }
    console.log(`  typed “${word}”, from key to rows: ${keys.join(', ')}`)
  }
  await page.getByLabel('Type to filter').fill('')
  await page.waitForTimeout(700)
  for (const word of ['Maker', 'Number', 'Title', 'Date', 'H × W × D']) {
    const head = page.getByRole('columnheader', { name: word }).getByRole('button')
    const up = await untilRows(page, () => head.click())
    const down = await untilRows(page, () => head.click())
    console.log(`  sorted by ${word}: ${up.ms.toFixed(0)} ms, the other way ${down.ms.toFixed(0)} ms`)
  }
} finally {
  await browser.close()
  child.kill('SIGTERM')
  rmSync(folder, { recursive: true, force: true })
}
