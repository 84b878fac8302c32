/**
 * The row that a change happens in: works side by side in one bay, none above another. Where works stand above one
 * another or overlap, there is no row, and the others are only in the way.
 */
import { type Rect, right } from '../geometry/rect.ts'
import { baysOf } from '../layout/bays.ts'
import type { LateQuestion } from './late-shape.ts'

export interface Placed extends Rect {
  readonly id: string
}

export interface Row {
  /** From left to right. */
  readonly ids: readonly string[]
  readonly from: number
  readonly to: number
}

/** The row about a work: those beside it in its bay, that overlap its height; null where two of them share a place along. */
export function rowAbout(id: string, works: readonly Placed[], wall: LateQuestion['wall']): Row | null {
  const me = works.find(work => work.id === id)
  if (me === undefined) return null
  const beside = works.filter(work => work.y < me.y + me.height && work.y + work.height > me.y)
  const bottom = Math.min(...beside.map(work => work.y))
  const top = Math.max(...beside.map(work => work.y + work.height))
  const bay = baysOf(wall, { bottom, top }).find(({ from, to }) => from <= middle(me) && middle(me) <= to)
  if (bay === undefined) return null
  const row = beside
    .filter(work => bay.from <= middle(work) && middle(work) <= bay.to)
    .sort((a, b) => middle(a) - middle(b))
  const columns = row.some((one, index) =>
    row.slice(index + 1).some(other => one.x < right(other) && other.x < right(one) && !besideEachOther(one, other)),
  )
  return columns ? null : { ids: row.map(work => work.id), from: bay.from, to: bay.to }
}

function middle(work: Rect): number {
  return work.x + work.width / 2
}

function besideEachOther(a: Rect, b: Rect): boolean {
  return a.y < b.y + b.height && a.y + a.height > b.y
}
