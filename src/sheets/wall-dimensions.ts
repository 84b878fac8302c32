/**
 * The dimensions of an elevation: running ones to each mark above it, the chain of works and gaps below. What is written
 * is what was printed; the parts of the chain add up to the printed wall.
 */
import type { Elevation } from '../contract/areas/walls.ts'
import { print } from '../hang/printing.ts'
import { mainMarks } from '../hang/steps.ts'
import { runningChain } from '../measure/chain.ts'
import type { Step } from '../measure/rounding.ts'
import { hungOf, placementOfKey } from '../model/parts-of-set.ts'
import { figure, type LengthUnit, type Units } from './figures.ts'
import { ink } from './ink.ts'
import type { Sketch } from './sketch.ts'
import { spread } from './spread.ts'
import type { WallSheetRow } from './wall-rows.ts'
import { besideLine, type DrawingQuestion, type View } from './wall-view.ts'

const labelSize = 2.7

/** Widths of the labels above: whether a page can hold these works is asked before it is begun. */
export function labelsFit(
  rows: readonly WallSheetRow[],
  width: number,
  k: number,
  measure: Sketch['measure'],
): boolean {
  const figures = new Set(rows.flatMap(row => [row.leftMark, row.rightMark].flatMap(mark => mark?.main ?? [])))
  const needed = [...figures].reduce((sum, text) => sum + measure.width('figure', labelSize * k, text) + 1.6 * k, 0)
  return needed <= width - (besideLine + 4) * k
}

/** Each figure once: marks above one another, in a grid or a stack, have the same one and hang on one leader. */
export function drawMarkLabels(sketch: Sketch, view: View, { rows, marks, k }: DrawingQuestion): void {
  const all = rows
    .flatMap(row => {
      const found = marks.get(row.placement)
      if (found === undefined || !('answer' in found)) return []
      const shown = mainMarks(found.answer.marks)
      const [first] = shown
      const last = shown.at(-1)
      return [
        { name: `${row.called} left mark`, figure: row.leftMark, mark: first },
        { name: `${row.called} right mark`, figure: row.rightMark, mark: last },
      ]
    })
    .flatMap(({ name, figure: written, mark }) =>
      written === null || mark === undefined ? [] : [{ name, written, mark }],
    )
    .sort((a, b) => a.mark.hole.x - b.mark.hole.x)
  const labels = [...Map.groupBy(all, label => label.written.main).values()].flatMap(([first, ...more]) => {
    if (first === undefined) return []
    return [{ ...first, lowest: Math.min(...[first, ...more].map(label => label.mark.hole.y)) }]
  })
  const size = labelSize * k
  const middles = spread(
    labels.map(label => ({
      at: view.x(label.mark.hole.x),
      width: sketch.measure.width('figure', size, label.written.main),
    })),
    view.limits.from,
    view.limits.to,
    1.6 * k,
  )
  labels.forEach((label, index) => {
    const middle = middles?.[index]
    if (middle === undefined) return
    const x = view.x(label.mark.hole.x)
    const elbow = view.labels + 4.5 * k
    sketch.text(`drawing ${label.name}`, middle, view.labels, size, 'figure', label.written.main, { anchor: 'middle' })
    sketch.add({
      kind: 'path',
      d: `M ${middle} ${view.labels + 0.9 * k} L ${middle} ${view.labels + 1.6 * k} L ${x} ${elbow} L ${x} ${view.y(label.lowest)}`,
      stroke: ink.line,
      width: 0.15 * k,
    })
  })
}

/** What the chain along the wall is made of: works, the parts of a row; a set that stands over itself counts as one. */
export function alongWall({ works }: Elevation): DrawingQuestion['along'] {
  return works
    .flatMap(work => (work.set?.form === 'row' && hungOf(work).length > 0 ? hungOf(work) : [work]))
    .flatMap(({ placement, x, size }) =>
      size === null ? [] : [{ placement, at: x - size.width / 2, size: size.width }],
    )
    .sort((a, b) => a.at - b.at)
}

/** Works and gaps along the wall, each as printed; the parts add up to the printed length. */
export function drawChain(
  sketch: Sketch,
  view: View,
  { elevation, along: sorted, rows, units, k }: DrawingQuestion,
): void {
  const chain = runningChain(0, elevation.wall.length, sorted, stepOf(units))
  const y = view.floor + 6.3 * k
  if (chain.pieces.some(piece => piece.size.count < 0)) {
    sketch.text(
      'chain',
      view.left,
      y,
      2.1 * k,
      'narrow',
      'Works overlap along this wall or pass its ends: edges and gaps are in the table.',
      {
        colour: ink.ink2,
      },
    )
    return
  }
  const here = new Set(rows.flatMap(({ placement }) => [placement, placementOfKey(placement)]))
  const pieces = chain.pieces.filter(
    ({ index }) => here.has(sorted[index]?.placement ?? '') || here.has(sorted[index - 1]?.placement ?? ''),
  )
  const size = 2.3 * k
  const shown = pieces.filter(
    piece => piece.from.mm >= view.shown.from - 1 && piece.to.mm <= view.shown.to + 1 && piece.size.count > 0,
  )
  const texts = shown.map(piece => figureOf(piece.size.mm, units))
  const middles = spread(
    shown.map((piece, index) => ({
      at: view.x((piece.from.mm + piece.to.mm) / 2),
      width: sketch.measure.width(piece.kind === 'gap' ? 'figure' : 'narrow', size, texts[index] ?? ''),
    })),
    view.limits.from,
    view.limits.to,
    1.2 * k,
  )
  const [first, last] = [shown[0], shown.at(-1)]
  if (middles === null || first === undefined || last === undefined) return
  const line = view.floor + 3.4 * k
  sketch.line(view.x(first.from.mm), line, view.x(last.to.mm), line, 0.15 * k, ink.ink3)
  for (const x of new Set(shown.flatMap(piece => [piece.from.mm, piece.to.mm]))) {
    sketch.line(view.x(x) - 0.6 * k, line + 0.6 * k, view.x(x) + 0.6 * k, line - 0.6 * k, 0.25 * k)
  }
  shown.forEach((piece, index) => {
    const gap = piece.kind === 'gap'
    sketch.text(`chain ${index}`, middles[index] ?? 0, y, size, gap ? 'figure' : 'narrow', texts[index] ?? '', {
      anchor: 'middle',
      colour: gap ? ink.ink : ink.ink3,
    })
  })
}

/** The chain counts in whole steps of the sheet's unit. */
export function stepOf({ unit, steps }: Units): Step {
  if (unit === 'in') return { unit: 'in', parts: steps.fraction }
  const size = ([0.1, 0.5, 1, 5, 10] as const).find(each => each === steps.mm)
  return { unit: 'mm', size: size ?? 1 }
}

function figureOf(mm: number, units: { unit: LengthUnit; steps: Units['steps'] }): string {
  return figure(print(mm, units.steps), units).main
}
