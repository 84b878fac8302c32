/**
 * The wall sheet: what a technician takes to one wall. Pages of shapes, the boxes of their texts, the table's data, and
 * the content that a revision is told by. Many works flow to further pages, each with its own stretch of the elevation.
 * The rule it keeps: every number is the one that src/hang printed.
 */
import type { MadeMark } from '../contract/areas/marks.ts'
import type { Elevation } from '../contract/areas/walls.ts'
import type { Finding } from '../contract/shared.ts'
import { orderOfWall, orderSaid } from '../crew/order-of-wall.ts'
import { sayIn } from '../hang/marks.ts'
import { labelsOfFace } from '../model/labels-of-face.ts'
import { laidOpen } from '../model/laid-open.ts'
import type { MarksOrWhy } from '../model/marks-of-face.ts'
import type { Units } from './figures.ts'
import { type Page, papers, type TextMeasure } from './shapes.ts'
import { type NamedBox, newSketch, type Sketch } from './sketch.ts'
import { drawHead, headHeight, type TableStyle } from './wall-columns.ts'
import { alongWall } from './wall-dimensions.ts'
import { drawElevation } from './wall-drawing.ts'
import { drawFoot, drawHeader, headerHeight, margin, type Place } from './wall-frame.ts'
import { drawNotes, isToSettle, notesOf } from './wall-notes.ts'
import { type Part, paginate } from './wall-pages.ts'
import { titleOf, type WallSheetQuestion } from './wall-question.ts'
import { type WallSheetRow, wallSheetRows } from './wall-rows.ts'
import { deadOf } from './wall-states.ts'
import { drawRow, rowHeight } from './wall-table.ts'

export interface WallSheet {
  readonly title: string
  readonly pages: readonly Page[]
  /** By page. */
  readonly boxes: readonly (readonly NamedBox[])[]
  readonly rows: readonly WallSheetRow[]
  /** Characters that no face has, by work. */
  readonly missing: readonly Finding[]
}

export function wallSheet(question: WallSheetQuestion, measure: TextMeasure): WallSheet {
  const { elevation, marks } = question
  const units: Units = { unit: question.unit, steps: question.steps }
  const rows = wallSheetRows(elevation, marks, units)
  const paper = papers[question.paper]
  const k = paper.width > 350 ? 1.2 : 1
  const style: TableStyle = { units, k, measure }
  const missing = missingCharacters(rows, measure)
  const dead = deadOf(elevation, marks, units)
  const order = orderOf(elevation, marks, units)
  const notes = notesOf(rows, [...question.findings, ...missing], dead, elevation.made, order, units)
  const plan = paginate(rows, notes, paper, style)
  const pages: Page[] = []
  const boxes: (readonly NamedBox[])[] = []
  plan.forEach((part, index) => {
    const sketch = newSketch(measure)
    drawPage(sketch, question, part, dead, style, { at: index, of: plan.length, paper })
    pages.push({ ...paper, shapes: sketch.shapes })
    boxes.push(sketch.boxes)
  })
  return { title: `${titleOf(elevation)}, revision ${question.revision}`, pages, boxes, rows, missing }
}

/** What of the wall itself a sheet says. Their order is part of every revision on paper: add at the end. */
const wallSaid = [
  'name',
  'length',
  'height',
  'wallType',
  'studFirst',
  'studSpacing',
  'backingFrom',
  'backingTo',
  'skirting',
  'floor',
  'openings',
  'keepClears',
  'datumBy',
  'studs',
  'joints',
  'ceiling',
  'rail',
] as const satisfies readonly (keyof WallSheetQuestion['elevation']['wall'])[]

/**
 * What the sheet says, as one text that does not change with time, revision, person, paper or unit: two prints with the
 * same content are the same revision.
 */
export function wallSheetContent(
  question: Omit<WallSheetQuestion, 'revision' | 'voids' | 'time' | 'by' | 'paper' | 'set'>,
): string {
  const { elevation, marks, datum, findings, steps } = question
  const { wall, room } = elevation
  const units: Units = { unit: 'mm', steps }
  const rows = wallSheetRows(elevation, marks, units)
  const order = orderOf(elevation, marks, units)
  return JSON.stringify({
    room: room.name,
    wall: Object.fromEntries(wallSaid.map(key => [key, wall[key]])),
    datum,
    // A better picture of the same work is no other hang.
    // What has been done meanwhile is no other plan; a hole to fill is.
    rows: rows.map(({ placement: _, picture: __, ticks: ___, label, ...row }) =>
      label === '' ? row : { ...row, label },
    ),
    // Nothing where no work waits for another, so that a sheet from before it was told keeps its revision.
    ...(order.length === 0 ? {} : { order }),
    dead: deadOf(elevation, marks, units).map(({ x, y, bearingY }) => ({ x, y, bearingY })),
    findings: findings.filter(isToSettle).map(({ severity, code, text, works }) => {
      const of = works?.map(({ called }) => called)
      return of === undefined ? { severity, code, text } : { severity, code, text, of }
    }),
  })
}

/** In which order what stands above each other hangs, in sentences. */
function orderOf(
  elevation: Elevation,
  marks: ReadonlyMap<string, MarksOrWhy>,
  { unit, steps }: Units,
): readonly string[] {
  return orderSaid(orderOfWall(elevation, marks), elevation.works, sayIn(unit, steps))
}

function missingCharacters(rows: readonly WallSheetRow[], measure: TextMeasure): readonly Finding[] {
  return rows.flatMap(row => {
    const lacking = new Set([...measure.lacks('title', row.title), ...measure.lacks('narrow', row.fixing)])
    if (lacking.size === 0) return []
    const codes = [...lacking].map(
      character => `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`,
    )
    return [
      {
        severity: 'settle',
        code: 'character-not-printable',
        subject: { kind: 'work', id: row.work },
        text: `The sheets have no letter for ${codes.join(', ')}: a box with the code stands in its place.`,
        figures: { characters: codes },
      } as const,
    ]
  })
}

function drawPage(
  sketch: Sketch,
  question: WallSheetQuestion,
  part: Part,
  dead: readonly MadeMark[],
  style: TableStyle,
  place: Place,
): void {
  const { k, units } = style
  const width = place.paper.width - 2 * margin
  drawHeader(sketch, question, style, place)
  let y = margin - 4 + headerHeight * k
  if (part.drawing > 0) {
    const { elevation, marks, datum } = question
    const box = { x: margin, y: y + 1 * k, w: width, h: part.drawing - 2 * k }
    const { labels } = labelsOfFace(elevation, marks, units)
    const open = laidOpen(elevation, marks)
    const along = alongWall(elevation)
    const { rows, whole } = part
    drawElevation(sketch, box, { ...open, along, labels, datum, rows, whole, dead, units, k })
    y += part.drawing
  }
  if (part.rows.length > 0) {
    drawHead(sketch, margin, y, width, style)
    y += headHeight * k
    for (const row of part.rows) {
      drawRow(sketch, row, margin, y, width, style)
      y += rowHeight(row, width, style)
    }
  } else if (part.notes.length === 0) {
    sketch.text('empty', margin, y + 8 * k, 3.5 * k, 'plain', 'Nothing hangs on this wall yet.')
  }
  drawNotes(sketch, part.notes, margin, y + 4 * k, width, style)
  drawFoot(sketch, question, style, place)
}
