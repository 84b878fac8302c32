/**
 * What stands in a room as a survey draws it: partitions and columns cut through, the rest as outlines seen from above
 * with the lines that tell what they are (treads and the way up of a stair, a rising arrow on a ramp, the panes of a
 * case, a cross on a plinth), ceiling tracks as chain lines. Paths in the building's millimetres, one for each weight.
 */
import type { PlanPartitionRow, PlanRoomRow, PlanWallRow } from '../contract/areas/plan.ts'
import type { Point } from '../drawing/room-plan.ts'
import { bandOf, footprintOf } from './footprint.ts'
import { besideOf } from './partition.ts'
import { turnOf } from './place.ts'
import { line, loop } from './poche.ts'

export interface StandLines {
  /** Partitions and columns. */
  readonly cut: string
  /** Seen from above: filled with the paper, edged. */
  readonly things: string
  readonly marks: string
  readonly barriers: string
  readonly tracks: string
}

type Thing = PlanRoomRow['things'][number]

/** A face of a partition, as a wall of its room would be said: from its left end as seen on it. */
export type PartitionFace = Pick<PlanWallRow, 'from' | 'to' | 'length' | 'works' | 'fixtures'> & {
  readonly partition: string
  readonly face: string
  readonly name: string
}

/** Both faces, half the thickness from the middle; face b is seen the other way round. */
export function facesOf({ id, name, from, to, length, thickness, sides }: PlanPartitionRow): readonly PartitionFace[] {
  return sides.map(({ side, face, works, fixtures }) => {
    const [left, right] = besideOf([from, to], side, thickness / 2)
    return { partition: id, face, name, from: [...left], to: [...right], length, works, fixtures }
  })
}

export function standLines(room: Pick<PlanRoomRow, 'partitions' | 'things' | 'tracks'>): StandLines {
  const columns = room.things.filter(each => each.kind === 'column')
  const barriers = room.things.filter(each => each.kind === 'barrier')
  const others = room.things.filter(each => each.kind !== 'column' && each.kind !== 'barrier')
  const outline = (each: Thing) => loop(footprintOf({ ...each, x: each.at[0], y: each.at[1] }))
  return {
    cut: [...room.partitions.map(partitionBand), ...columns.map(outline)].join(''),
    things: others.map(outline).join(''),
    marks: others.map(marksOf).join(''),
    barriers: barriers.map(outline).join(''),
    tracks: room.tracks.map(({ from, to }) => line(from, to)).join(''),
  }
}

/** Cut where something goes through it. */
function partitionBand({ from, to, length, thickness, openings }: PlanPartitionRow): string {
  const cuts = openings
    .map(({ x, width }) => [Math.max(0, x), Math.min(length, x + width)] as const)
    .sort((a, b) => a[0] - b[0])
  const share = (x: number): Point => [
    from[0] + ((to[0] - from[0]) * x) / length,
    from[1] + ((to[1] - from[1]) * x) / length,
  ]
  const bands: string[] = []
  let at = 0
  for (const [begin, end] of cuts) {
    if (begin > at) bands.push(loop(bandOf([share(at), share(begin)], thickness)))
    at = Math.max(at, end)
  }
  if (at < length) bands.push(loop(bandOf([share(at), share(length)], thickness)))
  return bands.join('')
}

/** A going of a stair on the drawing, mm; common practice, no source. */
const GOING = 280

function marksOf({ kind, at, turn, width, depth, round }: Thing): string {
  const [cos, sin] = turnOf(turn)
  const put = (u: number, v: number): Point => [at[0] + cos * u - sin * v, at[1] + sin * u + cos * v]
  const [w, d] = [width / 2, depth / 2]
  if (kind === 'stair') {
    // Treads lie across the longer side; the line of the way with its arrow runs along it.
    const along = width >= depth
    const run = along ? width : depth
    const treads = Array.from({ length: Math.max(0, Math.round(run / GOING) - 1) }, (_, index) => {
      const t = -run / 2 + ((index + 1) * run) / Math.round(run / GOING)
      return along ? line(put(t, -d), put(t, d)) : line(put(-w, t), put(w, t))
    })
    return treads.join('') + arrow(put, along, run)
  }
  if (kind === 'ramp') return arrow(put, width >= depth, Math.max(width, depth))
  if (kind === 'plinth' && !round) return line(put(-w, -d), put(w, d)) + line(put(w, -d), put(-w, d))
  if (kind === 'case' && !round) {
    const [a, b] = [Math.max(0, w - 40), Math.max(0, d - 40)]
    return loop([put(-a, -b), put(a, -b), put(a, b), put(-a, b)])
  }
  return ''
}

function arrow(put: (u: number, v: number) => Point, along: boolean, run: number): string {
  const at = (t: number, side: number) => (along ? put(t, side) : put(side, t))
  const [from, to, head] = [-run / 2 + run * 0.06, run / 2 - run * 0.06, Math.min(140, run * 0.1)]
  return line(at(from, 0), at(to, 0)) + line(at(to - head, -head / 2), at(to, 0), at(to - head, head / 2))
}
