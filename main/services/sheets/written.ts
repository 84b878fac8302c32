/** Tables and pages written as files to be fetched; what was begun and not ended is taken away again. */
import type { SheetFile } from '../../../src/contract/areas/sheets.ts'
import type { Finding } from '../../../src/contract/shared.ts'
import type { TableSheet } from '../../../src/sheets/columns.ts'
import type { Page } from '../../../src/sheets/shapes.ts'
import { tablePages } from '../../../src/sheets/table-pages.ts'
import { writePdf } from '../../files/pdf/writer.ts'
import { type Faces, openFaces } from '../../fonts/faces.ts'
import type { Job } from '../service.ts'
import { writeTable } from './tables.ts'
import { fileName, type Style } from './wishes.ts'

type Kind = SheetFile['kind']

export interface MadeFiles {
  readonly files: readonly SheetFile[]
  readonly findings: readonly Finding[]
}

/** What goes on paper. */
export interface Paged {
  readonly pages: readonly Page[]
  readonly faces: Faces
  /** The face of a wall that they are about. */
  readonly face?: string
  /** JPEG or PNG of a picture on them. */
  readonly picture?: (hash: string) => Buffer | null
}

/** Tables that are ready to be written, or to be seen as they would be. */
export interface Ready {
  readonly kind: Kind
  readonly title: string
  readonly sheets: readonly TableSheet[]
  readonly style: Style
  /** How they lie on paper; each on pages of its own where left out. */
  readonly paged?: (faces: Faces) => Omit<Paged, 'faces'>
}

function onPaper({ sheets, style, paged }: Ready, faces: Faces): Omit<Paged, 'faces'> {
  return paged === undefined ? tablePages(sheets, style.paper, faces) : paged(faces)
}

/** The same tables as a workbook and on paper. */
export async function tables(job: Job, ready: Ready): Promise<MadeFiles> {
  const { kind, title, sheets, style } = ready
  job.progress(1, 3, `Writing the ${kind}`)
  const workbook = await writeTable(job, kind, fileName([title, kind], 'xlsx'), sheets, style)
  try {
    job.signal.throwIfAborted()
    job.progress(2, 3, `Printing the ${kind}`)
    const faces = await openFaces()
    const pages = await writePages(job, kind, [title, kind], { ...onPaper(ready, faces), faces })
    return { files: [workbook, pages], findings: [] }
  } catch (error) {
    forget(job, [workbook])
    throw error
  }
}

/** The pages that `tables` would write. */
export async function pagesOf(job: Job, ready: Ready): Promise<readonly Page[]> {
  job.progress(1, 2, `Drawing the ${ready.kind}`)
  const faces = await openFaces()
  job.signal.throwIfAborted()
  return onPaper(ready, faces).pages
}

export function forget(job: Job, files: readonly SheetFile[]): void {
  for (const { handle } of files) job.handles.drop(handle)
}

export async function writePages(
  job: Job,
  kind: Kind,
  names: readonly string[],
  { pages, faces, face, picture = () => null }: Paged,
): Promise<SheetFile> {
  const name = fileName(names, 'pdf')
  const { handle, path } = job.handles.create(name)
  const title = names.filter(each => each !== '').join(': ')
  try {
    const question = { title, language: 'en', at: job.now(), pages, picture }
    const words = `Writing the pages of the ${kind}`
    await writePdf(path, question, faces, job.signal, done => job.progress(done, pages.length, words))
  } catch (error) {
    job.handles.drop(handle)
    throw error
  }
  return { kind, handle, name, face: face ?? null, pages: pages.length, revision: null }
}
