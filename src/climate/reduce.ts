/** A line of very many readings drawn in few columns: of each the least and the greatest, so that no peak is lost. */

export interface ReducedColumn {
  /** Column from the left, from 0. */
  readonly column: number
  readonly least: number
  readonly most: number
  readonly first: number
  readonly last: number
  /** Moments of its first and its last value. */
  readonly from: number
  readonly until: number
}

/** The first index whose moment is not before `moment`; `at` is in order. */
export function indexFrom(at: ArrayLike<number>, moment: number): number {
  let [low, high] = [0, at.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((at[middle] ?? 0) < moment) low = middle + 1
    else high = middle
  }
  return low
}

/** From `from` to `until` in `columns` columns of equal time. NaN is no value. Columns without any are left out. */
export function reduced(
  at: ArrayLike<number>,
  values: ArrayLike<number>,
  from: number,
  until: number,
  columns: number,
): ReducedColumn[] {
  const found: ReducedColumn[] = []
  const perSecond = columns / (until - from)
  let [column, least, most, first, last, begin, end] = [-1, 0, 0, 0, 0, 0, 0]
  const close = () => {
    if (column >= 0) found.push({ column, least, most, first, last, from: begin, until: end })
  }
  for (let i = indexFrom(at, from); i < at.length; i++) {
    const moment = at[i] ?? 0
    if (moment > until) break
    const value = values[i] ?? Number.NaN
    if (Number.isNaN(value)) continue
    const own = Math.min(columns - 1, Math.floor((moment - from) * perSecond))
    if (own !== column) {
      close()
      column = own
      least = value
      most = value
      first = value
      begin = moment
    }
    if (value < least) least = value
    if (value > most) most = value
    last = value
    end = moment
  }
  close()
  return found
}
