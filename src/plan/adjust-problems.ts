/** Measures that no room can have: nothing long, to a corner that isn't there, longer than every way round. */
import type { Measure, SurveyRules } from './survey.ts'

export type Problem =
  | { readonly code: 'no-size' | 'no-corner' | 'no-angle'; readonly key: string }
  /** Longer than the other measured way between its corners, by so much. */
  | { readonly code: 'impossible'; readonly key: string; readonly by: readonly string[]; readonly over: number }
  /** Two sides of the outline cross; their places. */
  | { readonly code: 'crosses'; readonly sides: readonly [number, number] }
  | { readonly code: 'unsettled' }

/** Sorted into what can be counted and what cannot. */
export function countable(
  count: number,
  measures: readonly Measure[],
): { readonly sound: readonly Measure[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = []
  const sound = measures.filter(({ key, kind, from, to, value }) => {
    const there = (corner: number) => Number.isInteger(corner) && corner >= 0 && corner < count
    const code =
      !there(from) || !there(to) || (kind === 'angle' ? from !== to : from === to)
        ? 'no-corner'
        : !Number.isFinite(value) || value <= 0 || value > 1e7
          ? 'no-size'
          : kind === 'angle' && value >= 360
            ? 'no-angle'
            : null
    if (code !== null) problems.push({ code, key })
    return code === null
  })
  return { sound, problems }
}

/** A straight line is the shortest way: a length above every other measured way between its ends is misread somewhere. */
export function impossible(count: number, measures: readonly Measure[], rules: SurveyRules): readonly Problem[] {
  const lengths = measures.filter(({ kind, standing }) => kind !== 'angle' && standing !== 'taken')
  return lengths.flatMap(measure => {
    const others = lengths.filter(one => one !== measure && !sameEnds(one, measure))
    const way = shortest(count, others, measure.from, measure.to)
    if (way === null) return []
    const over = measure.value - way.long
    return over > rules.closesWithin
      ? [{ code: 'impossible' as const, key: measure.key, by: way.by.map(one => one.key), over }]
      : []
  })
}

const sameEnds = (a: Measure, b: Measure) =>
  (a.from === b.from && a.to === b.to) || (a.from === b.to && a.to === b.from)

/** Dijkstra over the corners. */
function shortest(count: number, lengths: readonly Measure[], from: number, to: number) {
  const far = new Array<number>(count).fill(Number.POSITIVE_INFINITY)
  const by = new Array<Measure | null>(count).fill(null)
  const done = new Set<number>()
  far[from] = 0
  for (;;) {
    let here = -1
    for (let at = 0; at < count; at += 1) {
      if (!done.has(at) && (far[at] ?? 0) < (here < 0 ? Number.POSITIVE_INFINITY : (far[here] ?? 0))) here = at
    }
    if (here < 0) return null
    if (here === to) break
    done.add(here)
    for (const one of lengths) {
      const next = one.from === here ? one.to : one.to === here ? one.from : -1
      if (next < 0 || (far[here] ?? 0) + one.value >= (far[next] ?? 0)) continue
      far[next] = (far[here] ?? 0) + one.value
      by[next] = one
    }
  }
  const way: Measure[] = []
  for (let at = to; at !== from; ) {
    const one = by[at]
    if (one == null) return null
    way.unshift(one)
    at = one.from === at ? one.to : one.from
  }
  return { long: far[to] ?? 0, by: way }
}
