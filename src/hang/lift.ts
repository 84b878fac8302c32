/**
 * Room to lift a work on: over its top edge there must be as much free height as it is lifted, at both its corners
 * and wherever the ceiling over it bends.
 */
import type { HangQuestion, PlainFinding } from './method.ts'
import { lowestCeiling } from './wall.ts'

/** A stop where the ceiling, or the top of the wall, leaves less than `lift` mm over the work. */
export function liftFinding({ work, centre, wall, placed, say }: HangQuestion, lift: number): readonly PlainFinding[] {
  if (!placed) return []
  const top = centre.y + work.height / 2
  const ceiling = lowestCeiling(wall, centre.x - work.width / 2, centre.x + work.width / 2)
  const free = ceiling - top
  if (free >= lift) return []
  return [
    {
      severity: 'stop',
      code: 'no-room-to-lift',
      text: `It is lifted ${say(lift)} to go on, and there are ${say(Math.max(0, free))} over its top edge: hang it lower.`,
      figures: { lift, free, ceiling, top },
    },
  ]
}
