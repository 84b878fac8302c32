/**
 * A wall with its sets laid open: each part a work of its own, with its marks, its made marks and its own row. Sheets
 * and lists that name what a hand hangs are made of this; what is planned as one object is not.
 */
import type { Elevation } from '../contract/areas/walls.ts'
import type { MarksOrWhy } from './marks-of-face.ts'
import { hungOf, partKey } from './parts-of-set.ts'

export interface LaidOpen {
  readonly elevation: Elevation
  readonly marks: ReadonlyMap<string, MarksOrWhy>
}

/** A set that cannot be laid stays one work: then its row says what is missing. */
export function laidOpen(elevation: Elevation, marks: ReadonlyMap<string, MarksOrWhy>): LaidOpen {
  if (elevation.works.every(work => work.set === null)) return { elevation, marks }
  const open = new Set<string>()
  const works = elevation.works.flatMap(work => {
    const hung = hungOf(work)
    if (work.set === null || hung.length === 0) return [work]
    open.add(work.placement)
    return hung
  })
  const byKey = new Map(marks)
  for (const placement of open) {
    for (const part of marks.get(placement)?.parts ?? []) byKey.set(part.placed.placement, part.marks)
    byKey.delete(placement)
  }
  const made = elevation.made.map(mark => {
    const [letter, ...slot] = mark.slot.split('-')
    return mark.placement === null || !open.has(mark.placement) || letter === undefined
      ? mark
      : { ...mark, placement: partKey(mark.placement, letter), slot: slot.join('-') }
  })
  return { elevation: { ...elevation, works, made }, marks: byKey }
}
