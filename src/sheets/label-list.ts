/**
 * The label list as a table: what each label says and in how many lines, its size, side, distance and height, and how
 * far it is made. The rule it keeps: a number here is the one that the wall sheet draws the label with.
 */
import type { LabelRow } from '../contract/areas/labels.ts'
import { print, type Steps } from '../hang/printing.ts'
import type { SheetUnit } from './checklist-columns.ts'
import {
  type Cell,
  EMPTY,
  numberCell,
  type SheetColumn,
  type TableSheet,
  textCell,
  withoutEmptyColumns,
} from './columns.ts'
import { lengthColumns, printedCells } from './lengths-columns.ts'

export interface LabelListQuestion {
  readonly exhibitionTitle: string
  readonly lines: readonly string[]
  readonly labels: readonly LabelRow[]
  readonly unit: SheetUnit
  readonly steps: Steps
  /** A moment in words. */
  readonly when: (at: string) => string
}

interface Part {
  readonly columns: readonly SheetColumn[]
  readonly cells: (label: LabelRow) => readonly Cell[]
}

function partsOf({ unit, steps, when }: LabelListQuestion): readonly Part[] {
  const text = (key: string, heading: string, width: number, of: (label: LabelRow) => Cell): Part => ({
    columns: [{ key, heading, field: 'ignore', part: null, unit: null, width, format: null }],
    cells: label => [of(label)],
  })
  const length = (key: string, heading: string, of: (label: LabelRow) => number | null): Part => ({
    columns: lengthColumns(key, heading, unit),
    cells: label => {
      const mm = of(label)
      return printedCells(mm === null ? null : print(mm, steps), unit, steps)
    },
  })
  const reached = (stage: LabelRow['stage']) => (label: LabelRow) =>
    label.stage === stage
      ? textCell([when(label.stageAt), label.stageBy].filter(each => each !== '').join(', '))
      : order.indexOf(label.stage) > order.indexOf(stage)
        ? textCell('yes')
        : EMPTY
  return [
    text('running', 'No.', 5, ({ running }) =>
      /^[1-9]\d{0,8}$/.test(running) ? numberCell(Number(running)) : textCell(running),
    ),
    text('number', 'Work number', 12, ({ number }) => textCell(number)),
    text('title', 'Title', 20, ({ title }) => (title === '' ? EMPTY : { kind: 'title', text: title })),
    text('text', 'Label says', 44, ({ text: words }) => textCell(words)),
    text('suggested', 'Not written yet; suggested', 44, label =>
      label.text.trim() === '' ? textCell(label.suggestion) : EMPTY,
    ),
    text('lines', 'Lines', 5, ({ lines }) => numberCell(lines.length)),
    length('width', 'Width', ({ width }) => width),
    length('height', 'Height', ({ height }) => height),
    text('room', 'Room', 12, ({ placed }) => textCell(placed?.room ?? '')),
    text('wall', 'Wall', 12, ({ placed }) => textCell(placed?.wall ?? '')),
    text('side', 'Side', 7, ({ placed }) => textCell(placed?.side ?? '')),
    length('gap', 'From the work', ({ placed, gap }) => (placed === null || placed.side === '' ? null : gap)),
    length('centre', 'Its centre from the floor', ({ placed }) => placed?.centreY ?? null),
    text('proofed', 'Proofed', 18, reached('proofed')),
    text('printed', 'Printed', 18, reached('printed')),
    text('mounted', 'Mounted', 18, reached('mounted')),
    text('troubles', 'To settle', 40, ({ placed }) => textCell((placed?.troubles ?? []).join(' '))),
  ]
}

const order: readonly LabelRow['stage'][] = ['', 'proofed', 'printed', 'mounted']

/** One table for the show. A column that is empty throughout is left out. */
export function labelListSheet(question: LabelListQuestion): TableSheet {
  const parts = partsOf(question)
  const columns = parts.flatMap(part => part.columns)
  const rows = question.labels.map(label => parts.flatMap(part => part.cells(label)))
  return withoutEmptyColumns({
    name: 'Labels',
    title: `${question.exhibitionTitle}: label list`,
    lines: rows.length === 0 ? [...question.lines, 'No works in this show yet.'] : question.lines,
    columns,
    rows,
  })
}
