/** The room that tools need at a work on its wall, a set part by part: asked alike by findings and hanging order. */
import type { PlacedWork } from '../contract/areas/walls.ts'
import type { MarksAnswer } from '../hang/marks-shape.ts'
import { type ToolRules, type ToolWork, toolAreas } from '../layout/tool-room.ts'
import { rectOf } from './hung-rect.ts'

/** One that hangs by itself; without a size it takes no room, without marks it needs none. mm. */
export function toolWorkOf(
  hands: readonly { readonly placed: PlacedWork; readonly answer: MarksAnswer | null }[],
  rules: ToolRules,
): readonly ToolWork[] {
  return hands.flatMap(({ placed, answer }) => {
    const rect = rectOf(placed)
    if (rect === undefined) return []
    return [{ rect, areas: answer === null ? [] : toolAreas(answer, rect, rules) }]
  })
}
