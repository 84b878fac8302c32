/**
 * The table of a wall sheet, drawn: large marks that are read at arm's length, the other unit small beside them, the
 * hole under the bearing point, working and second route, what carries, boxes to tick.
 */
import { type Figure, otherUnit, type Units } from './figures.ts'
import { ink } from './ink.ts'
import { firstLines, sizeWithin, wrap } from './lines.ts'
import type { Face, TextMeasure } from './shapes.ts'
import { type Sketch, sign } from './sketch.ts'
import type { OtherMark } from './wall-others.ts'
import type { SideFigure, WallSheetRow, WorkingText } from './wall-rows.ts'
import { type Ticks, ticks } from './wall-states.ts'

/** Shares of the table's width; what is left goes to the working. */
const shares = {
  number: 9,
  work: 44,
  floor: 29.5,
  line: 27.5,
  left: 29,
  right: 29,
  apart: 11,
  working: 66,
  ticks: 32,
} as const
const total = Object.values(shares).reduce((sum, share) => sum + share, 0)

type Column = keyof typeof shares
type Columns = Readonly<Record<Column, { readonly x: number; readonly w: number }>>

export function columnsOf(x: number, width: number): Columns {
  let at = x
  const entries = Object.entries(shares).map(([key, share]) => {
    const w = (share * width) / total
    const column = [key, { x: at, w }] as const
    at += w
    return column
  })
  return Object.fromEntries(entries) as Columns // the keys are those of `shares`
}

export interface TableStyle {
  readonly units: Units
  readonly k: number
  readonly measure: TextMeasure
}

const small = 2.25
const leading = 2.7

export const headHeight = 11.5

export function drawHead(sketch: Sketch, x: number, y: number, width: number, { units, k }: TableStyle): void {
  const columns = columnsOf(x, width)
  const base = y + (headHeight - 1.8) * k
  const put = (column: Column, text: string, under: string) => {
    sketch.text(`heading ${column}`, columns[column].x, base - 2.8 * k, 2.3 * k, 'strong', text, { colour: ink.ink })
    sketch.text(`heading ${column} more`, columns[column].x, base, small * k, 'narrow', under, { colour: ink.ink2 })
  }
  put('work', 'Work', `height × width × depth, ${units.unit}`)
  put('floor', 'Bears at', 'from the floor under the mark')
  put('line', 'From the line', '+ above, − below')
  put('left', 'Left mark', 'from the wall’s left end')
  put('right', 'Right mark', 'from the wall’s left end')
  put('apart', 'Apart', units.unit)
  put('working', 'Working, second route, what carries', 'the two routes must agree')
  const step = columns.ticks.w / ticks.length
  ticks.forEach((tick, index) => {
    const words = tick.split(' ')
    for (const [line, word] of words.entries()) {
      const at = columns.ticks.x + step * (index + 0.5) + (0.65 + 2.3 * (line - (words.length - 1) / 2)) * k
      sketch.text(`heading ${tick} ${line}`, at, base + 0.6 * k, 2.1 * k, 'narrow', word, { upright: true })
    }
  })
  sketch.line(x, y + headHeight * k, x + width, y + headHeight * k, 0.4 * k)
}

interface Lines {
  readonly title: readonly string[]
  readonly facts: readonly string[]
  readonly working: readonly { readonly text: string; readonly sign: 'fits' | 'settle' | 'stop' | null }[]
}

function linesOf(row: WallSheetRow, columns: Columns, { k, measure }: TableStyle): Lines {
  const work = columns.work.w - 2 * k
  const working = columns.working.w - 4.5 * k
  const wrapped = (text: string, mark: Lines['working'][number]['sign']) =>
    wrap(text, 'narrow', small * k, working, measure).map((line, index) => ({
      text: line,
      sign: index === 0 ? mark : null,
    }))
  return {
    title: firstLines(row.title === '' ? 'Untitled' : row.title, 2, 'title', 3.5 * k, work, measure),
    facts: [row.facts, row.hanging, row.fixing, row.label].flatMap(text =>
      wrap(text, 'narrow', small * k, work, measure),
    ),
    working: [
      ...row.working.flatMap(line => {
        const whole = said(line)
        if (line.sides.length === 0 || wrapped(whole, null).length === 1) return wrapped(whole, signOf(line))
        return line.sides.flatMap(side => wrapped(said(side), signOf(side)))
      }),
      ...(row.load === null
        ? []
        : wrapped(row.load.text, row.load.holds === null ? 'settle' : row.load.holds ? 'fits' : 'stop')),
    ],
  }
}

function said({ text, agrees }: WorkingText): string {
  return agrees === null ? text : `${text} ${agrees ? 'agrees' : 'DOES NOT AGREE'}`
}

function signOf({ agrees }: WorkingText): 'fits' | 'stop' | null {
  return agrees === null ? null : agrees ? 'fits' : 'stop'
}

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

export function rowHeight(row: WallSheetRow, width: number, style: TableStyle): number {
  const { k } = style
  const lines = linesOf(row, columnsOf(0, width), style)
  const work = 0.9 + lines.title.length * 3.9 + lines.facts.length * leading
  const working = 0.9 + lines.working.length * leading
  const marks = marksHeight(row, style) / k
  return (
    (Math.max(work, working, marks + (row.others.length > 0 ? 1 : 0) + row.others.length * otherHeight, 11) + 0.8) * k
  )
}

/** The large figures with what stands under them, before the lines of further marks. */
function marksHeight(row: WallSheetRow, style: TableStyle): number {
  const { k } = style
  if (row.problem !== '') return 0
  const heights = Math.max(stackHeight(row.fromFloor, style), stackHeight(row.fromLine, style)) / k
  const uneven = isUneven(row)
  const holes = (uneven ? row.holeFromFloor.length : 2) * leading
  const edges = stackHeight([], style) / k + (uneven ? 3 : 2) * leading
  return Math.max(heights + holes, edges) * k
}

/** One line of a lock, a plate or a hanger. */
const otherHeight = 4.6

function drawOthers(
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

/** Draws one row with its rule below. */
export function drawRow(
  sketch: Sketch,
  row: WallSheetRow,
  x: number,
  y: number,
  width: number,
  style: TableStyle,
): void {
  const { k } = style
  const columns = columnsOf(x, width)
  const height = rowHeight(row, width, style)
  const lines = linesOf(row, columns, style)
  const name = `row ${row.called}`
  const number = sizeWithin(row.called, 'figure', 6.4 * k, columns.number.w - 1.5 * k, style.measure)
  sketch.text(`${name} number`, columns.number.x, y + 6.4 * k, number, 'figure', row.called)
  if (row.picture !== null) {
    const box = { x: columns.number.x, y: y + 7.6 * k, w: columns.number.w - 1.6 * k, h: height - 8.6 * k }
    sketch.add({ kind: 'image', ...box, hash: row.picture })
  }
  lines.title.forEach((line, index) => {
    sketch.text(`${name} title ${index}`, columns.work.x, y + (4 + 3.9 * index) * k, 3.5 * k, 'title', line)
  })
  lines.facts.forEach((line, index) => {
    const at = y + (4 + 3.9 * (lines.title.length - 1) + 3.4 + leading * index) * k
    sketch.text(`${name} facts ${index}`, columns.work.x, at, small * k, 'narrow', line, { colour: ink.ink2 })
  })
  if (row.problem === '') {
    drawMarks(sketch, row, columns, y, style)
    drawOthers(sketch, name, row.others, columns, y + marksHeight(row, style) + k, style)
  } else drawProblem(sketch, row, columns, y, style)
  lines.working.forEach((line, index) => {
    const at = y + (3.1 + leading * index) * k
    if (line.sign !== null) sketch.add(sign(line.sign, columns.working.x + 1.1 * k, at - 0.75 * k, 1.5 * k))
    sketch.text(`${name} working ${index}`, columns.working.x + 3 * k, at, small * k, 'narrow', line.text, {
      colour: line.sign === 'stop' ? ink.ink : ink.ink2,
    })
  })
  drawTicks(sketch, row.ticks, columns, y, style)
  sketch.line(x, y + height, x + width, y + height, 0.15 * k, ink.line)
}

function drawMarks(sketch: Sketch, row: WallSheetRow, columns: Columns, y: number, style: TableStyle): void {
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

function drawProblem(sketch: Sketch, row: WallSheetRow, columns: Columns, y: number, style: TableStyle): void {
  const { k, measure } = style
  const width = columns.apart.x - columns.floor.x - 6 * k
  const face: Face = 'plain'
  sketch.add(sign('stop', columns.floor.x + 1.2 * k, y + 3.3 * k, 2 * k))
  wrap(`No marks: ${row.problem}`, face, 2.8 * k, width, measure)
    .slice(0, 3)
    .forEach((line, index) => {
      sketch.text(
        `row ${row.called} problem ${index}`,
        columns.floor.x + 4 * k,
        y + (4.2 + 3.6 * index) * k,
        2.8 * k,
        face,
        line,
      )
    })
}

/** Drawn signs, no letters: no face need have them. */
function drawTicks(sketch: Sketch, done: Ticks, columns: Columns, y: number, { k }: TableStyle): void {
  const step = columns.ticks.w / ticks.length
  const size = Math.min(3.6 * k, step * 0.72)
  ticks.forEach((tick, index) => {
    const [x, top] = [columns.ticks.x + step * (index + 0.5) - size / 2, y + 3 * k]
    const state = done[tick]
    if (state === 'none') {
      sketch.line(x + size * 0.2, top + size / 2, x + size * 0.8, top + size / 2, 0.25 * k)
      return
    }
    sketch.add({ kind: 'rect', x, y: top, w: size, h: size, stroke: ink.ink, width: 0.25 * k })
    if (state === 'part') sketch.line(x + size * 0.22, top + size * 0.78, x + size * 0.78, top + size * 0.22, 0.35 * k)
    if (state === 'done') {
      const at = (u: number, v: number) => `${x + size * u} ${top + size * v}`
      sketch.add({
        kind: 'path',
        d: `M ${at(0.18, 0.55)} L ${at(0.42, 0.8)} L ${at(0.84, 0.2)}`,
        stroke: ink.ink,
        width: 0.5 * k,
      })
    }
  })
}
