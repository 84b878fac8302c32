/**
 * Table sheets as pages of paper: the same columns and cells as the workbook, for those who take a sheet to the wall.
 * The rule it keeps: nothing is cut off; a cell breaks into lines, a table into pages, each with its headings.
 */

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

/** All tables one after the other, each on pages of its own. */
export function tablePages(sheets: readonly TableSheet[], paper: Paper, measure: TextMeasure): TablePages {
  const size = papers[paper]
  const room = size.width - 2 * margin
  const cut = sheets.map(onPaper).flatMap(sheet => {
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
    const top = margin + 9 + above.length * 4 + 3
    const most = size.height - margin - 4
    const rows = sheet.rows.map(cells =>
      rowOf(
        cells.map((cell, index) => ({ face: faceOf(cell), text: cellWords(cell, sheet.columns[index]) })),
        rooms,
        measure,
      ),
    )
    return breakRows(rows, most - top - heading.height).map(on => ({ sheet, widths, heading, above, top, on }))
  })
  const drawn = cut.map((part, index) => {
    const sketch = newSketch(measure)
    const right = size.width - margin
    const page = `sheet ${index + 1} of ${cut.length}`
    const taken = sketch.text('page', right, margin + 4, 3, 'plain', page, { anchor: 'end' })
    const title = sizeWithin(part.sheet.title, 'strong', 5.5, room - taken - 6, measure)
    sketch.text('title', margin, margin + 5, title, 'strong', part.sheet.title)
    part.above.forEach((line, at) => {
      sketch.text(`line ${at}`, margin, margin + 10.5 + at * 4, 3, 'plain', line, { colour: ink.ink2 })
    })
    let y = part.top
    drawRow(sketch, part.heading, 'head', y, part)
    y += part.heading.height
    sketch.line(margin, y, right, y, 0.4)
    part.on.forEach((row, at) => {
      const again = part.sheet.grouped === true && at > 0 && firstOf(row) === firstOf(part.on[at - 1])
      if (at > 0) {
        // A group is parted from the next by a line in ink; within it the lines begin after the name.
        const from = again ? margin + (part.widths[0] ?? 0) : margin
        if (part.sheet.grouped === true && !again) sketch.line(margin, y, right, y, 0.25, ink.ink2)
        else sketch.line(from, y, right, y, 0.12, ink.line)
      }
      drawRow(sketch, row, `row ${at}`, y, part, again)
      y += row.height
    })
    if (part.on.length > 0) sketch.line(margin, y, right, y, 0.12, ink.line)
    return sketch
  })
  return {
    pages: drawn.map(({ shapes }) => ({ ...size, shapes })),
    boxes: drawn.map(({ boxes }) => boxes),
  }
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

/** Rows by page; one page at least. A row that is taller than a page begins on one of its own. */
function breakRows(rows: readonly Row[], room: number): readonly (readonly Row[])[] {
  const pages: Row[][] = [[]]
  let left = room
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
function drawRow(
  sketch: Sketch,
  row: Row,
  name: string,
  y: number,
  { sheet, widths }: { readonly sheet: TableSheet; readonly widths: readonly number[] },
  again = false,
): void {
  let x = margin
  row.cells.forEach((cell, index) => {
    const column = sheet.columns[index]
    const width = widths[index] ?? 0
    // Numbers stand under one another at the right, words begin at the left.
    const numeric = column !== undefined && column.format !== null
    const ticked = name !== 'head' && column !== undefined && isTick(column)
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
      return column?.format === null ? String(cell.value) : cell.value.toFixed(decimals)
    }
    case 'empty':
    case 'picture':
      return ''
  }
}
