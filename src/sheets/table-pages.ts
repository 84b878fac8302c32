/**
 * Table sheets as pages of paper: the same columns and cells as the workbook, for those who take a sheet to the wall.
 * The rule it keeps: nothing is cut off; a cell breaks into lines, a table into pages, each with its headings.
 */

import { THIN_SPACE } from '../measure/format.ts'
import { type Cell, EMPTY, isTick, type SheetColumn, type TableSheet } from './columns.ts'
import { ink } from './ink.ts'
import { sizeWithin, wrap } from './lines.ts'
import { type Face, type Page, type Paper, papers, type TextMeasure } from './shapes.ts'
import { type NamedBox, newSketch, type Sketch } from './sketch.ts'

export interface TablePages {
  readonly pages: readonly Page[]
  readonly boxes: readonly (readonly NamedBox[])[]
}

const margin = 10
const textSize = 3.3
const leading = 4.3
const padding = 3
/** Between a number at the right of its column and the words of the next. */
const numberGap = 1.5

interface Row {
  readonly cells: readonly { readonly face: Face; readonly lines: readonly string[] }[]
  readonly height: number
}

/** How tables follow one another; left out, each begins on a page of its own. */
export interface Follow {
  /** A table begins under the one before where its heading and a row of it still find room. */
  readonly flowing: boolean
  /** Stands on every page before its number. */
  readonly running: string
  /** Pages that come before these. */
  readonly before: number
}

const apart: Follow = { flowing: false, running: '', before: 0 }

/** A stretch of a table on one page, and how far down its title stands. */
interface Stretch extends Drawn {
  readonly heading: Row
  readonly above: readonly string[]
  readonly on: readonly Row[]
  readonly down: number
}

interface Drawn {
  readonly sheet: TableSheet
  readonly widths: readonly number[]
}

/** From a title's top to the first line of its table. */
const titled = 9
const lineStep = 4
/** Between two tables on one page. */
const tableGap = 8

/** All tables one after the other. `starts`: for each table the page that it begins on, from 0. */
export function tablePages(
  sheets: readonly TableSheet[],
  paper: Paper,
  measure: TextMeasure,
  { flowing, running, before }: Follow = apart,
): TablePages & { readonly starts: readonly number[] } {
  const size = papers[paper]
  const room = size.width - 2 * margin
  const lowest = size.height - margin - 4
  const pages: Stretch[][] = []
  const starts: number[] = []
  let down = lowest
  for (const sheet of sheets.map(onPaper)) {
    const widths = widthsOf(sheet, room, measure)
    const rooms = sheet.columns.map(
      ({ format }, index) => (widths[index] ?? 0) - padding - (format === null ? 0 : numberGap),
    )
    const heading = rowOf(
      sheet.columns.map(column => ({ face: 'strong' as const, text: column.heading })),
      rooms,
      measure,
    )
    const above = sheet.lines.flatMap(line => wrap(line, 'plain', 3, room, measure))
    const rows = sheet.rows.map(cells =>
      rowOf(
        cells.map((cell, index) => ({ face: faceOf(cell), text: cellWords(cell, sheet.columns[index]) })),
        rooms,
        measure,
      ),
    )
    const head = titled + above.length * lineStep + (sheet.columns.length === 0 ? 0 : 3 + heading.height)
    const part = { sheet, widths, heading, above }
    const below = lowest - (down + tableGap + head)
    const goesOn = flowing && pages.length > 0 && below >= (rows[0]?.height ?? 0)
    starts.push(goesOn ? pages.length - 1 : pages.length)
    breakRows(rows, goesOn ? below : lowest - margin - head, lowest - margin - head).forEach((on, at) => {
      const top = goesOn && at === 0 ? down + tableGap : margin
      const stretch = { ...part, on, down: top }
      if (top === margin) pages.push([stretch])
      else pages.at(-1)?.push(stretch)
      down = top + head + on.reduce((sum, row) => sum + row.height, 0)
    })
  }
  const drawn = pages.map((stretches, index) => {
    const sketch = newSketch(measure)
    const page = `${running === '' ? '' : `${running} · `}sheet ${before + index + 1} of ${before + pages.length}`
    const taken = sketch.text('page', size.width - margin, margin + 4, 3, 'plain', page, { anchor: 'end' })
    stretches.forEach((stretch, at) => {
      const named = at === 0 ? '' : `${at} `
      drawStretch(sketch, stretch, named, size.width - margin, room - (at === 0 ? taken + 6 : 0))
    })
    return sketch
  })
  return {
    pages: drawn.map(({ shapes }) => ({ ...size, shapes })),
    boxes: drawn.map(({ boxes }) => boxes),
    starts,
  }
}

function drawStretch(sketch: Sketch, part: Stretch, named: string, right: number, titleRoom: number): void {
  const { sheet, above, down } = part
  const title = sizeWithin(sheet.title, 'strong', 5.5, titleRoom, sketch.measure)
  sketch.text(`${named}title`, margin, down + 5, title, 'strong', sheet.title)
  above.forEach((line, at) => {
    sketch.text(`${named}line ${at}`, margin, down + 10.5 + at * lineStep, 3, 'plain', line, { colour: ink.ink2 })
  })
  if (sheet.columns.length === 0) return
  let y = down + titled + above.length * lineStep + 3
  drawRow(sketch, part.heading, `${named}head`, y, part)
  y += part.heading.height
  sketch.line(margin, y, right, y, 0.4)
  part.on.forEach((row, at) => {
    const again = sheet.grouped === true && at > 0 && firstOf(row) === firstOf(part.on[at - 1])
    if (at > 0) {
      // A group is parted from the next by a line in ink; within it the lines begin after the name.
      const from = again ? margin + (part.widths[0] ?? 0) : margin
      if (sheet.grouped === true && !again) sketch.line(margin, y, right, y, 0.25, ink.ink2)
      else sketch.line(from, y, right, y, 0.12, ink.line)
    }
    drawRow(sketch, row, `${named}row ${at}`, y, part, again)
    y += row.height
  })
  if (part.on.length > 0) sketch.line(margin, y, right, y, 0.12, ink.line)
}

/** The table without the columns that only a workbook has. */
function onPaper(sheet: TableSheet): TableSheet {
  const kept = sheet.columns.map(column => column.workbookOnly !== true)
  return {
    ...sheet,
    columns: sheet.columns.filter((_, index) => kept[index]),
    rows: sheet.rows.map(row => row.filter((_, index) => kept[index])),
  }
}

/**
 * The width of the paper shared as the workbook shares it, never wider than the workbook's columns look; but no column is
 * narrower than the longest word of its heading or than its widest number, and the others make room for it.
 */
function widthsOf({ columns, rows }: TableSheet, room: number, measure: TextMeasure): readonly number[] {
  const least = columns.map((column, index) => {
    const words = column.heading.split(' ').map(word => measure.width('strong', textSize, word))
    const figures =
      column.format === null
        ? []
        : rows.map(row => measure.width('figure', textSize, cellWords(row[index] ?? EMPTY, column)))
    return Math.max(0, ...words, ...figures) + padding + (column.format === null ? 0 : numberGap)
  })
  const held = new Set<number>()
  for (;;) {
    const free = columns.flatMap((_, index) => (held.has(index) ? [] : [index]))
    const taken = [...held].reduce((sum, index) => sum + (least[index] ?? 0), 0)
    const all = free.reduce((sum, index) => sum + (columns[index]?.width ?? 0) + 1, 0)
    const each = Math.min((room - taken) / all, 2.6)
    const wide = (index: number) => ((columns[index]?.width ?? 0) + 1) * each
    const narrow = free.filter(index => wide(index) < (least[index] ?? 0) - 1e-9)
    if (narrow.length === 0) return columns.map((_, index) => (held.has(index) ? (least[index] ?? 0) : wide(index)))
    for (const index of narrow) held.add(index)
  }
}

/** Cells broken to the rooms that their words have. */
function rowOf(
  cells: readonly { readonly face: Face; readonly text: string }[],
  rooms: readonly number[],
  measure: TextMeasure,
): Row {
  const wrapped = cells.map(({ face, text }, index) => ({
    face,
    lines: wrap(text, face, textSize, rooms[index] ?? 0, measure),
  }))
  const most = Math.max(1, ...wrapped.map(({ lines }) => lines.length))
  return { cells: wrapped, height: most * leading + 1.8 }
}

/** Rows by page, the first of which has less room; one page at least. One that is taller than a page begins on its own. */
function breakRows(rows: readonly Row[], first: number, room: number): readonly (readonly Row[])[] {
  const pages: Row[][] = [[]]
  let left = first
  for (const row of rows) {
    const page = pages.at(-1)
    if (page === undefined) break
    if (row.height > left && page.length > 0) {
      pages.push([row])
      left = room - row.height
    } else {
      page.push(row)
      left -= row.height
    }
  }
  return pages
}

/** The words of a row's first cell. */
function firstOf(row: Row | undefined): string {
  return row?.cells[0]?.lines.join(' ') ?? ''
}

/** `again`: its first cell is that of the row above and is not said twice. */
function drawRow(sketch: Sketch, row: Row, name: string, y: number, { sheet, widths }: Drawn, again = false): void {
  let x = margin
  row.cells.forEach((cell, index) => {
    const column = sheet.columns[index]
    const width = widths[index] ?? 0
    // Numbers stand under one another at the right, words begin at the left.
    const numeric = column !== undefined && column.format !== null
    const ticked = !name.endsWith('head') && column !== undefined && isTick(column)
    const lines = ticked || (again && index === 0) ? [] : cell.lines
    lines.forEach((line, at) => {
      const base = y + 1.2 + textSize * 0.78 + at * leading
      const end = x + width - padding - numberGap
      sketch.text(`${name} ${column?.key ?? index} ${at}`, numeric ? end : x, base, textSize, cell.face, line, {
        anchor: numeric ? 'end' : 'start',
      })
    })
    if (ticked) {
      sketch.add({ kind: 'rect', x: x + 0.5, y: y + 1.2, w: 3.4, h: 3.4, stroke: ink.ink2, width: 0.2 })
      if (cell.lines.join('') !== '') {
        sketch.line(x + 1.1, y + 3, x + 1.9, y + 3.9, 0.35)
        sketch.line(x + 1.9, y + 3.9, x + 3.4, y + 1.8, 0.35)
      }
    }
    x += width
  })
}

function faceOf(cell: Cell): Face {
  return cell.kind === 'title' ? 'title' : cell.kind === 'number' ? 'figure' : 'plain'
}

/** A cell as words: numbers with the decimals that their column's format asks for. */
export function cellWords(cell: Cell, column: SheetColumn | undefined): string {
  switch (cell.kind) {
    case 'text':
    case 'title':
      return cell.text
    case 'number': {
      const decimals = /\.(0*)/.exec(column?.format ?? '')?.[1]?.length ?? 0
      if (column?.format === null) return String(cell.value)
      const [whole = '', ...part] = cell.value.toFixed(decimals).split('.')
      const parted = column?.format.startsWith('#,##0') ? whole.replace(/\B(?=(?:\d{3})+$)/gu, THIN_SPACE) : whole
      return [parted, ...part].join('.')
    }
    case 'empty':
    case 'picture':
      return ''
  }
}
