/** Boxes sorted into cells, so that those about a point are found without asking all. Millimetres. */
import type { Box } from './place.ts'

/** Asks for the numbers of the boxes that may hold a point. */
export type BoxIndex = (x: number, y: number) => readonly number[]

const nothing: readonly number[] = []
/** Cells across the whole, so that a box about everything does not fill the memory. */
const across = 200

export function boxIndex(boxes: readonly Box[]): BoxIndex {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const box of boxes) {
    left = Math.min(left, box.left)
    top = Math.min(top, box.top)
    right = Math.max(right, box.right)
    bottom = Math.max(bottom, box.bottom)
  }
  const cell = Math.max((right - left) / across, (bottom - top) / across, 1)
  const column = (x: number) => Math.floor((x - left) / cell)
  const line = (y: number) => Math.floor((y - top) / cell)
  const cells = new Map<number, number[]>()
  for (const [index, box] of boxes.entries()) {
    for (let i = column(box.left); i <= column(box.right); i++) {
      for (let j = line(box.top); j <= line(box.bottom); j++) {
        const key = i * (across + 2) + j
        const there = cells.get(key)
        if (there === undefined) cells.set(key, [index])
        else there.push(index)
      }
    }
  }
  return (x, y) =>
    x < left || x > right || y < top || y > bottom
      ? nothing
      : (cells.get(column(x) * (across + 2) + line(y)) ?? nothing)
}
