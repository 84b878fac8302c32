/**
 * Cutting a stretch of wall into sheets of paper at full size. Neighbours overlap, and both show what lies in the
 * overlap, so that they can be laid on each other by what is drawn. The rule it keeps: one millimetre of wall is one
 * millimetre of paper, on every sheet.
 */

/** A stretch of the wall's plane: x to the right, y up, millimetres. */
export interface Area {
  readonly left: number
  readonly right: number
  readonly bottom: number
  readonly top: number
}

export interface Tile extends Area {
  /** `A1`: rows by letter from the top, columns by number from the left. */
  readonly name: string
  readonly row: number
  readonly column: number
}

export interface Tiling {
  readonly rows: number
  readonly columns: number
  readonly tiles: readonly Tile[]
}

/** Paper around the drawing: what a printer leaves white, and at the foot bar, words and map. Millimetres. */
export const templateMargin = { left: 12, right: 8, top: 8, foot: 30 } as const
/** How much of each sheet its neighbour shows too. */
export const templateOverlap = 12
/** Where a point of the wall stands on the paper of a tile. */
export function onPaper({ x, y }: { readonly x: number; readonly y: number }, tile: Area): { x: number; y: number } {
  return { x: templateMargin.left + x - tile.left, y: templateMargin.top + tile.top - y }
}

/** Sheets of `width` × `height` drawable millimetres that cover the area from its top left corner. */
export function tilesOf(area: Area, width: number, height: number, overlap: number): Tiling {
  const columns = countFor(area.right - area.left, width, overlap)
  const rows = countFor(area.top - area.bottom, height, overlap)
  const tiles = Array.from({ length: rows * columns }, (_, index): Tile => {
    const row = Math.floor(index / columns)
    const column = index % columns
    const left = area.left + column * (width - overlap)
    const top = area.top - row * (height - overlap)
    return { name: `${letters(row)}${column + 1}`, row, column, left, right: left + width, top, bottom: top - height }
  })
  return { rows, columns, tiles }
}

function countFor(length: number, size: number, overlap: number): number {
  return Math.max(1, Math.ceil((length - overlap) / (size - overlap) - 1e-9))
}

/** A, B … Z, AA. */
function letters(row: number): string {
  const last = String.fromCharCode(65 + (row % 26))
  return row < 26 ? last : letters(Math.floor(row / 26) - 1) + last
}

export interface Segment {
  readonly x1: number
  readonly y1: number
  readonly x2: number
  readonly y2: number
}

/** The part of a segment that lies in the area; null where none does (Liang and Barsky 1984). */
export function clipped({ x1, y1, x2, y2 }: Segment, area: Area): Segment | null {
  const dx = x2 - x1
  const dy = y2 - y1
  let from = 0
  let to = 1
  for (const [along, room] of [
    [-dx, x1 - area.left],
    [dx, area.right - x1],
    [-dy, y1 - area.bottom],
    [dy, area.top - y1],
  ] as const) {
    if (along === 0) {
      if (room < 0) return null
    } else if (along < 0) from = Math.max(from, room / along)
    else to = Math.min(to, room / along)
  }
  if (from > to) return null
  return { x1: x1 + from * dx, y1: y1 + from * dy, x2: x1 + to * dx, y2: y1 + to * dy }
}
