/**
 * What the pointer does on the plan: rests, moves the view, carries a room or turns it. Each state begins with a
 * snapshot and computes from it at every move; Escape ends it as if it had not been. A press that goes nowhere chooses
 * what is under it.
 */
import type { Point } from '../../src/drawing/room-plan.ts'
import type { DrawnRoom } from '../../src/plan/drawn-room.ts'
import { type Hit, hitOn } from '../../src/plan/hit.ts'
import { type Place, toBuilding, toRoom, turnedAbout, wholeTurn } from '../../src/plan/place.ts'
import { type Hold, snapRoom } from '../../src/plan/snap-rooms.ts'
import { desk } from '../host/desk.svelte.ts'
import { show } from '../shell/show.svelte.ts'
import type { Plan } from './plan.svelte.ts'
import type { Sight } from './sight.svelte.ts'

/** How far a press goes before it is a drag, how near a face is pressed and a line holds; pixels. */
const slack = 4
const press = 7
const holds = 10
/** A turn this near to a quarter, or to the walls of another room, becomes it; degrees. */
const turnHolds = 2.5

type State =
  | { readonly is: 'resting' }
  | { readonly is: 'pressing'; readonly at: Point; readonly hit: Hit | null; readonly carries: boolean }
  | { readonly is: 'panning'; readonly at: Point }
  | { readonly is: 'carrying'; readonly from: Point; readonly room: DrawnRoom }
  | { readonly is: 'turning'; readonly about: Point; readonly from: number; readonly room: DrawnRoom }

const resting: State = { is: 'resting' }

/** A room that is under the hand, and where it would be put. */
export interface Carried {
  readonly room: DrawnRoom
  readonly place: Place
}

export class Hand {
  state = $state.raw<State>(resting)
  carried = $state.raw<Carried | null>(null)
  holds = $state.raw<readonly Hold[]>([])
  says = $state('')
  spaceDown = $state(false)
  private readonly plan: Plan
  private readonly sight: Sight
  private nudged: ReturnType<typeof setTimeout> | undefined

  constructor(plan: Plan, sight: Sight) {
    this.plan = plan
    this.sight = sight
  }

  press(at: Point, button: number): void {
    this.land()
    if (button === 1 || (button === 0 && this.spaceDown)) this.state = { is: 'panning', at }
    else if (button === 0) {
      const hit = hitOn(this.plan.rooms, this.sight.fromSheet(at), press / this.sight.view.scale)
      const carries = hit !== null && (hit.room.id === this.plan.room || !hit.room.placed) && !show.closed
      this.state = { is: 'pressing', at, hit, carries }
    }
  }

  /** Takes a room by its turning mark. */
  pressTurn(at: Point, room: DrawnRoom): void {
    this.land()
    const about = room.middle.at
    this.state = { is: 'turning', about, from: bearing(about, this.sight.fromSheet(at)), room }
  }

  /** @param free holds nothing: the hand alone says */
  move(at: Point, free: boolean): void {
    const { state } = this
    if (state.is === 'pressing' && Math.hypot(at[0] - state.at[0], at[1] - state.at[1]) > slack) {
      if (state.carries && state.hit !== null) {
        this.sight.keep()
        this.plan.select(state.hit.room.id)
        this.state = { is: 'carrying', from: this.sight.fromSheet(state.at), room: state.hit.room }
      } else this.state = { is: 'panning', at: state.at }
      this.move(at, free)
    } else if (state.is === 'panning') {
      this.sight.pan(at[0] - state.at[0], at[1] - state.at[1])
      this.state = { is: 'panning', at }
    } else if (state.is === 'carrying') this.carry(state, this.sight.fromSheet(at), free)
    else if (state.is === 'turning') this.turn(state, this.sight.fromSheet(at), free)
  }

  private carry({ from, room }: State & { is: 'carrying' }, to: Point, free: boolean): void {
    const others = this.plan.rooms.filter(one => one.placed && one.id !== room.id)
    const reach = free ? 0 : holds / this.sight.view.scale
    const by: Point = [Math.round(to[0] - from[0]), Math.round(to[1] - from[1])]
    const snapped = snapRoom(room, by, others, reach, mm => desk.lengthWithUnit(mm))
    this.holds = snapped.holds
    this.says = snapped.holds.map(hold => hold.says).join(' · ')
    const { at, turn } = room.place
    this.carried = { room, place: { at: [tidy(at[0] + snapped.by[0]), tidy(at[1] + snapped.by[1])], turn } }
  }

  private turn({ about, from, room }: State & { is: 'turning' }, to: Point, free: boolean): void {
    const wanted = wholeTurn(room.place.turn + bearing(about, to) - from)
    const round = Math.round(wanted / 15) * 15
    const held = !free && Math.abs(wanted - round) <= turnHolds
    const turn = held ? round : Math.round(wanted * 10) / 10
    this.says = `turned ${wholeTurn(turn)}°`
    this.carried = { room, place: turnedAbout(room.place, about, turn - room.place.turn) }
  }

  release(): void {
    const { state, carried } = this
    this.state = resting
    this.holds = []
    this.says = ''
    if (state.is === 'pressing') this.choose(state.hit)
    else if (carried !== null && (state.is === 'carrying' || state.is === 'turning')) this.put(carried)
  }

  private choose(hit: Hit | null): void {
    if (hit === null) this.plan.select(null)
    else {
      this.plan.select(hit.room.id, hit.wall?.id ?? hit.face?.face ?? null)
      if (hit.work !== null) show.select([hit.work.work])
    }
  }

  private put({ room, place }: Carried): void {
    this.carried = null
    void this.plan.put(new Map([[room.id, place]]))
  }

  cancel(): boolean {
    const busy = this.state.is !== 'resting' || this.carried !== null
    clearTimeout(this.nudged)
    this.nudged = undefined
    this.state = resting
    this.carried = null
    this.holds = []
    this.says = ''
    return busy
  }

  /** A step by the keyboard; steps that follow one another are one edit. */
  nudge(dx: number, dy: number): void {
    this.step(({ at, turn }) => ({ at: [at[0] + dx, at[1] + dy], turn }))
  }

  turnBy(degrees: number): void {
    const room = this.carried?.room ?? this.plan.selected
    if (room === null) return
    const { left, top, right, bottom } = room.lines.box
    // The middle of its box goes with the room, so that four quarters come back to where they began.
    const middle = toRoom(room.place, [(left + right) / 2, (top + bottom) / 2])
    this.step(place => turnedAbout(place, toBuilding(place, middle), degrees))
  }

  private step(change: (place: Place) => Place): void {
    const room = this.carried?.room ?? this.plan.selected
    if (room === null || this.state.is !== 'resting') return
    this.sight.keep()
    this.carried = { room, place: change(this.carried?.place ?? room.place) }
    clearTimeout(this.nudged)
    this.nudged = setTimeout(() => this.land(), 600)
  }

  /** Writes what the keyboard moved. */
  land(): void {
    clearTimeout(this.nudged)
    this.nudged = undefined
    if (this.carried !== null && this.state.is === 'resting') this.put(this.carried)
  }
}

/** To a hundredth of a millimetre: what holds is no finer than that. */
function tidy(mm: number): number {
  return Math.round(mm * 100) / 100
}

function bearing(from: Point, to: Point): number {
  return (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI
}
