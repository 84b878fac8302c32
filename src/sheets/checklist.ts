/** The checklist as a table: the works of one show in their order, every fact that a list carries, a number a cell. */
import type { ListPart } from '../checklist/fields.ts'
import { POUND } from '../hang/physics.ts'
import { formatLength } from '../measure/format.ts'
import { type InchParts, roundTo } from '../measure/rounding.ts'
import { checklistColumns, type PlainKey, type SheetUnit, type Side, sides, sizeKey } from './checklist-columns.ts'
import { type Cell, EMPTY, numberCell, type TableSheet, textCell } from './columns.ts'
import { knownCells } from './lengths-columns.ts'

export type Measured = Readonly<Record<Side, number | null>>

/** One work of the show. Empty texts are unknown. */
export interface ChecklistWork {
  readonly texts: Readonly<Record<Exclude<PlainKey, 'picture' | 'lightLimit' | 'uvLimit'>, string>>
  readonly picture: string | null
  readonly lightLimit: number | null
  readonly uvLimit: number | null
  readonly mass: number | null
  /** The size in force of each part that is known, millimetres. */
  readonly sizes: Readonly<Partial<Record<ListPart, Measured>>>
}

export interface ChecklistQuestion {
  readonly title: string
  /** Said under the title, such as when it was made. */
  readonly lines: readonly string[]
  readonly works: readonly ChecklistWork[]
  readonly unit: SheetUnit
  readonly fraction: InchParts
  /** Whether what each work is worth may stand on it. */
  readonly withValues: boolean
}

/** Columns that stand even where nothing is known yet; another that is empty throughout only takes room from the rest. */
const always: readonly string[] = [
  'running',
  'maker',
  'title',
  'date',
  'medium',
  'mass',
  'lender',
  'credit',
] satisfies (PlainKey | 'mass')[]

export function checklistSheet(question: ChecklistQuestion): TableSheet {
  const { works, unit, fraction, withValues } = question
  const all = checklistColumns(unit, measuredOf(works))
  const tape = (mm: number) =>
    formatLength(roundTo(mm, { unit: 'in', parts: fraction }), { unit: 'in', fraction, bare: true })
  const filled = works.map(work => cellsOf(work, unit, tape))
  const columns = all.filter(
    ({ key }) =>
      (key !== 'value' || withValues) &&
      (always.includes(key) || filled.some(cells => (cells.get(key) ?? EMPTY).kind !== 'empty')),
  )
  return {
    name: 'Checklist',
    title: question.title,
    lines: question.lines,
    foot: withValues ? 'with values' : 'without values',
    columns,
    rows: filled.map(cells => columns.map(({ key }) => cells.get(key) ?? EMPTY)),
  }
}

function measuredOf(works: readonly ChecklistWork[]): readonly { readonly part: ListPart; readonly side: Side }[] {
  return works.flatMap(({ sizes }) =>
    partsOf(sizes).flatMap(([part, size]) => sides.filter(side => size[side] !== null).map(side => ({ part, side }))),
  )
}

function partsOf(sizes: ChecklistWork['sizes']): [ListPart, Measured][] {
  return Object.entries(sizes) as [ListPart, Measured][] // Object.entries forgets the keys; a part that is there has a size
}

function cellsOf(work: ChecklistWork, unit: SheetUnit, tape: (mm: number) => string): ReadonlyMap<string, Cell> {
  const cells = new Map<string, Cell>()
  for (const [key, text] of Object.entries(work.texts)) cells.set(key, textCell(text))
  if (work.texts.title !== '') cells.set('title', { kind: 'title', text: work.texts.title })
  if (work.picture !== null) cells.set('picture', { kind: 'picture', hash: work.picture })
  cells.set('lightLimit', numberCell(work.lightLimit))
  cells.set('uvLimit', numberCell(work.uvLimit))
  cells.set(
    'mass',
    numberCell(work.mass === null || unit === 'mm' ? work.mass : Number((work.mass / POUND).toPrecision(12))),
  )
  // A running number that is a number stands as one, so that the list sorts by it.
  const running = work.texts.running
  if (/^[1-9]\d{0,8}$/.test(running)) cells.set('running', numberCell(Number(running)))
  for (const [part, size] of partsOf(work.sizes)) {
    for (const side of sides) {
      const [number, fraction] = knownCells(size[side], unit, tape)
      if (number !== undefined) cells.set(sizeKey(part, side), number)
      if (fraction !== undefined) cells.set(sizeKey(part, side, true), fraction)
    }
  }
  return cells
}
