/**
 * The hardware as tables: what is fixed in a wall, small parts and tools, a box for each wall, drill bits. The rule they
 * keep: every number is the one that the plan shows; what a person ticks has a column of its own.
 */
import type { CrewHardware } from '../contract/areas/crew-shape.ts'
import {
  type Cell,
  EMPTY,
  numberCell,
  type SheetColumn,
  type TableSheet,
  textCell,
  withoutEmptyColumns,
} from './columns.ts'
import { number, type TableHead, text, workCells, workColumns } from './crew-columns.ts'

type Line = CrewHardware['lines'][number]

export function hardwareSheets({ exhibitionTitle, lines }: TableHead, hardware: CrewHardware): readonly TableSheet[] {
  const fixed = hardware.lines.filter(isFixed)
  const small = hardware.lines.filter(line => !isFixed(line))
  const sheets: TableSheet[] = [
    {
      name: 'In total',
      title: `${exhibitionTitle}: hardware`,
      lines: [
        ...lines,
        spareWords(hardware.spare),
        ...lockWords(hardware.locks),
        ...(hardware.lines.length === 0
          ? ['Nothing yet: measure the backs of the works and choose what they hang on.']
          : []),
      ],
      ...totals(fixed),
    },
  ]
  if (small.length > 0) {
    sheets.push({
      name: 'Parts and tools',
      title: `${exhibitionTitle}: small parts and tools`,
      lines: [...lines, spareWords(hardware.spare), 'A tool is counted once for each team, without a spare.'],
      ...totals(small),
    })
  }
  sheets.push({
    name: 'Boxes',
    title: `${exhibitionTitle}: a box for each wall`,
    lines: [...lines, 'Each box holds exactly what hangs from its wall; spares lie in a box of their own.'],
    grouped: true,
    columns: [
      text('wall', 'Box', 24),
      text('what', 'What', 40),
      number('count', 'Count'),
      number('works', 'Works'),
      text('tick', 'Packed', 9),
      text('tickBack', 'Left over', 9),
    ],
    rows: hardware.boxes.flatMap(box =>
      box.lines.map(line => [
        textCell(box.faceName),
        textCell(line.what),
        numberCell(line.count),
        numberCell(line.works),
        EMPTY,
        EMPTY,
      ]),
    ),
  })
  if (hardware.bits.length > 0) {
    sheets.push({
      name: 'Drill bits',
      title: `${exhibitionTitle}: drill bits`,
      lines,
      columns: [text('bit', 'Drill bit', 20), text('for', 'For', 70), text('tick', 'On the trolley', 10)],
      rows: hardware.bits.map(({ bit, fixings }) => [textCell(bit), textCell(fixings.join(', ')), EMPTY]),
    })
  }
  if (hardware.unknown.length > 0) {
    sheets.push({
      name: 'Not known yet',
      title: `${exhibitionTitle}: not in the hardware yet`,
      lines: [...lines, 'These works are on a wall, but what they need is not known.'],
      columns: [...workColumns, text('why', 'Why', 60)],
      rows: hardware.unknown.map(work => [...workCells(work), textCell(work.why)]),
    })
  }
  return sheets.map(withoutEmptyColumns)
}

/** Of the library, or standing in for what is to be chosen from it. */
function isFixed(line: Line): boolean {
  return line.fixing !== null || !line.chosen
}

function totals(lines: readonly Line[]): {
  readonly columns: readonly SheetColumn[]
  readonly rows: readonly Cell[][]
} {
  return {
    columns: [
      text('what', 'What', 34),
      number('needed', 'Needed'),
      number('spare', 'Spare'),
      number('stock', 'In stock'),
      number('get', 'To get'),
      text('bit', 'Drill bit', 16),
      text('tool', 'Tool', 16),
      text('tick', 'Counted', 9),
      text('tickAgain', 'Counted again', 9),
      text('note', 'Note', 26),
    ],
    rows: lines.map(line => [
      textCell(line.what),
      numberCell(line.needed),
      numberCell(line.spare),
      numberCell(line.inStock),
      numberCell(line.toGet),
      textCell(line.bit),
      textCell(line.tool),
      EMPTY,
      EMPTY,
      textCell(noteOf(line)),
    ]),
  }
}

function noteOf(line: Line): string {
  if (!line.chosen) return 'not chosen yet'
  if (line.secondCount !== null) return `lock: ${line.secondCount} by the marks, two people count`
  return line.per === 'team' ? 'once for each team' : ''
}

function spareWords(spare: number): string {
  const percent = Math.round(spare * 1000) / 10
  return `Spares: ${percent} % of each, rounded up. What nobody has counted in stock is taken as none.`
}

function lockWords({ agree, byMarks, byWorks }: CrewHardware['locks']): readonly string[] {
  if (byMarks === 0 && byWorks === 0) return []
  return [
    agree
      ? `Locks: ${byWorks} by the works, ${byMarks} by the marks on the walls. Two people count them.`
      : `LOCKS DO NOT AGREE: ${byWorks} by the works, ${byMarks} by the marks on the walls.`,
  ]
}
