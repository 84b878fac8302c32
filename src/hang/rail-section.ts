/** A section through rail, hanger and frame: the hanger stands off the wall as the rail holds it, a pad keeps it plumb. */
import { numberAt } from './back.ts'
import type { Fixing, SectionDrawing } from './method.ts'
import { bottomPad, box, dimension, dropAndHole, framedWork, type SectionWork, stroke } from './section.ts'

const USUAL_OFF = 15
/** So much of the hanger is drawn above the work; the rail is usually far higher. */
const SHOWN = 80

export function railSection(raw: unknown, work: SectionWork, fixing: Fixing): SectionDrawing {
  const drop = numberAt(raw, ['left', 'drop']) ?? work.height / 5
  const measuredOff = numberAt(raw, ['off'])
  const off = measuredOff ?? USUAL_OFF
  const rail = drop + SHOWN
  const head = fixing.length ?? 12
  return {
    bearing: { x: off, y: 0 },
    hole: null,
    parts: [
      ...framedWork(work, drop, off),
      ...bottomPad(work, drop, off),
      box('fixing', 0, rail, off * 0.6, 20),
      stroke('fixing', { x: off * 0.2, y: rail + 20 + head / 2 }, { x: off, y: rail + 20 }, { x: off, y: rail - 6 }),
      stroke('wire', { x: off, y: rail - 6 }, { x: off, y: 0 }),
      stroke('hanger', { x: off, y: 0 }, { x: off, y: -25 }),
    ],
    dimensions: [
      ...dropAndHole(drop, work, off, null),
      dimension('off the wall', { x: 0, y: rail + 32 }, { x: off, y: rail + 32 }, measuredOff),
    ],
  }
}
