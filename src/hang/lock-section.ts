/** A section through a work on security hangers: the upper bracket on its plate, the lock over its screw, the gauge of its head. */
import { numberAt } from './back.ts'
import type { Fixing, SectionDrawing } from './method.ts'
import {
  bottomPad,
  box,
  dimension,
  dropAndHole,
  fixingInWall,
  framedWork,
  type SectionWork,
  stroke,
} from './section.ts'

const USUAL_DEPTH = 12

export function lockSection(raw: unknown, work: SectionWork, fixing: Fixing): SectionDrawing {
  const { parts, hole } = fixingInWall(fixing)
  const drop = numberAt(raw, ['left', 'drop']) ?? work.height / 8
  const up = numberAt(raw, ['lock', 'up'])
  const depth = numberAt(raw, ['depth'])
  const off = depth ?? USUAL_DEPTH
  const bottom = drop - work.height
  const lock = bottom + (up ?? 20)
  return {
    bearing: { x: 0, y: 0 },
    hole,
    parts: [
      ...framedWork(work, drop, off),
      stroke('hanger', { x: off, y: -25 }, { x: off / 2, y: -25 }, { x: off / 2, y: 0 }, { x: 2, y: 0 }),
      ...parts,
      stroke('hanger', { x: off, y: lock + 10 }, { x: off - 3, y: lock + 10 }, { x: off - 3, y: lock - 10 }),
      stroke('fixing', { x: -35, y: lock }, { x: off, y: lock }),
      box('fixing', off, lock - 6, 2, 12),
      ...bottomPad(work, drop, 0),
    ],
    dimensions: [
      ...dropAndHole(drop, work, off, hole),
      dimension('lock, up', { x: off + 40, y: bottom }, { x: off + 40, y: lock }, up),
      dimension('gauge', { x: 0, y: lock - 14 }, { x: off, y: lock - 14 }, depth),
    ],
  }
}
