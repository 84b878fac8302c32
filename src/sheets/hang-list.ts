/**
 * The hang list as tables, one a room: works wall by wall, from left to right, with what hangs them and the numbers of
 * the wall sheets. The rule it keeps: a number here is the one on the wall sheet.
 */

import type { Elevation } from '../contract/areas/walls.ts'
import { POUND } from '../hang/physics.ts'
import { print, type Steps } from '../hang/printing.ts'
import { mainMarks } from '../hang/steps.ts'
import { laidOpen } from '../model/laid-open.ts'
import { type MarksOrWhy, marksOfFace } from '../model/marks-of-face.ts'
import { massColumn, type SheetUnit } from './checklist-columns.ts'
import { type Cell, EMPTY, numberCell, type SheetColumn, type TableSheet, textCell } from './columns.ts'
import { lengthColumns, printedCells } from './lengths-columns.ts'
import { type WallSheetRow, wallSheetRows } from './wall-rows.ts'

export interface HangListQuestion {
  readonly exhibitionTitle: string
  readonly lines: readonly string[]
  /** Faces with works, in the visitor's order or the building's. */
  readonly elevations: readonly Elevation[]
  readonly unit: SheetUnit
  readonly steps: Steps
}

interface Line {
  readonly elevation: Elevation
  readonly row: WallSheetRow
  readonly place: number
  readonly placed: Elevation['works'][number] | undefined
  readonly marks: MarksOrWhy | undefined
}

interface Part {
  readonly columns: (unit: SheetUnit) => readonly SheetColumn[]
  readonly cells: (line: Line, unit: SheetUnit, steps: Steps) => readonly Cell[]
}

function text(key: string, heading: string, width: number, of: (line: Line) => Cell): Part {
  const column: SheetColumn = { key, heading, field: 'ignore', part: null, unit: null, width, format: null }
  return { columns: () => [column], cells: line => [of(line)] }
}

function length(
  key: string,
  heading: string,
  of: (line: Line, steps: Steps) => { mm: number; inches: number } | null,
): Part {
  return {
    columns: unit => lengthColumns(key, heading, unit),
    cells: (line, unit, steps) => printedCells(of(line, steps), unit, steps),
  }
}

function answerOf({ marks }: Line) {
  return marks !== undefined && 'answer' in marks ? marks.answer : null
}

function drop({ marks }: Line, side: 'first' | 'last', steps: Steps) {
  if (marks === undefined || !('answer' in marks)) return null
  const mark = mainMarks(marks.answer.marks).at(side === 'first' ? 0 : -1)
  return mark === undefined ? null : print(mark.drop, steps)
}

/** What each column says. Rows run from left to right on each wall. */
const parts: readonly Part[] = [
  text('wall', 'Wall', 13, ({ elevation }) => textCell(elevation.wall.name)),
  text('place', 'Place', 5, ({ place }) => numberCell(place)),
  text('running', 'No.', 5, ({ row }) =>
    /^[1-9]\d{0,8}$/.test(row.running) ? numberCell(Number(row.running)) : textCell(row.running),
  ),
  text('number', 'Work number', 12, ({ row }) => textCell(row.number)),
  text('maker', 'Maker', 16, ({ row }) => textCell(row.maker)),
  text('title', 'Title', 22, ({ row }) => (row.title === '' ? EMPTY : { kind: 'title', text: row.title })),
  length('height', 'Height', ({ placed }, steps) => (placed?.size ? print(placed.size.height, steps) : null)),
  length('width', 'Width', ({ placed }, steps) => (placed?.size ? print(placed.size.width, steps) : null)),
  length('depth', 'Depth', ({ placed }, steps) => (placed?.size?.depth ? print(placed.size.depth, steps) : null)),
  {
    columns: unit => [{ ...massColumn(unit), field: 'ignore' }],
    cells: ({ placed }, unit) => {
      const mass = placed?.mass ?? null
      return [numberCell(mass === null || unit === 'mm' ? mass : Number((mass / POUND).toPrecision(12)))]
    },
  },
  text('method', 'How it hangs', 10, line => textCell(answerOf(line)?.methodName ?? '')),
  text('fixing', 'Fixing', 16, ({ row }) => textCell(row.fixing)),
  length('dropLeft', 'Drop, left', (line, steps) => drop(line, 'first', steps)),
  length('dropRight', 'Drop, right', (line, steps) => drop(line, 'last', steps)),
  length('apart', 'Marks apart', ({ row }) => row.apart),
  length('fromFloor', 'From the floor', ({ row }) => row.fromFloor[0] ?? null),
  // Filled only where the two sides differ.
  length('fromFloorRight', 'From the floor, right', ({ row }) => row.fromFloor[1] ?? null),
  length('fromLine', 'From the line', ({ row }) => row.fromLine[0] ?? null),
  length('fromLineRight', 'From the line, right', ({ row }) => row.fromLine[1] ?? null),
  length('leftMark', 'Left mark', ({ row }) => row.leftMark),
  length('rightMark', 'Right mark', ({ row }) => row.rightMark),
  length('gapBefore', 'Gap before', ({ row }) => row.gapBefore),
  // Locks, plates and hangers: each with its place, what it is and its tool.
  text('others', 'Locks, plates, hangers', 30, ({ row }) =>
    textCell(
      row.others
        .map(one =>
          `${one.called}: ${one.x.main} along, ${one.fromFloor.main} up, ${one.says}`.replace(/[\u2009\u00a0]/g, ' '),
        )
        .join('; '),
    ),
  ),
  text('down', 'How it comes down', 24, ({ row }) => textCell(row.comesDown.join(' '))),
  text('note', 'Note', 18, ({ row, placed }) =>
    textCell([row.problem, placed?.note ?? ''].filter(each => each !== '').join(' ')),
  ),
]

/** One table for each room, in the order in which rooms come. */
export function hangListSheets({
  exhibitionTitle,
  lines,
  elevations,
  unit,
  steps,
}: HangListQuestion): readonly TableSheet[] {
  const columns = parts.flatMap(part => part.columns(unit))
  const rooms = new Map<string, { name: string; rows: (readonly Cell[])[] }>()
  for (const elevation of elevations) {
    const { room } = elevation
    const known = rooms.get(room.id) ?? { name: room.name, rows: [] }
    rooms.set(room.id, known)
    const units = { unit, steps }
    const marks = marksOfFace(elevation, units)
    const open = laidOpen(elevation, marks)
    wallSheetRows(elevation, marks, units).forEach((row, index) => {
      const placed = open.elevation.works.find(work => work.placement === row.placement)
      const line: Line = { elevation, row, place: index + 1, placed, marks: open.marks.get(row.placement) }
      known.rows.push(parts.flatMap(part => part.cells(line, unit, steps)))
    })
  }
  const all = [...rooms.values()]
  if (all.length === 0)
    return [
      {
        name: 'Hang list',
        title: `${exhibitionTitle}: hang list`,
        lines: [...lines, 'Nothing is placed yet.'],
        columns,
        rows: [],
      },
    ]
  // A column that is empty in every room only takes room from the rest.
  const kept = columns.map((_, index) =>
    all.some(({ rows }) => rows.some(row => (row[index] ?? EMPTY).kind !== 'empty')),
  )
  return all.map(({ name, rows }) => ({
    name,
    title: `${exhibitionTitle}: hang list, ${name}`,
    lines,
    columns: columns.filter((_, index) => kept[index]),
    rows: rows.map(row => row.filter((_, index) => kept[index])),
  }))
}
