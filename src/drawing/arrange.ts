/** What is selected, laid out by one of the rules of src/layout: from works and a choice to where each would stand. */
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import type { Rect } from '../geometry/rect.ts'
import { climb, floorAt } from '../hang/wall.ts'
import { type AlignTo, align, type DistributeBy, distribute } from '../layout/align.ts'
import { type Bay, rowsInBays } from '../layout/bays.ts'
import { layGrid } from '../layout/grid.ts'
import type { RowCure, RowRule } from '../layout/layout-shape.ts'
import { alongTo, type Spot, staysPut } from './places.ts'

export interface Sized {
  readonly work: PlacedWork
  readonly width: number
  readonly height: number
  /** Held, hung or drilled: it stays where it is. */
  readonly stays: boolean
}

/** What does not fit: by how much, in which direction, where, and what alone would make it fit. */
export interface Misfit {
  readonly shortBy: number
  readonly way: 'longer' | 'higher'
  /** The bay or stack, in words; empty where there is one only. */
  readonly where: string
  readonly cures: readonly RowCure[]
}

export interface Arranged {
  /** Of the works that would move; none while something does not fit. */
  readonly spots: ReadonlyMap<string, Spot>
  readonly misfits: readonly Misfit[]
  /** What is left of each bay beside its works and the gaps between them, mm. */
  readonly leftOver: readonly { readonly bay: Bay; readonly works: number; readonly mm: number }[]
}

/** The floor that a wall's height follows; level where there is no ramp. */
export type Ramp = Elevation['plan']['ramp']

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

function asItem({ work, width, stays }: Sized) {
  return { id: work.placement, width, heldAt: stays ? work.x - width / 2 : null, x: work.x }
}

function isWithin({ work, width }: Sized, from: number, to: number): boolean {
  return work.x - width / 2 >= from - 1e-6 && work.x + width / 2 <= to + 1e-6
}

/**
 * In a row in a stretch of the wall, or in each of several bays by itself. Held, hung and drilled works stay and split
 * it; those outside of the stretch have no part in it. Throws what `layRow` refuses.
 */
export function inRow(
  works: readonly Sized[],
  rule: RowRule,
  bays: readonly Bay[],
  leastGap: number,
  ramp: Ramp = [],
): Arranged {
  const [only] = bays
  const here =
    bays.length === 1 && only ? works.filter(each => !each.stays || isWithin(each, only.from, only.to)) : works
  const rows = rowsInBays(bays, here.map(asItem), rule, leastGap)
  const moved = new Map(here.filter(each => !each.stays).map(each => [each.work.placement, each]))
  const misfits = rows.flatMap(({ bay, row }): readonly Misfit[] =>
    row.fits
      ? []
      : [{ shortBy: row.shortBy, way: 'longer', where: bays.length > 1 ? bayName(bay) : '', cures: row.cures }],
  )
  const places = rows.flatMap(({ row }) => row.works)
  return {
    misfits,
    spots: new Map(
      misfits.length > 0
        ? []
        : places.flatMap(({ id, centre }) => {
            const work = moved.get(id)
            return work === undefined ? [] : [[id, alongTo(work.work, ramp, centre)] as const]
          }),
    ),
    leftOver: rows.map(({ bay, row, leftOver }) => ({ bay, works: row.works.length, mm: leftOver })),
  }
}

/** A bay by what bounds it. */
export function bayName({ leftOf, rightOf }: Pick<Bay, 'leftOf' | 'rightOf'>): string {
  const name = (side: string, end: string) => (side === 'end' ? end : side)
  return `${name(leftOf, 'left end')} to ${name(rightOf, 'right end')}`
}

/** In columns and rows, each in a cell as large as the largest; what stays has no cell. */
export function inGrid(
  works: readonly Sized[],
  columns: number,
  gapX: number,
  gapY: number,
  centre: Spot,
  ramp: Ramp = [],
): Arranged {
  const free = works.filter(each => !each.stays)
  if (free.length === 0) return { spots: new Map(), misfits: [], leftOver: [] }
  const width = Math.max(...free.map(each => each.width))
  const height = Math.max(...free.map(each => each.height))
  const grid = layGrid({
    columns: Math.min(columns, free.length),
    rows: Math.ceil(free.length / columns),
    width,
    height,
    gapX,
    gapY,
    // The block is level; along a ramp it stands as high as its middle's floor says.
    centre: { x: centre.x, y: centre.centreY + floorAt(ramp, centre.x) },
  })
  return {
    misfits: [],
    leftOver: [],
    spots: new Map(
      free.flatMap(({ work }, index) => {
        const cell = grid.cells[index]
        return cell === undefined ? [] : [[work.placement, { x: cell.x, centreY: cell.y }] as const]
      }),
    ),
  }
}

/** Where it stands. mm. */
export function standing({ work, width, height }: Sized): Rect {
  return { x: work.x - width / 2, y: work.centreY - height / 2, width, height }
}

function asRects(works: readonly Sized[]) {
  return works.map(each => ({ id: each.work.placement, ...standing(each), held: each.stays }))
}

function asSpots(
  works: readonly Sized[],
  edges: readonly { readonly id: string; readonly x: number; readonly y: number }[],
  ramp: Ramp,
): Arranged {
  const sizes = new Map(works.map(each => [each.work.placement, each]))
  return {
    misfits: [],
    leftOver: [],
    spots: new Map(
      edges.flatMap(({ id, x, y }) => {
        const size = sizes.get(id)
        if (size === undefined) return []
        const middle = x + size.width / 2
        return [[id, { x: middle, centreY: y + size.height / 2 + climb(ramp, size.work.x, middle) }] as const]
      }),
    ),
  }
}

export function lined(works: readonly Sized[], to: AlignTo, ramp: Ramp = []): Arranged {
  return asSpots(works, align(asRects(works), to), ramp)
}

export function spreadOut(works: readonly Sized[], by: DistributeBy, ramp: Ramp = []): Arranged {
  return asSpots(works, distribute(asRects(works), by), ramp)
}
