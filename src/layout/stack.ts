/**
 * Works one above the other with one gap: about a height, or from a common top down or bottom up. Held works keep their
 * place and the others stand off them. Dimensions run from the top, each rounded once.
 */
import { defaultSteps, print } from '../hang/printing.ts'
import type { RowAnswer, RowCure, StackAnswer, StackQuestion } from './layout-shape.ts'
import { layRow } from './row.ts'

/** Where no floor and no ceiling is asked about, mm: further than any wall. */
const ANYWHERE = { from: -1e5, to: 1e5 } as const

/**
 * `Htot = ΣH + (m − 1) g`; its top is `line + Htot / 2`, or `line` itself, or `line + Htot` from a common bottom; from
 * there down (common practice; derived for top and bottom). mm. Refuses `held-out-of-order`, as a row does.
 */
export function layStack(question: StackQuestion): StackAnswer {
  const { works, gap, room = ANYWHERE } = question
  const steps = question.steps ?? defaultSteps
  const height = works.reduce((sum, work) => sum + work.height, 0) + gap * (works.length - 1)
  const stackTop = topOf(question, height)
  const row = layRow({
    from: room.from,
    to: room.to,
    // A row runs upwards here: a width is a height, a left edge a bottom edge.
    works: works.map(({ id, height: width, heldAt }) => ({ id, width, heldAt: heldAt ?? null })).reverse(),
    rule: { rule: 'gap', gap, axis: stackTop - height / 2 },
  })
  const placed = new Map(row.works.map(each => [each.id, each]))
  const upper = placed.get(works[0]?.id ?? '')?.right ?? stackTop
  const lower = placed.get(works.at(-1)?.id ?? '')?.left ?? stackTop - height
  return {
    fits: row.fits,
    shortBy: row.shortBy,
    cures: row.cures.map(cure => asCure(cure, question, height)),
    height: upper - lower,
    top: upper,
    bottom: lower,
    works: works.flatMap(work => {
      const at = placed.get(work.id)
      if (at === undefined) return []
      const { left: bottom, right: top } = at
      const printed = {
        fromTop: print(upper - top, steps),
        toBottom: print(upper - bottom, steps),
        top: print(top, steps),
        bottom: print(bottom, steps),
      }
      return [{ id: work.id, top, bottom, centre: (top + bottom) / 2, printed }]
    }),
  }
}

function topOf({ line, by = 'middle' }: StackQuestion, height: number): number {
  return by === 'top' ? line : by === 'bottom' ? line + height : line + height / 2
}

/** The row's axis is the middle of the stack; a person set its top, its middle or its bottom. */
function asCure(cure: RowAnswer['cures'][number], { by = 'middle' }: StackQuestion, height: number): RowCure {
  if (cure.kind !== 'axis') return cure
  return { kind: 'axis', mm: cure.mm + (by === 'top' ? height / 2 : by === 'bottom' ? -height / 2 : 0) }
}
