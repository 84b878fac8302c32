/**
 * The holes of a face: where each work's marks want them, and which of those that are there serve. Screen, sheet, patch
 * list and late change count with this one.
 */
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import { slotOf } from '../hang/steps.ts'
import { matchHoles } from '../late/holes.ts'
import type { DrilledHole, NeededHole } from '../late/late-shape.ts'
import { type MarksStyle, marksOfFace } from './marks-of-face.ts'
import { handsOf } from './marks-of-set.ts'

/** A hole within this of where a mark comes serves it: the same number on the tape, and a hook's own play. mm. */
export const SAME_HOLE = 1

export interface WantedHole {
  readonly placement: string
  readonly slot: string
  readonly called: string
  readonly x: number
  readonly y: number
  readonly bearingY: number
  /** What hangs there: the work, or the part of a set. */
  readonly hung: PlacedWork
  readonly keeps: boolean
}

/** Holes that the marks of every placed work want, by what is planned now; what makes no hole is left out. */
export function wantedHoles(elevation: Elevation, style: MarksStyle): readonly WantedHole[] {
  const all = marksOfFace(elevation, style)
  return elevation.works.flatMap(work => {
    const marks = all.get(work.placement)
    if (marks === undefined || 'problem' in marks) return []
    return handsOf(work, marks).flatMap(({ letter, placed, marks: own }) => {
      if ('problem' in own) return []
      const named = (text: string, between: string) => (letter === '' ? text : `${letter}${between}${text}`)
      return own.answer.marks
        .filter(mark => mark.on === 'wall')
        .map(mark => ({
          placement: work.placement,
          slot: named(slotOf(mark), '-'),
          called: named(mark.name ?? mark.side, ' '),
          x: mark.hole.x,
          y: mark.hole.y,
          bearingY: mark.bearing.y,
          hung: placed,
          keeps: mark.does === 'keeps',
        }))
    })
  })
}

/** A work's holes from its centre, for a work that may move. */
export function neededFrom(
  wanted: readonly WantedHole[],
  centre: { readonly x: number; readonly y: number },
): NeededHole[] {
  return wanted.map(hole => ({ slot: hole.slot, dx: hole.x - centre.x, dy: hole.y - centre.y }))
}

/** Ids of holes that no mark uses. */
export function deadHoles(wanted: readonly WantedHole[], drilled: readonly DrilledHole[]): readonly string[] {
  const standing = wanted.map(hole => ({
    id: `${hole.placement} ${hole.slot}`,
    x: hole.x,
    y: hole.y,
    holes: [{ slot: hole.slot, dx: 0, dy: 0 }],
  }))
  return matchHoles(standing, drilled, SAME_HOLE).unused
}
