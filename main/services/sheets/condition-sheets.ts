/** Condition reports on paper, and two against one another. They record nothing. */
import type { Report } from '../../../src/contract/areas/condition-shape.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { titles } from '../../../src/record/condition/say.ts'
import { comparedPaper } from '../../../src/sheets/condition-compared.ts'
import { conditionPaper } from '../../../src/sheets/condition-paper.ts'
import type { OtherReport, ReportQuestion } from '../../../src/sheets/condition-question.ts'
import { thumbnailOf } from '../../files/thumbnail.ts'
import { openFaces } from '../../fonts/faces.ts'
import { findingsOf, reportOf } from '../record/condition/rows.ts'
import { comparedFor, get } from '../record/condition/tell.ts'
import type { Job, ServicesOf } from '../service.ts'
import { value } from '../sql.ts'
import { madeLine } from './tables.ts'
import { sheetTime, styleOf, type Wishes } from './wishes.ts'
import { writePages } from './written.ts'

/** A report on paper, with what its pages are named by. */
export async function drawReport(job: Job, { report: id, ...wishes }: Received<'sheet.condition'>) {
  const told = await job.held(async () => {
    reportOf(job.db, id, 'report')
    const report = get(job, { id })
    const other = (of: string | null): OtherReport | null => (of === null ? null : reportOf(job.db, of))
    const others = { corrects: other(report.corrects), correctedBy: other(report.correctedBy) }
    return { report, ...others, follows: followedBy(job, report) }
  })
  const { report } = told
  const pictures = await picturesOf(job, [report])
  const faces = await openFaces()
  const { pages } = conditionPaper({ ...asked(job, wishes, pictures, 'condition report'), ...told }, faces)
  return { report, pages, faces, pictures }
}

async function condition(job: Job, input: Received<'sheet.condition'>): Promise<Output<'sheet.condition'>> {
  const { report, pages, faces, pictures } = await drawReport(job, input)
  const names = [report.workNumber, report.workTitle, titles[report.kind].toLowerCase(), dayOf(report)]
  return {
    files: [await writePages(job, 'condition report', names, { pages, faces, picture: pictureIn(pictures) })],
    findings: [],
  }
}

/** Two reports against one another on paper. */
export async function drawCompared(job: Job, { before, after, ...wishes }: Received<'sheet.compared'>) {
  const [lines, was, now] = await job.held(async () => {
    const lines = comparedFor(job.db, { before, after }, styleOf(job, wishes))
    return [lines, get(job, { id: before }), get(job, { id: after })] as const
  })
  const pictures = await picturesOf(job, [was, now], false)
  const faces = await openFaces()
  const question = { ...asked(job, wishes, pictures, 'comparison'), before: was, after: now, compared: lines }
  const { pages } = comparedPaper(question, faces)
  return { was, now, pages, faces, pictures }
}

async function compared(job: Job, input: Received<'sheet.compared'>): Promise<Output<'sheet.compared'>> {
  const { was, now, pages, faces, pictures } = await drawCompared(job, input)
  const names = [now.workNumber, now.workTitle, 'condition compared', `${dayOf(was)} and ${dayOf(now)}`]
  return {
    files: [await writePages(job, 'condition comparison', names, { pages, faces, picture: pictureIn(pictures) })],
    findings: [],
  }
}

type Pictures = ReadonlyMap<string, Buffer>

function asked(
  job: Job,
  wishes: Wishes,
  pictures: Pictures,
  what: string,
): Pick<ReportQuestion, 'shown' | 'units' | 'paper' | 'when' | 'made'> {
  const { paper, ...units } = styleOf(job, wishes)
  return { shown: hash => pictures.has(hash), units, paper, when: sheetTime, made: madeLine(job, what) }
}

const pictureIn = (pictures: Pictures) => (hash: string) => pictures.get(hash) ?? null
const dayOf = ({ examinedAt }: Report) => sheetTime(examinedAt).split(',')[0] ?? ''

/** Pictures that can be shown, by hash: those that are drawn on as large as the screen has them, photographs smaller. */
async function picturesOf(job: Job, reports: readonly Report[], photographs = true): Promise<Pictures> {
  const drawnOn = reports.flatMap(({ picture, backPicture }) => [picture, backPicture].filter(hash => hash !== null))
  const photos = photographs ? reports.flatMap(({ photos }) => photos.map(({ hash }) => hash)) : []
  const hashes = [...new Set([...drawnOn, ...photos])]
  const found = new Map<string, Buffer>()
  for (const [at, hash] of hashes.entries()) {
    job.signal.throwIfAborted()
    job.progress(at, hashes.length, 'Reading the pictures')
    const stored = await job.store.picture(hash, 1600)
    const px = drawnOn.includes(hash) ? 1600 : 1050
    const shown = stored === null ? null : await thumbnailOf(stored.bytes, { width: px, height: px })
    if (shown !== null) found.set(hash, shown.bytes)
  }
  return found
}

/** What each finding that goes on from an earlier one goes on from, by its own id. */
function followedBy({ db }: Job, { findings }: Report): ReportQuestion['follows'] {
  return new Map(
    findings.flatMap(({ id, follows }) => {
      const of = value<string>(db, 'SELECT report FROM condition_finding WHERE id = :follows', { follows })
      if (of === undefined) return []
      const { kind, examinedAt } = reportOf(db, of)
      const number = findingsOf(db, of).find(each => each.id === follows)?.number ?? 0
      return [[id, { kind, examinedAt, number }] as const]
    }),
  )
}

export const conditionSheetServices: ServicesOf<'sheet.condition' | 'sheet.compared'> = {
  'sheet.condition': condition,
  'sheet.compared': compared,
}
