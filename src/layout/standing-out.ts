/**
 * How far things stand out of a wall beside a work. What stands out further hides the edge of what is behind it from who
 * comes along the wall; seen at 45° it hides as much as it stands out further. Common practice, no source.
 */
import type { Finding } from '../contract/shared.ts'
import { clearDistance, type Rect } from '../geometry/rect.ts'
import type { KeepClear } from '../hang/wall.ts'

export interface DeepRect extends Rect {
  readonly id: string
  readonly name: string
  /** How far it stands out; null or left out where nobody measured it. */
  readonly depth?: number | null | undefined
}

type Say = (mm: number) => string
const SLACK = 1e-6

/** Words on a thing that a work hangs over; empty where its depth is not known. mm. */
export function overDeep(work: DeepRect, item: KeepClear, say: Say): string {
  if (item.depth == null || item.depth <= SLACK) return ''
  const further = work.depth == null ? 0 : item.depth - work.depth
  return `, which stands out ${say(item.depth)}${further > SLACK ? `, ${say(further)} further than the work` : ''}`
}

/** Where of a work and a thing beside it one stands out further than they are apart. mm. */
export function besideDeep(work: DeepRect, item: KeepClear, called: string, say: Say): readonly Finding[] {
  if (item.depth == null || work.depth == null) return []
  const apart = clearDistance(work, item)
  const further = item.depth - work.depth
  if (apart <= SLACK || apart >= Math.abs(further) - SLACK) return []
  const subject = { kind: 'placement', id: work.id }
  const figures = { keepClear: item.id, depth: item.depth, workDepth: work.depth, apart, want: Math.abs(further) }
  const by = `${say(Math.abs(further))} further`
  if (further > 0) {
    const text = `the ${called} ${say(apart)} beside ${work.name} stands out ${say(item.depth)}, ${by} than the work, and hides its edge from the side. Keep ${say(further)} between them.`
    return [{ severity: 'settle', code: 'beside-deeper', subject, text: begun(text), figures }]
  }
  if (item.reachable !== true) return []
  const text = `${work.name} stands out ${say(work.depth)}, ${by} than the ${called} ${say(apart)} beside it, which must stay reachable. Keep ${say(-further)} between them.`
  return [{ severity: 'settle', code: 'beside-reachable', subject, text, figures }]
}

const begun = (text: string) => `${text[0]?.toUpperCase() ?? ''}${text.slice(1)}`
