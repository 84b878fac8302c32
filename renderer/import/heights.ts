/**
 * Where the rows of a long table lie when only those in view are drawn and each is as tall as what it says: measured
 * where it has been drawn, else as tall as usual. Pixels.
 */
export interface Heights {
  readonly count: number
  readonly total: number
  /** Where a row begins. */
  readonly top: (index: number) => number
  /** The row at a place. */
  readonly at: (place: number) => number
}

export function heightsOf(count: number, measured: ReadonlyMap<number, number>, usual: number): Heights {
  const known = [...measured].filter(([index]) => index < count).sort(([a], [b]) => a - b)
  // Before each measured row: how much taller than usual all before it are together.
  const extra: number[] = []
  let sum = 0
  for (const [, height] of known) {
    extra.push(sum)
    sum += height - usual
  }
  function top(index: number): number {
    let [low, high] = [0, known.length]
    while (low < high) {
      const middle = (low + high) >> 1
      if ((known[middle]?.[0] ?? 0) < index) low = middle + 1
      else high = middle
    }
    return index * usual + (low < known.length ? (extra[low] ?? 0) : sum)
  }
  return {
    count,
    total: count * usual + sum,
    top,
    at(place) {
      let [low, high] = [0, Math.max(0, count - 1)]
      while (low < high) {
        const middle = (low + high + 1) >> 1
        if (top(middle) <= place) low = middle
        else high = middle - 1
      }
      return low
    },
  }
}
