/** The whole file of a work, of a loan and of a record of damage, each as a workbook and on paper. */
import type { Received } from '../../../src/contract/contract.ts'
import { dateOf, daySaid } from '../../../src/light/day.ts'
import { formatLength } from '../../../src/measure/format.ts'
import { damageFile } from '../../../src/sheets/damage-file.ts'
import { massText } from '../../../src/sheets/figures.ts'
import type { FileStyle } from '../../../src/sheets/file-table.ts'
import { loanFile } from '../../../src/sheets/loan-file.ts'
import { objectFile } from '../../../src/sheets/object-file.ts'
import { filePages, fileTables, inConfidence, type WholeFile } from '../../../src/sheets/whole-file.ts'
import { thumbnailOf } from '../../files/thumbnail.ts'
import { notFound } from '../change.ts'
import { dayAt } from '../days.ts'
import * as history from '../history/history.ts'
import { ledger } from '../light/ledger.ts'
import { termsOfLoan, termsOfWork } from '../loans/held.ts'
import { get as loanOf, ofWork } from '../loans/read.ts'
import { list as receiptsOfLoan, ofWork as receiptsOfWork } from '../receipts/read.ts'
import * as condition from '../record/condition/tell.ts'
import * as damage from '../record/damage/tell.ts'
import * as movements from '../record/history.ts'
import type { Job, ServicesOf } from '../service.ts'
import { value } from '../sql.ts'
import { get } from '../works/get.ts'
import { madeLine } from './tables.ts'
import { type Style, sheetTime, styleOf, tableUnit } from './wishes.ts'
import { type Ready, tables } from './written.ts'

/** So many changes at most are on paper and in the workbook; `edit.history` tells all. */
const changes = 5000
/** Pixels of the picture before the tables: its box at 200 to an inch. */
const large = { width: 1000, height: 1200 }

export async function objectFileReady(
  job: Job,
  { work, withValues = true, ...wishes }: Received<'sheet.objectFile'>,
): Promise<Ready> {
  if (value(job.db, 'SELECT 1 FROM work WHERE id = :work', { work }) === undefined) throw notFound('work', 'work')
  const style = styleOf(job, wishes)
  job.progress(0, 3, 'Reading all that is on record of it')
  const told = await job.held(async () => {
    const got = get(job, { id: work, unit: style.unit })
    return objectFile({
      work: got,
      picture: got.pictures[0]?.hash ?? null,
      loans: ofWork(job, { work }),
      terms: termsOfWork(job, { work, exhibition: null }),
      receipts: receiptsOfWork(job, { work }),
      movements: movements.history(job, { kind: 'work', id: work }).movements,
      reports: reportsOf(job, work),
      damages: damagesOf(job, work),
      light: ledger(job, { work }),
      history: history.history(job, { table: 'work', id: work, limit: changes }),
      style: fileStyle(style),
      withValues,
      made: madeLine(
        job,
        withValues ? 'All that is on record of it' : `What is on record of it, ${inConfidence(false)}`,
      ),
    })
  })
  return ready(job, 'object file', told, style)
}

export async function damageFileReady(job: Job, { damage: id, ...wishes }: Received<'sheet.damage'>): Promise<Ready> {
  if (value(job.db, 'SELECT 1 FROM damage WHERE id = :id', { id }) === undefined) {
    throw notFound('record of damage', 'damage')
  }
  const style = styleOf(job, wishes)
  job.progress(0, 3, 'Reading all that is on record of it')
  const told = await job.held(async () => {
    const got = damage.get(job, { id })
    return damageFile({
      damage: got,
      reports: got.reports.map(report => condition.get(job, { id: report.id })),
      style: fileStyle(style),
      made: madeLine(job, 'The record of damage'),
    })
  })
  return ready(job, 'damage report', told, style)
}

export async function loanFileReady(
  job: Job,
  { loan, withValues = true, ...wishes }: Received<'sheet.loanFile'>,
): Promise<Ready> {
  if (value(job.db, 'SELECT 1 FROM loan WHERE id = :loan', { loan }) === undefined) throw notFound('loan', 'loan')
  const style = styleOf(job, wishes)
  job.progress(0, 3, 'Reading all that is on record of it')
  const told = await job.held(async () => {
    const got = loanOf(job, { id: loan })
    // Of its works what belongs to this loan: from the day it begins to the day it ends, as people here count days.
    const within = (at: string) => {
      const day = dateOf(dayAt(at))
      return day >= got.first && (got.last === '' || day <= got.last)
    }
    return loanFile({
      loan: got,
      terms: termsOfLoan(job, { loan, exhibition: null }),
      receipts: receiptsOfLoan(job, { loan }),
      movements: got.items.map(item => ({
        work: item,
        movements: movements.history(job, { kind: 'work', id: item.work }).movements.filter(({ at }) => within(at)),
      })),
      reports: got.items.flatMap(({ work }) => reportsOf(job, work).filter(({ examinedAt }) => within(examinedAt))),
      damages: got.items.flatMap(({ work }) => damagesOf(job, work).filter(({ foundAt }) => within(foundAt))),
      history: history.history(job, { table: 'loan', id: loan, limit: changes }),
      style: fileStyle(style),
      withValues,
      made: madeLine(
        job,
        withValues ? 'All that is on record of the loan' : `What is on record of the loan, ${inConfidence(false)}`,
      ),
    })
  })
  return ready(job, 'loan file', told, style)
}

/** The first one first. */
function reportsOf(job: Job, work: string) {
  const { reports } = condition.list(job, { work, limit: 500 })
  return reports.map(report => condition.get(job, { id: report.id })).reverse()
}

/** The first found first, in whatever state. */
function damagesOf(job: Job, work: string) {
  const { lines } = damage.list(job, { work, limit: 500 })
  return lines
    .map(({ id }) => damage.get(job, { id }))
    .sort((a, b) => (a.foundAt < b.foundAt ? -1 : a.foundAt > b.foundAt ? 1 : 0))
}

function fileStyle({ unit, steps }: Style): FileStyle {
  return {
    unit,
    steps,
    table: tableUnit(unit),
    length: mm => formatLength(mm, { unit, fraction: steps.fraction }),
    mass: kg => massText(kg, unit),
    moment: sheetTime,
    day: daySaid,
  }
}

async function ready(
  job: Job,
  kind: 'object file' | 'loan file' | 'damage report',
  file: WholeFile,
  style: Style,
): Promise<Ready> {
  const stored = file.picture === null ? null : await job.store.picture(file.picture, 1600)
  const shown = stored === null ? null : await thumbnailOf(stored.bytes, large)
  const told = shown === null ? { ...file, picture: null } : file
  return {
    kind,
    title: told.called,
    sheets: fileTables(told),
    style,
    paged: faces => ({ pages: filePages(told, style.paper, faces), picture: () => shown?.bytes ?? null }),
  }
}

type WholeFileName = 'sheet.objectFile' | 'sheet.loanFile' | 'sheet.damage'

export const wholeFileServices: ServicesOf<WholeFileName> = {
  'sheet.objectFile': async (job, input) => tables(job, await objectFileReady(job, input)),
  'sheet.loanFile': async (job, input) => tables(job, await loanFileReady(job, input)),
  'sheet.damage': async (job, input) => tables(job, await damageFileReady(job, input)),
}
