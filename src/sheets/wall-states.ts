/**
 * What has been done at a wall, for the boxes of its sheet: a tick where it is done, a stroke where only some of a work's
 * marks are, a dash where there is nothing to do. And the holes that nothing hangs on. The rule it keeps: a mark that
 * was made elsewhere than it is planned now is not done.
 */
import type { MadeMark } from '../contract/areas/marks.ts'
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import { slotOf } from '../hang/steps.ts'
import { deadHoles, SAME_HOLE, wantedHoles } from '../model/holes-of-face.ts'
import type { MarksOrWhy } from '../model/marks-of-face.ts'
import type { Units } from './figures.ts'

export const ticks = ['marked', 'services checked', 'drilled', 'hung', 'level', 'locked', 'second check'] as const
export type Tick = (typeof ticks)[number]
export type TickState = 'open' | 'part' | 'done' | 'none'
export type Ticks = Readonly<Record<Tick, TickState>>

const order = ['planned', 'hung', 'level', 'locked', 'checked'] as const

/** Of one work. Boxes that stay open are ticked by hand. */
export function ticksOf(work: PlacedWork, found: MarksOrWhy, made: Elevation['made']): Ticks {
  const marks = 'answer' in found ? found.answer.marks : []
  const holes = marks.filter(mark => mark.on === 'wall')
  const own = made.filter(mark => mark.placement === work.placement)
  const states = holes.map(mark => {
    const one = own.find(each => each.slot === slotOf(mark))
    const here = one !== undefined && Math.hypot(one.x - mark.hole.x, one.y - mark.hole.y) <= SAME_HOLE
    return here ? one : null
  })
  const many = (is: (mark: MadeMark) => boolean): TickState => {
    const count = states.filter(mark => mark !== null && is(mark)).length
    return count === 0 ? 'open' : count === states.length ? 'done' : 'part'
  }
  // What stands on the floor or hangs from a rail is marked and makes no hole.
  const noHole = marks.length > 0 && holes.length === 0
  const reached = (state: (typeof order)[number]): TickState =>
    order.indexOf(work.state) >= order.indexOf(state) ? 'done' : 'open'
  const keeps = marks.some(mark => mark.does === 'keeps')
  return {
    marked: many(() => true),
    'services checked': noHole ? 'none' : many(mark => mark.services !== null),
    drilled: noHole ? 'none' : many(mark => mark.state === 'drilled'),
    hung: reached('hung'),
    level: reached('level'),
    // Checked says nothing of a lock where there is none.
    locked: keeps ? reached('locked') : work.state === 'locked' ? 'done' : 'open',
    'second check': reached('checked'),
  }
}

/** Holes of this face that nothing hangs on and nobody has filled, from left to right. */
export function deadOf(
  elevation: Elevation,
  marks: ReadonlyMap<string, MarksOrWhy>,
  units: Units,
): readonly MadeMark[] {
  const unknown = (placement: string | null) => {
    const found = placement === null ? undefined : marks.get(placement)
    return found !== undefined && 'problem' in found
  }
  const drilled = elevation.made.filter(
    mark => mark.state === 'drilled' && mark.filled === null && !unknown(mark.placement),
  )
  if (drilled.length === 0) return []
  const idle = new Set(deadHoles(wantedHoles(elevation, units), drilled))
  return drilled.filter(mark => idle.has(mark.id)).sort((a, b) => a.x - b.x)
}
