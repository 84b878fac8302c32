/** The whole file of one work, as a workbook and on paper. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { formatLength } from '../../../src/measure/format.ts'
import { massText } from '../../../src/sheets/figures.ts'
import { type ObjectQuestion, objectFile, objectPages } from '../../../src/sheets/object-file.ts'
import { thumbnailOf } from '../../files/thumbnail.ts'
import { notFound } from '../change.ts'
import * as history from '../history/history.ts'
import { ledger } from '../light/ledger.ts'
import * as condition from '../record/condition/tell.ts'
import * as movements from '../record/history.ts'
import type { Job } from '../service.ts'
import { value } from '../sql.ts'
import { get } from '../works/get.ts'
import { madeLine } from './tables.ts'
import { type Style, sheetDay, sheetTime, styleOf, tableUnit } from './wishes.ts'
import { tables } from './written.ts'

/** So many changes at most are on paper and in the workbook; `edit.history` tells all. */
const changes = 5000
/** Pixels of the picture before the tables: its box at 200 to an inch. */
const large = { width: 1000, height: 1200 }

export async function objectFileOf(
  job: Job,
  { work, ...wishes }: Received<'sheet.objectFile'>,
): Promise<Output<'sheet.objectFile'>> {
  if (value(job.db, 'SELECT 1 FROM work WHERE id = :work', { work }) === undefined) throw notFound('work', 'work')
  const style = styleOf(job, wishes)
  job.progress(0, 3, 'Reading all that is on record of it')
  const told = await job.held(async () => questionOf(job, work, style))
  const hash = told.work.pictures[0]?.hash ?? null
  const stored = hash === null ? null : await job.store.picture(hash, 1600)
  const shown = stored === null ? null : await thumbnailOf(stored.bytes, large)
  const question = { ...told, picture: shown === null ? null : hash }
  const { called, tables: sheets } = objectFile(question)
  return tables(job, 'object file', called, sheets, style, faces => ({
    pages: objectPages(question, style.paper, faces),
    picture: () => shown?.bytes ?? null,
  }))
}

function questionOf(job: Job, id: string, style: Style): Omit<ObjectQuestion, 'picture'> {
  const { unit, steps } = style
  const work = get(job, { id, unit })
  const { reports } = condition.list(job, { work: id, limit: 500 })
  return {
    work,
    movements: movements.history(job, { kind: 'work', id }).movements,
    reports: reports.map(report => condition.get(job, { id: report.id })).reverse(),
    light: ledger(job, { work: id }),
    history: history.history(job, { table: 'work', id, limit: changes }),
    style: {
      unit,
      steps,
      table: tableUnit(unit),
      length: mm => formatLength(mm, { unit, fraction: steps.fraction }),
      mass: kg => massText(kg, unit),
      moment: sheetTime,
      day: sheetDay,
    },
    made: madeLine(job, 'All that is on record of it'),
  }
}
