/** Points against walls and rooms: the nearest of a stretch, and where a name has room. Millimetres of the building. */
import type { Point } from '../drawing/room-plan.ts'
import type { Box } from './place.ts'

/** The nearest point of the stretch from a to b, how far along it that is (0 to 1), and how far away. */
export function nearestOn(
  a: Point,
  b: Point,
  [x, y]: Point,
): { readonly at: Point; readonly share: number; readonly away: number } {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const square = dx * dx + dy * dy
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / square))
  const at: Point = [a[0] + dx * share, a[1] + dy * share]
  return { at, share, away: Math.hypot(x - at[0], y - at[1]) }
}

/**
 * Where a room's name stands: the middle of the widest level stretch inside, tried on some lines, the nearest to the
 * middle of the room first. So it lies inside an L or a U too, and beside what stands there: `taken` are boxes that lines
 * of so many mm make way for, as for the walls.
 */
export function middleOf(
  corners: readonly Point[],
  taken: readonly Box[] = [],
  high = 900,
): { readonly at: Point; readonly wide: number } {
  const ys = corners.map(([, y]) => y)
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)]
  let best: { at: Point; wide: number } = { at: corners[0] ?? [0, 0], wide: 0 }
  for (const share of [0.5, 0.42, 0.58, 0.34, 0.66, 0.25, 0.75, 0.16, 0.84]) {
    const y = top + (bottom - top) * share
    for (const inside of levelAt(corners, y, high)) {
      const beside = taken.filter(box => box.top < y + high / 2 && box.bottom > y - high / 2)
      for (const [from, to] of freeOf(inside, beside)) {
        // The middle wins unless another stretch is a good deal wider.
        if (to - from > best.wide * 1.25) best = { at: [(from + to) / 2, y], wide: to - from }
      }
    }
  }
  return best
}

type Stretch = readonly [number, number]

/** The level stretches inside at y that stay inside half of `high` above and below, as far as the room goes. */
function levelAt(corners: readonly Point[], y: number, high: number): readonly Stretch[] {
  const [above, at, below] = [y - high / 2, y, y + high / 2].map(line => crossed(corners, line))
  return [above, below].reduce<readonly Stretch[]>(
    (left, other) =>
      other === undefined || other.length === 0
        ? left
        : left.flatMap(([from, to]) =>
            other.flatMap(([begin, end]): Stretch[] =>
              Math.min(to, end) > Math.max(from, begin) ? [[Math.max(from, begin), Math.min(to, end)]] : [],
            ),
          ),
    at ?? [],
  )
}

/** Where a line along the page is inside. */
function crossed(corners: readonly Point[], y: number): readonly Stretch[] {
  const crossings = corners
    .flatMap(([ax, ay], index) => {
      const [bx, by] = corners[(index + 1) % corners.length] ?? [ax, ay]
      return ay > y === by > y ? [] : [((bx - ax) * (y - ay)) / (by - ay) + ax]
    })
    .sort((a, b) => a - b)
  return crossings.flatMap((from, at) => {
    const to = crossings[at + 1]
    return at % 2 === 1 || to === undefined ? [] : [[from, to] as const]
  })
}

/** What boxes leave of a stretch along the page. */
function freeOf([from, to]: Stretch, boxes: readonly Box[]): readonly Stretch[] {
  const free: [number, number][] = []
  let at = from
  for (const { left, right } of [...boxes].sort((a, b) => a.left - b.left)) {
    if (left > at) free.push([at, Math.min(left, to)])
    at = Math.max(at, right)
  }
  if (at < to) free.push([at, to])
  return free.filter(([begin, end]) => end > begin)
}
