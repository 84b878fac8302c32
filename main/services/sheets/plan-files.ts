/** A storey taken out of the catalogue: as PDF and SVG at a stated scale, and as DXF at full size. Records nothing. */
import { writeFileSync } from 'node:fs'
import type { SheetFile } from '../../../src/contract/areas/sheets.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { formatArea } from '../../../src/measure/area.ts'
import { figuresOf, type StoreyFigures } from '../../../src/plan/figures.ts'
import { fits, planSheet, roomFor, scaleThatFits } from '../../../src/sheets/plan-sheet.ts'
import { type Page, papers } from '../../../src/sheets/shapes.ts'
import { svgOf } from '../../../src/sheets/svg.ts'
import { dxfText } from '../../files/dxf/write.ts'
import { writePdf } from '../../files/pdf/writer.ts'
import { type Faces, openFaces } from '../../fonts/faces.ts'
import { plan } from '../plan/get.ts'
import type { Job } from '../service.ts'
import { showTitle } from './tables.ts'
import { fileName, type Style, sheetTime, styleOf } from './wishes.ts'

type Format = 'pdf' | 'svg' | 'dxf'

export async function planFiles(job: Job, input: Received<'sheet.plan'>): Promise<Output<'sheet.plan'>> {
  const { exhibition, storey = '', formats, scale, ...wishes } = input
  const style = styleOf(job, wishes)
  const about = exhibition === null ? '' : showTitle(job.db, exhibition)
  job.progress(0, formats.length, 'Drawing the plan')
  const { building, rooms, storeys } = plan(job, { exhibition })
  const drawn = figuresOf(rooms, storey, area => formatArea(area, style.unit === 'in' ? 'imperial' : 'metric'))
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
  const stamp = { time: sheetTime(job.now()), by: job.person?.name ?? '' }
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
            ...stamp,
          },
          faces,
        )
  const files: SheetFile[] = []
  try {
    for (const [at, format] of formats.entries()) {
      job.progress(at, formats.length, `Writing the plan as ${format.toUpperCase()}`)
      files.push(await write(job, format, names, drawn, page, faces))
    }
  } catch (error) {
    for (const { handle } of files) job.handles.drop(handle)
    throw error
  }
  return { files, findings: [], scale: taken }
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
): Promise<SheetFile> {
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
  return { kind: 'plan', handle, name, face: null, pages: format === 'pdf' ? 1 : null, revision: null }
}
