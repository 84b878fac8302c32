/**
 * Figures of a statement that measure nothing: a year, an edition, a number of the list. The rule it keeps: what runs
 * into a size belongs to it and leaves it in doubt.
 */
import type { Group } from './groups.ts'

/**
 * Single figures without a letter beside whole sizes: a year, an edition, a number of the list. One that runs into a
 * size, as in 24 1 /4 x 36, belongs to it and leaves it in doubt.
 */
export function strayFigures(
  text: string,
  groups: readonly Group[],
): { readonly groups: readonly Group[]; readonly stray: readonly Group[] } {
  if (!groups.some(group => group.dims.length > 1)) return { groups, stray: [] }
  const isStray = (group: Group) => group.dims.length === 1 && group.dims[0]?.axis === undefined && !group.broken
  const kept: Group[] = []
  let waiting: Group[] = []
  const stray: Group[] = []
  for (const group of groups) {
    if (isStray(group)) {
      waiting.push(group)
      continue
    }
    let at = group.at
    for (const figure of waiting.toReversed()) {
      if (isAside(text, figure) || !/^[ \u00a0./⁄]*$/.test(text.slice(figure.end, at))) stray.push(figure)
      else at = figure.at
    }
    waiting = []
    kept.push(at === group.at ? group : { ...group, at, broken: true })
  }
  return { groups: kept, stray: [...stray, ...waiting] }
}

/** A year, or the number behind "edition of" and its kin. */
export function isAside(text: string, group: Group): boolean {
  const dim = group.dims[0]
  if (dim === undefined || dim.unit !== undefined) return false
  const before = text.slice(Math.max(0, group.at - 24), group.at)
  if (/(?:^|[^\p{L}])(?:edition|ed|édition|tirage|auflage|no|nr|n°|cat|lot)[.:]? ?(?:of|de|von|à)? ?$/iu.test(before))
    return true
  return dim.value.den === 1 && dim.value.num >= 1400 && dim.value.num <= 2099
}
