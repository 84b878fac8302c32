/**
 * The chosen wall under the hand: moved along its normal, or turned about its other end, its middle, by pointer, keys or
 * a figure. Everything is computed from where it stood. A wall between two rooms goes with both its sides. Before it is
 * written, what becomes of the next room, and what was measured and says otherwise, is told and asked about.
 */
import type { Point } from '../../src/drawing/room-plan.ts'
import { atOdds, bendable } from '../../src/plan/bend.ts'
import { bendSide } from '../../src/plan/bend-both.ts'
import { snapShift, snapTurn, type WallHold } from '../../src/plan/snap-wall.ts'
import type { Pivot } from '../../src/plan/turn-wall.ts'
import { watch } from '../host/catalogue.svelte.ts'
import { call, refusalOf } from '../host/client.svelte.ts'
import { desk } from '../host/desk.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'
import { roundStep } from './drafting.svelte.ts'
import { type Before, drawnBent, OtherSide, sideOf } from './other-side.svelte.ts'
import type { Plan } from './plan.svelte.ts'
import type { Sight } from './sight.svelte.ts'

/** How far a press goes before it is a drag, and how near holds, pixels; degrees. */
const [slack, reach, turnReach] = [4, 9, 2]
/** Steps by the keyboard that follow each other as quickly as this are one edit, milliseconds. */
const rest = 600

export type Deed =
  | { readonly is: 'shift'; readonly by: number }
  | { readonly is: 'turn'; readonly about: Pivot; readonly by: number }

type Holding = Before & { readonly from: Point; readonly grip: 'wall' | 'left' | 'right'; readonly moving: boolean }

export class Bending {
  deed = $state.raw<Deed | null>(null)
  hold = $state.raw<WallHold | null>(null)
  problem = $state('')
  /** The next room, or what was measured otherwise, waits for an answer. */
  asking = $state(false)
  private holding: Holding | null = null
  private before: Before | null = null
  private timer: ReturnType<typeof setTimeout> | undefined
  private readonly plan: Plan
  private readonly sight: Sight
  readonly other: OtherSide
  readonly survey = watch('survey.get', () => (this.plan.selectedWall === null ? null : { room: this.plan.room ?? '' }))
  readonly says = $derived.by(() => {
    const { deed, hold, problem } = this
    if (deed === null || this.asking) return ''
    if (problem !== '') return `▲ ${problem}`
    const how =
      deed.is === 'turn'
        ? `turned ${Math.round(deed.by * 10) / 10}°`
        : `${desk.lengthWithUnit(Math.abs(deed.by))} ${deed.by < 0 ? 'into the room' : 'outwards'}`
    return hold === null ? how : `${how} · ${hold.says}`
  })
  /** Measures that would no longer be true, to be told. */
  readonly odds = $derived.by(() => {
    const { deed, before } = this
    const measures = this.survey.value?.measures
    if (deed === null || before === null || measures === undefined) return []
    const bent = bendSide(sideOf(before), deed)
    return bent.ok ? atOdds(measures, bendable(before.room.walls), bent) : []
  })

  constructor(plan: Plan, sight: Sight) {
    this.plan = plan
    this.sight = sight
    this.other = new OtherSide(plan, () => this.deed)
  }

  private get chosen(): Before | null {
    const room = this.plan.selected
    const index = room?.walls.findIndex(({ id }) => id === this.plan.wall) ?? -1
    return room === null || index < 0 ? null : { room, index }
  }

  /** Takes the chosen wall, by itself or by an end that turns about the other. */
  press(at: Point, grip: Holding['grip']): boolean {
    const chosen = this.chosen
    if (chosen === null || this.asking) return false
    this.settle()
    this.holding = { ...chosen, from: at, grip, moving: false }
    return true
  }

  /** @param free holds nothing @param middle an end turns the wall about its middle */
  move(at: Point, free: boolean, middle: boolean): boolean {
    const { holding } = this
    if (holding === null) return false
    if (!holding.moving && Math.hypot(at[0] - holding.from[0], at[1] - holding.from[1]) <= slack) return true
    if (!holding.moving) {
      this.sight.keep()
      this.holding = { ...holding, moving: true }
    }
    const [from, to] = [this.sight.fromSheet(holding.from), this.sight.fromSheet(at)]
    if (this.before !== holding) this.begin(holding)
    this.draw(holding.grip === 'wall' ? this.shifted(holding, from, to, free) : this.turned(holding, to, free, middle))
    return true
  }

  private begin(before: Before | null): void {
    this.before = before
    this.other.begin(before)
  }

  private others({ room, index }: Before) {
    const backs = room.walls[index]?.backs
    return this.plan.rooms
      .filter(one => one.placed || one.id === room.id)
      .flatMap(one =>
        one.walls.map((wall, at) => ({
          called: one.id === room.id ? wall.name : `${one.name}, ${wall.name}`,
          sameRoom: one.id === room.id,
          own: wall.id === backs || (one.id === room.id && at === index),
          wall: one.id === room.id ? (room.walls[at] ?? wall) : wall,
        })),
      )
      .filter(({ own }) => !own)
      .map(({ called, sameRoom, wall: { from, to, thickness } }) => ({ called, sameRoom, from, to, thickness }))
  }

  private shifted(before: Before, from: Point, to: Point, free: boolean): Deed {
    const wall = before.room.walls[before.index]
    if (wall === undefined) return { is: 'shift', by: 0 }
    const out = outOf(wall)
    const by = Math.round((to[0] - from[0]) * out[0] + (to[1] - from[1]) * out[1])
    const { scale } = this.sight.view
    this.hold = snapShift({
      wall,
      others: this.others(before),
      walls: bendable(before.room.walls),
      index: before.index,
      by,
      reach: free ? 0 : reach / scale,
      grid: roundStep(scale),
      say: mm => desk.lengthWithUnit(mm),
    })
    return { is: 'shift', by: tidy(this.hold?.by ?? by) }
  }

  private turned({ room, index, grip }: Holding, to: Point, free: boolean, middle: boolean): Deed {
    const wall = room.walls[index]
    if (wall === undefined) return { is: 'turn', about: 'left', by: 0 }
    const half: Point = [(wall.from[0] + wall.to[0]) / 2, (wall.from[1] + wall.to[1]) / 2]
    const about: Pivot = middle ? 'middle' : grip === 'left' ? 'right' : 'left'
    const pivot = { left: wall.from, middle: half, right: wall.to }[about]
    const end = grip === 'left' ? wall.from : wall.to
    const bearing = (of: Point) => (Math.atan2(of[1] - pivot[1], of[0] - pivot[0]) * 180) / Math.PI
    const by = ((((bearing(to) - bearing(end)) % 360) + 540) % 360) - 180
    const question = { wall, others: this.others({ room, index }), walls: bendable(room.walls), index, by }
    this.hold = snapTurn({ ...question, reach: free ? 0 : turnReach })
    return { is: 'turn', about, by: this.hold?.by ?? Math.round(by * 10) / 10 }
  }

  /** What it comes to is drawn; what cannot be is said, and the last that could stays drawn. */
  private draw(deed: Deed): void {
    const { before } = this
    if (before === null) return
    const bent = bendSide(sideOf(before), deed)
    this.problem = bent.ok ? '' : bent.problem
    this.deed = deed
    const { drawn } = this.other
    if (bent.ok) this.plan.bend([drawnBent(before, bent), ...(drawn === null ? [] : [drawn])])
  }

  /** Ends a drag; false where the press went nowhere. */
  release(): boolean {
    const { holding } = this
    this.holding = null
    if (holding?.moving !== true) return false
    void this.land()
    return true
  }

  /** A step along the normal by an arrow key; false where the arrow runs along the wall. */
  nudge(x: number, y: number): boolean {
    const chosen = this.chosen
    const wall = chosen?.room.walls[chosen.index]
    if (wall === undefined || this.asking) return false
    const out = outOf(wall)
    const along = x * out[0] + y * out[1]
    const size = Math.hypot(x, y)
    if (Math.abs(along) < size * 0.5) return false
    const gone = this.deed?.is === 'shift' ? this.deed.by : 0
    this.step({ is: 'shift', by: gone + Math.sign(along) * size })
    return true
  }

  turnBy(degrees: number, about: Pivot = 'middle'): void {
    const gone = this.deed?.is === 'turn' && this.deed.about === about ? this.deed.by : 0
    this.step({ is: 'turn', about, by: gone + degrees })
  }

  private step(deed: Deed): void {
    if (this.asking || this.holding !== null) return
    if (this.deed === null || this.before === null) this.begin(this.chosen)
    this.sight.keep()
    this.hold = null
    this.draw(deed)
    clearTimeout(this.timer)
    this.timer = setTimeout(() => void this.land(), rest)
  }

  /** By a figure that was typed: written at once, or asked about. */
  async type(deed: Deed): Promise<void> {
    this.cancel()
    this.begin(this.chosen)
    this.sight.keep()
    this.draw(deed)
    await this.land()
  }

  /** Steps that were taken are written before something else begins. */
  private settle(): void {
    if (this.deed !== null) void this.land()
  }

  /** Writes what was done, unless the next room goes with it or something measured says otherwise: that is asked first. */
  async land(): Promise<void> {
    clearTimeout(this.timer)
    const { deed, problem } = this
    if (deed === null || this.asking) return
    if (problem !== '') {
      frame.say(problem)
      this.cancel()
    } else if (Math.abs(deed.by) < 1e-3) this.cancel()
    else if (this.odds.length > 0 || this.other.before !== null) this.asking = true
    else await this.write(false)
  }

  /** @param alone this side of a wall between two rooms, the other stays */
  async write(setAside: boolean, alone = false): Promise<void> {
    const { deed, before } = this
    const wall = before?.room.walls[before.index]
    if (deed === null || wall === undefined) return
    this.asking = false
    try {
      const { id } = wall
      const how = { setAside, alone }
      if (deed.is === 'shift') await call('wall.shift', { id, by: deed.by, ...how })
      else await call('wall.turn', { id, about: deed.about, by: deed.by, ...how })
      if (alone && this.before !== null) this.drawAlone(this.before, deed)
      this.end()
      this.plan.bent(true)
    } catch (thrown) {
      const refused = refusalOf(thrown)
      // Somebody measured it meanwhile, or the survey was not there yet.
      if (refused.code === 'measured-otherwise') this.asking = true
      else {
        frame.say(refused.message)
        this.cancel()
      }
    }
  }

  /** What stands until the catalogue says so too. */
  private drawAlone(before: Before, deed: Deed): void {
    const bent = bendSide(sideOf(before), deed)
    if (bent.ok) this.plan.bend([drawnBent(before, bent)])
  }

  private end(): void {
    clearTimeout(this.timer)
    this.holding = null
    this.begin(null)
    this.deed = null
    this.hold = null
    this.problem = ''
    this.asking = false
  }

  /** As if it had not been; false where nothing was going on. */
  cancel(): boolean {
    const busy = this.deed !== null || this.holding !== null
    this.end()
    if (busy) this.plan.bent(false)
    return busy
  }
}

function outOf({ from, to }: { readonly from: Point; readonly to: Point }): Point {
  const run = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  return [(to[1] - from[1]) / run, -(to[0] - from[0]) / run]
}

/** To a hundredth of a millimetre: what holds is no finer than that. */
function tidy(mm: number): number {
  return Math.round(mm * 100) / 100
}
