/**
 * A whole file: tables for a workbook, and the same on paper behind a first sheet that says what the file is of, shows
 * its picture and tells on which sheet each table begins. One model for both: what the paper says, the workbook says.
 */
import { type TableSheet, withoutEmptyColumns } from './columns.ts'
import { ink } from './ink.ts'
import { sizeWithin, wrap } from './lines.ts'
import { type Face, type Page, type Paper, papers, type TextMeasure } from './shapes.ts'
import { newSketch, type Sketch } from './sketch.ts'
import { tablePages } from './table-pages.ts'

export interface WholeFile {
  /** What people know it by; stands on every sheet. */
  readonly called: string
  readonly tables: readonly TableSheet[]
  /** What the first sheet says of it, from the largest to the smallest. */
  readonly cover: readonly CoverLine[]
  /** The hash of its picture; null where there is none to show. */
  readonly picture: string | null
  /** When it was made, by whom. */
  readonly made: string
  /** Stands on every sheet beside what the file is of. */
  readonly foot?: string
}

/** How a sheet says whether it holds what is not for everybody. */
export const inConfidence = (withValues: boolean): string =>
  withValues ? 'with values, contacts, places and changes' : 'without values, contacts, places and changes'

export interface CoverLine {
  readonly text: string
  readonly face: Face
  /** mm */
  readonly size: number
}

/** A plain line of the first sheet. */
export const coverLine = (text: string, size = 4): CoverLine => ({ text, face: 'plain', size })

/** Tables without their empty columns; what has neither rows nor a word about having none is nothing to show. */
export function filed(tables: readonly TableSheet[]): readonly TableSheet[] {
  return tables.map(withoutEmptyColumns).filter(({ rows, lines }) => rows.length > 0 || lines.length > 0)
}

/** For a workbook: above the first table stands what the file is of and when it was made. */
export function fileTables({ called, made, foot, tables }: WholeFile): readonly TableSheet[] {
  const [first, ...rest] = foot === undefined ? tables : tables.map(each => ({ ...each, foot }))
  return first === undefined ? [] : [{ ...first, lines: [`${called} · ${made}`, ...first.lines] }, ...rest]
}

const margin = 10

/** On paper: the first sheet, then the tables under one another. */
export function filePages(file: WholeFile, paper: Paper, measure: TextMeasure): readonly Page[] {
  const { tables, picture } = file
  const called = file.foot === undefined ? file.called : `${file.called} · ${file.foot}`
  const { pages, starts } = tablePages(tables, paper, measure, { flowing: true, running: called, before: 1 })
  const size = papers[paper]
  const sketch = newSketch(measure)
  const right = size.width - margin
  const page = `${called} · sheet 1 of ${pages.length + 1}`
  const taken = sketch.text('page', right, margin + 4, 3, 'plain', page, { anchor: 'end' })
  const heading = `The file of ${file.called}`
  const room = right - margin - taken - 6
  sketch.text('title', margin, margin + 5, sizeWithin(heading, 'strong', 5.5, room, measure), 'strong', heading)
  sketch.text('made', margin, margin + 10.5, 3, 'plain', file.made, { colour: ink.ink2 })
  sketch.line(margin, margin + 14, right, margin + 14, 0.4)
  const top = margin + 20
  const side = Math.min((right - margin) * 0.46, size.height - top - margin)
  if (picture !== null)
    sketch.add({ kind: 'image', x: margin, y: top, w: side, h: size.height - top - margin, hash: picture })
  const left = picture === null ? margin : margin + side + 8
  const contents = tables.map((table, at) => ({ table, on: (starts[at] ?? 0) + 2 }))
  drawCover(sketch, file.cover, contents, { left, right, top: top + 5 })
  return [{ ...size, shapes: sketch.shapes }, ...pages]
}

function drawCover(
  sketch: Sketch,
  cover: readonly CoverLine[],
  contents: readonly { readonly table: TableSheet; readonly on: number }[],
  { left, right, top }: { readonly left: number; readonly right: number; readonly top: number },
): void {
  let y = top
  cover.forEach(({ text, face, size }, index) => {
    wrap(text, face, size, right - left, sketch.measure).forEach((line, at) => {
      sketch.text(`said ${index} ${at}`, left, y, size, face, line)
      y += size * 1.3
    })
  })
  y += 5
  sketch.text('contents', left, y, 3.6, 'strong', 'What is in it')
  sketch.text('sheet', right, y, 3, 'plain', 'sheet', { anchor: 'end', colour: ink.ink2 })
  y += 1.8
  for (const { table, on } of contents) {
    sketch.line(left, y, right, y, 0.12, ink.line)
    y += 4.6
    const count = table.rows.length
    const said = count === 0 ? 'nothing' : count === 1 ? '1 line' : `${count} lines`
    const wide = sketch.text(`in ${table.name}`, left, y, 3.3, 'plain', table.name)
    sketch.text(`count ${table.name}`, left + wide + 3, y, 3, 'plain', said, { colour: ink.ink2 })
    sketch.text(`on ${table.name}`, right, y, 3.3, 'figure', String(on), { anchor: 'end' })
    y += 1.6
  }
}
