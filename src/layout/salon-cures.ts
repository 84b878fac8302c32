/** What would make a salon hang fit that does not: each change is tried on the hang itself, and enough alone. */
import type { RowCure } from './layout-shape.ts'
import { fitsPlainly } from './salon.ts'
import type { SalonAnswer, SalonQuestion } from './salon-shape.ts'

/** By how much the stretch is too short or too low, and the single changes that would do; found by trying, to a millimetre. */
export function salonCures(question: SalonQuestion): Pick<SalonAnswer, 'shortBy' | 'way' | 'cures'> {
  const { works, gap } = question
  const isHeld = (work: (typeof works)[number]) => (work.heldAt ?? null) !== null
  const closer =
    gap === 0 || !fitsPlainly({ ...question, gap: 0 })
      ? null
      : Math.max(0, gap - leastThat(gap, less => fitsPlainly({ ...question, gap: Math.max(0, gap - less) })))
  const widths = works.reduce((sum, work) => sum + work.width + gap, 0)
  const longer = leastThat(widths, mm =>
    fitsPlainly({ ...question, from: question.from - mm / 2, to: question.to + mm / 2 }),
  )
  const tooHigh = Math.max(...works.map(work => work.height)) - (question.top - question.bottom)
  const freed = works.filter(isHeld).find(work => fitsPlainly(letGo(question, work.id)))
  return {
    ...(tooHigh > 0 ? { shortBy: tooHigh, way: 'higher' as const } : { shortBy: longer, way: 'longer' as const }),
    cures: [
      ...(closer === null ? [] : [{ kind: 'gap' as const, mm: closer }]),
      ...leaveOut(
        question,
        works.filter(work => !isHeld(work)),
      ),
      ...(freed === undefined ? [] : [{ kind: 'let-go' as const, id: freed.id, mm: 0 }]),
      // No length makes room for what is too high.
      ...(tooHigh > 0 ? [] : [{ kind: 'longer' as const, mm: longer }]),
    ],
  }
}

function letGo(question: SalonQuestion, id: string): SalonQuestion {
  return { ...question, works: question.works.map(work => (work.id === id ? { ...work, heldAt: null } : work)) }
}

/** The smallest work without which the rest fits: of works from small to large the first, by halving. */
function leaveOut(question: SalonQuestion, free: SalonQuestion['works']): readonly RowCure[] {
  const bySize = [...free].sort((a, b) => a.width * a.height - b.width * b.height)
  const without = (at: number) => {
    const works = question.works.filter(work => work.id !== bySize[at]?.id)
    return works.length > 0 && fitsPlainly({ ...question, works })
  }
  let [low, high] = [0, bySize.length - 1]
  if (high < 0 || !without(high)) return []
  while (low < high) {
    const middle = Math.floor((low + high) / 2)
    if (without(middle)) high = middle
    else low = middle + 1
  }
  const work = bySize[high]
  return work === undefined ? [] : [{ kind: 'leave-out', id: work.id, mm: work.width }]
}

/** The least whole millimetre at which it does, where more does too; `most` at the latest. */
function leastThat(most: number, does: (mm: number) => boolean): number {
  let [low, high] = [0, Math.ceil(most)]
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (does(middle)) high = middle
    else low = middle
  }
  return high
}
