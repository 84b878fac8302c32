/** What is told of a work's marks on its wall: holes still to make, how far they are made, where they would be clear. */
import type { Offers } from '../../src/hang/nearest-shape.ts'
import { slotOf } from '../../src/hang/steps.ts'
import { nearestOfPlaced } from '../../src/model/nearest-of-face.ts'
import { desk } from '../host/desk.svelte.ts'
import { isOff } from './made.svelte.ts'
import type { Wall } from './wall.svelte.ts'

/** Where a hole is planned that nobody has made there. */
export interface PlannedHole {
  readonly x: number
  readonly y: number
  /** It only keeps the work: a lock, a plate's screw. */
  readonly keeps: boolean
}

/** Planned holes of a work that are not made where they are planned; null where its marks are not known. */
export function plannedHoles(wall: Wall, placement: string): readonly PlannedHole[] | null {
  const found = wall.marks.get(placement)
  if (found === undefined || 'problem' in found) return null
  const rows = wall.made.rowsOf([placement])
  return found.answer.marks
    .filter(mark => mark.on !== 'floor')
    .filter(mark => !rows.some(row => row.slot === slotOf(mark) && row.made !== null && !isOff(row)))
    .map(mark => ({ ...mark.hole, keeps: mark.does === 'keeps' }))
}

/** Whether somebody has a lock to shut. */
export function hasLock(wall: Wall, placement: string): boolean {
  const found = wall.marks.get(placement)
  return found !== undefined && 'answer' in found && found.answer.locks.length > 0
}

/** How far the marks of a work are made, in words: "drilled", "1 of 2 marked"; empty while all are planned. */
export function madeWords({ made }: Wall, placement: string): string {
  const rows = made.rowsOf([placement])
  const drilled = rows.filter(row => row.state === 'drilled').length
  const there = rows.filter(row => row.made !== null).length
  const say = (count: number, word: string) => (count === rows.length ? word : `${count} of ${rows.length} ${word}`)
  if (there === 0) return ''
  return drilled > 0 ? say(drilled, 'drilled') : say(there, 'marked')
}

/** Where the marks of a work that stands still would be clear; null while it moves or has none. */
export function nearestOf({ elevation, works, offset, steps }: Wall, placement: string): Offers | null {
  const work = works.find(one => one.placement === placement)
  if (elevation === undefined || work === undefined || offset !== null) return null
  const found = nearestOfPlaced({ ...elevation, works: [...works] }, work, { unit: desk.unit, steps })
  return 'problem' in found ? null : found
}
