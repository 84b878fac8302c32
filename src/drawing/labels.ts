/** Where figures stand on the drawing so that none covers another: dimension figures, the line's label, numbers of works. */
import type { Rect } from '../geometry/rect.ts'
import { overlap, right } from '../geometry/rect.ts'
import type { WallPiece } from '../layout/chains.ts'
import { spread } from '../sheets/spread.ts'
import type { View } from './view.ts'

export interface FigureWanted {
  readonly piece: WallPiece
  readonly text: string
  readonly width: number
}

export interface FigurePlaced extends FigureWanted {
  readonly key: string
  readonly middle: number
}

/**
 * Figures of a dimension chain along one line: every one where there is room, else the gaps alone, else those beside
 * what is selected, else none: figures are dropped, never laid over each other.
 */
export function chainFigures(
  wanted: readonly FigureWanted[],
  view: View,
  width: number,
  near: ReadonlySet<string>,
): readonly FigurePlaced[] {
  const seen = wanted.filter(
    ({ piece }) => piece.to * view.scale + view.left > 0 && piece.from * view.scale + view.left < width,
  )
  const closeBy = seen.filter((figure, index) =>
    [seen[index - 1], figure, seen[index + 1]].some(each => each?.piece.id != null && near.has(each.piece.id)),
  )
  for (const some of [seen, seen.filter(({ piece }) => piece.kind === 'gap'), closeBy]) {
    const sorted = [...some].sort((a, b) => middleOf(a.piece, view) - middleOf(b.piece, view))
    const middles = spread(
      sorted.map(({ piece, width }) => ({ at: middleOf(piece, view), width })),
      2,
      width - 2,
      7,
    )
    if (middles === null || strays(sorted, middles, view)) continue
    let gaps = 0
    return sorted.map((figure, index) => {
      // Counted among those that are shown: the gaps beside a work that is carried along the wall stay the same ones.
      const key = figure.piece.id ?? `gap ${++gaps}`
      return { ...figure, key, middle: middles[index] ?? 0 }
    })
  }
  return []
}

function middleOf(piece: WallPiece, view: View): number {
  return view.left + ((piece.from + piece.to) / 2) * view.scale
}

/** A figure that stands too far from its piece is read as another's. */
function strays(figures: readonly FigureWanted[], middles: readonly number[], view: View): boolean {
  return figures.some(
    ({ piece, width }, index) =>
      Math.abs((middles[index] ?? 0) - middleOf(piece, view)) >
      width + Math.max(8, ((piece.to - piece.from) * view.scale) / 2),
  )
}

/** Left edge for a label on a level line: right of the wall, else the first free stretch from the right, else the right edge. */
export function lineLabel(
  y: number,
  size: { readonly width: number; readonly height: number },
  works: readonly Rect[],
  wall: Rect,
  width: number,
): number {
  const free = (x: number) =>
    works.every(
      work => !overlap({ x: x - 6, y: y - size.height, width: size.width + 12, height: 2 * size.height }, work),
    )
  const beyond = right(wall) + 12
  if (beyond + size.width <= width) return beyond
  for (let x = width - size.width - 6; x > 0; x -= 8) if (free(x)) return x
  return width - size.width - 6
}

/** Which works have room for their number under them; the first from the left wins. Screen rectangles, y down. */
export function numbersShown(
  works: readonly { readonly id: string; readonly rect: Rect; readonly width: number }[],
): ReadonlySet<string> {
  const shown = new Set<string>()
  const taken: Rect[] = []
  for (const { id, rect, width } of works) {
    const label = {
      x: rect.x + rect.width / 2 - width / 2 - 2,
      y: rect.y + rect.height + 7,
      width: width + 4,
      height: 13,
    }
    if (
      taken.some(other => overlap(label, other)) ||
      works.some(other => other.id !== id && overlap(label, other.rect))
    )
      continue
    taken.push(label)
    shown.add(id)
  }
  return shown
}

/** Width of the frame that is drawn round the picture, mm; its true width is not known. */
export function frameBand(size: { readonly width: number; readonly height: number; readonly part: string }): number {
  return size.part === 'framed' ? Math.min(55, Math.min(size.width, size.height) / 12) : 0
}
