/**
 * The table of a wall sheet as data: one row a work, every number as src/hang printed it. The rule it keeps: nothing is
 * rounded here again; gaps are differences of printed edges, so that the row adds up to the printed wall.
 */

import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import type { Mark, MarksAnswer } from '../hang/marks-shape.ts'
import { minus, type Printed, plus, print } from '../hang/printing.ts'
import { mainMarks } from '../hang/steps.ts'
import type { LabelPlace } from '../layout/labels-shape.ts'
import { labelsOfFace } from '../model/labels-of-face.ts'
import { laidOpen } from '../model/laid-open.ts'
import type { MarksOrWhy } from '../model/marks-of-face.ts'
import { hungOf, placementOfKey } from '../model/parts-of-set.ts'
import { type Figure, figure, massText, offset, type Units } from './figures.ts'
import { type OtherMark, othersOf } from './wall-others.ts'
import { type Ticks, ticksOf } from './wall-states.ts'
import { type LoadText, loadOf, type WorkingText, workingOf } from './wall-working.ts'

/** One number, or one for each side where they differ. */
export interface SideFigure extends Figure {
  readonly side: '' | 'left' | 'right' | 'middle'
}

export interface WallSheetRow {
  readonly placement: string
  readonly work: string
  /** What the sheet calls it: running number, else a number of the work, else its place from the left. */
  readonly called: string
  readonly running: string
  readonly number: string
  readonly title: string
  readonly maker: string
  /** Hash of the picture to know the work by. */
  readonly picture: string | null
  readonly facts: string
  readonly hanging: string
  readonly fixing: string
  /** Where its label stands; empty where it has none. */
  readonly label: string
  readonly problem: string
  readonly fromFloor: readonly SideFigure[]
  readonly fromLine: readonly SideFigure[]
  readonly holeFromFloor: readonly SideFigure[]
  readonly holeFromLine: readonly SideFigure[]
  readonly leftMark: Figure | null
  readonly rightMark: Figure | null
  readonly apart: Figure | null
  readonly leftEdge: Figure | null
  readonly rightEdge: Figure | null
  readonly top: Figure | null
  readonly bottom: Figure | null
  readonly gapBefore: Figure | null
  readonly gapAfter: Figure | null
  readonly working: readonly WorkingText[]
  readonly load: LoadText | null
  readonly cautions: readonly string[]
  /** Locks, plates, further points, hangers: each a line of its own under the figures. */
  readonly others: readonly OtherMark[]
  /** What has been done when the sheet is printed; no part of what a revision says. */
  readonly ticks: Ticks
  readonly method: string
  /** How it comes down again, step by step. */
  readonly comesDown: readonly string[]
}

interface Edges {
  readonly left: Printed
  readonly right: Printed
  readonly top: Printed
  readonly bottom: Printed
}

function edgesOf(work: PlacedWork, marks: MarksOrWhy, units: Units): Edges | null {
  if ('answer' in marks) {
    const { leftEdge, rightEdge, top, bottom } = marks.answer.printed
    return { left: leftEdge, right: rightEdge, top, bottom }
  }
  if (work.size === null) return null
  const left = print(work.x - work.size.width / 2, units.steps)
  const top = print(work.centreY + work.size.height / 2, units.steps)
  return {
    left,
    right: plus(left, print(work.size.width, units.steps)),
    top,
    bottom: minus(top, print(work.size.height, units.steps)),
  }
}

/** Rows from left to right, one for each part of a set. Marks are by placement. */
export function wallSheetRows(
  whole: Elevation,
  marksOfWhole: ReadonlyMap<string, MarksOrWhy>,
  units: Units,
): readonly WallSheetRow[] {
  const { elevation, marks } = laidOpen(whole, marksOfWhole)
  // A set has its place in the order as one; its parts follow each other as it has them.
  const place = new Map(sheetOrder(whole.works).map((work, index) => [work.placement, index]))
  const placeOf = (work: PlacedWork) => place.get(placementOfKey(work.placement)) ?? place.size
  const works = [...elevation.works].sort((a, b) => placeOf(a) - placeOf(b))
  const missing: MarksOrWhy = { problem: 'Nobody asked for its marks.' }
  const all = works.map(work => {
    const found = marks.get(work.placement) ?? missing
    return { work, found, edges: edgesOf(work, found, units) }
  })
  const length = print(elevation.wall.length, units.steps)
  const called = sheetNames(works)
  // A set has one label: it stands in the row of its first part.
  const { labels } = labelsOfFace(whole, marksOfWhole, units)
  const firsts = new Map(whole.works.map(work => [firstKey(work), work]))
  return all.map(({ work, found, edges }) => {
    const others = all.flatMap(each => (each.work === work || each.edges === null ? [] : [each.edges]))
    const labelled = firsts.get(work.placement)
    const label = labels.find(each => each.id === labelled?.placement)
    const said = label === undefined || labelled === undefined ? '' : labelSaid(label, labelled, elevation, units)
    return {
      ...rowOf(work, called.get(work.placement) ?? '', found, edges, others, length, units),
      label: said,
      ticks: ticksOf(work, found, elevation.made),
    }
  })
}

/** The row that speaks for a whole work: its own, or that of the first part of a set. */
function firstKey(work: PlacedWork): string {
  return hungOf(work)[0]?.placement ?? work.placement
}

/**
 * From left to right; a stack, whose works all stand above each other over one point of the floor, from its top down,
 * as it hangs.
 */
export function sheetOrder(works: readonly PlacedWork[]): readonly PlacedWork[] {
  const stacks: { works: PlacedWork[]; to: number }[] = []
  for (const work of [...works].sort((a, b) => leftOf(a) - leftOf(b) || b.centreY - a.centreY)) {
    const last = stacks.at(-1)
    const right = 2 * work.x - leftOf(work)
    if (last !== undefined && leftOf(work) < last.to && last.works.every(other => isOver(other, work))) {
      last.works.push(work)
      last.to = Math.min(last.to, right)
    } else stacks.push({ works: [work], to: right })
  }
  return stacks.flatMap(stack => stack.works.sort((a, b) => b.centreY - a.centreY))
}

/** One above the other, whichever: not beside each other nor one on the other. */
function isOver(a: PlacedWork, b: PlacedWork): boolean {
  return Math.abs(a.centreY - b.centreY) >= ((a.size?.height ?? 0) + (b.size?.height ?? 0)) / 2
}

/** What the sheet calls each work, by placement. */
export function sheetNames(works: readonly PlacedWork[]): ReadonlyMap<string, string> {
  return new Map(
    sheetOrder(works).map(({ placement, running, number }, index) => [
      placement,
      [running, number].find(text => text !== '') ?? `place ${index + 1}`,
    ]),
  )
}

function leftOf(work: PlacedWork): number {
  return work.x - (work.size?.width ?? 0) / 2
}

/** The clear way to what stands beside, at the same height; else to the end of the wall. */
function gaps(edges: Edges, others: readonly Edges[], length: Printed): { before: Printed; after: Printed } {
  let before = edges.left
  let after = minus(length, edges.right)
  for (const other of others) {
    if (other.bottom.mm >= edges.top.mm || other.top.mm <= edges.bottom.mm) continue
    if (other.left.mm < edges.left.mm) {
      const gap = minus(edges.left, other.right)
      if (gap.mm < before.mm) before = gap
    } else {
      const gap = minus(other.left, edges.right)
      if (gap.mm < after.mm) after = gap
    }
  }
  return { before, after }
}

/** One figure where all marks agree, else one a side. */
function bySide(
  marks: readonly Mark[],
  pick: (mark: Mark) => Printed,
  write: (printed: Printed) => Figure,
): readonly SideFigure[] {
  const first = marks[0]
  if (first === undefined) return []
  const same = marks.every(mark => pick(mark).mm === pick(first).mm && pick(mark).inches === pick(first).inches)
  if (same) return [{ ...write(pick(first)), side: '' }]
  return marks.map(mark => ({ ...write(pick(mark)), side: mark.side }))
}

function rowOf(
  work: PlacedWork,
  called: string,
  found: MarksOrWhy,
  edges: Edges | null,
  others: readonly Edges[],
  length: Printed,
  units: Units,
): Omit<WallSheetRow, 'label' | 'ticks'> {
  const plain = (printed: Printed) => figure(printed, units)
  const signed = (printed: Printed) => offset(printed, units)
  const gap = edges === null ? null : gaps(edges, others, length)
  const answer = 'answer' in found ? found.answer : null
  const marks = mainMarks(answer?.marks ?? [])
  const carrying = (answer?.marks ?? []).filter(mark => mark.does === 'carries')
  // Where the hole is only the fixing says.
  const known = work.fixing === null ? [] : marks.filter(mark => mark.on === 'wall')
  const high = marks.filter(mark => mark.on !== 'floor')
  const [left] = marks
  const right = marks.length > 1 ? marks.at(-1) : undefined
  return {
    placement: work.placement,
    work: work.work,
    called,
    running: work.running,
    number: work.number,
    title: work.title,
    maker: work.maker,
    picture: work.picture,
    facts: factsOf(work, units),
    hanging: answer === null ? '' : hangingOf(answer, units),
    fixing: fixingOf(work, left, carrying.length, units),
    problem: 'problem' in found ? found.problem : '',
    // Corners on the floor have no height to measure.
    fromFloor: bySide(high, mark => mark.printed.fromFloor, plain),
    fromLine: bySide(high, mark => mark.printed.fromLine, signed),
    holeFromFloor: bySide(known, mark => mark.printed.holeFromFloor, plain),
    holeFromLine: bySide(known, mark => mark.printed.holeFromLine, signed),
    leftMark: left === undefined ? null : plain(left.printed.x),
    rightMark: right === undefined ? null : plain(right.printed.x),
    apart: answer?.printed.between == null ? null : plain(answer.printed.between),
    leftEdge: edges === null ? null : plain(edges.left),
    rightEdge: edges === null ? null : plain(edges.right),
    top: edges === null ? null : plain(edges.top),
    bottom: edges === null ? null : plain(edges.bottom),
    gapBefore: gap === null ? null : plain(gap.before),
    gapAfter: gap === null ? null : plain(gap.after),
    working: answer === null ? [] : workingOf(answer, units),
    load: answer === null ? null : loadOf(answer, units),
    cautions: answer?.cautions ?? [],
    others: answer === null ? [] : othersOf(answer, work, units),
    method: answer?.methodName ?? '',
    comesDown: answer?.comesDown ?? [],
  }
}

/** Beside a work the height of its centre is told, below it only the distance: there it follows the work. */
function labelSaid({ side, y, height }: LabelPlace, work: PlacedWork, { rules }: Elevation, units: Units): string {
  const say = (mm: number) => figure(print(mm, units.steps), units).main
  const gap = say(work.label.gap ?? rules.labels.gap)
  return side === 'below' ? `label ${gap} below` : `label ${gap} to the ${side}, its centre at ${say(y + height / 2)}`
}

function factsOf({ running, number, size, mass }: PlacedWork, units: Units): string {
  const sides = size === null ? [] : [size.height, size.width, ...(size.depth === null ? [] : [size.depth])]
  const measured = sides.map(side => figure(print(side, units.steps), units).main).join(' × ')
  return [
    ...(running === '' || number === '' ? [] : [number]),
    measured === '' ? 'no size yet' : `${measured} ${units.unit}${size?.kind === 'listed' ? ' as listed' : ''}`,
    mass === null ? 'not weighed' : massText(mass, units.unit),
  ].join(' · ')
}

function hangingOf({ methodName, marks }: MarksAnswer, units: Units): string {
  const main = mainMarks(marks)
  // What is measured from below, or stands, has no drop.
  if (main.some(mark => mark.from === 'bottom' || mark.on === 'floor')) return methodName
  const drops = main.map(mark => figure(print(mark.drop, units.steps), units).main)
  const distinct = [...new Set(drops)]
  return `${methodName}, drop ${distinct.length === 1 ? distinct[0] : drops.join(' and ')}`
}

function fixingOf(work: PlacedWork, mark: Mark | undefined, count: number, units: Units): string {
  if (mark === undefined) return ''
  if (mark.on === 'floor') return 'Stands on the floor: no hole.'
  if (work.fixing === null) return 'No fixing chosen: where the hole is only the fixing says.'
  const rated = mark.fixing.ratedKg === null ? 'rating not known' : `rated ${massText(mark.fixing.ratedKg, units.unit)}`
  // The marks of a cleat are the two ends of one bar.
  const many = count === 1 || mark.fixing.kind === 'cleat' ? '' : `${count} × `
  return `${many}${mark.fixing.name}, ${rated}`
}
