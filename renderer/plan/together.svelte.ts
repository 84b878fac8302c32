/** Rooms without a place put together from their doorways: what is proposed, and which of them are to be left as they are. */
import { SvelteSet } from 'svelte/reactivity'
import { boxOf, toBuilding } from '../../src/plan/place.ts'
import { putTogether } from '../../src/plan/put-together.ts'
import type { Plan } from './plan.svelte.ts'
import type { Sight } from './sight.svelte.ts'

export class Together {
  /** Shown because somebody asked, and while rooms wait for a place. */
  private asked = $state(false)
  readonly without = new SvelteSet<string>()
  private readonly plan: Plan
  private readonly sight: Sight

  private readonly rows = $derived.by(() =>
    (this.plan.query.value?.rooms ?? []).filter(room => room.storey === this.plan.storey),
  )
  readonly shown = $derived.by(() => this.asked && this.plan.waiting.length > 0)
  readonly proposal = $derived(this.shown ? putTogether(this.rows, this.without) : { put: [], left: [] })
  /** Where each would stand, as corners. */
  readonly drawn = $derived(
    this.proposal.put.flatMap(({ room, place }) => {
      const row = this.row(room)
      return row === undefined
        ? []
        : [{ room, name: row.name, corners: row.walls.map(wall => toBuilding(place, wall.from)) }]
    }),
  )

  constructor(plan: Plan, sight: Sight) {
    this.plan = plan
    this.sight = sight
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
    this.asked = true
    this.look()
  }

  /** All that stands and would stand. */
  look(): void {
    const placed = this.rows.filter(room => room.at !== null).flatMap(room => room.walls.map(wall => wall.from))
    const box = boxOf([...placed, ...this.drawn.flatMap(each => each.corners)])
    if (box !== null) this.sight.fit(box)
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
    this.asked = false
    await this.plan.put(places)
  }
}
