/**
 * What the tables of the crew share: plain columns that no import reads, and how a work is named in them.
 */
import { type Cell, EMPTY, numberCell, type SheetColumn, textCell } from './columns.ts'

/** What stands above a table: the show, who made it when. */
export interface TableHead {
  readonly exhibitionTitle: string
  readonly lines: readonly string[]
}

export function text(key: string, heading: string, width: number): SheetColumn {
  return { key, heading, field: 'ignore', part: null, unit: null, width, format: null }
}

export function number(key: string, heading: string, width = 7, format = '0'): SheetColumn {
  return { ...text(key, heading, width), format }
}

export const workColumns: readonly SheetColumn[] = [
  text('wall', 'Room and wall', 24),
  text('running', 'No.', 5),
  text('number', 'Work number', 13),
  text('title', 'Title', 22),
]

export function workCells(work: {
  readonly faceName: string
  readonly running: string
  readonly number: string
  readonly title: string
}): readonly Cell[] {
  return [textCell(work.faceName), running(work.running), textCell(work.number), titleCell(work.title)]
}

const titleCell = (title: string): Cell => (title === '' ? EMPTY : { kind: 'title', text: title })

/** What comes from a running number: a number where it is one. */
function running(of: string): Cell {
  return /^[1-9]\d{0,8}$/.test(of) ? numberCell(Number(of)) : textCell(of)
}
