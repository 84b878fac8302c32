/**
 * A storey taken out of the catalogue: as PDF and SVG at a stated scale, and as DXF at full size. For a show it is
 * recorded which revision that is, once the files are written; the building alone belongs to no show and has none.
 */
import { writeFileSync } from 'node:fs'
import type { SheetFile } from '../../../src/contract/areas/sheets.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { StoreyFigures } from '../../../src/plan/figures.ts'
import { fits, planSheet, roomFor, scaleThatFits } from '../../../src/sheets/plan-sheet.ts'
import { type Page, papers } from '../../../src/sheets/shapes.ts'
import { svgOf } from '../../../src/sheets/svg.ts'
import { dxfText } from '../../files/dxf/write.ts'
import { writePdf } from '../../files/pdf/writer.ts'
import { type Faces, openFaces } from '../../fonts/faces.ts'
import type { Job } from '../service.ts'
import { kindOf, planOfStorey } from './plan-of-storey.ts'
import { movedOn, recordPrint, type Standing } from './prints.ts'
import { showTitle } from './tables.ts'
import { fileName, type Style, sheetTime, styleOf } from './wishes.ts'

type Format = 'pdf' | 'svg' | 'dxf'

export async function planFiles(job: Job, input: Received<'sheet.plan'>): Promise<Output<'sheet.plan'>> {
  const { exhibition, storey = '', formats, scale, ...wishes } = input
  const style = styleOf(job, wishes)
  const about = exhibition === null ? '' : showTitle(job.db, exhibition)
  job.progress(0, formats.length, 'Drawing the plan')
  const system = style.unit === 'in' ? 'imperial' : 'metric'
  const asked = planOfStorey(job, exhibition, storey, system)
  const { drawn, standing } = asked
  const { building, storeys } = asked.plan
  const { box } = drawn
  if (box === null) {
    const field = storeys.includes(storey) ? null : 'storey'
    throw new Refusal(
      'nothing-drawn',
      'There is no room on this storey yet. Add one first.',
      field === null ? {} : { field },
    )
  }
  const taken = scaleOf(drawn, style, scale)
  const names = [building?.name ?? '', storey, about, 'plan'].filter(text => text !== '')
  const title = building === null || building.name === '' ? 'Plan' : building.name
  const revision = standing?.next ?? null
  if (revision !== null) names.push(`revision ${revision}`)
  const at = job.now()
  const stamp = { time: sheetTime(at), by: job.person?.name ?? '' }
  const faces = formats.includes('pdf') || formats.includes('svg') ? await openFaces() : null
  const page =
    faces === null
      ? null
      : planSheet(
          {
            title,
            about: [storey, about].filter(text => text !== '').join(' · '),
            storey: drawn,
            scale: taken,
            paper: papers[style.paper],
            north: building?.north ?? null,
            units: style,
            revision,
            voids: standing?.voids ?? [],
            ...stamp,
          },
          faces,
        )
  const files: SheetFile[] = []
  try {
    for (const [step, format] of formats.entries()) {
      job.progress(step, formats.length, `Writing the plan as ${format.toUpperCase()}`)
      files.push({ ...(await write(job, format, names, drawn, page, faces)), revision })
    }
    if (exhibition !== null && standing !== null) await record(job, exhibition, storey, standing, at)
  } catch (error) {
    for (const { handle } of files) job.handles.drop(handle)
    throw error
  }
  return { files, findings: [], scale: taken }
}

/** Refuses `changed-meanwhile`: no two papers carry one number and say different things. */
async function record(job: Job, exhibition: string, storey: string, drawn: Standing, at: string): Promise<void> {
  await job.write(writing => {
    const now = planOfStorey({ ...job, db: writing.db }, exhibition, storey, 'metric').standing
    if (now === null || movedOn(now, drawn))
      throw new Refusal('changed-meanwhile', 'The plan changed while it was made. Take it out again.', {
        details: { storey },
      })
    writing.label(storey === '' ? 'Print the plan' : `Print the plan of ${storey}`)
    const of = { exhibition, face: null, kind: kindOf(storey) }
    recordPrint(writing, of, drawn, at, job.person?.name ?? '')
  })
}

/** As asked, or the largest usual one that fits the paper. Refuses `plan-too-large` with the scale that would. */
function scaleOf({ box }: StoreyFigures, style: Style, asked: number | undefined): number {
  const paper = papers[style.paper]
  if (box === null) throw new Error('a plan without a box')
  const best = scaleThatFits(box, paper)
  if (asked !== undefined && fits(box, paper, asked)) return asked
  if (asked === undefined && best !== null) return best
  const scale = asked ?? 5000
  const [w, h] = [Math.ceil((box.right - box.left) / scale), Math.ceil((box.bottom - box.top) / scale)]
  const room = roomFor(paper)
  const cure = best === null ? 'Take larger paper.' : `1:${best} fits, or take larger paper.`
  throw new Refusal(
    'plan-too-large',
    `At 1:${scale} the plan is ${w} × ${h} mm, and ${style.paper} has ${Math.floor(room.w)} × ${Math.floor(room.h)} mm for it. ${cure}`,
    { field: 'scale', details: { fits: best } },
  )
}

async function write(
  job: Job,
  format: Format,
  names: readonly string[],
  drawn: StoreyFigures,
  page: Page | null,
  faces: Faces | null,
): Promise<Omit<SheetFile, 'revision'>> {
  const name = fileName(names, format)
  const { handle, path } = job.handles.create(name)
  const title = names.join(': ')
  try {
    if (format === 'dxf') writeFileSync(path, dxfText(drawn.figures), { mode: 0o600 })
    else if (page === null || faces === null) throw new Error('a sheet that was not drawn')
    else if (format === 'svg') writeFileSync(path, svgOf(page, title), { mode: 0o600 })
    else
      await writePdf(
        path,
        { title, language: 'en', at: job.now(), pages: [page], picture: () => null },
        faces,
        job.signal,
      )
  } catch (error) {
    job.handles.drop(handle)
    throw error
  }
  return { kind: 'plan', handle, name, face: null, pages: format === 'pdf' ? 1 : null }
}
