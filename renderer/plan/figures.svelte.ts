/** The dimension figures that are on the plan, and the one that is typed anew. */
import type { Point } from '../../src/drawing/room-plan.ts'
import { figureAt, type StringText, stringsOf } from '../../src/plan/dimension-strings.ts'
import type { DrawnRoom } from '../../src/plan/drawn-room.ts'
import { figureName, type Stretch } from '../../src/plan/typed-figure.ts'
import { desk } from '../host/desk.svelte.ts'
import type { Plan } from './plan.svelte.ts'
import type { Sight } from './sight.svelte.ts'

const say = (mm: number) => desk.length(mm)

/** A room smaller than this on the screen shows no dimensions and nothing on its walls, pixels. */
const nearEnough = 150

export class Figures {
  typed = $state.raw<{ readonly room: string; readonly wall: string; readonly stretch: Stretch } | null>(null)
  private readonly plan: Plan
  private readonly sight: Sight
  /** Those of the chosen room, which the keyboard goes to; its box on the sheet moves with the view. */
  readonly chosen = $derived.by((): readonly StringText[] => {
    const room = this.plan.selected
    const { scale } = this.sight.told
    return room !== null && this.near(room, scale) ? stringsOf(room.walls, scale, say).texts : []
  })
  readonly room = $derived.by(() => this.plan.rooms.find(({ id }) => id === this.typed?.room) ?? null)
  readonly wall = $derived(this.room?.walls.find(({ id }) => id === this.typed?.wall) ?? null)

  constructor(plan: Plan, sight: Sight) {
    this.plan = plan
    this.sight = sight
  }

  near({ lines: { box } }: DrawnRoom, scale: number): boolean {
    return Math.min(box.right - box.left, box.bottom - box.top) * scale > nearEnough
  }

  /** Opens the figure under a point of the sheet; false where there is none. */
  press(at: Point): boolean {
    const { scale, x, y } = this.sight.view
    for (const room of this.plan.rooms) {
      if (!this.near(room, scale)) continue
      const found = figureAt(stringsOf(room.walls, scale, say).texts, [at[0] - x, at[1] - y], say)
      if (found === null) continue
      this.begin(room.id, found)
      return true
    }
    return false
  }

  begin(room: string, { wall, from, to }: StringText): void {
    this.sight.keep()
    if (this.plan.room !== room) this.plan.select(room)
    this.typed = { room, wall, stretch: { from, to } }
  }

  name({ wall, from, to }: StringText): string {
    const found = this.plan.selected?.walls.find(({ id }) => id === wall)
    return found === undefined ? '' : `${figureName(found, { from, to })}, ${desk.lengthWithUnit(to - from)}`
  }

  /** Where the field stands: the middle of the stretch on its wall, on the sheet. */
  readonly place = $derived.by((): Point => {
    const { wall, typed } = this
    if (wall === null || typed === null) return [0, 0]
    const share = (typed.stretch.from + typed.stretch.to) / 2 / wall.length
    const at = (axis: 0 | 1) => wall.from[axis] + (wall.to[axis] - wall.from[axis]) * share
    return this.sight.toSheet([at(0), at(1)])
  })
}
