/** The table of a wall sheet, row by row: the work, its figures, working and second route, what carries, boxes to tick. */
import { ink } from './ink.ts'
import { firstLines, sizeWithin, wrap } from './lines.ts'
import type { Face } from './shapes.ts'
import { type Sketch, sign } from './sketch.ts'
import { type Columns, columnsOf, leading, small, type TableStyle } from './wall-columns.ts'
import { drawMarks, drawOthers, marksHeight, otherHeight } from './wall-figures.ts'
import type { WallSheetRow } from './wall-rows.ts'
import { type Ticks, ticks } from './wall-states.ts'
import type { WorkingText } from './wall-working.ts'

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
