/**
 * Works of a section that hang above one another, formed into units before anything is planned: a planner then places
 * units as it would works. A unit is a run of the checklist, read downwards in a stack and row by row in a grid, and
 * grids are whole: a missing corner looks like a missing work. Of all ways to cut the checklist into such runs the one
 * is taken that wants the least of the walls, and of those the one whose works are most alike (dynamic programming,
 * exact). Units of works that are no neighbours in the checklist are not looked for. mm.
 */
import { layGrid } from '../layout/grid.ts'
import { layStack } from '../layout/stack.ts'
import { at } from './problem.ts'
import type { SectionHang } from './section-hang.ts'

export interface Framed {
  readonly width: number
  readonly height: number
}

export interface HangUnit {
  readonly kind: 'single' | 'stack' | 'grid'
  /** By their place in the list that was given, from the top, in a grid row by row. */
  readonly works: readonly number[]
  readonly width: number
  readonly height: number
  /** Middle of each work from the middle of the unit: to the right and up are positive. */
  readonly places: readonly { readonly dx: number; readonly dy: number }[]
}

export type Form = Pick<SectionHang, 'hang' | 'rows' | 'columns' | 'align' | 'gapDown' | 'gapAcross' | 'alike'>

/** Whether some wall takes a unit of this outer size. */
export type FitsSomewhere = (width: number, height: number) => boolean

/** The ways in which a run of works may hang as one unit. */
export function unitsOf(all: readonly Framed[], from: number, count: number, form: Form): HangUnit[] {
  const works = Array.from({ length: count }, (_, index) => from + index)
  const framed = works.map(index => at(all, index))
  if (count === 1) {
    const { width, height } = at(framed, 0)
    return [{ kind: 'single', works, width, height, places: [{ dx: 0, dy: 0 }] }]
  }
  const [wide, high] = [framed.map(work => work.width), framed.map(work => work.height)]
  const alike = (of: readonly number[]) => Math.max(...of) - Math.min(...of) <= form.alike + 1e-9
  if (form.hang === 'row' || !alike(wide)) return []
  if (form.hang === 'stacks') return count > form.rows ? [] : [stackOf(works, framed, form)]
  if (!alike(high)) return []
  const shapes = Array.from({ length: Math.max(0, form.rows - 1) }, (_, index) => index + 2)
  return shapes
    .filter(rows => count % rows === 0 && count / rows <= form.columns)
    .map(rows => gridOf(works, { wide, high }, count / rows, form))
}

function stackOf(works: readonly number[], framed: readonly Framed[], { align, gapDown }: Form): HangUnit {
  const width = Math.max(...framed.map(work => work.width))
  const { height, works: placed } = layStack({
    line: 0,
    gap: gapDown,
    works: framed.map((work, index) => ({ id: String(index), height: work.height })),
  })
  const side = align === 'axis' ? 0 : align === 'left' ? -1 : 1
  const places = framed.map((work, index) => ({
    dx: side === 0 ? 0 : (side * (width - work.width)) / 2 + 0,
    dy: at(placed, index).centre,
  }))
  return { kind: 'stack', works, width, height, places }
}

interface Sizes {
  readonly wide: readonly number[]
  readonly high: readonly number[]
}

function gridOf(works: readonly number[], { wide, high }: Sizes, columns: number, form: Form): HangUnit {
  const laid = layGrid({
    columns,
    rows: works.length / columns,
    width: Math.max(...wide),
    height: Math.max(...high),
    gapX: form.gapAcross,
    gapY: form.gapDown,
    centre: { x: 0, y: 0 },
  })
  const places = laid.cells.map(({ x, y }) => ({ dx: x, dy: y }))
  return { kind: 'grid', works, width: laid.width, height: laid.height, places }
}

/** How unlike the works of a unit are: what their widths and heights differ by, added up. */
export function unlikeness(all: readonly Framed[], { works }: Pick<HangUnit, 'works'>): number {
  const spread = (of: readonly number[]) => Math.max(...of) - Math.min(...of)
  return spread(works.map(index => at(all, index).width)) + spread(works.map(index => at(all, index).height))
}

interface Cut {
  readonly length: number
  readonly unlike: number
  readonly last: HangUnit | null
}

/** Less of the wall, then more alike. */
function better(one: Cut, other: Cut): boolean {
  const less = other.length - one.length
  return less > 1e-6 || (less > -1e-6 && one.unlike < other.unlike - 1e-6)
}

/**
 * @param works of one section in the order of the checklist, all free to hang together
 * @param gap free at least between two units
 */
export function formUnits(works: readonly Framed[], form: Form, gap: number, fits: FitsSomewhere): HangUnit[] {
  const most = form.hang === 'row' ? 1 : form.hang === 'stacks' ? form.rows : form.rows * form.columns
  const best: Cut[] = [{ length: 0, unlike: 0, last: null }]
  for (let end = 1; end <= works.length; end += 1) {
    let found: Cut | null = null
    for (let count = 1; count <= Math.min(most, end); count += 1) {
      const before = at(best, end - count)
      for (const unit of unitsOf(works, end - count, count, form)) {
        if (count > 1 && !fits(unit.width, unit.height)) continue
        const length = before.length + unit.width + gap
        const cut = { length, unlike: before.unlike + unlikeness(works, unit), last: unit }
        if (found === null || better(cut, found)) found = cut
      }
    }
    best.push(found ?? at(best, end - 1))
  }
  const units: HangUnit[] = []
  for (let end = works.length; end > 0; ) {
    const { last } = at(best, end)
    if (last === null) break
    units.unshift(last)
    end -= last.works.length
  }
  return units
}
