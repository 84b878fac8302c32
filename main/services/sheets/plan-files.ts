/**
 * A storey taken out of the catalogue: as PDF and SVG at a stated scale, and as DXF at full size. For a show it is
 * recorded which revision that is, once the files are written; the building alone belongs to no show and has none.
 */
import { writeFileSync } from 'node:fs'
import type { SheetFile } from '../../../src/contract/areas/sheets.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { StoreyFigures } from '../../../src/plan/figures.ts'
import type { Box } from '../../../src/plan/place.ts'
import { fits, type PlanSheet, planSheet, roomFor, scaleThatFits } from '../../../src/sheets/plan-sheet.ts'
import { papers } from '../../../src/sheets/shapes.ts'
import { svgOf } from '../../../src/sheets/svg.ts'
import { dxfText } from '../../files/dxf/write.ts'
import { writePdf } from '../../files/pdf/writer.ts'
import { type Faces, openFaces } from '../../fonts/faces.ts'
import type { Job, Writing } from '../service.ts'
import { kindOf, planOfStorey } from './plan-of-storey.ts'
import { movedOn, recordPrint, type Standing } from './prints.ts'
import { showTitle } from './tables.ts'
import { fileName, type Style, sheetTime, styleOf } from './wishes.ts'

type Format = 'pdf' | 'svg' | 'dxf'

/** A storey as it would go out now. */
export interface PlanReady {
  readonly exhibition: string | null
  readonly storey: string
  /** What the file and the sheet are called by: building, storey, show, revision. */
  readonly names: readonly string[]
  readonly drawn: StoreyFigures
  readonly standing: Standing | null
  readonly scale: number
  /** When it was read. */
  readonly at: string
  /** The one page; null where no paper was asked for. */
  readonly sheet: PlanSheet | null
}

interface Asked {
  readonly exhibition: string | null
  readonly storey: string
  readonly scale?: number | undefined
  readonly style: Style
}

/** Refuses `nothing-drawn` and `plan-too-large`. @param faces null where no paper is wanted */
export function drawPlan(job: Job, { exhibition, storey, scale, style }: Asked, faces: Faces | null): PlanReady {
  const about = exhibition === null ? '' : showTitle(job.db, exhibition)
  const system = style.unit === 'in' ? 'imperial' : 'metric'
  const { drawn, standing, plan } = planOfStorey(job, exhibition, storey, system)
  const { building, storeys } = plan
  if (drawn.box === null) {
    const field = storeys.includes(storey) ? null : 'storey'
    throw new Refusal(
      'nothing-drawn',
      'There is no room on this storey yet. Add one first.',
      field === null ? {} : { field },
    )
  }
  const taken = scaleOf(drawn, drawn.box, style, scale)
  const revision = standing?.next ?? null
  const counted = revision === null ? '' : `revision ${revision}`
  const names = [building?.name ?? '', storey, about, 'plan', counted].filter(text => text !== '')
  const at = job.now()
  const question = {
    title: building === null || building.name === '' ? 'Plan' : building.name,
    about: [storey, about].filter(text => text !== '').join(' · '),
    storey: drawn,
    scale: taken,
    paper: papers[style.paper],
    north: building?.north ?? null,
    units: style,
    revision,
    voids: standing?.voids ?? [],
    time: sheetTime(at),
    by: job.person?.name ?? '',
  }
  const sheet = faces === null ? null : planSheet(question, faces)
  return { exhibition, storey, names, drawn, standing, scale: taken, at, sheet }
}

export async function planFiles(job: Job, input: Received<'sheet.plan'>): Promise<Output<'sheet.plan'>> {
  const { exhibition, storey = '', formats, scale, ...wishes } = input
  job.progress(0, formats.length, 'Drawing the plan')
  const faces = formats.includes('pdf') || formats.includes('svg') ? await openFaces() : null
  const ready = drawPlan(job, { exhibition, storey, scale, style: styleOf(job, wishes) }, faces)
  const files: SheetFile[] = []
  try {
    for (const [step, format] of formats.entries()) {
      job.progress(step, formats.length, `Writing the plan as ${format.toUpperCase()}`)
      files.push(await writePlan(job, ready, format, faces))
    }
    if (ready.standing !== null)
      await job.write(writing => {
        writing.label(storey === '' ? 'Print the plan' : `Print the plan of ${storey}`)
        recordPlan(job, writing, ready)
      })
  } catch (error) {
    for (const { handle } of files) job.handles.drop(handle)
    throw error
  }
  return { files, findings: [], scale: ready.scale }
}

/** The plan as shapes, as it would be printed now; nothing is recorded. */
export async function previewPlan(
  job: Job,
  { exhibition, storey = '', scale, ...wishes }: Received<'sheet.previewPlan'>,
): Promise<Output<'sheet.previewPlan'>> {
  const faces = await openFaces()
  const {
    names,
    standing,
    scale: taken,
    sheet,
  } = drawPlan(job, { exhibition, storey, scale, style: styleOf(job, wishes) }, faces)
  return {
    title: names.join(': '),
    revision: standing?.next ?? null,
    upToDate: standing?.upToDate ?? false,
    scale: taken,
    pages: sheet === null ? [] : [sheet.page],
  }
}

/** Refuses `changed-meanwhile`: no two papers carry one number and say different things. */
export function recordPlan(job: Job, writing: Writing, { exhibition, storey, standing, at }: PlanReady): void {
  if (exhibition === null || standing === null) return
  const now = planOfStorey({ ...job, db: writing.db }, exhibition, storey, 'metric').standing
  if (now === null || movedOn(now, standing))
    throw new Refusal('changed-meanwhile', 'The plan changed while it was made. Take it out again.', {
      details: { storey },
    })
  recordPrint(writing, { exhibition, face: null, kind: kindOf(storey) }, standing, at, job.person?.name ?? '')
}

/** As asked, or the largest usual one that fits the paper. Refuses `plan-too-large` with the scale that would. */
function scaleOf(drawn: StoreyFigures, box: Box, style: Style, asked: number | undefined): number {
  const paper = papers[style.paper]
  const best = scaleThatFits(drawn, paper)
  if (asked !== undefined && fits(drawn, paper, asked)) return asked
  if (asked === undefined && best !== null) return best
  const scale = asked ?? 5000
  const [w, h] = [Math.ceil((box.right - box.left) / scale), Math.ceil((box.bottom - box.top) / scale)]
  const room = roomFor(paper, drawn.zones)
  const cure = best === null ? 'Take larger paper.' : `1:${best} fits, or take larger paper.`
  throw new Refusal(
    'plan-too-large',
    `At 1:${scale} the plan is ${w} × ${h} mm, and ${style.paper} has ${Math.floor(room.w)} × ${Math.floor(room.h)} mm for it. ${cure}`,
    { field: 'scale', details: { fits: best } },
  )
}

export async function writePlan(
  job: Job,
  { names, drawn, sheet, standing, at }: PlanReady,
  format: Format,
  faces: Faces | null,
): Promise<SheetFile> {
  const name = fileName(names, format)
  const { handle, path } = job.handles.create(name)
  const title = names.join(': ')
  try {
    if (format === 'dxf') writeFileSync(path, dxfText(drawn.figures), { mode: 0o600 })
    else if (sheet === null || faces === null) throw new Error('a sheet that was not drawn')
    else if (format === 'svg') writeFileSync(path, svgOf(sheet.page, title), { mode: 0o600 })
    else
      await writePdf(path, { title, language: 'en', at, pages: [sheet.page], picture: () => null }, faces, job.signal)
  } catch (error) {
    job.handles.drop(handle)
    throw error
  }
  return {
    kind: 'plan',
    handle,
    name,
    face: null,
    pages: format === 'pdf' ? 1 : null,
    revision: standing?.next ?? null,
  }
}
