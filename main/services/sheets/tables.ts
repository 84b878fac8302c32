/** Checklist and hang list of a show, written as workbooks. */
import type { SheetFile } from '../../../src/contract/areas/sheets.ts'
import { checklistSheet } from '../../../src/sheets/checklist.ts'
import type { TableSheet } from '../../../src/sheets/columns.ts'
import { hangListSheets } from '../../../src/sheets/hang-list.ts'
import { labelListSheet } from '../../../src/sheets/label-list.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { writeWorkbook } from '../../files/workbook/write.ts'
import { notFound } from '../change.ts'
import { dayAt } from '../days.ts'
import { labelsOf } from '../labels.ts'
import type { Job } from '../service.ts'
import { rows, value } from '../sql.ts'
import { elevationOf } from '../walls/elevation.ts'
import { checklistWorks } from './checklist-data.ts'
import { thumbnailsOf } from './thumbnails.ts'
import { fileName, type Style, sheetTime, tableUnit } from './wishes.ts'

export function showTitle(db: ReadHandle, exhibition: string): string {
  const title = value<string>(db, 'SELECT title FROM exhibition WHERE id = :exhibition', { exhibition })
  if (title === undefined) throw notFound('exhibition', 'exhibition')
  return title
}

/** Faces with works: rooms and walls in the building's order, or the visitor's where a show says it. */
export function facesOf(db: ReadHandle, exhibition: string): readonly string[] {
  return rows<{ face: string }>(
    db,
    `SELECT DISTINCT placement.face, face_plan.visitor_order IS NULL AS unsaid, face_plan.visitor_order AS visitor,
      room.position AS room, wall.position AS wall
     FROM placement JOIN face ON face.id = placement.face JOIN wall ON wall.id = face.wall JOIN room ON room.id = wall.room
     LEFT JOIN face_plan ON face_plan.face = placement.face AND face_plan.exhibition = placement.exhibition
     WHERE placement.exhibition = :exhibition ORDER BY unsaid, visitor, room, wall, placement.face`,
    { exhibition },
  ).map(({ face }) => face)
}

export async function makeChecklist(
  job: Job,
  exhibition: string,
  style: Style,
  withValues: boolean,
): Promise<SheetFile> {
  const title = showTitle(job.db, exhibition)
  const works = checklistWorks(job.db, exhibition, dayAt(job.now()))
  const sheet = checklistSheet({
    title: `${title}: checklist`,
    lines: [madeLine(job, `${works.length === 1 ? '1 work' : `${works.length} works`}`)],
    works,
    unit: tableUnit(style.unit),
    fraction: style.steps.fraction,
    withValues,
  })
  return writeTable(job, 'checklist', fileName([title, 'checklist'], 'xlsx'), [sheet], style)
}

export async function makeHangList(job: Job, exhibition: string, style: Style): Promise<SheetFile> {
  const title = showTitle(job.db, exhibition)
  const unit = tableUnit(style.unit)
  const sheets = hangListSheets({
    exhibitionTitle: title,
    lines: [madeLine(job, `lengths in ${unit === 'in' ? 'inches' : 'millimetres'}, as on the wall sheets`)],
    elevations: facesOf(job.db, exhibition).map(face => elevationOf(job.db, exhibition, face)),
    unit,
    steps: style.steps,
  })
  return writeTable(job, 'hang list', fileName([title, 'hang list'], 'xlsx'), sheets, style)
}

export async function makeLabelList(job: Job, exhibition: string, style: Style): Promise<SheetFile> {
  const title = showTitle(job.db, exhibition)
  const unit = tableUnit(style.unit)
  const labels = labelsOf(job.db, exhibition, style)
  const sheet = labelListSheet({
    exhibitionTitle: title,
    lines: [madeLine(job, `lengths in ${unit === 'in' ? 'inches' : 'millimetres'}, as on the wall sheets`)],
    labels,
    unit,
    steps: style.steps,
    when: sheetTime,
  })
  return writeTable(job, 'label list', fileName([title, 'label list'], 'xlsx'), [sheet], style)
}

export function madeLine(job: Job, what: string): string {
  return [what, sheetTime(job.now()), job.person?.name ?? ''].filter(text => text !== '').join(' · ')
}

export async function writeTable(
  job: Job,
  kind: SheetFile['kind'],
  name: string,
  sheets: readonly TableSheet[],
  { paper }: Style,
): Promise<SheetFile> {
  const thumbnails = await thumbnailsOf(job, picturesOf(sheets))
  job.signal.throwIfAborted()
  const { handle, path } = job.handles.create(name)
  try {
    await writeWorkbook(
      path,
      { sheets, at: job.now(), by: job.person?.name ?? '', paper, thumbnail: hash => thumbnails.get(hash) ?? null },
      job.signal,
    )
  } catch (error) {
    job.handles.drop(handle)
    throw error
  }
  return { kind, handle, name, face: null, pages: null, revision: null }
}

function picturesOf(sheets: readonly TableSheet[]): readonly string[] {
  return sheets.flatMap(({ rows }) => rows.flat().flatMap(cell => (cell.kind === 'picture' ? [cell.hash] : [])))
}
