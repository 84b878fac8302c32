/**
 * What the hand does with things on a wall: one is chosen, dragged or stretched from where it was taken hold of, or
 * nudged by keys. Whatever it does until it lets go is one edit, based on the place it began from.
 */
import type { Input, Output } from '../../src/contract/contract.ts'
import { call } from '../host/client.svelte.ts'
import { DraftHand } from '../shell/draft-hand.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'
import { dragged, type Fixture, type Grip, type HeldFixture, type Place, samePlace, whole } from './fixture.ts'

type Changes = Input<'keepClear.update'>['changes']
type Clashes = Output<'keepClear.update'>['clashes']
type Point = readonly [number, number]
interface Size {
  readonly length: number
  readonly height: number
}

/** Writes one change; the catalogue answers which fields clash. */
export function changeFixture(fixture: HeldFixture, changes: Changes): Promise<{ readonly clashes: Clashes }> {
  if (fixture.family === 'keepClear') return call('keepClear.update', { id: fixture.id, changes })
  const { margin: _, reason: __, kind: ___, reachable: ____, ...shared } = changes
  return changeOpening(fixture, shared)
}

/** What an opening alone has: how its leaves turn, where it leads. */
export function changeOpening(
  { id, side }: Pick<Extract<Fixture, { family: 'opening' }>, 'id' | 'side'>,
  changes: Input<'opening.update'>['changes'],
) {
  return call('opening.update', { id, side, changes })
}

interface Hold {
  readonly of: HeldFixture
  readonly grip: Grip
  readonly from: Point
  readonly wall: Size
}

class Hand extends DraftHand<HeldFixture, Place, Hold> {
  /** Fields that somebody else had changed meanwhile. */
  clash = $state.raw<{ readonly row: HeldFixture; readonly place: Place; readonly clashes: Clashes } | null>(null)

  protected rowOf = (row: HeldFixture) => row
  protected stored = (row: HeldFixture): Place => row
  protected same = samePlace
  protected placed = (row: HeldFixture, { x, y, width, height }: Place): HeldFixture => ({
    ...row,
    x,
    y,
    width,
    height,
  })
  protected put = (row: HeldFixture, to: Place) => this.write(row, row, to)

  /** Where it stands now: under the hand, or as stored. */
  placeOf(row: HeldFixture): Place {
    return this.now(row)
  }

  take(row: HeldFixture, grip: Grip, from: Point, wall: Size): void {
    this.begin({ of: row, grip, from, wall })
  }

  /** `to` in millimetres on the wall, y up. */
  move(to: Point): void {
    if (this.hold === null) return
    const { of, grip, from, wall } = this.hold
    this.drawn(of, dragged(of, grip, to[0] - from[0], to[1] - from[1], wall, this.step))
  }

  release(): void {
    this.hold = null
    void this.land()
  }

  nudge(row: HeldFixture, x: number, y: number, large: boolean, wall: Size): void {
    const now = this.placeOf(row)
    this.stepped(row, large, by => dragged(now, whole, x * by, y * by, wall, this.step))
  }

  private async write(row: HeldFixture, was: Place, to: Place): Promise<boolean> {
    const changed = (['x', 'y', 'width', 'height'] as const).filter(field => was[field] !== to[field])
    const changes: Changes = Object.fromEntries(changed.map(field => [field, { was: was[field], to: to[field] }]))
    const done = await frame.attempt(async () => {
      const { clashes } = await changeFixture(row, changes)
      this.clash = clashes.length === 0 ? null : { row, place: to, clashes }
    })
    return done && this.clash === null
  }

  /** Writes over what somebody else had written meanwhile. */
  async insist(): Promise<void> {
    const { clash } = this
    if (clash === null) return
    this.clash = null
    const theirs = Object.fromEntries(clash.clashes.map(one => [one.field, one.theirs]))
    if (!(await this.write(clash.row, { ...clash.place, ...theirs }, clash.place))) this.forget()
  }

  async remove(row: HeldFixture): Promise<void> {
    await this.land()
    const gone = await frame.attempt(() =>
      row.family === 'opening' ? call('opening.remove', { id: row.id }) : call('keepClear.remove', { id: row.id }),
    )
    if (gone) this.chosen = null
  }
}

export const hand = new Hand()
