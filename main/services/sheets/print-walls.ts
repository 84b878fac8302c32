/**
 * Printing wall sheets: drawn and written first, then recorded in one edit. If a wall or its prints changed between,
 * nothing is recorded and the files are taken away, so that no paper carries a number that another paper has.
 */
import type { SheetFile } from '../../../src/contract/areas/sheets.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { Finding } from '../../../src/contract/shared.ts'
import { titleOf, type WallSheetQuestion } from '../../../src/sheets/wall-question.ts'
import { type WallSheet, wallSheet } from '../../../src/sheets/wall-sheet.ts'
import { writePdf } from '../../files/pdf/writer.ts'
import { openFaces } from '../../fonts/faces.ts'
import { notFound } from '../change.ts'
import type { Job, Writing } from '../service.ts'
import { value } from '../sql.ts'
import { elevationOf } from '../walls/elevation.ts'
import { type FaceSheet, faceSheet, kind, questionOf, refuseMixed } from './face-sheet.ts'
import { movedOn, recordPrint } from './prints.ts'
import { thumbnailsOf } from './thumbnails.ts'
import { fileName, type Style, sheetTime } from './wishes.ts'

interface Ready {
  readonly face: string
  readonly sheet: FaceSheet
  readonly question: WallSheetQuestion
  readonly drawn: WallSheet
}

export interface Printed {
  readonly files: readonly SheetFile[]
  readonly findings: readonly Finding[]
}

/** Prints the sheets of `faces` in this order. In a set, sheets are numbered through. */
export async function printWalls(
  job: Job,
  exhibition: string,
  faces: readonly string[],
  style: Style,
  numberedThrough: boolean,
  steps: { readonly before: number; readonly total: number },
  /** What is recorded in the same edit. */
  also: (writing: Writing) => void = () => undefined,
): Promise<Printed> {
  faces.forEach((face, index) => {
    const known = value<number>(job.db, 'SELECT 1 FROM face WHERE id = :face', { face })
    if (known === undefined) throw notFound('wall', `faces.${index}`)
    refuseMixed(elevationOf(job.db, exhibition, face), style, `faces.${index}`)
  })
  const fonts = await openFaces()
  const stamp = { time: sheetTime(job.now()), by: job.person?.name ?? '' }
  const ready: Ready[] = []
  for (const [index, face] of [...new Set(faces)].entries()) {
    job.signal.throwIfAborted()
    const sheet = faceSheet(job.db, exhibition, face)
    job.progress(steps.before + index, steps.total, `Drawing ${titleOf(sheet.elevation)}`)
    const question = questionOf(job.db, sheet, style, stamp)
    ready.push({ face, sheet, question, drawn: wallSheet(question, fonts) })
    // Lets a cancel come in.
    await new Promise(resolve => setImmediate(resolve))
  }
  const at = job.now()
  const made: SheetFile[] = []
  try {
    const total = ready.reduce((sum, { drawn }) => sum + drawn.pages.length, 0)
    let before = 0
    for (const each of ready) {
      const drawn = numberedThrough ? wallSheet({ ...each.question, set: { before, total } }, fonts) : each.drawn
      before += drawn.pages.length
      made.push(await write(job, each, drawn, at, fonts))
    }
    await job.write(writing => {
      writing.label(
        ready.length === 1
          ? `Print the sheet of ${titleOf(ready[0]?.sheet.elevation ?? fail())}`
          : `Print ${ready.length} wall sheets`,
      )
      for (const { face, sheet } of ready) {
        const now = faceSheet(writing.db, exhibition, face)
        if (movedOn(now, sheet)) {
          throw new Refusal(
            'changed-meanwhile',
            `${titleOf(now.elevation)} changed while its sheet was made. Print it again.`,
            {
              field: 'faces',
              details: { face },
            },
          )
        }
        recordPrint(writing, { exhibition, face, kind }, sheet, at, job.person?.name ?? '')
      }
      also(writing)
    })
  } catch (error) {
    for (const { handle } of made) job.handles.drop(handle)
    throw error
  }
  return { files: made, findings: ready.flatMap(({ drawn }) => drawn.missing) }
}

function fail(): never {
  throw new Error('a print without a sheet')
}

async function write(
  job: Job,
  { face, sheet }: Ready,
  drawn: WallSheet,
  at: string,
  fonts: Awaited<ReturnType<typeof openFaces>>,
): Promise<SheetFile> {
  const { elevation } = sheet
  const name = fileName([elevation.exhibitionTitle, titleOf(elevation), `revision ${sheet.next}`], 'pdf')
  const thumbnails = await thumbnailsOf(
    job,
    drawn.rows.flatMap(row => row.picture ?? []),
  )
  const picture = (hash: string) => thumbnails.get(hash)?.bytes ?? null
  const { handle, path } = job.handles.create(name)
  try {
    await writePdf(path, { title: drawn.title, language: 'en', at, pages: drawn.pages, picture }, fonts, job.signal)
  } catch (error) {
    job.handles.drop(handle)
    throw error
  }
  return { kind, handle, name, face, pages: drawn.pages.length, revision: sheet.next }
}
