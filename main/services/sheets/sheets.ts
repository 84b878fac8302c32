/** The papers: printed, made as workbooks, shown before they are printed, and how they stand to the walls now. */
import type { SheetFile } from '../../../src/contract/areas/sheets.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { titleOf } from '../../../src/sheets/wall-question.ts'
import { wallSheet } from '../../../src/sheets/wall-sheet.ts'
import { openFaces } from '../../fonts/faces.ts'
import type { Job, Reading, ServicesOf, Writing } from '../service.ts'
import { rows } from '../sql.ts'
import { climateSheet } from './climate-sheet.ts'
import { conditionSheetServices } from './condition-sheets.ts'
import { crewSheetServices } from './crew-sheets.ts'
import { faceSheet, kind, questionOf, refuseMixed } from './face-sheet.ts'
import { insuredSheet } from './insured-sheet.ts'
import { drawPlan, type PlanReady, planFiles, previewPlan, recordPlan, writePlan } from './plan-files.ts'
import { plansOf } from './plan-of-storey.ts'
import { previewPaper } from './preview.ts'
import { printWalls } from './print-walls.ts'
import { toldStanding } from './prints.ts'
import { receiptSheet } from './receipt-sheet.ts'
import { facesOf, makeChecklist, makeHangList, makeLabelList, showTitle } from './tables.ts'
import { wholeFileServices } from './whole-files.ts'
import { type Style, sheetTime, styleOf } from './wishes.ts'

async function wall(job: Job, { exhibition, faces, ...wishes }: Received<'sheet.wall'>): Promise<Output<'sheet.wall'>> {
  showTitle(job.db, exhibition)
  return printWalls(job, exhibition, faces, styleOf(job, wishes), false, { before: 0, total: faces.length })
}

async function checklist(
  job: Job,
  { exhibition, withValues = false, ...wishes }: Received<'sheet.checklist'>,
): Promise<Output<'sheet.checklist'>> {
  return { files: [await makeChecklist(job, exhibition, styleOf(job, wishes), withValues)], findings: [] }
}

async function hangList(
  job: Job,
  { exhibition, ...wishes }: Received<'sheet.hangList'>,
): Promise<Output<'sheet.hangList'>> {
  return { files: [await makeHangList(job, exhibition, styleOf(job, wishes))], findings: [] }
}

async function labels(job: Job, { exhibition, ...wishes }: Received<'sheet.labels'>): Promise<Output<'sheet.labels'>> {
  return { files: [await makeLabelList(job, exhibition, styleOf(job, wishes))], findings: [] }
}

async function set(
  job: Job,
  { exhibition, withValues = false, ...wishes }: Received<'sheet.set'>,
): Promise<Output<'sheet.set'>> {
  const style = styleOf(job, wishes)
  const plans = await plansOfSet(job, exhibition, style)
  try {
    return await printSet(job, exhibition, style, plans, withValues)
  } catch (error) {
    for (const { file } of plans) job.handles.drop(file.handle)
    throw error
  }
}

/** The plan of each storey, written and not yet recorded. */
async function plansOfSet(job: Job, exhibition: string, style: Style) {
  const storeys = plansOf(job, exhibition).map(({ storey }) => storey)
  const fonts = await openFaces()
  const plans: { readonly ready: PlanReady; readonly file: SheetFile }[] = []
  for (const storey of storeys) {
    const ready = drawPlan(job, { exhibition, storey, style }, fonts)
    plans.push({ ready, file: await writePlan(job, ready, 'pdf', fonts) })
  }
  return plans
}

async function printSet(
  job: Job,
  exhibition: string,
  style: Style,
  plans: Awaited<ReturnType<typeof plansOfSet>>,
  withValues: boolean,
): Promise<Output<'sheet.set'>> {
  const faces = facesOf(job.db, exhibition)
  const record = (writing: Writing) => {
    for (const { ready } of plans) recordPlan(job, writing, ready)
  }
  const tables = [await makeChecklist(job, exhibition, style, withValues), await makeHangList(job, exhibition, style)]
  // The record comes last: nothing is printed for ever that a later step could still refuse.
  const files = plans.map(({ file }) => file)
  if (faces.length === 0) {
    if (plans.length > 0)
      await job.write(writing => {
        writing.label('Print the plan')
        record(writing)
      })
    return { files: [...files, ...tables], findings: [] }
  }
  const walls = await printWalls(job, exhibition, faces, style, true, { before: 0, total: faces.length }, record)
  return { files: [...walls.files, ...files, ...tables], findings: walls.findings }
}

function state(reading: Reading, { exhibition }: Received<'sheet.state'>): Output<'sheet.state'> {
  const { db } = reading
  showTitle(db, exhibition)
  const withWorks = facesOf(db, exhibition)
  const printed = rows<{ face: string }>(
    db,
    'SELECT DISTINCT face FROM sheet_print WHERE exhibition = :exhibition AND kind = :kind AND face IS NOT NULL ORDER BY face',
    { exhibition, kind },
  ).map(({ face }) => face)
  return {
    faces: [...new Set([...withWorks, ...printed])].map(face => {
      const sheet = faceSheet(db, exhibition, face)
      const { elevation } = sheet
      return { face, name: titleOf(elevation), works: elevation.works.length, ...toldStanding(sheet) }
    }),
    plans: plansOf(reading, exhibition),
  }
}

async function preview(
  job: Job,
  { exhibition, face, ...wishes }: Received<'sheet.preview'>,
): Promise<Output<'sheet.preview'>> {
  const fonts = await openFaces()
  const sheet = faceSheet(job.db, exhibition, face)
  const style = styleOf(job, wishes)
  refuseMixed(sheet.elevation, style, 'face')
  const stamp = { time: sheetTime(job.now()), by: job.person?.name ?? '' }
  const drawn = wallSheet(questionOf(job.db, sheet, style, stamp), fonts)
  return {
    title: drawn.title,
    revision: sheet.next,
    upToDate: sheet.upToDate,
    pages: drawn.pages,
    findings: drawn.missing,
  }
}

export const sheetServices: ServicesOf<
  | keyof typeof crewSheetServices
  | keyof typeof conditionSheetServices
  | 'sheet.wall'
  | 'sheet.checklist'
  | 'sheet.hangList'
  | 'sheet.labels'
  | 'sheet.insured'
  | 'sheet.climate'
  | keyof typeof wholeFileServices
  | 'sheet.receipt'
  | 'sheet.plan'
  | 'sheet.set'
  | 'sheet.state'
  | 'sheet.preview'
  | 'sheet.previewPlan'
  | 'sheet.previewPaper'
> = {
  ...crewSheetServices,
  ...conditionSheetServices,
  'sheet.wall': wall,
  'sheet.checklist': checklist,
  'sheet.hangList': hangList,
  'sheet.labels': labels,
  'sheet.insured': insuredSheet,
  'sheet.climate': climateSheet,
  ...wholeFileServices,
  'sheet.receipt': receiptSheet,
  'sheet.plan': planFiles,
  'sheet.set': set,
  'sheet.state': state,
  'sheet.preview': preview,
  'sheet.previewPlan': previewPlan,
  'sheet.previewPaper': previewPaper,
}
