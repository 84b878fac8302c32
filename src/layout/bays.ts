/** Usable stretches of a wall: between its ends, its openings and what must stay clear, each with its margin. */
import type { WallFacts } from '../hang/wall.ts'

export interface Bay {
  readonly from: number
  readonly to: number
  readonly length: number
  /** What bounds it: `end`, or the label or kind of an opening or a thing kept clear. */
  readonly leftOf: string
  readonly rightOf: string
}

/**
 * Bays at the heights from `bottom` to `top`: only what reaches into that band cuts the wall. Stretches shorter than
 * `least` are left out. mm.
 */
export function baysOf(
  wall: Pick<WallFacts, 'length' | 'openings' | 'keepClears'>,
  band: { readonly bottom: number; readonly top: number },
  least = 0,
): readonly Bay[] {
  const cuts = [...wall.openings.map(opening => ({ ...opening, margin: 0 })), ...wall.keepClears]
    .filter(item => item.y - item.margin < band.top && item.y + item.height + item.margin > band.bottom)
    .map(item => ({
      from: item.x - item.margin,
      to: item.x + item.width + item.margin,
      name: item.label === '' ? item.kind : item.label,
    }))
    .sort((a, b) => a.from - b.from)
  const found: Bay[] = []
  let at = 0
  let leftOf = 'end'
  const add = (to: number, rightOf: string) => {
    if (to - at > Math.max(least, 1e-6)) found.push({ from: at, to, length: to - at, leftOf, rightOf })
  }
  for (const cut of cuts) {
    if (cut.from > at) add(Math.min(cut.from, wall.length), cut.name)
    if (cut.to > at) {
      at = cut.to
      leftOf = cut.name
    }
  }
  if (at < wall.length) add(wall.length, 'end')
  return found
}
