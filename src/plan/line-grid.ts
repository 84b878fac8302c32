/**
 * Lines sorted into square cells, so that what lies near a point or along a line is found without asking all lines.
 * Each line stands in every cell that it passes, and in those within `reach` of it.
 */
export interface Ends {
  /** x1, y1, x2, y2 of a line, by its number. */
  readonly of: (line: number) => readonly [number, number, number, number]
}

export interface LineGrid {
  readonly add: (line: number, x1: number, y1: number, x2: number, y2: number) => void
  /** Lines that may come within the grid's reach of a point; a line may come twice. */
  readonly near: (x: number, y: number) => readonly number[]
  /** Calls with every line that may come near another; a line may come twice. */
  readonly along: (x1: number, y1: number, x2: number, y2: number, see: (line: number) => void) => void
  readonly cells: () => Iterable<readonly number[]>
}

const nothing: readonly number[] = []

/** @param cell side of a cell; @param reach below a quarter of it, so that a line's neighbours are found in its cells. */
export function lineGrid(cell: number, reach: number): LineGrid {
  const cells = new Map<number, number[]>()
  const at = (v: number) => Math.floor(v / cell)
  // Two whole numbers in one: plans are far smaller than 2²⁶ cells either way.
  const keyOf = (cx: number, cy: number) => (cx + 33_554_432) * 67_108_864 + cy + 33_554_432

  /** Column by column, the cells that the line passes there. */
  function passed(x1: number, y1: number, x2: number, y2: number, by: number, put: (key: number) => void): void {
    const [left, right] = x1 < x2 ? [x1, x2] : [x2, x1]
    const slope = x1 === x2 ? 0 : (y2 - y1) / (x2 - x1)
    const [first, last] = [at(left - by), at(right + by)]
    for (let cx = first; cx <= last; cx++) {
      const from = Math.max(left, cx * cell - by)
      const to = Math.min(right, (cx + 1) * cell + by)
      let [a, b] = x1 === x2 ? [y1, y2] : [y1 + (from - x1) * slope, y1 + (to - x1) * slope]
      if (a > b) [a, b] = [b, a]
      const lastRow = at(b + by)
      for (let cy = at(a - by); cy <= lastRow; cy++) put(keyOf(cx, cy))
    }
  }

  return {
    add(line, x1, y1, x2, y2) {
      passed(x1, y1, x2, y2, reach, key => {
        const there = cells.get(key)
        if (there === undefined) cells.set(key, [line])
        else there.push(line)
      })
    },
    near: (x, y) => cells.get(keyOf(at(x), at(y))) ?? nothing,
    along(x1, y1, x2, y2, see) {
      passed(x1, y1, x2, y2, 0, key => {
        for (const line of cells.get(key) ?? nothing) see(line)
      })
    },
    cells: () => cells.values(),
  }
}
