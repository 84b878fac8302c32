/** A place on the chosen wall where it is split: shown under the pointer, set by a press. */
import { move, type Point } from '../../src/drawing/room-plan.ts'
import { type SplitPlace, snapSplit } from '../../src/plan/snap-split.ts'
import { nearestOn } from '../../src/plan/within.ts'
import { desk } from '../host/desk.svelte.ts'
import { Cutting } from '../rooms/cutting.svelte.ts'
import { roundStep } from './drafting.svelte.ts'
import type { Plan } from './plan.svelte.ts'
import type { Sight } from './sight.svelte.ts'

/** How near a place holds, pixels. */
const reach = 8

export class Splitting {
  on = $state(false)
  place = $state.raw<SplitPlace | null>(null)
  readonly cutting = new Cutting()
  private readonly plan: Plan
  private readonly sight: Sight
  readonly says = $derived.by(() => {
    const { place } = this
    if (!this.on || place === null) return ''
    if (place.problem !== '') return `▲ ${place.problem}`
    const at = `${desk.lengthWithUnit(place.x)} from the left end`
    return place.says === '' ? at : `${at} · ${place.says}`
  })
  /** Across the wall at that place, in the building. */
  readonly mark = $derived.by((): readonly [Point, Point] | null => {
    const wall = this.plan.selectedWall
    if (!this.on || wall === null || this.place === null) return null
    const run = Math.hypot(wall.to[0] - wall.from[0], wall.to[1] - wall.from[1]) || 1
    const along: Point = [(wall.to[0] - wall.from[0]) / run, (wall.to[1] - wall.from[1]) / run]
    const at = move(wall.from, along, (this.place.x / wall.length) * run)
    const half = 14 / this.sight.view.scale
    return [move(at, [along[1], -along[0]], half), move(at, [-along[1], along[0]], half)]
  })

  constructor(plan: Plan, sight: Sight) {
    this.plan = plan
    this.sight = sight
  }

  begin(): boolean {
    if (this.plan.selectedWall === null) return false
    this.on = true
    this.place = null
    return true
  }

  leave(): boolean {
    // A question is let go of first; the place stays to be chosen anew.
    if (this.cutting.leave()) return true
    const was = this.on
    this.on = false
    this.place = null
    return was
  }

  move(at: Point, free: boolean): void {
    // The place stays marked while it is asked about.
    if (this.cutting.asked !== null) return
    const wall = this.plan.selectedWall
    if (wall === null) {
      this.leave()
      return
    }
    const { scale } = this.sight.view
    const { share } = nearestOn(wall.from, wall.to, this.sight.fromSheet(at))
    const { length, openings } = wall
    this.place = snapSplit({
      length,
      openings,
      x: share * length,
      reach: free ? 0 : reach / scale,
      grid: roundStep(scale),
    })
  }

  async press(): Promise<void> {
    const { place } = this
    const wall = this.plan.selectedWall
    if (wall === null || place === null || place.problem !== '') return
    this.sight.keep()
    if (await this.cutting.split(wall, place.x)) this.leave()
  }
}
