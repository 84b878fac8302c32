/**
 * The visitor's way on the plan: the order of the show's faces as the catalogue has it, as it was just asked for, or
 * while it is walked by pointing at one wall after another. A change is the whole order as one edit.
 */
import type { Output } from '../../src/contract/contract.ts'
import type { Point } from '../../src/drawing/room-plan.ts'
import { solidStretches } from '../../src/drawing/stretches.ts'
import { type Route, routePast } from '../../src/plan/route.ts'
import { routeRooms } from '../../src/plan/route-of-plan.ts'
import { type Hand, proposeOrder } from '../../src/plan/visit.ts'
import { call } from '../host/client.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'
import { show } from '../shell/show.svelte.ts'
import type { Plan } from './plan.svelte.ts'

export interface WayFace {
  readonly face: string
  readonly room: string
  readonly called: string
  readonly from: Point
  readonly to: Point
  readonly works: number
}

const nowhere: Route = { stops: [], legs: [], length: 0 }

/** Faces with a place in the order, first to last. */
function orderOf(plan: Output<'room.plan'> | undefined): readonly string[] {
  return (plan?.rooms ?? [])
    .flatMap(room => room.walls)
    .filter(wall => wall.order !== null)
    .sort((a, b) => (a.order ?? 0) - (b.order ?? 0) || (a.face < b.face ? -1 : 1))
    .map(wall => wall.face)
}

export class Way {
  shown = $state(false)
  private readonly plan: Plan
  /** Asked for, and not yet in the catalogue's answer. */
  private ahead = $state.raw<{
    readonly on: Output<'room.plan'> | undefined
    readonly order: readonly string[]
  } | null>(null)
  /** The walls pointed at so far; null while nobody walks. */
  private walked = $state.raw<readonly string[] | null>(null)
  private writing = 0
  private last = Promise.resolve()
  /** What a reader is told after a step. */
  said = $state('')

  /** Storey by storey a plan shows rooms; the way is of the whole show. */
  private readonly rooms = $derived.by(() => routeRooms(this.plan.query.value?.rooms ?? []))
  private readonly stored = $derived(orderOf(show.plan.value))
  /** As this window set it last, until the catalogue's own answer is here. */
  private asSet(): readonly string[] {
    const { ahead } = this
    return ahead !== null && (this.writing > 0 || ahead.on === show.plan.value) ? ahead.order : this.stored
  }
  readonly order = $derived(this.walked ?? this.asSet())
  readonly faces = $derived.by((): ReadonlyMap<string, WayFace> => {
    const found = new Map<string, WayFace>()
    const works = new Map(show.plan.value?.rooms.flatMap(room => room.walls).map(wall => [wall.face, wall.works]))
    const names = new Map(
      show.plan.value?.rooms.flatMap(room =>
        room.walls.map(wall => [wall.face, `${room.name}, ${wall.name}`] as const),
      ),
    )
    for (const room of this.rooms) {
      for (const { face, from, to } of [...room.walls, ...room.free]) {
        found.set(face, {
          face,
          room: room.id,
          called: names.get(face) ?? room.name,
          from,
          to,
          works: works.get(face) ?? 0,
        })
      }
    }
    return found
  })
  /** Rooms of the storey on the table. */
  private readonly here = $derived.by(() => new Set(this.plan.rooms.map(room => room.id)))
  readonly facesHere = $derived.by(() => [...this.faces.values()].filter(face => this.here.has(face.room)))
  readonly route = $derived.by((): Route => (this.shown ? routePast(this.order, this.rooms) : nowhere))
  readonly lost = $derived.by(() => this.route.legs.filter(leg => leg.lost))
  /** With works on them and no place in the order. */
  readonly forgotten = $derived.by(() =>
    [...this.faces.values()].filter(({ face, works }) => works > 0 && !this.order.includes(face)),
  )
  readonly starts = $derived.by(() => this.rooms.map(({ id, name }) => ({ id, name })))

  constructor(plan: Plan) {
    this.plan = plan
  }

  get walking(): boolean {
    return this.walked !== null
  }

  isHere(face: string): boolean {
    const known = this.faces.get(face)
    return known !== undefined && this.here.has(known.room)
  }

  walk(): void {
    this.shown = true
    this.walked = []
  }

  /** Points at a wall: the next on the way, or off it again if it was the last. */
  point(face: string): void {
    const { walked } = this
    if (walked === null) return
    if (walked.at(-1) === face) this.walked = walked.slice(0, -1)
    else if (walked.includes(face))
      this.said = `${this.called(face)} is on the way already, as number ${walked.indexOf(face) + 1}.`
    else {
      this.walked = [...walked, face]
      this.said = `${this.called(face)} is number ${walked.length + 1}.`
    }
  }

  called(face: string): string {
    return this.faces.get(face)?.called ?? 'a wall of another plan'
  }

  async arrive(): Promise<void> {
    const { walked } = this
    this.walked = null
    if (walked !== null && walked.length > 0) await this.set(walked)
  }

  /** Ends a walk as if it had not been; false where nobody walks. */
  cancel(): boolean {
    if (this.walked === null) return false
    this.walked = null
    return true
  }

  async propose(start: string, hand: Hand): Promise<void> {
    const hung = (face: string) => (this.faces.get(face)?.works ?? 0) > 0
    const all = proposeOrder(this.rooms, start, hand).filter(face => solidLength(this.rooms, face) > 0)
    const some = all.filter(hung)
    await this.set(some.length > 0 ? some : all)
  }

  async step(face: string, by: -1 | 1): Promise<void> {
    const at = this.order.indexOf(face)
    const to = at + by
    if (at < 0 || to < 0 || to >= this.order.length) return
    const rest = this.order.filter(one => one !== face)
    this.said = `${this.called(face)} is number ${to + 1} of ${this.order.length} now.`
    await this.set([...rest.slice(0, to), face, ...rest.slice(to)])
  }

  async leaveOut(face: string): Promise<void> {
    await this.set(this.order.filter(one => one !== face))
  }

  async takeIn(face: string): Promise<void> {
    await this.set([...this.order, face])
  }

  /** One write after another: each is based on the one before it. */
  set(order: readonly string[]): Promise<void> {
    const exhibition = show.id
    if (exhibition === null) return this.last
    const was = this.asSet()
    this.ahead = { on: undefined, order }
    this.writing += 1
    this.last = this.last.then(async () => {
      const done = await frame.attempt(async () => {
        const { clashes } = await call('route.set', { exhibition, order: { was: [...was], to: [...order] } })
        if (clashes.length > 0) frame.say('Meanwhile somebody else has set the order; this is theirs.')
      })
      this.writing -= 1
      if (!done) this.ahead = null
      else if (this.ahead?.order === order) this.ahead = { on: show.plan.value, order }
    })
    return this.last
  }
}

function solidLength(rooms: ReturnType<typeof routeRooms>, face: string): number {
  const found = rooms.flatMap(room => [...room.walls, ...room.free]).find(one => one.face === face)
  if (found === undefined) return 0
  return solidStretches(found.length, found.openings).reduce((sum, [from, to]) => sum + to - from, 0)
}
