/**
 * What the pointer is doing: resting, pressing a work, dragging, drawing a frame round works, or moving the view. Each
 * state begins with a snapshot and computes from it at every move, never from the move before; Escape ends it as if it
 * had not been.
 */

import type { Point, Rect } from '../../src/geometry/rect.ts'
import { overlap } from '../../src/geometry/rect.ts'
import { centreFromRule } from '../../src/hang/height.ts'
import { type SnapLine, type SnapWork, snap } from '../../src/layout/snap.ts'
import { rectOf } from '../../src/model/hung-rect.ts'
import { show } from '../shell/show.svelte.ts'
import type { Sight } from './sight.svelte.ts'
import type { Wall } from './wall.svelte.ts'

/** How near a line must be to draw a work to it, pixels, and how far a press goes before it is a drag. */
const reach = 7
const slack = 3

type State =
  | { readonly is: 'resting' }
  | { readonly is: 'pressing'; readonly from: Point; readonly placement: string; readonly only: boolean }
  | {
      readonly is: 'dragging'
      readonly from: Point
      readonly ids: ReadonlySet<string>
      readonly dragged: readonly Rect[]
      readonly others: readonly SnapWork[]
    }
  | { readonly is: 'framing'; readonly from: Point; readonly kept: readonly string[] }
  | { readonly is: 'panning'; readonly at: Point }

const resting: State = { is: 'resting' }

export class Hand {
  state = $state.raw<State>(resting)
  lines = $state.raw<readonly SnapLine[]>([])
  marquee = $state.raw<Rect | null>(null)
  snapping = $state(true)
  spaceDown = $state(false)
  private readonly wall: Wall
  private readonly sight: Sight

  constructor(wall: Wall, sight: Sight) {
    this.wall = wall
    this.sight = sight
  }

  press(at: Point, placement: string | null, event: { readonly button: number; readonly more: boolean }): void {
    void this.wall.land()
    if (event.button === 1 || (event.button === 0 && this.spaceDown)) {
      this.state = { is: 'panning', at }
      return
    }
    if (event.button !== 0) return
    if (placement === null) {
      this.state = { is: 'framing', from: at, kept: event.more ? show.selected : [] }
      return
    }
    const work = this.wall.works.find(one => one.placement === placement)?.work
    if (work === undefined) return
    if (event.more)
      show.select(show.isSelected(work) ? show.selected.filter(id => id !== work) : [...show.selected, work])
    else if (!show.isSelected(work)) show.select([work])
    this.state = { is: 'pressing', from: at, placement, only: !event.more }
  }

  move(at: Point, free: boolean): void {
    const { state } = this
    if (state.is === 'panning') {
      this.sight.pan(at.x - state.at.x, at.y - state.at.y)
      this.state = { is: 'panning', at }
    } else if (state.is === 'framing') this.frameTo(state.from, at, state.kept)
    else if (state.is === 'pressing' && Math.hypot(at.x - state.from.x, at.y - state.from.y) > slack) {
      this.begin(state.from)
      this.move(at, free)
    } else if (state.is === 'dragging') this.drag(state, at, free)
  }

  private begin(from: Point): void {
    const works = this.wall.movable(this.wall.selected)
    const ids = new Set(works.map(work => work.placement))
    if (ids.size === 0) {
      this.state = resting
      return
    }
    const rects = this.wall.works.flatMap(work => rectOf(work) ?? [])
    this.state = {
      is: 'dragging',
      from,
      ids,
      dragged: rects.filter(rect => ids.has(rect.id)),
      others: rects.filter(rect => !ids.has(rect.id)),
    }
  }

  private drag(state: State & { is: 'dragging' }, at: Point, free: boolean): void {
    const { scale } = this.sight.view
    const elevation = this.wall.elevation
    if (elevation === undefined) return
    const { plan } = elevation
    const height = state.dragged.length === 1 ? (state.dragged[0]?.height ?? 0) : 0
    const answer = snap({
      dragged: state.dragged,
      dx: (at.x - state.from.x) / scale,
      dy: (state.from.y - at.y) / scale,
      others: state.others,
      wallLength: elevation.wall.length,
      centreLine: centreFromRule({ rule: plan.rule, y: plan.centreLine, eyeFraction: plan.eyeFraction }, height),
      ramp: plan.ramp,
      threshold: free || !this.snapping ? 0 : reach / scale,
    })
    this.lines = free || !this.snapping ? [] : answer.lines
    this.wall.move(state.ids, answer.dx, answer.dy)
  }

  private frameTo(from: Point, to: Point, kept: readonly string[]): void {
    const a = this.sight.onWall(from)
    const b = this.sight.onWall(to)
    const rect = {
      x: Math.min(a.x, b.x),
      y: Math.min(a.y, b.y),
      width: Math.abs(a.x - b.x),
      height: Math.abs(a.y - b.y),
    }
    this.marquee = rect
    const inside = this.wall.works.filter(work => {
      const own = rectOf(work)
      return own !== undefined && overlap(rect, own)
    })
    show.select([...new Set([...kept, ...inside.map(work => work.work)])])
  }

  release(): void {
    const { state } = this
    this.state = resting
    this.lines = []
    this.marquee = null
    if (state.is === 'dragging') void this.wall.land()
    else if (state.is === 'framing' && state.kept.length === 0 && this.isClick(state.from)) show.select([])
    else if (state.is === 'pressing' && state.only) {
      const work = this.wall.works.find(one => one.placement === state.placement)?.work
      if (work !== undefined) show.select([work])
    }
  }

  private isClick(from: Point): boolean {
    const { hand } = this.sight
    return hand === null || Math.hypot(hand.x - from.x, hand.y - from.y) <= slack
  }

  /** Whether a hand or the arrow keys have something under way. */
  get busy(): boolean {
    return this.state.is !== 'resting' || this.wall.offset !== null
  }

  /** Ends what goes on as if it had not been; false where nothing does. */
  cancel(): boolean {
    const going = this.busy || this.wall.spots.size > 0
    this.state = resting
    this.lines = []
    this.marquee = null
    this.wall.letFall()
    return going
  }
}
