/**
 * Lining up and spreading out what is selected. Held works never move; where one is selected, the others come to it.
 * Each answers new left and bottom edges in the order given.
 */
import type { Point, Rect } from '../geometry/rect.ts'
import { right, top } from '../geometry/rect.ts'
import { bounds } from './snap.ts'

export interface AlignWork extends Rect {
  readonly id: string
  readonly held: boolean
}

export type AlignTo = 'lefts' | 'centres along' | 'rights' | 'tops' | 'middles' | 'bottoms'

/** Left and bottom edge of each after lining up. To the first held work if there is one, else to the group's own edge or middle. */
export function align(works: readonly AlignWork[], to: AlignTo): readonly (Point & { readonly id: string })[] {
  const held = works.find(work => work.held)
  const box = held ?? bounds(works)
  return works.map(work => {
    if (work.held || box === null) return { id: work.id, x: work.x, y: work.y }
    return { id: work.id, ...aligned(work, box, to) }
  })
}

function aligned(work: Rect, box: Rect, to: AlignTo): Point {
  switch (to) {
    case 'lefts':
      return { x: box.x, y: work.y }
    case 'rights':
      return { x: right(box) - work.width, y: work.y }
    case 'centres along':
      return { x: box.x + (box.width - work.width) / 2, y: work.y }
    case 'tops':
      return { x: work.x, y: top(box) - work.height }
    case 'bottoms':
      return { x: work.x, y: box.y }
    case 'middles':
      return { x: work.x, y: box.y + (box.height - work.height) / 2 }
  }
}

export type DistributeBy = 'gaps' | 'centres'

/**
 * Equal gaps, or equal distances of centres, along the wall. The outermost two stay, and so does each held work; the
 * others spread between those that stay.
 */
export function distribute(
  works: readonly AlignWork[],
  by: DistributeBy,
): readonly (Point & { readonly id: string })[] {
  const order = [...works].sort((a, b) => a.x + a.width / 2 - (b.x + b.width / 2))
  const places = new Map(works.map(work => [work.id, work.x]))
  let start = 0
  order.forEach((work, index) => {
    if (index === 0 || !(work.held || index === order.length - 1)) return
    spread(order.slice(start, index + 1), by, places)
    start = index
  })
  return works.map(work => ({ id: work.id, x: places.get(work.id) ?? work.x, y: work.y }))
}

/** The first and last stay; those between are spread. */
function spread(run: readonly AlignWork[], by: DistributeBy, places: Map<string, number>): void {
  const first = run[0]
  const last = run.at(-1)
  if (first === undefined || last === undefined || run.length < 3) return
  const inner = run.slice(1, -1)
  if (by === 'gaps') {
    const free = last.x - right(first) - inner.reduce((sum, work) => sum + work.width, 0)
    const gap = free / (inner.length + 1)
    let x = right(first) + gap
    for (const work of inner) {
      places.set(work.id, x)
      x += work.width + gap
    }
    return
  }
  const from = first.x + first.width / 2
  const step = (last.x + last.width / 2 - from) / (run.length - 1)
  inner.forEach((work, index) => {
    places.set(work.id, from + step * (index + 1) - work.width / 2)
  })
}
