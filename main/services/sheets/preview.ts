/** Papers of the record as they would be printed now, for the screen: the same pages, and nothing is written. */
import type { RecordPaper } from '../../../src/contract/areas/sheets.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { titles } from '../../../src/record/condition/say.ts'
import type { Page } from '../../../src/sheets/shapes.ts'
import type { Job } from '../service.ts'
import { climateReady } from './climate-sheet.ts'
import { drawCompared, drawReport } from './condition-sheets.ts'
import { movementsReady } from './crew-sheets.ts'
import { damageFileReady, loanFileReady, objectFileReady } from './whole-files.ts'
import type { Wishes } from './wishes.ts'
import { pagesOf, type Ready } from './written.ts'

type Tables = Exclude<RecordPaper, { kind: 'condition report' | 'condition comparison' }>

function readyOf(job: Job, of: Tables, wishes: Wishes): Promise<Ready> {
  switch (of.kind) {
    case 'damage report':
      return damageFileReady(job, { damage: of.damage, ...wishes })
    case 'object file':
      return objectFileReady(job, { work: of.work, withValues: of.withValues, ...wishes })
    case 'loan file':
      return loanFileReady(job, { loan: of.loan, withValues: of.withValues, ...wishes })
    case 'movement sheet':
      return movementsReady(job, { from: of.from, to: of.to, ...wishes })
    case 'climate':
      return climateReady(job, { room: of.room, from: of.from, until: of.until, ...wishes })
  }
}

async function drawn(job: Job, of: RecordPaper, wishes: Wishes): Promise<{ title: string; pages: readonly Page[] }> {
  if (of.kind === 'condition report') {
    const { report, pages } = await drawReport(job, { report: of.report, ...wishes })
    return { title: titles[report.kind], pages }
  }
  if (of.kind === 'condition comparison') {
    const { pages } = await drawCompared(job, { before: of.before, after: of.after, ...wishes })
    return { title: 'Condition compared', pages }
  }
  const ready = await readyOf(job, of, wishes)
  return { title: ready.title, pages: await pagesOf(job, ready) }
}

export async function previewPaper(
  job: Job,
  { of, ...wishes }: Received<'sheet.previewPaper'>,
): Promise<Output<'sheet.previewPaper'>> {
  try {
    return await drawn(job, of, wishes)
  } catch (thrown) {
    if (!(thrown instanceof Refusal) || thrown.field === undefined) throw thrown
    // What makes the paper is asked the same one level up.
    throw new Refusal(thrown.code, thrown.message, { field: `of.${thrown.field}`, details: thrown.details })
  }
}
