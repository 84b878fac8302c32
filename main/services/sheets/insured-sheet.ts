/** What works are worth together, as a workbook and on paper. It records nothing. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { insuredTables } from '../../../src/sheets/insured-tables.ts'
import { dayTold } from '../insured/day.ts'
import { daysTold } from '../insured/days.ts'
import type { Job } from '../service.ts'
import { madeLine, showTitle } from './tables.ts'
import { sheetTime, styleOf } from './wishes.ts'
import { tables } from './written.ts'

export async function insuredSheet(
  job: Job,
  { day, exhibition, currency, first, last, ...wishes }: Received<'sheet.insured'>,
): Promise<Output<'sheet.insured'>> {
  const asked = { exhibition, currency, first, last }
  const title = exhibition === undefined ? 'The catalogue' : showTitle(job.db, exhibition)
  job.progress(0, 3, 'Adding up what works are worth')
  const told = dayTold(job, { ...asked, day, limit: Number.MAX_SAFE_INTEGER })
  const days = daysTold(job, { ...asked, currency: told.currency })
  const count = told.total === 1 ? '1 work' : `${told.total} works`
  const words = sheetTime(`${day}T12:00:00`).split(',')[0] ?? day
  const sheets = insuredTables({ title, day: words, lines: [madeLine(job, count)], told, days })
  return tables(job, { kind: 'insured values', title: `${title}, ${day}`, sheets, style: styleOf(job, wishes) })
}
