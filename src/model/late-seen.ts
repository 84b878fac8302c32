/**
 * What one way out of a late change looks like on one wall beside today: works in their new places and sizes, what
 * leaves, holes to drill and holes left, and the gaps that come of it. Nothing here decides anything.
 */
import type { LateChange, LateOffer } from '../contract/areas/marks.ts'
import type { Elevation } from '../contract/areas/walls.ts'
import { columnsOf } from '../drawing/columns.ts'
import type { Point, Rect } from '../geometry/rect.ts'
import type { Steps } from '../hang/printing.ts'
import { type WallPiece, wallChain } from '../layout/chains.ts'
import { rectOf } from './hung-rect.ts'
import { worksIfDifferent } from './late-changed.ts'

export interface LateGhost extends Rect {
  readonly id: string
  readonly name: string
  /** Centre today; null for what comes from another wall. */
  readonly from: Point | null
}

export interface LateSeen {
  readonly ghosts: readonly LateGhost[]
  /** Works that leave this wall, where they stand today. */
  readonly gone: readonly Rect[]
  readonly newHoles: readonly Point[]
  readonly deadHoles: readonly Point[]
  /** The gaps beside what moves or changes, as they would be. */
  readonly gaps: readonly WallPiece[]
}

/** One way out on one wall. mm; x from the wall's left end, y up from the floor at x = 0. */
export function lateSeen(elevation: Elevation, change: LateChange, offer: LateOffer, steps: Steps): LateSeen {
  const { face, length } = elevation.wall
  const off = new Set([
    ...offer.off.map(work => work.entry),
    ...offer.moves.filter(move => move.face !== face).map(move => move.entry),
  ])
  const here = new Map(elevation.works.map(work => [work.entry, work]))
  const moved = offer.moves.filter(move => move.face === face)
  const ghosts = moved.map(({ entry, name, x, y, width, height, wasX, wasY }): LateGhost => {
    const from = here.has(entry) ? { x: wasX, y: wasY } : null
    return { id: entry, name, x: x - width / 2, y: y - height / 2, width, height, from }
  })
  const known = new Set(moved.map(move => move.entry))
  if (change.kind === 'different' && !known.has(change.entry)) {
    const work = worksIfDifferent(elevation, change).find(each => each.entry === change.entry)
    if (work !== undefined && work.size !== null) {
      const { width, height } = work.size
      const centre = { x: work.x, y: work.centreY }
      const rect = { x: centre.x - width / 2, y: centre.y - height / 2, width, height }
      ghosts.push({ id: change.entry, name: work.running, ...rect, from: centre })
    }
  }
  const touched = new Set(ghosts.map(ghost => ghost.id))
  const staying = elevation.works.flatMap(work => {
    const rect = touched.has(work.entry) || off.has(work.entry) ? undefined : rectOf(work)
    return rect === undefined ? [] : [{ ...rect, id: work.entry }]
  })
  const columns = columnsOf([...staying, ...ghosts])
  const fresh = new Set(columns.filter(column => column.ids.some(id => touched.has(id))).map(column => column.id))
  const { pieces } = wallChain(length, columns, steps)
  const gone = elevation.works.flatMap(work => (off.has(work.entry) ? (rectOf(work) ?? []) : []))
  const opened = (piece: WallPiece) => gone.some(rect => piece.from < rect.x + rect.width && rect.x < piece.to)
  return {
    ghosts,
    gone,
    newHoles: offer.newHoles.filter(hole => hole.face === face),
    deadHoles: offer.deadHoles.filter(hole => hole.face === face),
    gaps: pieces.filter(
      (piece, at) =>
        piece.kind === 'gap' &&
        (opened(piece) || [pieces[at - 1], pieces[at + 1]].some(one => one?.id != null && fresh.has(one.id))),
    ),
  }
}
