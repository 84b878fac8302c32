/**
 * Everything that a catalogue holds, in forms that any program reads: a table as CSV each, what its columns mean, the
 * works as JSON, and the files. It is one state of the catalogue, whatever is written meanwhile.
 */
import { basename } from 'node:path'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { dictionary } from '../../../src/dictionary/dictionary.ts'
import { dictionaryHeadings, dictionaryRows, type StoredTable } from '../../../src/dictionary/rows.ts'
import { schemaOf } from '../../database/schema.ts'
import { quoted } from '../../database/tables.ts'
import { type Cell, type Part, writeArchive } from '../../files/archive/write.ts'
import { suffixOf } from '../../files/sniff.ts'
import type { Job } from '../service.ts'
import { rows, value } from '../sql.ts'
import { readMe } from './read-me.ts'
import { worksAsUnits } from './works-json.ts'

/** Not taken out, each with its reason. */
const left: Readonly<Record<string, string>> = {
  edit_now: 'is empty in a catalogue that nobody writes in',
  picture_tone: 'follows from the pictures',
}

/** Between two looks at whether it was cancelled. */
const often = 1000

export async function takeOut(
  job: Job,
  { files: withFiles }: Received<'catalogue.takeOut'>,
): Promise<Output<'catalogue.takeOut'>> {
  const day = job.now().slice(0, 10)
  const name = `${basename(job.store.catalogue).replace(/\.hangwright$/, '')} ${day}.zip`
  const { handle, path } = job.handles.create(name)
  try {
    return await job.held(async () => {
      const tables = schemaOf(job.db).filter(table => !Object.hasOwn(left, table.name))
      const counts = new Map(tables.map(table => [table.name, countOf(job, table)]))
      const total = [...counts.values()].reduce((sum, count) => sum + count, 0)
      let done = 0
      const told = (words: string) => {
        done += 1
        if (done % often === 0) job.progress(done, total, words)
      }
      const kept = withFiles ? filesOf(job) : []
      const parts: Part[] = [
        {
          name: 'READ-ME.txt',
          text: readMe({ name: basename(job.store.catalogue), at: job.now(), left, files: withFiles }),
        },
        { name: 'dictionary.csv', headings: dictionaryHeadings, rows: dictionaryRows(tables) },
        { name: 'works.json', text: `${JSON.stringify(worksAsUnits(job.db), null, 1)}\n` },
        ...tables.map(
          (table): Part => ({
            name: `tables/${table.name}.csv`,
            headings: table.columns.map(column => column.name),
            rows: rowsOf(job, table, () => told(`Writing ${dictionary[table.name]?.one ?? table.name}`)),
          }),
        ),
        ...kept.map(({ hash, mime }): Part => ({ name: `files/${hash}${suffixOf(mime)}`, path: job.store.path(hash) })),
      ]
      job.progress(0, total, 'Writing the tables')
      await writeArchive(path, parts, { at: new Date(job.now()), signal: job.signal })
      return { handle, name, bytes: job.handles.bytes(handle), tables: tables.length, rows: total, files: kept.length }
    })
  } catch (error) {
    job.handles.drop(handle)
    throw error
  }
}

function countOf({ db }: Job, { name }: StoredTable): number {
  return value<number>(db, `SELECT count(*) FROM ${quoted(name)}`) ?? 0
}

/** In the order in which they came. */
function* rowsOf({ db }: Job, { name, columns }: StoredTable, told: () => void): Generator<readonly Cell[]> {
  const list = columns.map(column => quoted(column.name)).join(', ')
  for (const row of db
    .prepare(`SELECT ${list} FROM ${quoted(name)} ORDER BY rowid`)
    .raw()
    .iterate()) {
    told()
    yield row as Cell[] // tables without BLOBs alone are taken out
  }
}

/** Those that a row names and that are there; `check` tells of what is missing. */
function filesOf({ db, store }: Job): readonly { readonly hash: string; readonly mime: string }[] {
  const there = new Set(store.hashes())
  return rows<{ hash: string; mime: string }>(
    db,
    `SELECT hash, max(mime) AS mime FROM (SELECT hash, mime FROM picture UNION ALL SELECT hash, mime FROM document
       UNION ALL SELECT hash, mime FROM underlay UNION ALL SELECT hash, mime FROM condition_photo
       UNION ALL SELECT picture, '' FROM condition_report WHERE picture IS NOT NULL
       UNION ALL SELECT back_picture, '' FROM condition_report WHERE back_picture IS NOT NULL)
     GROUP BY hash ORDER BY hash`,
  ).filter(({ hash }) => there.has(hash))
}
