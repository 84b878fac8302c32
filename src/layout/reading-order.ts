/** The order in which one reads works on a wall: row by row from the top, each from left to right. */
import type { Rect } from '../geometry/rect.ts'

/** Works whose middles lie within the height of a row's first work are of that row. mm, y up. */
export function readingOrder<R extends Rect>(rects: readonly R[]): readonly R[] {
  const middle = (rect: R) => rect.y + rect.height / 2
  const rows: R[][] = []
  for (const rect of [...rects].sort((a, b) => middle(b) - middle(a))) {
    const row = rows.find(([first]) => first !== undefined && Math.abs(middle(first) - middle(rect)) < first.height / 2)
    if (row === undefined) rows.push([rect])
    else row.push(rect)
  }
  return rows.flatMap(row => row.sort((a, b) => a.x - b.x))
}
