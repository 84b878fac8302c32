/** What is selected as a salon hang, round what stays and clear of what stands on the wall. */
import type { Elevation } from '../contract/areas/walls.ts'
import { centreOf, type Rect, right } from '../geometry/rect.ts'
import { laySalon } from '../layout/salon.ts'
import type { SalonAnswer, SalonQuestion } from '../layout/salon-shape.ts'
import { bounds } from '../layout/snap.ts'
import { type Arranged, type Sized, standing } from './arrange.ts'

export interface SalonWish {
  readonly gap: number
  readonly from: number
  readonly to: number
  readonly bottom: number
  readonly top: number
  /** Where the middle of it comes; without an x the middle of what is held, else of the stretch. */
  readonly axis: number | null
  readonly line: number
}

/** `others` hang there too and are no part of it: it keeps the gap to them. Throws what `laySalon` refuses. */
export function inSalon(
  works: readonly Sized[],
  wish: SalonWish,
  { wall }: Pick<Elevation, 'wall'>,
  others: readonly Rect[],
): Arranged & { readonly salon: SalonAnswer } {
  const held = bounds(works.flatMap(each => (each.stays ? [standing(each)] : [])))
  const question: SalonQuestion = {
    from: wish.from,
    to: wish.to,
    bottom: wish.bottom,
    top: wish.top,
    gap: wish.gap,
    centre: { x: wish.axis ?? (held === null ? (wish.from + wish.to) / 2 : centreOf(held).x), y: wish.line },
    works: works.map(each => {
      const { x, y, width, height } = standing(each)
      return { id: each.work.placement, width, height, heldAt: each.stays ? { x, y } : null }
    }),
    keeps: [
      ...wall.openings.map(({ x, y, width, height }) => ({ x, y, width, height, margin: 0 })),
      ...wall.keepClears.map(({ x, y, width, height, margin }) => ({ x, y, width, height, margin })),
      ...others
        .filter(({ x }) => x < wish.to + wish.gap)
        .filter(other => right(other) > wish.from - wish.gap)
        .map(({ x, y, width, height }) => ({ x, y, width, height, margin: wish.gap })),
    ],
  }
  const salon = laySalon(question)
  const free = new Map(works.filter(each => !each.stays).map(each => [each.work.placement, each]))
  return {
    salon,
    leftOver: [],
    misfits: salon.fits ? [] : [{ shortBy: salon.shortBy, way: salon.way, where: '', cures: salon.cures }],
    spots: new Map(
      salon.works.flatMap(({ id, x, y }) => {
        const work = free.get(id)
        return work === undefined ? [] : [[id, { x: x + work.width / 2, centreY: y + work.height / 2 }] as const]
      }),
    ),
  }
}
