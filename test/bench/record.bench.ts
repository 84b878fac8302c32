/**
 * Ten years of a record: 2,000 works, a million movements, with their edits' hashes left out (the chain is not read
 * here). Where everything was on some day, where one work was, and one work's places through time, asked over the host
 * as a screen asks, and one work's history from a journal of a million entries; wanted: under 50 ms. Beside it the same day by the general way to ask a table for it in one
 * statement: number each thing's rows from the last backwards, and take the first.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { cpus, loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { writeDemo } from '../../main/demo/write.ts'
import { createHost } from '../../main/hosts/host.ts'
import { machineClock } from '../../main/services/clock.ts'
import { callOn } from '../contract/fixture.ts'
import { times } from './many-works.ts'

const [works, movements, places, years, runs, entries] = [2000, 1_000_000, 60, 10, 25, 1_000_000]
const begins = Date.UTC(2016, 0, 1)
const span = years * 365 * 86_400_000

let asks = 0

/** Another moment each time, spread over the years. */
function day(): string {
  asks += 1
  return new Date(begins + span * (0.1 + (0.85 * ((asks * 37) % 100)) / 100)).toISOString()
}

function fill(file: string): void {
  const db = new Database(file)
  const locations = Array.from({ length: places }, (_, at) => `bench-${at}`)
  const of = db.prepare<[], { id: string }>('SELECT id FROM work ORDER BY n').all()
  const place = db.prepare("INSERT INTO location (id, kind, name) VALUES (?, 'place', ?)")
  const movement = db.prepare(
    `INSERT INTO movement (id, at, place, place_kind, place_words, location, people, recorded_at, recorded_by, hash)
     VALUES (?, ?, ?, 'location', ?, ?, 'two of the crew', ?, 'bench', '')`,
  )
  const moved = db.prepare(
    'INSERT INTO moved (id, movement, work, at, place, from_place, from_words) VALUES (?, ?, ?, ?, ?, ?, ?)',
  )
  db.transaction(() => {
    // The guards ask which edit writes: all of it stands under the last one.
    db.exec('UPDATE edit_now SET edit = (SELECT max(id) FROM edit)')
    for (const id of locations) place.run(id, `Store ${id}`)
    const last = new Map<string, string>()
    for (let at = 0; at < movements; at += 1) {
      const id = `m-${String(at).padStart(8, '0')}`
      const when = new Date(begins + (span * at) / movements).toISOString()
      const work = of[(at * 7919) % of.length]?.id ?? ''
      const to = locations[(at * 31 + Math.floor(at / of.length)) % places] ?? ''
      const from = last.get(work) ?? ''
      movement.run(id, when, to, `Store ${to}`, to, when)
      moved.run(`d-${id}`, id, work, when, to, from, from === '' ? '' : `Store ${from}`)
      last.set(work, to)
    }
    db.exec('UPDATE edit_now SET edit = NULL')
    fillJournal(db)
  })()
  db.close()
}

/** A million entries of the journal: ten years of placements moved, facts typed, and 30,000 rows that were removed. */
function fillJournal(db: Database.Database): void {
  const works = db.prepare<[], { id: string }>('SELECT id FROM work ORDER BY n').all()
  const before = db.prepare<[], { seq: number }>('SELECT coalesce(max(seq), 0) AS seq FROM journal').get()?.seq ?? 0
  const { lastInsertRowid: edit } = db
    .prepare(
      `INSERT INTO edit (label, procedure, person, person_name, at, first_seq, last_seq)
       VALUES ('Ten years', 'bench', '', '', '2026-01-01T00:00:00.000Z', ?, ?)`,
    )
    .run(before + 1, before + entries)
  const entry = db.prepare('INSERT INTO journal (edit, tbl, key, op, data) VALUES (?, ?, ?, ?, ?)')
  for (let at = 0; at < entries; at += 1) {
    const work = works[(at * 7919) % works.length]?.id ?? ''
    if (at % 100 < 3) {
      const row = {
        id: `gone-${at}`,
        work,
        part: 'framed',
        height: at,
        width: at,
        raw: '',
        at: '2020-01-01T00:00:00.000Z',
      }
      entry.run(edit, 'work_size', row.id, 'd', JSON.stringify(row))
    } else if (at % 2 === 0) entry.run(edit, 'work', work, 'u', JSON.stringify({ note: [`${at}`, `${at + 1}`] }))
    else entry.run(edit, 'placement', `bench-${at % 90_000}`, 'u', JSON.stringify({ x: [at, at + 1] }))
  }
}

const general = `SELECT work, place FROM (SELECT work, place,
  row_number() OVER (PARTITION BY work ORDER BY at DESC, movement DESC) AS nth FROM moved WHERE at <= ?) WHERE nth = 1`

const folder = mkdtempSync(join(tmpdir(), 'hangwright-bench-'))
const file = join(folder, 'bench.hangwright')
try {
  await writeDemo(file, machineClock)
  const first = createHost({ kind: 'command line', data: join(folder, 'data') })
  first.openFile(file)
  const { handle, path } = first.handles.create('list.csv')
  const lines = Array.from({ length: works }, (_, at) => `${1900 + (at % 120)}.${at},Harbour ${at},40 x 60 cm`)
  writeFileSync(path, ['Inv. No.,Title,Dimensions', ...lines].join('\n'))
  await first.run('import.accept', { handle })
  await first.close()
  fill(file)

  const host = createHost({ kind: 'command line', data: join(folder, 'data') })
  host.openFile(file)
  console.log(`  ${cpus().length} × ${cpus()[0]?.model ?? 'processor not known'}, load ${loadavg()[0]?.toFixed(1)}`)
  console.log(`  ${works} works, ${movements} movements in ${years} years`)
  const asked = () => callOn(host, 'movement.where', { at: day() })
  const { lines: shown, total } = await asked()
  console.log(`  where everything was (${total} things, ${shown.length} of them shown): ${await times(runs, asked)}`)
  const { lines: one } = await callOn(host, 'movement.where', { at: day(), limit: 1 })
  const work = one.find(line => line.kind === 'work')?.id ?? ''
  const { movements: through } = await callOn(host, 'movement.history', { kind: 'work', id: work })
  const history = () => callOn(host, 'movement.history', { kind: 'work', id: work })
  console.log(`  one work’s ${through.length} movements: ${await times(runs, history)}`)
  const told = await callOn(host, 'edit.history', { table: 'work', id: work, limit: 200 })
  const journal = () => callOn(host, 'edit.history', { table: 'work', id: work, limit: 200 })
  console.log(
    `  the newest 200 of one work’s ${told.total} changes among ${entries} entries: ${await times(runs, journal)}`,
  )
  await host.close()
  const db = new Database(file, { readonly: true })
  const plain = db.prepare<[string], { work: string; place: string }>(general)
  console.log(`  the same day in one general statement: ${await times(5, () => plain.all(day()).length)}`)
  db.close()
} finally {
  rmSync(folder, { recursive: true, force: true })
}
