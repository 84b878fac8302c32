/** Rooms without a place put together from their doorways: what is proposed, and which of them are to be left as they are. */
import { SvelteSet } from 'svelte/reactivity'
import type { PlanWallRow } from '../../src/contract/areas/plan.ts'
import type { Point } from '../../src/drawing/room-plan.ts'
import { boxOf, toBuilding } from '../../src/plan/place.ts'
import { putTogether } from '../../src/plan/put-together.ts'
import { sharedTogether } from '../../src/plan/shared-together.ts'
import { rules } from '../host/rules.svelte.ts'
import type { Plan } from './plan.svelte.ts'

function along({ from, to, length }: PlanWallRow, far: number): Point {
  return [from[0] + ((to[0] - from[0]) * far) / length, from[1] + ((to[1] - from[1]) * far) / length]
}

export class Together {
  /** Shown because somebody asked, and while rooms wait for a place. */
  private asked = $state(false)
  readonly without = new SvelteSet<string>()
  private readonly plan: Plan

  private readonly rows = $derived.by(() =>
    (this.plan.query.value?.rooms ?? []).filter(room => room.storey === this.plan.storey),
  )
  readonly shown = $derived.by(() => this.asked && this.plan.waiting.length > 0)
  readonly proposal = $derived(this.shown ? putTogether(this.rows, this.without) : { put: [], left: [] })
  /** Walls that become one with it, and those that do not. */
  readonly shared = $derived(
    this.shown
      ? sharedTogether(this.rows, this.proposal.put, rules.figure('closesWithin'))
      : { walls: [], doorways: [], not: [] },
  )
  /** Whether walls and doorways become one in the same edit. */
  sharing = $state(true)
  /** Where each would stand: its corners, and the doorways by which it would meet others. */
  readonly drawn = $derived(
    this.proposal.put.flatMap(({ room, place, ties }) => {
      const row = this.row(room)
      if (row === undefined) return []
      const doors = row.walls.flatMap(wall =>
        wall.openings.flatMap(({ id, x, width }) => {
          const tie = ties.find(each => each.opening === id)
          const on = (far: number) => toBuilding(place, along(wall, far))
          return tie === undefined ? [] : [{ id, from: on(x), to: on(x + width), fits: tie.fits }]
        }),
      )
      return [{ room, name: row.name, corners: row.walls.map(wall => toBuilding(place, wall.from)), doors }]
    }),
  )
  /** Of all that stands and would stand; null while nothing is proposed. */
  readonly box = $derived.by(() => {
    if (!this.shown) return null
    const placed = this.rows.filter(room => room.at !== null).flatMap(room => room.walls.map(wall => wall.from))
    return boxOf([...placed, ...this.drawn.flatMap(each => each.corners)])
  })

  constructor(plan: Plan) {
    this.plan = plan
  }

  row(room: string) {
    return this.rows.find(one => one.id === room)
  }

  nameOf(room: string): string {
    return this.row(room)?.name ?? ''
  }

  propose(): void {
    this.plan.select(null)
    this.without.clear()
    this.sharing = true
    this.asked = true
  }

  leave(): void {
    this.asked = false
  }

  toggle(room: string): void {
    if (!this.without.delete(room)) this.without.add(room)
  }

  /** One edit, which one undo takes back. */
  async take(): Promise<void> {
    const places = new Map(this.proposal.put.map(({ room, place }) => [room, place]))
    const { walls, doorways } = this.shared
    const one = {
      walls: walls.map(({ a, b, thickness }) => ({ id: a.id, with: b.id, thickness })),
      doorways: doorways.map(([id, other]): [string, string] => [id, other]),
    }
    const { sharing } = this
    this.asked = false
    await this.plan.put(places, sharing ? one : {})
  }
}
