/**
 * 70,000 rows of a list into a fresh catalogue, side by side with `sqlite3`'s own `.import` of the same file plus a
 * full-text index over the same columns. Wanted: at most ten times as long. A workbook of the same rows goes
 * separately, in a worker of at most 1.5 GB. Times are whole processes' work without starting them.
 */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { cpus, loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import Workbook from 'exceljs/lib/doc/workbook.js'
import { createCatalogue } from '../../main/database/catalogue.ts'
import { createHost } from '../../main/hosts/host.ts'
import { clockFrom } from '../../main/services/clock.ts'
import type { Output } from '../../src/contract/contract.ts'

const count = 70_000
const headings = [
  'No',
  'Inv. No.',
  'Artist',
  'Title',
  'Date',
  'Medium',
  'Dimensions',
  'Weight (kg)',
  'Lender',
  'Credit line',
  'Note',
]

function line(i: number): (string | number)[] {
  return [
    i + 1,
    `${1900 + (i % 120)}.${i}.${i % 9}`,
    `Ruel, Ada ${i % 900}`,
    `Title number, ${i}`,
    `19${String(i % 100).padStart(2, '0')}`,
    'oil on canvas',
    `${20 + (i % 50)}.${i % 10} x ${30 + (i % 60)} cm`,
    (i % 200) / 10 + 0.5,
    `Lender ${i % 8}`,
    `Gift of ${i % 50}`,
    '',
  ]
}

const seconds = (from: number) => (performance.now() - from) / 1000
const quoted = (cell: string | number) =>
  /[",]/.test(String(cell)) ? `"${String(cell).replaceAll('"', '""')}"` : String(cell)

async function imported(
  folder: string,
  name: string,
  bytes: string | Uint8Array,
): Promise<{ time: number; again: number }> {
  const file = join(folder, `${name}.hangwright`)
  createCatalogue(file, clockFrom(undefined)).close()
  const host = createHost({ kind: 'command line', data: join(folder, 'data') })
  try {
    host.openFile(file)
    const times: number[] = []
    for (const added of [count, 0]) {
      const { handle, path } = host.handles.create(name)
      writeFileSync(path, bytes)
      const from = performance.now()
      // The service of that name gave it.
      const answer = (await host.run('import.accept', {
        handle,
        exhibitionTitle: 'Everything',
      })) as Output<'import.accept'>
      times.push(seconds(from))
      if (answer.added !== added || answer.questions.length > 0)
        throw new Error(`added ${answer.added}, wanted ${added}`)
    }
    return { time: times[0] ?? 0, again: times[1] ?? 0 }
  } finally {
    await host.close()
  }
}

const folder = mkdtempSync(join(tmpdir(), 'hangwright-bench-'))
try {
  const lines = Array.from({ length: count }, (_, i) => line(i))
  const csv = [headings, ...lines].map(cells => `${cells.map(quoted).join(',')}\n`).join('')
  const list = join(folder, 'list.csv')
  writeFileSync(list, csv)
  console.log(
    `${cpus()[0]?.model}, ${cpus().length} cores, load ${loadavg()[0]?.toFixed(1)}; ${count} rows, ${(csv.length / 1e6).toFixed(1)} MB`,
  )
  const columns = '"Title", "Artist", "Medium", "Date", "Credit line", "Inv. No.", "Note"'
  const from = performance.now()
  const done = spawnSync('sqlite3', [
    join(folder, 'plain.db'),
    `.import --csv ${list} list`,
    `CREATE VIRTUAL TABLE words USING fts5(${columns}, content='list', tokenize='unicode61 remove_diacritics 2')`,
    "INSERT INTO words(words) VALUES ('rebuild')",
  ])
  const plain = done.error === undefined && done.status === 0 ? seconds(from) : undefined
  console.log(
    plain === undefined
      ? 'sqlite3 is not installed: no comparison'
      : `sqlite3 .import and full text  ${plain.toFixed(2)} s`,
  )
  const ours = await imported(folder, 'list.csv', csv)
  console.log(
    `import of the CSV              ${ours.time.toFixed(2)} s${plain === undefined ? '' : `, ${(ours.time / plain).toFixed(1)} times (wanted: at most 10)`}`,
  )
  console.log(`the same list again            ${ours.again.toFixed(2)} s`)
  const book = new Workbook()
  const sheet = book.addWorksheet('List')
  sheet.addRows([headings, ...lines])
  const xlsx = await imported(folder, 'list.xlsx', new Uint8Array(await book.xlsx.writeBuffer()))
  console.log(`import of the workbook         ${xlsx.time.toFixed(2)} s`)
} finally {
  rmSync(folder, { recursive: true, force: true })
}
