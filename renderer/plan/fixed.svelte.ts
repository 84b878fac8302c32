/** What is fixed on the walls and partitions of the chosen room, as the hand takes it: outlets, switches, grilles. */
import type { Point } from '../../src/drawing/room-plan.ts'
import { onFace } from '../../src/plan/poche.ts'
import type { PartitionFace } from '../../src/plan/stands-drawn.ts'
import { nearestOn } from '../../src/plan/within.ts'
import type { HeldFixture } from '../rooms/fixture.ts'
import { hand } from '../rooms/hand.svelte.ts'
import type { Plan } from './plan.svelte.ts'

/** A wall of the outline, or a side of a partition. */
export type On = Pick<PartitionFace, 'name' | 'from' | 'to' | 'length' | 'height'>

export interface Fixed {
  readonly row: HeldFixture
  readonly on: On
}

/** How deep it is drawn where nobody measured it, and how narrow it may be to be drawn at all: mm, pixels. */
export const shallow = 40
export const least = 2.5

export class FixedOnWalls {
  readonly items: readonly Fixed[] = $derived.by(() =>
    [...(this.plan.selected?.walls ?? []), ...(this.plan.selected?.faces ?? [])].flatMap(on =>
      on.fixtures.map(each => ({ row: { ...each, family: 'keepClear' as const }, on })),
    ),
  )
  readonly chosen = $derived(this.items.find(({ row }) => row.id === hand.chosen) ?? null)
  private readonly plan: Plan

  constructor(plan: Plan) {
    this.plan = plan
  }
}

/** Its outline on the plan, where the hand has it. */
export function outlineOf({ row, on }: Fixed): readonly Point[] {
  const { x, width } = hand.placeOf(row)
  return onFace(on, x, width, row.depth ?? shallow)
}

/** How far along the wall a point of the plan is, mm from its left end. */
export const alongOf = (on: On, point: Point) => nearestOn(on.from, on.to, point).share * on.length

/** The way along the wall that an arrow of the page goes: 1 to the right as seen from the room, -1, or 0 across it. */
export function wayOf({ from, to }: On, [x, y]: Point): -1 | 0 | 1 {
  const run = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  const along = (x * (to[0] - from[0]) + y * (to[1] - from[1])) / run
  return Math.abs(along) < 0.5 ? 0 : along > 0 ? 1 : -1
}
