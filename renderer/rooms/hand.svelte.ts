/**
 * What the hand does with things on a wall: one is chosen, dragged or stretched from where it was taken hold of, or
 * nudged by keys. Whatever it does until it lets go is one edit, based on the place it began from.
 */
import type { Input, Output } from '../../src/contract/contract.ts'
import { call } from '../host/client.svelte.ts'
import { desk } from '../host/desk.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'
import { dragged, type Fixture, type Grip, type Place, samePlace, whole } from './fixture.ts'

type Changes = Input<'keepClear.update'>['changes']
type Clashes = Output<'keepClear.update'>['clashes']
type Point = readonly [number, number]
interface Size {
  readonly length: number
  readonly height: number
}

/** Nudges that follow each other as quickly as this, milliseconds, are one edit. */
const rest = 450

interface Draft {
  readonly row: Fixture
  readonly place: Place
  /** Written; it stands until the catalogue's own answer is here. */
  readonly landed: boolean
}

/** Writes one change; the catalogue answers which fields clash. */
export function changeFixture(fixture: Fixture, changes: Changes): Promise<{ readonly clashes: Clashes }> {
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

class Hand {
  chosen = $state<string | null>(null)
  private draft = $state.raw<Draft | null>(null)
  private hold: { readonly row: Fixture; readonly grip: Grip; readonly from: Point; readonly wall: Size } | null = null
  private timer: ReturnType<typeof setTimeout> | undefined
  /** Fields that somebody else had changed meanwhile. */
  clash = $state.raw<{ readonly row: Fixture; readonly place: Place; readonly clashes: Clashes } | null>(null)

  private get step(): number {
    return desk.imperial ? 25.4 / desk.fraction : 1
  }

  /** Where it stands now: under the hand, or as stored. */
  placeOf(row: Fixture): Place {
    const { draft } = this
    if (draft === null || draft.row.id !== row.id || (draft.landed && draft.row !== row)) return row
    return draft.place
  }

  take(row: Fixture, grip: Grip, from: Point, wall: Size): void {
    void this.land()
    this.chosen = row.id
    this.hold = { row, grip, from, wall }
  }

  /** `to` in millimetres on the wall, y up. */
  move(to: Point): void {
    if (this.hold === null) return
    const { row, grip, from, wall } = this.hold
    const place = dragged(row, grip, to[0] - from[0], to[1] - from[1], wall, this.step)
    this.draft = { row, place, landed: false }
  }

  release(): void {
    this.hold = null
    void this.land()
  }

  /** By whole steps; `large` is ten of them, or an inch. */
  nudge(row: Fixture, x: number, y: number, large: boolean, wall: Size): void {
    const by = large ? (desk.imperial ? 25.4 : 10) : this.step
    const origin = this.draft !== null && !this.draft.landed && this.draft.row.id === row.id ? this.draft.row : row
    const now = this.placeOf(row)
    const place = dragged(now, whole, x * by, y * by, wall, this.step)
    this.draft = { row: origin, place, landed: false }
    clearTimeout(this.timer)
    this.timer = setTimeout(() => void this.land(), rest)
  }

  /** Ends what goes on as if it had not been; false where nothing does. */
  cancel(): boolean {
    const going = this.hold !== null || (this.draft !== null && !this.draft.landed)
    clearTimeout(this.timer)
    this.hold = null
    this.draft = null
    return going
  }

  async land(): Promise<void> {
    clearTimeout(this.timer)
    const { draft } = this
    if (draft === null || draft.landed) return
    if (samePlace(draft.row, draft.place)) {
      this.draft = null
      return
    }
    this.draft = { ...draft, landed: true }
    await this.write(draft.row, draft.row, draft.place)
  }

  private async write(row: Fixture, was: Place, to: Place): Promise<void> {
    const changed = (['x', 'y', 'width', 'height'] as const).filter(field => was[field] !== to[field])
    const changes: Changes = Object.fromEntries(changed.map(field => [field, { was: was[field], to: to[field] }]))
    const done = await frame.attempt(async () => {
      const { clashes } = await changeFixture(row, changes)
      this.clash = clashes.length === 0 ? null : { row, place: to, clashes }
    })
    if (!done || this.clash !== null) this.draft = null
  }

  /** Writes over what somebody else had written meanwhile. */
  async insist(): Promise<void> {
    const { clash } = this
    if (clash === null) return
    this.clash = null
    const theirs = Object.fromEntries(clash.clashes.map(one => [one.field, one.theirs]))
    await this.write(clash.row, { ...clash.place, ...theirs }, clash.place)
  }

  async remove(row: Fixture): Promise<void> {
    await this.land()
    const gone = await frame.attempt(() =>
      row.family === 'opening' ? call('opening.remove', { id: row.id }) : call('keepClear.remove', { id: row.id }),
    )
    if (gone) this.chosen = null
  }
}

export const hand = new Hand()
