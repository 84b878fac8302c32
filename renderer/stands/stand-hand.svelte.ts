/**
 * The hand on what stands in a room: one is chosen, dragged from where it was taken hold of, nudged or turned by keys.
 * Whatever it does until it lets go is one edit, based on the place it began from.
 */
import type { Finding } from '../../src/contract/shared.ts'
import type { Point } from '../../src/drawing/room-plan.ts'
import { angleOf, sideOf, turnedTo } from '../../src/plan/partition.ts'
import { wholeTurn } from '../../src/plan/place.ts'
import { call } from '../host/client.svelte.ts'
import { DraftHand } from '../shell/draft-hand.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'
import { calledItem, draggedPoints, endsOf, type Item, itemAt, pointsOf, samePoints } from './item.ts'

interface Hold {
  readonly of: Item
  readonly grip: number | null
  readonly from: Point
}

class StandHand extends DraftHand<Item, readonly Point[], Hold> {
  /** The face of a partition that one stands before. */
  face = $state<string | null>(null)
  /** Works that no longer fit since a partition was moved. */
  noLongerFits = $state.raw<readonly Finding[]>([])
  /** How a thing was turned last, and the row that was on the screen then: its answer may not be here yet. */
  private turned: { readonly seen: unknown; readonly to: number } | null = null

  protected rowOf = ({ row }: Item) => row
  protected stored = pointsOf
  protected same = samePoints
  protected placed = (item: Item, points: readonly Point[]) => itemAt(item, points)
  protected put = (item: Item, points: readonly Point[]) => this.write(item, points)

  /** Where it stands now: under the hand, or as stored. */
  pointsOf(item: Item): readonly Point[] {
    return this.now(item)
  }

  override leave(): void {
    super.leave()
    this.face = null
    this.noLongerFits = []
  }

  take(item: Item, grip: number | null, from: Point): void {
    this.begin({ of: item, grip, from })
  }

  move([x, y]: Point): void {
    if (this.hold === null) return
    const { of, grip, from } = this.hold
    this.drawn(of, draggedPoints(pointsOf(of), grip, x - from[0], y - from[1], this.step))
  }

  /** Pressed and let go of in one place, a partition is stood before, on the side that was pressed. */
  release(): void {
    const { hold, moved } = this
    this.hold = null
    if (hold !== null && hold.grip === null && !moved) this.standBefore(hold.of, hold.from)
    void this.land()
  }

  /** Before the side that the point is on; without one before side a, or the other side if one stands there. */
  standBefore({ family, row }: Item, from: Point | null = null): void {
    if (family !== 'partition') return
    const { a, b } = row.faces
    this.chosen = row.id
    this.face = from === null ? (this.face === a ? b : a) : row.faces[sideOf(row.ends, from)]
  }

  nudge(item: Item, x: number, y: number, large: boolean): void {
    const now = this.pointsOf(item)
    this.stepped(item, large, by => draggedPoints(now, null, x * by, y * by, this.step))
  }

  /** Turned by so many degrees: a thing about its middle, a partition and a track too. */
  async turn(item: Item, by: number): Promise<void> {
    if (item.family !== 'thing') {
      return this.putNow(item, points => turnedTo(endsOf(points), angleOf(endsOf(points)) + by))
    }
    void this.land()
    const { row } = item
    const was = this.turned?.seen === row ? this.turned.to : row.turn
    const to = wholeTurn(was + by)
    this.turned = { seen: row, to }
    const done = await this.done(item, () => call('standing.update', { id: row.id, changes: { turn: { was, to } } }))
    if (!done) this.turned = null
  }

  /** Puts a partition or a track between two ends. False where that did not go through. */
  write(item: Item, points: readonly Point[]): Promise<boolean> {
    const { id } = item.row
    if (item.family === 'thing') {
      const [[x, y] = [0, 0]] = points
      const at = { was: item.row.at, to: [x, y] as [number, number] }
      return this.done(item, () => call('standing.update', { id, changes: { at } }))
    }
    const ends = { was: item.row.ends, to: endsOf(points) }
    if (item.family === 'track') return this.done(item, () => call('track.update', { id, changes: { ends } }))
    return this.done(item, async () => {
      const { noLongerFits, clashes } = await call('partition.update', { id, changes: { ends } })
      this.noLongerFits = noLongerFits
      return { clashes }
    })
  }

  private async done(item: Item, change: () => Promise<{ readonly clashes: readonly unknown[] }>): Promise<boolean> {
    let clashed = false
    const went = await frame.attempt(async () => {
      const { clashes } = await change()
      clashed = clashes.length > 0
      if (clashed) frame.say(`Meanwhile somebody else has moved ${calledItem(item)}. It stands where they put it.`)
    })
    return went && !clashed
  }

  async remove(item: Item): Promise<void> {
    await this.land()
    const { id } = item.row
    const gone = await frame.attempt(() =>
      item.family === 'thing'
        ? call('standing.remove', { id })
        : item.family === 'track'
          ? call('track.remove', { id })
          : call('partition.remove', { id }),
    )
    if (!gone) return
    this.chosen = null
    frame.say(`${calledItem(item)} is removed. Take it back with undo.`)
  }
}

export const standHand = new StandHand()
