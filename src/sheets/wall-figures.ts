/**
 * The figures of one row of a wall sheet: large marks that are read at arm's length, the other unit small beside them,
 * the hole under the bearing point, edges and gaps, then a line for each lock, plate and hanger.
 */
import { type Figure, otherUnit } from './figures.ts'
import { ink } from './ink.ts'
import { sizeWithin, wrap } from './lines.ts'
import type { Sketch } from './sketch.ts'
import { type Column, type Columns, leading, small, type TableStyle } from './wall-columns.ts'
import type { OtherMark } from './wall-others.ts'
import type { SideFigure, WallSheetRow } from './wall-rows.ts'

function bigSize({ units, k }: TableStyle): number {
  return (units.unit === 'in' ? 5.6 : 6.4) * k
}

/** Height of a stack of large figures: one, or one for each side. */
function stackHeight(figures: readonly SideFigure[], style: TableStyle): number {
  return figures.length <= 1 ? 7.2 * style.k : figures.length * 5.2 * style.k
}

/** Two heights and two holes fill the first column: top and bottom then stand under the marks, where there is room. */
function isUneven(row: WallSheetRow): boolean {
  return row.fromFloor.length > 1
}

/** The large figures with what stands under them, before the lines of further marks. */
export function marksHeight(row: WallSheetRow, style: TableStyle): number {
  const { k } = style
  if (row.problem !== '') return 0
  const heights = Math.max(stackHeight(row.fromFloor, style), stackHeight(row.fromLine, style)) / k
  const uneven = isUneven(row)
  const holes = (uneven ? row.holeFromFloor.length : 2) * leading
  const edges = stackHeight([], style) / k + (uneven ? 3 : 2) * leading
  return Math.max(heights + holes, edges) * k
}

/** One line of a lock, a plate or a hanger. */
export const otherHeight = 4.6

export function drawOthers(
  sketch: Sketch,
  name: string,
  others: readonly OtherMark[],
  columns: Columns,
  y: number,
  style: TableStyle,
): void {
  const { k, measure } = style
  others.forEach((one, index) => {
    const base = y + (otherHeight * index + 3.4) * k
    const said = `${name} ${one.called}`
    sketch.line(
      columns.floor.x,
      base - 3.1 * k,
      columns.apart.x + columns.apart.w - 2 * k,
      base - 3.1 * k,
      0.1 * k,
      ink.line,
    )
    drawBig(sketch, `${said} from floor`, one.fromFloor, '', columns.floor, base, 3.3 * k, style)
    drawBig(sketch, `${said} from line`, one.fromLine, '', columns.line, base, 3.3 * k, style)
    drawBig(sketch, `${said} along`, one.x, '', columns.left, base, 3.3 * k, style)
    const width = columns.right.w + columns.apart.w - 2 * k
    const called = sizeWithin(one.called, 'strong', 2.5 * k, width * 0.45, measure)
    const taken = sketch.text(`${said} called`, columns.right.x, base - 0.9 * k, called, 'strong', one.called)
    const lines = wrap(one.says, 'narrow', 2 * k, width - taken - 1.5 * k, measure)
    const fits = lines.length <= 2
    const size = fits ? 2 * k : sizeWithin(one.says, 'narrow', 2 * k, (width - taken - 1.5 * k) * 1.9, measure)
    wrap(one.says, 'narrow', size, width - taken - 1.5 * k, measure)
      .slice(0, 2)
      .forEach((line, at) => {
        sketch.text(
          `${said} says ${at}`,
          columns.right.x + taken + 1.5 * k,
          base - (1.3 - 2.1 * at) * k,
          size,
          'narrow',
          line,
          {
            colour: ink.ink2,
          },
        )
      })
  })
}

export function drawMarks(sketch: Sketch, row: WallSheetRow, columns: Columns, y: number, style: TableStyle): void {
  const { k, units } = style
  const name = `row ${row.called}`
  const stacks = Math.max(stackHeight(row.fromFloor, style), stackHeight(row.fromLine, style))
  const note = (column: Column, line: number, what: string, text: string) => {
    const room = columns[column].w - 1.2 * k
    const size = sizeWithin(text, 'narrow', small * k, room, style.measure)
    // One figure stands above the notes of its column, or one for each side.
    const under = column === 'floor' || column === 'line' ? stacks : stackHeight([], style)
    sketch.text(`${name} ${what}`, columns[column].x, y + under + (2.6 + leading * line) * k, size, 'narrow', text, {
      colour: ink.ink2,
    })
  }
  drawStack(sketch, `${name} from floor`, row.fromFloor, columns.floor, y, style)
  drawStack(sketch, `${name} from line`, row.fromLine, columns.line, y, style)
  for (const [index, hole] of row.holeFromFloor.entries()) {
    note(
      'floor',
      index,
      `hole from floor ${hole.side}`,
      `hole ${sideWord(hole)}${hole.main} · ${hole.other} ${otherUnit(units.unit)}`,
    )
  }
  for (const [index, hole] of row.holeFromLine.entries()) {
    note(
      'line',
      index,
      `hole from line ${hole.side}`,
      `hole ${sideWord(hole)}${hole.main} · ${hole.other} ${otherUnit(units.unit)}`,
    )
  }
  if (row.leftMark !== null)
    drawBig(sketch, `${name} left mark`, row.leftMark, '', columns.left, y + 6.4 * k, bigSize(style), style)
  if (row.rightMark !== null)
    drawBig(sketch, `${name} right mark`, row.rightMark, '', columns.right, y + 6.4 * k, bigSize(style), style)
  if (row.rightMark === null && row.leftMark !== null) note('right', -1.5, 'one mark', 'one mark only')
  if (row.leftEdge !== null) note('left', 0, 'left edge', `left edge ${row.leftEdge.main}`)
  if (row.gapBefore !== null) note('left', 1, 'gap before', `gap before ${row.gapBefore.main}`)
  if (row.rightEdge !== null) note('right', 0, 'right edge', `right edge ${row.rightEdge.main}`)
  if (row.gapAfter !== null) note('right', 1, 'gap after', `gap after ${row.gapAfter.main}`)
  if (row.top !== null && row.bottom !== null && !isUneven(row))
    note('floor', 1, 'top and bottom', `top ${row.top.main} · bottom ${row.bottom.main}`)
  if (row.top !== null && isUneven(row)) note('left', 2, 'top', `top ${row.top.main}`)
  if (row.bottom !== null && isUneven(row)) note('right', 2, 'bottom', `bottom ${row.bottom.main}`)
  if (row.apart !== null) {
    const size = sizeWithin(row.apart.main, 'figure', 3.6 * k, columns.apart.w - 1 * k, style.measure)
    sketch.text(`${name} apart`, columns.apart.x, y + 6.4 * k, size, 'figure', row.apart.main)
    note('apart', 0, 'apart, other unit', row.apart.other)
  }
}

function sideWord(figure: SideFigure): string {
  return figure.side === '' ? '' : `${figure.side} `
}

function drawStack(
  sketch: Sketch,
  name: string,
  figures: readonly SideFigure[],
  column: { readonly x: number; readonly w: number },
  y: number,
  style: TableStyle,
): void {
  const { k } = style
  const single = figures.length <= 1
  figures.forEach((one, index) => {
    const size = single ? bigSize(style) : 4.5 * k
    const base = single ? y + 6.4 * k : y + (5 + 5.2 * index) * k
    drawBig(sketch, `${name} ${one.side}`.trim(), one, one.side, column, base, size, style)
  })
}

/** A large figure with the other unit beside it; both shrink together where they would leave their column. */
function drawBig(
  sketch: Sketch,
  name: string,
  { main, other }: Figure,
  side: string,
  column: { readonly x: number; readonly w: number },
  base: number,
  size: number,
  { k, measure, units }: TableStyle,
): void {
  const beside = `${other}\u00a0${otherUnit(units.unit)}${side === '' ? '' : `, ${side}`}`
  const width = (factor: number) =>
    measure.width('figure', size * factor, main) +
    1.1 * k +
    measure.width('narrow', small * k * Math.max(factor, 0.9), beside)
  const room = column.w - 1.5 * k
  let factor = 1
  while (width(factor) > room && factor > 0.55) factor -= 0.025
  sketch.text(name, column.x, base, size * factor, 'figure', main)
  const at = column.x + measure.width('figure', size * factor, main) + 1.1 * k
  const left = column.x + room - at
  const smallSize = sizeWithin(beside, 'narrow', small * k * Math.max(factor, 0.9), left, measure)
  sketch.text(`${name}, other unit`, at, base, smallSize, 'narrow', beside, { colour: ink.ink2 })
}
