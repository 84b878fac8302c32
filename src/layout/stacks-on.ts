/**
 * Stacks and grids as they stand on a wall: works of a section that asks for them which stand above one another, in a
 * grid the columns beside them too. mm; x to the right, y up.
 */
import { type Rect, right, top } from '../geometry/rect.ts'

export interface StackAsked {
  readonly hang: 'stacks' | 'grid'
  /** Free between its works, above one another and side by side. */
  readonly gapDown: number
  readonly gapAcross: number
  /** Those that may stand in one, by their id. */
  readonly works: readonly string[]
}

export interface StackOn extends Rect {
  readonly asked: StackAsked
  /** From the top, each row from its left end. */
  readonly works: readonly string[]
}

interface Named extends Rect {
  readonly id: string
}

/** A slack for what was typed in inches. */
const slack = 1

export function stacksOn(rects: readonly Named[], sections: readonly StackAsked[]): readonly StackOn[] {
  return sections.flatMap(asked => {
    const own = new Set(asked.works)
    const reach = asked.hang === 'grid' ? asked.gapAcross + slack : 0
    const groups: Named[][] = []
    let reached = Number.NEGATIVE_INFINITY
    for (const rect of rects.filter(({ id }) => own.has(id)).sort((a, b) => a.x - b.x)) {
      const group = groups.at(-1)
      if (group !== undefined && rect.x < reached + reach - 1e-6) group.push(rect)
      else groups.push([rect])
      reached = Math.max(reached, right(rect))
    }
    return groups.flatMap(group => (stands(group) ? [stackOf(group, asked)] : []))
  })
}

/** Whether some work of a group stands above another. */
function stands(group: readonly Named[]): boolean {
  return group.some((one, index) =>
    group.slice(index + 1).some(other => one.x < right(other) - slack && other.x < right(one) - slack),
  )
}

function stackOf(group: readonly Named[], asked: StackAsked): StackOn {
  const [x, y] = [Math.min(...group.map(one => one.x)), Math.min(...group.map(one => one.y))]
  const middle = (one: Rect) => one.y + one.height / 2
  // Read as it was formed: rows from the top, each from its left end.
  const ordered = [...group].sort((a, b) =>
    Math.abs(middle(a) - middle(b)) > Math.min(a.height, b.height) / 2
      ? middle(b) - middle(a)
      : a.x + a.width / 2 - (b.x + b.width / 2),
  )
  return {
    asked,
    works: ordered.map(({ id }) => id),
    ...{ x, y },
    width: Math.max(...group.map(right)) - x,
    height: Math.max(...group.map(top)) - y,
  }
}
