/** The other side of the wall under the hand, in the next room: what becomes of it, and of the wall if it stays. */
import { facing } from '../../src/plan/back-to-back.ts'
import { atOdds, type Bent, bendable, bentWalls } from '../../src/plan/bend.ts'
import { type Alone, bendSide, type Deed, otherDeed, type Side, sideAlone } from '../../src/plan/bend-both.ts'
import { aloneSaid, lengthsSaid } from '../../src/plan/bend-said.ts'
import { bentRoom, type DrawnRoom } from '../../src/plan/drawn-room.ts'
import { watch } from '../host/catalogue.svelte.ts'
import { desk } from '../host/desk.svelte.ts'
import type { Plan } from './plan.svelte.ts'

/** A room as it was, seen from one of its walls. */
export interface Before {
  readonly room: DrawnRoom
  readonly index: number
}

export const sideOf = ({ room, index }: Before): Side<DrawnRoom['walls'][number]> => ({
  walls: room.walls,
  index,
  placed: room.placed,
})

/** The room as it is drawn with a wall elsewhere. */
export function drawnBent({ room, index }: Before, bent: Bent & { readonly ok: true }): DrawnRoom {
  return bentRoom(room, bentWalls(room.walls, index, bent))
}

export class OtherSide {
  private own = $state.raw<Before | null>(null)
  before = $state.raw<Before | null>(null)
  private readonly deedOf: () => Deed | null
  private readonly plan: Plan
  private readonly survey = watch('survey.get', () => (this.before === null ? null : { room: this.before.room.id }))

  /** What the other face does; a sentence where it cannot. */
  readonly goes = $derived.by((): Bent | null => {
    const { own, before } = this
    const deed = this.deedOf()
    if (own === null || before === null || deed === null) return null
    const theirs = otherDeed(sideOf(own), sideOf(before), deed)
    return theirs.ok ? bendSide(sideOf(before), theirs.deed) : theirs
  })
  readonly wall = $derived(this.before?.room.walls[this.before.index] ?? null)
  readonly problem = $derived(this.goes?.ok === false ? this.goes.problem : '')
  /** Measures of the next room that would no longer be true. */
  readonly odds = $derived.by(() => {
    const measures = this.survey.value?.measures
    if (this.before === null || this.goes?.ok !== true || measures === undefined) return []
    return atOdds(measures, bendable(this.before.room.walls), this.goes)
  })
  readonly lengths = $derived(
    this.before !== null && this.goes?.ok === true
      ? lengthsSaid(bendable(this.before.room.walls), this.goes, mm => desk.lengthWithUnit(mm))
      : '',
  )
  private readonly alone = $derived.by((): Alone | null => {
    const deed = this.deedOf()
    const wall = this.own?.room.walls[this.own.index]
    if (this.own === null || wall === undefined || this.wall === null || deed === null) return null
    const placed = this.own.room.placed && this.before?.room.placed === true
    const apart = placed ? (facing(wall, this.wall)?.apart ?? null) : null
    return sideAlone(wall.length, wall.thickness, apart, deed)
  })
  readonly byItself = $derived(
    this.alone === null
      ? { can: true, says: '' }
      : aloneSaid(this.alone, this.wall?.thickness ?? null, mm => desk.lengthWithUnit(mm)),
  )

  constructor(plan: Plan, deedOf: () => Deed | null) {
    this.plan = plan
    this.deedOf = deedOf
  }

  /** Looks for it; none where the wall stands by itself. */
  begin(own: Before | null): void {
    this.own = own
    const backs = own?.room.walls[own.index]?.backs ?? null
    const room = backs === null ? undefined : this.plan.rooms.find(({ walls }) => walls.some(({ id }) => id === backs))
    const index = room?.walls.findIndex(({ id }) => id === backs) ?? -1
    this.before = room === undefined || index < 0 ? null : { room, index }
  }

  /** The next room as it would be drawn; null where it stays as it is. */
  readonly drawn = $derived(this.before !== null && this.goes?.ok === true ? drawnBent(this.before, this.goes) : null)
}
