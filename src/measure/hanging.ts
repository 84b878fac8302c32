/**
 * Which of a work's sizes it hangs by. The rule it keeps: the framed size, else the next one outwards; the sight size
 * only with a caution, because the frame around it is larger.
 */
import type { Hanging, Part, Sizes } from './statement.ts'

const ORDER: readonly Part[] = ['framed', 'overall', 'mount', 'support', 'unnamed', 'sheet', 'image', 'part', 'sight']

/**
 * The place in `parts` of the one to hang by, or null where none is fit for it (a plate mark, a base). A part that
 * says less than a height and a width counts only if a question about it is open, or if there is no better one.
 */
export function hangingPart(
  parts: readonly ({ readonly part: Part } & Sizes)[],
  questions: readonly { readonly index?: number }[] = [],
): Hanging | null {
  const isOpen = (index: number) => questions.some(question => question.index === index)
  const isWhole = (sizes: Sizes) =>
    sizes.diameter !== undefined || (sizes.height !== undefined && sizes.width !== undefined)
  const first = (fits: (sizes: Sizes, index: number) => boolean) =>
    ORDER.flatMap(part => {
      const index = parts.findIndex((one, place) => one.part === part && fits(one, place))
      return index < 0 ? [] : [{ index, part }]
    })[0]
  const found = first((sizes, index) => isWhole(sizes) || isOpen(index)) ?? first(() => true)
  if (found?.part !== 'sight') return found ?? null
  const caution = 'Only the sight size is known. The frame around it is larger: measure it before the work is placed.'
  return { ...found, caution }
}
