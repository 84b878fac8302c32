/** What stands in a room as the hand takes it: things by their middle, partitions and tracks by their two ends. */
import type { PartitionRow } from '../../src/contract/areas/partitions.ts'
import type { StandingRow, TrackRow } from '../../src/contract/areas/standing.ts'
import type { Point } from '../../src/drawing/room-plan.ts'

export type Item =
  | { readonly family: 'thing'; readonly row: StandingRow }
  | { readonly family: 'partition'; readonly row: PartitionRow }
  | { readonly family: 'track'; readonly row: TrackRow }

/** Its middle, or its two ends; room-local mm. */
export function pointsOf(item: Item): readonly Point[] {
  return item.family === 'thing' ? [item.row.at] : item.row.ends
}

/** The two ends; a thing has one place only. */
export function endsOf(points: readonly Point[]): [[number, number], [number, number]] {
  const [a = [0, 0], b = [0, 0]] = points
  return [
    [a[0], a[1]],
    [b[0], b[1]],
  ]
}

/** The same with its middle, or its two ends, elsewhere. */
export function itemAt(item: Item, points: readonly Point[]): Item {
  const ends = endsOf(points)
  if (item.family === 'thing') return { family: 'thing', row: { ...item.row, at: ends[0] } }
  if (item.family === 'track') return { family: 'track', row: { ...item.row, ends } }
  return { family: 'partition', row: { ...item.row, ends } }
}

export function calledItem({ family, row }: Item): string {
  if (row.name !== '') return row.name
  return family === 'thing' ? row.kind : family
}

/** The points after the hand went dx, dy: all, or the end that it holds; what it moves comes to whole steps. */
export function draggedPoints(
  from: readonly Point[],
  grip: number | null,
  dx: number,
  dy: number,
  step: number,
): readonly Point[] {
  const first = from[grip ?? 0]
  if (first === undefined) return from
  const stepped = (at: number, by: number) => (by === 0 ? 0 : Math.round((at + by) / step) * step - at)
  // All by the same way, so that a partition keeps its length.
  const [mx, my] = [stepped(first[0], dx), stepped(first[1], dy)]
  return from.map(([x, y], index) => (grip === null || grip === index ? clean([x + mx, y + my]) : [x, y]))
}

/** To a thousandth of a millimetre: sixteenths of an inch are no whole ones. */
function clean([x, y]: Point): Point {
  return [Math.round(x * 1000) / 1000, Math.round(y * 1000) / 1000]
}

export function samePoints(a: readonly Point[], b: readonly Point[]): boolean {
  return a.length === b.length && a.every(([x, y], at) => x === b[at]?.[0] && y === b[at]?.[1])
}
