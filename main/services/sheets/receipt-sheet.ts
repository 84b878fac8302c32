/** A receipt of a loan on paper, with lines to sign. It records nothing. */

import type { Output, Received } from '../../../src/contract/contract.ts'
import { daySaid } from '../../../src/light/day.ts'
import { receiptPaper } from '../../../src/sheets/receipt-paper.ts'
import { openFaces } from '../../fonts/faces.ts'
import { get } from '../loans/read.ts'
import { receiptOf } from '../receipts/read.ts'
import type { Job } from '../service.ts'
import { madeLine } from './tables.ts'
import { sheetTime, styleOf } from './wishes.ts'
import { writePages } from './written.ts'

export async function receiptSheet(
  job: Job,
  { receipt: id, ...wishes }: Received<'sheet.receipt'>,
): Promise<Output<'sheet.receipt'>> {
  const { receipt, loan, corrects, correctedBy } = await job.held(async () => {
    const receipt = receiptOf(job.db, id, 'receipt')
    const numberOf = (other: string | null) => (other === null ? '' : receiptOf(job.db, other, 'receipt').number)
    const others = { corrects: numberOf(receipt.corrects), correctedBy: numberOf(receipt.correctedBy) }
    return { receipt, loan: get(job, { id: receipt.loan }), ...others }
  })
  const { number, partyName, way, first, last } = loan
  const on = (day: string, word: string) => (day === '' ? '' : `${word} ${daySaid(day)}`)
  const period = [on(first, 'from'), on(last, 'until')].filter(each => each !== '').join(' ')
  const faces = await openFaces()
  const pages = receiptPaper(
    {
      receipt,
      loan: { number, partyName, way, period },
      corrects,
      correctedBy,
      paper: styleOf(job, wishes).paper,
      day: daySaid,
      when: sheetTime,
      made: madeLine(job, 'receipt'),
    },
    faces,
  )
  const names = ['receipt', receipt.number, partyName]
  return { files: [await writePages(job, 'receipt', names, { pages, faces })], findings: [] }
}
