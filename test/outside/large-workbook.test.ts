/**
 * A valid workbook as large as a list may become, written by another program's streaming writer (exceljs) and taken in
 * by the command line as anyone would. What is held is the most memory that the whole program ever had, by the system's
 * own count (`getrusage`): its worker has less.
 */
import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import Database from 'better-sqlite3'
import exceljs from 'exceljs'
import { expect, test } from 'vitest'
import { testFolder } from '../unit/database/fixture.ts'

const rows = 70_000
/** Wanted of the architecture: a worker with a large list stays within 1.5 GB. */
const mostMb = 1500

const headings = ['No', 'Inv. No.', 'Artist', 'Title', 'Date', 'Medium', 'Dimensions', 'Weight (kg)', 'Lender', 'Note']

async function writeWorkbook(path: string): Promise<void> {
  const book = new exceljs.stream.xlsx.WorkbookWriter({ filename: path, useSharedStrings: true })
  const sheet = book.addWorksheet('List')
  sheet.addRow(headings).commit()
  for (let i = 0; i < rows; i++) {
    const size = `${20 + (i % 50)}.${i % 10} x ${30 + (i % 60)} cm`
    sheet
      .addRow([
        i + 1,
        `${1900 + (i % 120)}.${i}.${i % 9}`,
        `Ruel, Ada ${i % 900}`,
        `Title number ${i}`,
        1900 + (i % 100),
        'oil on canvas',
        size,
        (i % 200) / 10 + 0.5,
        `Lender ${i % 8}`,
        `As its lender says of ${i}`,
      ])
      .commit()
  }
  await book.commit()
}

const program = fileURLToPath(new URL('../../main/hosts/command-line/main.ts', import.meta.url))
/** Runs before the program in its own process: at its end it writes down the most memory that the process had, kB. */
const watch = `import { isMainThread } from 'node:worker_threads'
import { writeFileSync } from 'node:fs'
if (isMainThread) process.on('exit', () => writeFileSync(process.env.PEAK_FILE, String(process.resourceUsage().maxRSS)))`
const watched = `data:text/javascript;base64,${Buffer.from(watch).toString('base64')}`

test(`${rows} rows of a workbook come in within ${mostMb} MB`, { timeout: 600_000 }, async () => {
  const folder = testFolder()
  const list = join(folder, 'list.xlsx')
  const catalogue = join(folder, 'large.hangwright')
  const peak = join(folder, 'peak')
  await writeWorkbook(list)
  const run = (...args: string[]) =>
    spawnSync(process.execPath, ['--import', watched, program, ...args], {
      encoding: 'utf8',
      env: { ...process.env, HANGWRIGHT_DATA: join(folder, 'data'), PEAK_FILE: peak },
    })
  const made = run('new', catalogue)
  expect(made.status, made.stderr).toBe(0)
  const idle = Number(readFileSync(peak, 'utf8')) / 1024
  const done = run('import', catalogue, list, '--exhibition', 'Everything')
  expect(done.status, done.stderr).toBe(0)
  const db = new Database(catalogue, { readonly: true })
  expect(db.prepare('SELECT count(*) FROM work').pluck().get()).toBe(rows)
  expect(db.prepare('SELECT count(*) FROM work_size').pluck().get()).toBe(rows)
  db.close()
  const most = Number(readFileSync(peak, 'utf8')) / 1024
  // Less than the program alone would mean that nothing was measured.
  expect(most).toBeGreaterThan(idle * 1.5)
  expect(most).toBeLessThan(mostMb)
  console.log(`most memory ${most.toFixed(0)} MB, ${idle.toFixed(0)} MB of it without the list`)
})
