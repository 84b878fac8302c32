/** A show as its rules are held against it: what hangs in the order in which it is met, and what could hang where. mm */
import type { RuledBay, RuledShow, RuledWork } from './given-rules.ts'
import type { Extent } from './hang-rule.ts'
import type { Spot } from './rule-holds.ts'

/** Walls in the visitor's order, with works by their place in the show. */
export interface HungWall {
  readonly face: string
  readonly works: readonly { readonly work: number; readonly x: number; readonly width: number }[]
}

/**
 * @param runs unbroken lengths of wall, whatever hangs on them; a work on none of them has no neighbours
 */
export function spotsOf(walls: readonly HungWall[], runs: readonly Extent[]): Spot[] {
  return walls.flatMap(({ face, works }) =>
    [...works]
      .sort((a, b) => a.x - b.x || a.work - b.work)
      .map(({ work, x, width }) => {
        const run = runs.findIndex(each => each.face === face && x > each.from && x < each.to)
        return { work, face, from: x - width / 2, to: x + width / 2, run: run < 0 ? `${face}/${work}` : String(run) }
      }),
  )
}

/**
 * @param staying spots of works that stay, in the order in which they are met
 * @param before by such a work, the bay before which it is met
 */
export function ruledShow(
  works: readonly Omit<RuledWork, 'stays'>[],
  bays: readonly RuledBay[],
  runs: readonly Extent[],
  staying: readonly Spot[],
  before: (work: number) => number,
  faces: RuledShow['faces'],
): RuledShow {
  const stays = new Map(staying.map(({ work, face, from, to }, order) => [work, { face, from, to, order }] as const))
  return {
    works: works.map((work, index) => {
      const spot = stays.get(index)
      return { ...work, stays: spot === undefined ? null : { ...spot, before: before(index) } }
    }),
    bays,
    runs: runs.map((run, index) =>
      [
        ...staying.filter(spot => spot.run === String(index)).map(({ work, from }) => ({ from, item: { work } })),
        ...bays.flatMap((bay, place) =>
          bay.face === run.face && bay.from >= run.from - 1 && bay.to <= run.to + 1
            ? [{ from: bay.from, item: { bay: place } }]
            : [],
        ),
      ]
        .sort((a, b) => a.from - b.from)
        .map(({ item }) => item),
    ),
    faces,
  }
}
