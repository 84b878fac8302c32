/** Strap plates as drawn: on the back, each with its hole outside the edge, and in a section through the bottom edge. */
import { numberAt } from './back.ts'
import { measure } from './drawing-pieces.ts'
import type { Fixing, SectionDrawing, WorkSize } from './method.ts'
import { box, dimension, hungSection, type SectionWork, stroke } from './section.ts'

const USUAL_PLATE = 2

/** Where plates are drawn: what was measured, and the usual place of the two that every such work has. */
export function platePlaces(raw: unknown, work: WorkSize) {
  const usualOut = 15
  const sides = (['left', 'right'] as const).flatMap(side => {
    const edge = side === 'left' ? 0 : work.width
    const place = (which: 'upper' | 'lower', key: 'drop' | 'up') => {
      const out = numberAt(raw, [side, which, 'out']) ?? usualOut
      const along = numberAt(raw, [side, which, key]) ?? work.height / 4
      const x = side === 'left' ? -out : work.width + out
      const y = key === 'drop' ? along : work.height - along
      const shown = which === 'upper' || numberAt(raw, [side, which, 'out']) !== null
      const hole = { x, y }
      return shown
        ? [
            {
              hole,
              dimensions: [
                measure(raw, [side, which, 'out'], { x: edge, y }, hole),
                measure(raw, [side, which, key], { x, y: key === 'drop' ? 0 : work.height }, hole),
              ],
            },
          ]
        : []
    }
    return [...place('upper', 'drop'), ...place('lower', 'up')]
  })
  const under = (['left', 'right', 'middle'] as const).flatMap(side => {
    const out = numberAt(raw, ['bottom', side, 'out'])
    if (out === null) return []
    const inset = numberAt(raw, ['bottom', side, 'inset']) ?? work.width / 4
    const x = side === 'middle' ? work.width / 2 : side === 'left' ? inset : work.width - inset
    const hole = { x, y: work.height + out }
    return [{ hole, dimensions: [measure(raw, ['bottom', side, 'out'], { x, y: work.height }, hole)] }]
  })
  return [...sides, ...under]
}

/** Through the bottom edge: the plate bent behind the frame, its block, its screw below. */
export function strapSection(raw: unknown, work: SectionWork, fixing: Fixing): SectionDrawing {
  const drop = numberAt(raw, ['carry', 'left', 'drop']) ?? work.height / 3
  const out = numberAt(raw, ['bottom', 'middle', 'out']) ?? numberAt(raw, ['bottom', 'left', 'out']) ?? 15
  const block = numberAt(raw, ['block'])
  const off = block ?? 0
  const bottom = drop - work.height
  const strap = stroke('hanger', { x: off, y: -30 }, { x: off, y: 0 })
  return hungSection({ drop, work, fixing, off }, strap, {
    parts: [
      ...(off > 0 ? [box('spacer', 0, bottom - out - 8, off, 16)] : []),
      box('hanger', off, bottom - out - 8, USUAL_PLATE, out + 24),
      stroke('fixing', { x: off + 5, y: bottom - out }, { x: off - 35, y: bottom - out }),
    ],
    dimensions: [
      dimension(
        'outside',
        { x: off + 12, y: bottom },
        { x: off + 12, y: bottom - out },
        numberAt(raw, ['bottom', 'middle', 'out']),
      ),
      dimension('block', { x: 0, y: bottom - out - 16 }, { x: off, y: bottom - out - 16 }, block),
    ],
  })
}
