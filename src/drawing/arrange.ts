/** What is selected, laid out by one of the rules of src/layout: from works and a choice to where each would stand. */
import type { PlacedWork } from '../contract/areas/walls.ts'
import { type AlignTo, align, type DistributeBy, distribute } from '../layout/align.ts'
import { layGrid } from '../layout/grid.ts'
import type { RowAnswer, RowRule } from '../layout/layout-shape.ts'
import { layRow } from '../layout/row.ts'
import { layStack } from '../layout/stack.ts'
import { type Spot, staysPut } from './places.ts'

export interface Sized {
  readonly work: PlacedWork
  readonly width: number
  readonly height: number
  /** Held, hung or drilled: it stays where it is. */
  readonly stays: boolean
}

export interface Arranged {
  readonly spots: ReadonlyMap<string, Spot>
  readonly row: RowAnswer | null
}

/** Works whose size is known, from left to right; `drilled` are placements with holes in the wall. */
export function sized(
  works: readonly PlacedWork[],
  drilled: ReadonlySet<string> = new Set<string>(),
): readonly Sized[] {
  return works
    .flatMap(work =>
      work.size === null
        ? []
        : [
            {
              work,
              width: work.size.width,
              height: work.size.height,
              stays: staysPut(work) || drilled.has(work.placement),
            },
          ],
    )
    .sort((a, b) => a.work.x - a.width / 2 - (b.work.x - b.width / 2))
}

/** In a row between two points of the wall; held, hung and drilled works stay and split it. Throws what `layRow` refuses. */
export function inRow(works: readonly Sized[], rule: RowRule, from: number, to: number, leastGap: number): Arranged {
  const row = layRow({
    from,
    to,
    rule,
    leastGap,
    works: works.map(({ work, width, stays }) => ({
      id: work.placement,
      width,
      heldAt: stays ? work.x - width / 2 : null,
    })),
  })
  const heights = new Map(works.map(({ work }) => [work.placement, work.centreY]))
  return { row, spots: new Map(row.works.map(({ id, centre }) => [id, { x: centre, centreY: heights.get(id) ?? 0 }])) }
}

/** One above the other, the highest first, on the middle of the first. */
export function inStack(works: readonly Sized[], gap: number, centreY: number): Arranged {
  const ordered = [...works].sort((a, b) => b.work.centreY - a.work.centreY)
  const first = ordered[0]
  if (first === undefined) return { spots: new Map(), row: null }
  const stack = layStack({
    works: ordered.map(({ work, height }) => ({ id: work.placement, height })),
    gap,
    centre: centreY,
  })
  return { row: null, spots: new Map(stack.works.map(({ id, centre }) => [id, { x: first.work.x, centreY: centre }])) }
}

/** In columns and rows, each in a cell as large as the largest. */
export function inGrid(works: readonly Sized[], columns: number, gapX: number, gapY: number, centre: Spot): Arranged {
  const width = Math.max(...works.map(each => each.width))
  const height = Math.max(...works.map(each => each.height))
  const grid = layGrid({
    columns,
    rows: Math.ceil(works.length / columns),
    width,
    height,
    gapX,
    gapY,
    centre: { x: centre.x, y: centre.centreY },
  })
  return {
    row: null,
    spots: new Map(
      works.flatMap(({ work }, index) => {
        const cell = grid.cells[index]
        return cell === undefined ? [] : [[work.placement, { x: cell.x, centreY: cell.y }] as const]
      }),
    ),
  }
}

function asRects(works: readonly Sized[]) {
  return works.map(({ work, width, height, stays }) => ({
    id: work.placement,
    x: work.x - width / 2,
    y: work.centreY - height / 2,
    width,
    height,
    held: stays,
  }))
}

function asSpots(
  works: readonly Sized[],
  edges: readonly { readonly id: string; readonly x: number; readonly y: number }[],
): Arranged {
  const sizes = new Map(works.map(each => [each.work.placement, each]))
  return {
    row: null,
    spots: new Map(
      edges.flatMap(({ id, x, y }) => {
        const size = sizes.get(id)
        return size === undefined ? [] : [[id, { x: x + size.width / 2, centreY: y + size.height / 2 }] as const]
      }),
    ),
  }
}

export function lined(works: readonly Sized[], to: AlignTo): Arranged {
  return asSpots(works, align(asRects(works), to))
}

export function spreadOut(works: readonly Sized[], by: DistributeBy): Arranged {
  return asSpots(works, distribute(asRects(works), by))
}
