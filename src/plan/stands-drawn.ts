/**
 * What stands in a room as a survey draws it: partitions and columns cut through, the rest as outlines seen from above
 * with the lines that tell what they are (treads and the way up of a stair, a rising arrow on a ramp, the panes of a
 * case, a cross on a plinth), ceiling tracks as chain lines. Paths in the building's millimetres, one for each weight.
 */
import type { PlanPartitionRow, PlanRoomRow, PlanWallRow } from '../contract/areas/plan.ts'
import type { Point } from '../drawing/room-plan.ts'
import { footprintOf } from './footprint.ts'
import { besideOf } from './partition.ts'
import { turnOf } from './place.ts'
import { line, loop, partitionShapes } from './poche.ts'
import { openingsBehind } from './seen-from-behind.ts'

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
export type PartitionFace = Pick<
  PlanWallRow,
  'face' | 'name' | 'from' | 'to' | 'length' | 'height' | 'openings' | 'works' | 'fixtures'
> & { readonly partition: string; readonly side: 'a' | 'b'; readonly thickness: number }

/** Both faces, half the thickness from the middle; face b is seen the other way round. */
export function facesOf(partition: PlanPartitionRow): readonly PartitionFace[] {
  const { id, name, from, to, length, height, thickness, openings, sides } = partition
  return sides.map(({ side, face, works, fixtures }) => {
    const [left, right] = besideOf([from, to], side, thickness / 2)
    return {
      ...{ partition: id, side, face, name: `${name}, side ${side}`, length, height, thickness, works, fixtures },
      ...{ from: [...left], to: [...right] },
      openings: side === 'a' ? openings : openingsBehind(openings, length),
    }
  })
}

export function standLines(room: Pick<PlanRoomRow, 'partitions' | 'things' | 'tracks'>): StandLines {
  const columns = room.things.filter(each => each.kind === 'column')
  const barriers = room.things.filter(each => each.kind === 'barrier')
  const others = room.things.filter(each => each.kind !== 'column' && each.kind !== 'barrier')
  const outline = (each: Thing) => loop(footprintOf({ ...each, x: each.at[0], y: each.at[1] }))
  return {
    cut: [...partitionShapes(room.partitions).flatMap(({ solid }) => solid.map(loop)), ...columns.map(outline)].join(
      '',
    ),
    things: others.map(outline).join(''),
    marks: others.map(marksOf).join(''),
    barriers: barriers.map(outline).join(''),
    tracks: room.tracks.map(({ from, to }) => line(from, to)).join(''),
  }
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
