/**
 * Which of a work's sizes it hangs by. The rule it keeps: the framed size, else the next one outwards; the sight size
 * only with a caution, because the frame around it is larger.
 */
import type { Hanging, Part } from './statement.ts'

const ORDER: readonly Part[] = ['framed', 'overall', 'mount', 'support', 'unnamed', 'sheet', 'image', 'part', 'sight']

/** The place in `parts` of the one to hang by, or null where none is fit for it (a plate mark, a base). */
export function hangingPart(parts: readonly { readonly part: Part }[]): Hanging | null {
  for (const part of ORDER) {
    const index = parts.findIndex(one => one.part === part)
    if (index < 0) continue
    if (part !== 'sight') return { index, part }
    const caution = 'Only the sight size is known. The frame around it is larger: measure it before the work is placed.'
    return { index, part, caution }
  }
  return null
}
