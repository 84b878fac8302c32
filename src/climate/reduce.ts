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

/** So many readings that follow one another are one block. */
const inBlock = 32

/** Of each whole block of a line what a column of it has; NaN where a block has no value. */
export interface Blocks {
  readonly least: Float64Array
  readonly most: Float64Array
  readonly first: Float64Array
  readonly last: Float64Array
  readonly from: Float64Array
  readonly until: Float64Array
}

/** Made once of a line, they spare whoever draws it again and again to look at each of its readings. */
export function blocksOf(at: ArrayLike<number>, values: ArrayLike<number>): Blocks {
  const count = Math.floor(at.length / inBlock)
  const empty = () => new Float64Array(count).fill(Number.NaN)
  const blocks = { least: empty(), most: empty(), first: empty(), last: empty(), from: empty(), until: empty() }
  for (let block = 0; block < count; block++) {
    for (let i = block * inBlock; i < (block + 1) * inBlock; i++) {
      const value = values[i] ?? Number.NaN
      if (Number.isNaN(value)) continue
      const before = Number.isNaN(blocks.first[block] ?? 0)
      if (before) {
        blocks.first[block] = value
        blocks.from[block] = at[i] ?? 0
      }
      if (before || value < (blocks.least[block] ?? 0)) blocks.least[block] = value
      if (before || value > (blocks.most[block] ?? 0)) blocks.most[block] = value
      blocks.last[block] = value
      blocks.until[block] = at[i] ?? 0
    }
  }
  return blocks
}

/**
 * From `from` to `until` in `columns` columns of equal time. NaN is no value. Columns without any are left out.
 * @param blocks of the same line: the same columns come sooner
 */
export function reduced(
  at: ArrayLike<number>,
  values: ArrayLike<number>,
  from: number,
  until: number,
  columns: number,
  blocks: Blocks | null = null,
): ReducedColumn[] {
  const found: ReducedColumn[] = []
  const perSecond = columns / (until - from)
  const columnAt = (moment: number) => Math.min(columns - 1, Math.floor((moment - from) * perSecond))
  let [column, least, most, first, last, begin, end] = [-1, 0, 0, 0, 0, 0, 0]
  const close = () => {
    if (column >= 0) found.push({ column, least, most, first, last, from: begin, until: end })
  }
  const open = (own: number, value: number, moment: number) => {
    close()
    column = own
    least = value
    most = value
    first = value
    begin = moment
  }
  const whole = blocks?.first.length ?? 0
  for (let i = indexFrom(at, from); i < at.length; ) {
    const moment = at[i] ?? 0
    if (moment > until) break
    const own = columnAt(moment)
    const block = i % inBlock === 0 ? i / inBlock : whole
    if (blocks !== null && block < whole) {
      const ends = at[i + inBlock - 1] ?? 0
      if (ends <= until && columnAt(ends) === own) {
        i += inBlock
        const begins = blocks.first[block] ?? Number.NaN
        if (Number.isNaN(begins)) continue
        if (own !== column) open(own, begins, blocks.from[block] ?? 0)
        least = Math.min(least, blocks.least[block] ?? 0)
        most = Math.max(most, blocks.most[block] ?? 0)
        last = blocks.last[block] ?? 0
        end = blocks.until[block] ?? 0
        continue
      }
    }
    const value = values[i] ?? Number.NaN
    i += 1
    if (Number.isNaN(value)) continue
    if (own !== column) open(own, value, moment)
    if (value < least) least = value
    if (value > most) most = value
    last = value
    end = moment
  }
  close()
  return found
}
