/**
 * Labels in one row, each as near as can be to the place it is about, none touching the next. The rule it keeps: their
 * order stays, so that leaders never cross.
 */

export interface Wanted {
  /** Where the label's middle would like to be. */
  readonly at: number
  readonly width: number
}

/**
 * Middles of the labels, in the order given (sorted by `at`). Least squares under "each stands clear of the next"
 * (pooling of neighbours that collide). Null where they do not fit between `from` and `to`.
 */
export function spread(labels: readonly Wanted[], from: number, to: number, clear: number): readonly number[] | null {
  const whole = labels.reduce((sum, label) => sum + label.width + clear, -clear)
  if (labels.length > 0 && whole > to - from + 1e-9) return null
  // Shifted by what stands before each, labels must only be in rising order.
  let before = 0
  const offsets = labels.map(label => {
    const offset = before + label.width / 2
    before += label.width + clear
    return offset
  })
  const pools: { sum: number; count: number }[] = []
  labels.forEach((label, index) => {
    pools.push({ sum: label.at - (offsets[index] ?? 0), count: 1 })
    for (;;) {
      const last = pools.at(-1)
      const previous = pools.at(-2)
      if (last === undefined || previous === undefined) break
      if (previous.sum / previous.count <= last.sum / last.count) break
      previous.sum += last.sum
      previous.count += last.count
      pools.pop()
    }
  })
  const shifts = pools.flatMap(pool => Array.from({ length: pool.count }, () => pool.sum / pool.count))
  const most = to - whole
  return labels.map((_, index) => Math.min(Math.max(shifts[index] ?? 0, from), most) + (offsets[index] ?? 0))
}
