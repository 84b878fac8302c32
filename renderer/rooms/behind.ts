/**
 * Lists of places and heights as they are changed one figure at a time: the whole list is written, from left to right,
 * based on the list that stood there. A list that somebody else has changed meanwhile is kept, and said.
 */
import type { WallRow } from '../../src/contract/areas/rooms.ts'
import type { Input, Output } from '../../src/contract/contract.ts'
import { call, Refused } from '../host/client.svelte.ts'

export type PlacesField = 'studs' | 'joints'
export type HeightsField = 'floor' | 'ceiling' | 'rail'
export type Height = readonly [number, number]
type Saved = Output<'wall.update'>

/** Refuses `clash` in words: a list has no two values to choose from in a cell. */
async function write(id: string, changes: Input<'wall.update'>['changes']): Promise<Saved> {
  const saved = await call('wall.update', { id, changes })
  if (saved.clashes.length > 0) {
    throw new Refused({
      code: 'clash',
      message: 'Meanwhile somebody else measured here. What they wrote stands here now; write yours again.',
    })
  }
  return saved
}

export function writePlaces(wall: WallRow, field: PlacesField, to: readonly number[]): Promise<Saved> {
  return write(wall.id, { [field]: { was: wall[field], to: [...to].sort((a, b) => a - b) } })
}

export function writeHeights(wall: WallRow, field: HeightsField, to: readonly Height[]): Promise<Saved> {
  const sorted = to.map(([x, y]): [number, number] => [x, y]).sort((a, b) => a[0] - b[0])
  return write(wall.id, { [field]: { was: wall[field], to: sorted } })
}

/** The list with another value at one place; null takes it out. */
export function replaced<T>(list: readonly T[], at: number, to: T | null): readonly T[] {
  return list.flatMap((one, index) => (index !== at ? [one] : to === null ? [] : [to]))
}
