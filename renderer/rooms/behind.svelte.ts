/**
 * Lists of places and heights as they are changed one figure at a time: the whole list is written, from left to right,
 * based on the list as this hand knows it, one after another. A list that somebody else has changed meanwhile is kept,
 * and said.
 */
import type { WallRow } from '../../src/contract/areas/rooms.ts'
import type { Output } from '../../src/contract/contract.ts'
import { call, Refused } from '../host/client.svelte.ts'
import { Known } from '../shell/known.svelte.ts'

export type PlacesField = 'studs' | 'joints'
export type HeightsField = 'floor' | 'ceiling' | 'rail'
/** Where from the left end, and how high; mm. */
export type Height = readonly [number, number]
type Saved = Output<'wall.update'>

export class Measured<T extends number | Height> {
  private readonly wall: () => WallRow
  private readonly field: PlacesField | HeightsField
  private readonly known: Known<readonly T[]>
  /** What was written last; this is made anew for each wall. */
  private last: readonly T[] | null = null
  /** The edit before: the next one is based on what it wrote. */
  private before: Promise<unknown> = Promise.resolve()

  private constructor(wall: () => WallRow, field: PlacesField | HeightsField, list: () => readonly T[]) {
    this.wall = wall
    this.field = field
    this.known = new Known(list)
  }

  static places(wall: () => WallRow, field: PlacesField): Measured<number> {
    return new Measured<number>(wall, field, () => wall()[field])
  }

  static heights(wall: () => WallRow, field: HeightsField): Measured<Height> {
    return new Measured<Height>(wall, field, () => wall()[field])
  }

  get now(): readonly T[] {
    return this.known.now
  }

  /** Writes what `make` makes of the list. Refuses `clash` in words: a list has no two values to choose from in a cell. */
  change(make: (now: readonly T[]) => readonly T[]): Promise<Saved> {
    const { id } = this.wall()
    const then = this.known.now
    const written = this.before.then(async () => {
      // Whoever went on to another wall meanwhile still means this one.
      const was = this.wall().id === id ? this.known.now : (this.last ?? then)
      const to = [...make(was)].sort((a, b) => place(a) - place(b))
      const saved = await call('wall.update', { id, changes: { [this.field]: { was, to } } })
      if (saved.clashes.length > 0) {
        throw new Refused({
          code: 'clash',
          message: 'Meanwhile somebody else measured here. What they wrote stands here now; write yours again.',
        })
      }
      this.last = to
      this.known.keep(to)
      return saved
    })
    this.before = written.catch(() => undefined)
    return written
  }

  /** Writes another value at one place; null takes it out. */
  replace(at: number, to: T | null): Promise<Saved> {
    return this.change(now => now.flatMap((one, index) => (index !== at ? [one] : to === null ? [] : [to])))
  }
}

const place = (one: number | Height): number => (typeof one === 'number' ? one : one[0])
