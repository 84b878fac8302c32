/**
 * Whether stacks and grids of a wall are where its line has them. Their works keep heights of their own, so a line that
 * is changed afterwards does not carry them: that is told, and how far to move them.
 */
import type { Elevation } from '../contract/areas/walls.ts'
import type { Finding } from '../contract/shared.ts'
import { sayIn } from '../hang/marks.ts'
import { stacksOn } from '../layout/stacks-on.ts'
import { calledOn } from './called.ts'
import { centreOnFace } from './centre-on-face.ts'
import { rectOf } from './hung-rect.ts'
import type { MarksStyle } from './marks-of-face.ts'

/** Less is no difference that a tape finds. mm */
const leastOff = 1

export function stackFindings({ works, rules, plan }: Elevation, style: MarksStyle): readonly Finding[] {
  const say = sayIn(style.unit, style.steps)
  const named = new Map(works.map(work => [work.placement, calledOn(work)] as const))
  const rects = works.flatMap(work => rectOf(work) ?? [])
  return stacksOn(rects, rules.stacks).flatMap(({ asked, works: own, x, y, width, height }): Finding[] => {
    const [first] = own
    if (first === undefined) return []
    const middle = y + height / 2
    const line = centreOnFace({ rule: 'face', y: null, x: x + width / 2 }, plan, height)
    const off = middle - line
    if (Math.abs(off) <= leastOff) return []
    const kind = asked.hang === 'grid' ? 'grid' : 'stack'
    const names = own.map(id => named.get(id) ?? '')
    const all = `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
    const text = `The ${kind} of ${all} has its middle ${say(Math.abs(off))} ${off > 0 ? 'above' : 'below'} ${say(line)}, where the wall has it: its works keep their heights. Move them ${say(Math.abs(off))} ${off > 0 ? 'down' : 'up'} together, or ask the sequence for proposals again.`
    return [
      {
        severity: 'settle',
        code: 'stack-off-line',
        subject: { kind: 'placement', id: first },
        text,
        figures: { x, middle, line, off, works: own.length },
      },
    ]
  })
}
