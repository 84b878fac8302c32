/**
 * The height at which the works of a wall serve best whom they serve least: of the groups of viewers there, the one of
 * which fewest see the works well, on the mean of the works, sees them as well as it can. Heights in whole mm above the
 * floor, as they are set up; shares 0 to 1.
 */
import { coverage, type EyeHeights, eyes, type Sight, servedEyes, type ViewerKind } from './sight.ts'

export interface LineQuestion {
  /** Heights of the works; their middles come to the line. */
  readonly heights: readonly number[]
  /** By how much the middle of each is above the line instead: of works in stacks and grids. */
  readonly above?: readonly number[]
  readonly kinds: readonly ViewerKind[]
  readonly distance: number
  readonly sight: Sight
  /** Works stay between these: skirting and what is free above to lift them on. */
  readonly bottom: number
  readonly top: number
}

export interface Line {
  readonly y: number
  /** Of each group, the share that sees the works well. */
  readonly served: readonly { readonly kind: ViewerKind; readonly share: number }[]
  /** Of the least served. */
  readonly least: number
}

/** What a line serves. */
export function servedAt(y: number, { heights, above, kinds, distance, sight }: LineQuestion): Line {
  const spans = heights.map((height, index) =>
    servedEyes({ centre: y + (above?.[index] ?? 0), height }, distance, sight),
  )
  const share = (group: readonly EyeHeights[]) =>
    spans.reduce((sum, span) => sum + coverage(group, span), 0) / Math.max(1, spans.length)
  const served = kinds.map(kind => ({ kind, share: share(eyes[kind]) }))
  return { y, served, least: Math.min(1, ...served.map(one => one.share)) }
}

/**
 * Of all whole millimetres the one that serves the least served best; of several the one nearest to `wished`. Null where
 * the tallest work fits at no height, or there are no works. No height is missed: a share changes by no more for each
 * millimetre than eyes lie on one, so that a line which serves so much worse rules out as many of its neighbours
 * (Shubert, A sequential method seeking the global maximum of a function, SIAM Journal on Numerical Analysis 9, 1972).
 */
export function bestLine(question: LineQuestion, wished: number): Line | null {
  const { heights, above } = question
  const first = Math.ceil(question.bottom + Math.max(...heights.map((height, at) => height / 2 - (above?.[at] ?? 0))))
  const last = Math.floor(question.top - Math.max(...heights.map((height, at) => height / 2 + (above?.[at] ?? 0))))
  if (question.heights.length === 0 || first > last) return null
  const steepest = Math.max(1e-6, ...question.kinds.map(kind => densest(eyes[kind])))
  // From the wish outwards, so that what is passed over afterwards is farther from it.
  let best = servedAt(Math.max(first, Math.min(last, Math.round(wished))), question)
  for (const way of [1, -1]) {
    for (let y = Math.max(first, Math.min(last, Math.round(wished))) + way; y >= first && y <= last; ) {
      const line = servedAt(y, question)
      const nearer = Math.abs(y - wished) < Math.abs(best.y - wished)
      if (line.least > best.least + 1e-9 || (nearer && line.least > best.least - 1e-9)) best = line
      y += way * Math.max(1, Math.floor((best.least - line.least) / steepest))
    }
  }
  return best
}

/** No more of a group have their eyes on one millimetre: the peaks of its distributions, all at one height. */
function densest(group: readonly EyeHeights[]): number {
  return group.reduce((sum, { sd, share }) => sum + share / (sd * Math.sqrt(2 * Math.PI)), 0)
}
