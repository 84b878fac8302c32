/** The crew's papers, the movement sheet and the paper template: tables on paper and in workbooks. They record nothing. */
import type { Elevation, PlacedWork } from '../../../src/contract/areas/walls.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { calledOn } from '../../../src/model/face-findings.ts'
import { marksOfPlaced } from '../../../src/model/marks-of-face.ts'
import { handsOf } from '../../../src/model/marks-of-set.ts'
import { orderSheets, patchSheets } from '../../../src/sheets/crew-tables.ts'
import { daySheets } from '../../../src/sheets/day-table.ts'
import { hardwareSheets } from '../../../src/sheets/hardware-tables.ts'
import { leavingSheets } from '../../../src/sheets/leaving-tables.ts'
import { lockSheets } from '../../../src/sheets/lock-table.ts'
import { movementSheet } from '../../../src/sheets/movement-table.ts'
import { plannedSheet } from '../../../src/sheets/planned-table.ts'
import { tagPages } from '../../../src/sheets/tag-pages.ts'
import { paperTemplate } from '../../../src/sheets/template.ts'
import { titleOf } from '../../../src/sheets/wall-question.ts'
import { openFaces } from '../../fonts/faces.ts'
import { notFound } from '../change.ts'
import { hardware } from '../crew/hardware.ts'
import { orders } from '../crew/orders.ts'
import { plan } from '../crew/plan.ts'
import { dateAt } from '../days.ts'
import { list } from '../marks/locks.ts'
import { movementsBetween } from '../record/history.ts'
import { leaving } from '../record/leaving.ts'
import { overdueFirst, plannedFound, plannedLines } from '../record/planned.ts'
import { waysOfMovements } from '../record/ways.ts'
import type { Job, ServicesOf } from '../service.ts'
import { row } from '../sql.ts'
import { elevationOf } from '../walls/elevation.ts'
import { madeLine, showTitle } from './tables.ts'
import { type Style, sheetTime, styleOf, tableUnit } from './wishes.ts'
import { forget, type Ready, tables, writePages } from './written.ts'

async function hardwareList(
  job: Job,
  { exhibition, ...wishes }: Received<'sheet.hardware'>,
): Promise<Output<'sheet.hardware'>> {
  const title = showTitle(job.db, exhibition)
  job.progress(0, 3, 'Counting the hardware')
  const counted = hardware(job, { exhibition }, wishes)
  const works = counted.boxes.length === 1 ? '1 wall' : `${counted.boxes.length} walls`
  const sheets = hardwareSheets({ exhibitionTitle: title, lines: [madeLine(job, works)] }, counted)
  return tables(job, { kind: 'hardware list', title, sheets, style: styleOf(job, wishes) })
}

async function hangingOrder(
  job: Job,
  { exhibition, ...wishes }: Received<'sheet.hangingOrder'>,
): Promise<Output<'sheet.hangingOrder'>> {
  const title = showTitle(job.db, exhibition)
  const style = styleOf(job, wishes)
  job.progress(0, 3, 'Putting works into their order')
  const made = orders(job, { exhibition }, wishes)
  const works = made.hanging.length === 1 ? '1 work' : `${made.hanging.length} works`
  const head = { exhibitionTitle: title, lines: [madeLine(job, works)] }
  const sheets = [...orderSheets(head, made), ...daySheets(head, plan(job, { exhibition }))]
  const written = await tables(job, { kind: 'hanging order', title, sheets, style })
  if (made.hanging.length === 0) return written
  const faces = await openFaces()
  const { pages } = tagPages({ exhibitionTitle: title, hanging: made.hanging }, style.paper, faces)
  try {
    const tags = await writePages(job, 'back tags', [title, 'tags for the backs'], { pages, faces })
    return { ...written, files: [...written.files, tags] }
  } catch (error) {
    forget(job, written.files)
    throw error
  }
}

async function patchList(
  job: Job,
  { exhibition, ...wishes }: Received<'sheet.patchList'>,
): Promise<Output<'sheet.patchList'>> {
  const title = showTitle(job.db, exhibition)
  const style = styleOf(job, wishes)
  job.progress(0, 3, 'Counting holes')
  const made = orders(job, { exhibition }, wishes)
  const walls = made.patches.length === 1 ? '1 wall' : `${made.patches.length} walls`
  const sheets = patchSheets({ exhibitionTitle: title, lines: [madeLine(job, walls)] }, made, style.unit)
  return tables(job, { kind: 'patch list', title, sheets, style })
}

async function lockRegister(
  job: Job,
  { exhibition, ...wishes }: Received<'sheet.locks'>,
): Promise<Output<'sheet.locks'>> {
  const title = showTitle(job.db, exhibition)
  const style = styleOf(job, wishes)
  job.progress(0, 3, 'Looking up the locks')
  const register = list(job, { exhibition })
  const count = register.locks.length === 1 ? '1 lock' : `${register.locks.length} locks`
  const sheets = lockSheets({ exhibitionTitle: title, lines: [madeLine(job, count)] }, register, {
    unit: tableUnit(style.unit),
    steps: style.steps,
    time: sheetTime,
  })
  return tables(job, { kind: 'lock register', title, sheets, style })
}

async function outgoing(
  job: Job,
  { exhibition, ...wishes }: Received<'sheet.outgoing'>,
): Promise<Output<'sheet.outgoing'>> {
  const title = showTitle(job.db, exhibition)
  job.progress(0, 3, 'Reading the record')
  const { lines, crates } = leaving(job, { exhibition })
  const { down } = orders(job, { exhibition }, wishes)
  const count = lines.length === 1 ? '1 work' : `${lines.length} works`
  const head = { exhibitionTitle: title, lines: [madeLine(job, count)] }
  const sheets = leavingSheets(head, { lines, crates, down })
  return tables(job, { kind: 'outgoing list', title, sheets, style: styleOf(job, wishes) })
}

/** The movements between two moments, ready for paper. */
export async function movementsReady(job: Job, { from, to, ...wishes }: Received<'sheet.movements'>): Promise<Ready> {
  job.progress(0, 3, 'Reading the record')
  const found = movementsBetween(job.db, from, to)
  const [first, last] = [sheetTime(from), sheetTime(to)].map(time => time.split(',')[0] ?? time)
  const days = first === last ? `${first}` : `${first} to ${last}`
  const count = found.length === 1 ? '1 movement' : `${found.length} movements`
  const style = styleOf(job, wishes)
  const way = waysOfMovements(job.db, style, found)
  const sheet = movementSheet({ days, lines: [madeLine(job, count)], movements: found, when: sheetTime, way })
  const now = job.now()
  const span = { from: dateAt(from), to: dateAt(to) }
  const plans = plannedFound(job.db, now, span)
  const planned = plannedLines(job.db, style, now, overdueFirst(plans))
  const open = planned.length === 1 ? '1 to be done' : `${planned.length} to be done`
  const day = span.from === span.to ? span.from : null
  // A day on which nothing is planned has the record alone, and a day without a record what is to be done.
  const toDo = planned.length === 0 ? [] : [plannedSheet({ days, day, lines: [madeLine(job, open)], planned })]
  const recorded = found.length === 0 && planned.length > 0 ? [] : [sheet]
  return { kind: 'movement sheet', title: days, sheets: [...toDo, ...recorded], style }
}

async function template(
  job: Job,
  { placement, part, area = 'marks', ...wishes }: Received<'sheet.template'>,
): Promise<Output<'sheet.template'>> {
  const style = styleOf(job, wishes)
  const at = row<{ exhibition: string; face: string }>(
    job.db,
    'SELECT exhibition, face FROM placement WHERE id = :placement',
    { placement },
  )
  if (at === undefined) throw notFound('work on a wall', 'placement')
  const elevation = elevationOf(job.db, at.exhibition, at.face)
  const placed = elevation.works.find(each => each.placement === placement)
  if (placed === undefined) throw notFound('work on a wall', 'placement')
  const { hung, marks, parts } = atFullSize(elevation, placed, part, style)
  if ('problem' in marks) throw new Refusal('no-marks', marks.problem, { field: 'placement' })
  job.progress(0, null, `Drawing ${calledOn(hung)} at full size`)
  const faces = await openFaces()
  const called = [hung.running === '' ? hung.number : hung.running, hung.title].filter(text => text !== '')
  const drawn = paperTemplate(
    {
      answer: marks.answer,
      parts,
      area,
      paper: style.paper,
      units: style,
      heading: {
        called: called.join(' '),
        place: titleOf(elevation),
        time: sheetTime(job.now()),
        by: job.person?.name ?? '',
      },
    },
    faces,
  )
  const names = [elevation.exhibitionTitle, calledOn(hung), 'paper template']
  return {
    files: [await writePages(job, 'paper template', names, { pages: drawn.pages, faces, face: at.face })],
    findings: [],
    sheets: drawn.tiles.map(tile => tile.name),
  }
}

/** The work that the template is of, with its marks: one part of a set, a whole set with all its parts, any other work. */
function atFullSize(elevation: Elevation, placed: PlacedWork, part: string | undefined, style: Style) {
  const marks = marksOfPlaced(elevation, placed, style)
  const hands = handsOf(placed, marks).filter(hand => hand.letter !== '')
  if (part === undefined) {
    const parts = hands.flatMap(({ letter, marks: own }) => ('answer' in own ? [{ letter, answer: own.answer }] : []))
    return { hung: placed, marks, parts }
  }
  const own = hands.find(hand => hand.placed.work === part)
  if (own === undefined) throw notFound('part of this set', 'part')
  return { hung: own.placed, marks: own.marks, parts: [] }
}

export const crewSheetServices: ServicesOf<
  | 'sheet.hardware'
  | 'sheet.hangingOrder'
  | 'sheet.patchList'
  | 'sheet.locks'
  | 'sheet.movements'
  | 'sheet.outgoing'
  | 'sheet.template'
> = {
  'sheet.hardware': hardwareList,
  'sheet.hangingOrder': hangingOrder,
  'sheet.patchList': patchList,
  'sheet.locks': lockRegister,
  'sheet.movements': async (job, input) => tables(job, await movementsReady(job, input)),
  'sheet.outgoing': outgoing,
  'sheet.template': template,
}
