/**
 * 70,000 rows of a list into a fresh catalogue, side by side with `sqlite3`'s own `.import` of the same file, as
 * durably, plus a full-text index over the same columns: as FTS5 makes it by itself, and as ours is. Wanted: at most ten
 * times as long. A workbook of the same rows goes separately: its worker is wanted in at most 1.5 GB. Each run is a
 * process of its own, so that its peak of memory and its processor time are its own; times are without starting it, and
 * of several runs the quickest counts on both sides. Where other programs keep the machine busy, the processor times say
 * more than the times by the clock.
 */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { cpus, loadavg, tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { fileURLToPath } from 'node:url'
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

interface Took {
  /** Seconds by the clock, and of the processor (all threads). */
  readonly time: number
  readonly cpu: number
}

interface Imported {
  readonly first: Took
  readonly again: Took
  /** Most memory that the whole process held while the list came in, and before, megabytes. */
  readonly peak: number
  readonly before: number
  readonly rows: Readonly<Record<string, number>>
}

const quoted = (cell: string | number) =>
  /[",]/.test(String(cell)) ? `"${String(cell).replaceAll('"', '""')}"` : String(cell)
const words = ({ time, cpu }: Took) => `${time.toFixed(2)} s (processor ${cpu.toFixed(2)} s)`
const peakMb = () => process.resourceUsage().maxRSS / 1024

/** In a process of its own: a fresh catalogue, the list, the same list once more. */
async function importOne(list: string, folder: string): Promise<Imported> {
  const file = join(folder, 'fresh.hangwright')
  createCatalogue(file, clockFrom(undefined)).close()
  const host = createHost({ kind: 'command line', data: join(folder, 'data') })
  try {
    host.openFile(file)
    const bytes = readFileSync(list)
    const took: Took[] = []
    const before = peakMb()
    let peak = before
    for (const added of [count, 0]) {
      const { handle, path } = host.handles.create(basename(list))
      writeFileSync(path, bytes)
      const from = performance.now()
      const cpuFrom = process.cpuUsage()
      // The service of that name gave it.
      const answer = (await host.run('import.accept', {
        handle,
        exhibitionTitle: 'Everything',
      })) as Output<'import.accept'>
      const cpu = process.cpuUsage(cpuFrom)
      took.push({ time: (performance.now() - from) / 1000, cpu: (cpu.user + cpu.system) / 1e6 })
      if (answer.added !== added || answer.questions.length > 0)
        throw new Error(`added ${answer.added}, wanted ${added}`)
      if (added > 0) peak = peakMb()
    }
    const [first, again] = took
    if (first === undefined || again === undefined) throw new Error('Nothing was imported')
    const { db } = host.open?.catalogue ?? {}
    const tables = ['work', 'work_number', 'work_size', 'work_mass', 'import_value', 'entry', 'journal']
    const rows = tables.map(table => [
      table,
      Number(Object.values(db?.prepare(`SELECT count(*) FROM ${table}`).get() ?? {})[0]),
    ])
    return { first, again, peak, before, rows: Object.fromEntries(rows) }
  } finally {
    await host.close()
  }
}

function inOwnProcess(list: string): Imported {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-bench-'))
  try {
    const done = spawnSync(process.execPath, [fileURLToPath(import.meta.url), 'one', list, folder], {
      encoding: 'utf8',
    })
    if (done.status !== 0) throw new Error(done.stderr)
    return JSON.parse(done.stdout) as Imported // importOne printed it
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

const seconds = (words: string) => [...words.matchAll(/(\d+)m([\d.]+)s/g)].map(([, m, s]) => Number(m) * 60 + Number(s))

/** What the text index of a catalogue is made with, beside its columns and its tokenizer; nothing is FTS5 as it comes. */
const asOurs = ", detail='none', columnsize=0, prefix='1 2'"

/**
 * As durable as a catalogue: a log beside the file, and every commit on the disk before it is told. Undefined where
 * there is no sqlite3.
 */
function plainImport(list: string, folder: string, options: string): Took | undefined {
  const file = join(folder, 'plain.db')
  for (const side of ['', '-wal', '-shm']) rmSync(`${file}${side}`, { force: true })
  const columns = '"Title", "Artist", "Medium", "Date", "Credit line", "Inv. No.", "Note"'
  // `times` of a POSIX shell prints its own times, then those of its children.
  const script = `sqlite3 "$1" "PRAGMA journal_mode = WAL" "PRAGMA synchronous = FULL" ".import --csv $2 list" "$3" "$4" && times`
  const from = performance.now()
  const done = spawnSync(
    'sh',
    [
      '-c',
      script,
      'sh',
      file,
      list,
      `CREATE VIRTUAL TABLE words USING fts5(${columns}, content='list', tokenize='unicode61 remove_diacritics 2'${options})`,
      "INSERT INTO words(words) VALUES ('rebuild')",
    ],
    { encoding: 'utf8' },
  )
  const time = (performance.now() - from) / 1000
  if (done.status !== 0) return undefined
  const [, , user = 0, system = 0] = seconds(done.stdout)
  return { time, cpu: user + system }
}

/** The least of each: other programs only ever add. */
function quickest(runs: readonly Took[]): Took | undefined {
  if (runs.length === 0) return undefined
  return { time: Math.min(...runs.map(run => run.time)), cpu: Math.min(...runs.map(run => run.cpu)) }
}

async function compare(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-bench-'))
  try {
    const lines = Array.from({ length: count }, (_, i) => line(i))
    const csv = [headings, ...lines].map(cells => `${cells.map(quoted).join(',')}\n`).join('')
    const list = join(folder, 'list.csv')
    writeFileSync(list, csv)
    console.log(
      `${cpus()[0]?.model}, ${cpus().length} cores, load ${loadavg()[0]?.toFixed(1)}; ${count} rows, ${(csv.length / 1e6).toFixed(1)} MB`,
    )
    const plainRuns: Took[] = []
    const likeRuns: Took[] = []
    const runs: Imported[] = []
    for (let run = 0; run < 3; run++) {
      const plain = plainImport(list, folder, '')
      if (plain !== undefined) plainRuns.push(plain)
      const like = plainImport(list, folder, asOurs)
      if (like !== undefined) likeRuns.push(like)
      runs.push(inOwnProcess(list))
    }
    const ours = quickest(runs.map(run => run.first))
    const [one] = runs
    const again = quickest(runs.map(run => run.again))
    if (ours === undefined || again === undefined || one === undefined) throw new Error('Nothing was measured')
    console.log(`import of the CSV              ${words(ours)}`)
    for (const [name, theirs] of [
      ['a text index as it comes  ', plainRuns],
      ['a text index like ours    ', likeRuns],
    ] as const) {
      const plain = quickest(theirs)
      console.log(
        plain === undefined
          ? '  sqlite3 is not installed: no comparison'
          : `  sqlite3 .import, ${name}  ${words(plain)}: ours takes ${(ours.time / plain.time).toFixed(1)} times, of the processor ${(ours.cpu / plain.cpu).toFixed(1)} times (wanted: at most 10)`,
      )
    }
    const { journal = 0, ...tables } = one.rows
    const rows = Object.values(tables).reduce((sum, n) => sum + n, 0)
    console.log(
      `  what it leaves               ${rows} rows in ${Object.keys(tables).length} tables, ${journal} journal entries, their indexes, one text index`,
    )
    console.log(`the same list again            ${words(again)}`)
    const book = new Workbook()
    book.addWorksheet('List').addRows([headings, ...lines])
    const xlsx = join(folder, 'list.xlsx')
    writeFileSync(xlsx, new Uint8Array(await book.xlsx.writeBuffer()))
    const workbook = inOwnProcess(xlsx)
    console.log(`import of the workbook         ${words(workbook.first)}`)
    console.log(
      `  most memory                  ${workbook.peak.toFixed(0)} MB of the whole process, ${workbook.before.toFixed(0)} MB of it before (wanted: the worker at most 1500); the CSV ${one.peak.toFixed(0)} MB`,
    )
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

const [, , mode, list = '', folder = ''] = process.argv
if (mode === 'one') console.log(JSON.stringify(await importOne(list, folder)))
else await compare()
