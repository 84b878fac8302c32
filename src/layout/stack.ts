/** Works one above the other about one centre, with one gap. Dimensions run from the top, each rounded once. */
import { defaultSteps, print } from '../hang/printing.ts'
import type { StackAnswer, StackQuestion } from './layout-shape.ts'

/** `Htot = ΣH + (m − 1) g`; its top is `centre + Htot / 2`; from there down. mm. */
export function layStack(question: StackQuestion): StackAnswer {
  const { works, gap, centre } = question
  const steps = question.steps ?? defaultSteps
  const height = works.reduce((sum, work) => sum + work.height, 0) + gap * (works.length - 1)
  const stackTop = centre + height / 2
  let down = 0
  return {
    height,
    top: stackTop,
    bottom: stackTop - height,
    works: works.map(work => {
      const top = stackTop - down
      const bottom = top - work.height
      const printed = {
        fromTop: print(down, steps),
        toBottom: print(down + work.height, steps),
        top: print(top, steps),
        bottom: print(bottom, steps),
      }
      down += work.height + gap
      return { id: work.id, top, bottom, centre: (top + bottom) / 2, printed }
    }),
  }
}
