/** What is selected in stacks: works one above the other on one axis, and such stacks side by side in a row. */
import type { Elevation } from '../contract/areas/walls.ts'
import { Refusal } from '../contract/refusal.ts'
import { centreOf } from '../geometry/rect.ts'
import { floorAt, heightAlong } from '../hang/wall.ts'
import type { StackQuestion } from '../layout/layout-shape.ts'
import { layRow } from '../layout/row.ts'
import { bounds } from '../layout/snap.ts'
import { layStack } from '../layout/stack.ts'
import { type Arranged, type Misfit, type Ramp, type Sized, standing } from './arrange.ts'
import type { Spot } from './places.ts'

export interface StackWish {
  /** Works in each stack; from left to right they are shared out. */
  readonly each: number
  readonly gap: number
  /** Between stacks, edge to edge of their widest works. */
  readonly between: number
  readonly line: number
  readonly by: NonNullable<StackQuestion['by']>
  /** Where the middle of all stacks comes; null: one stack where its works are now, several in the middle. */
  readonly axis: number | null
  readonly from: number
  readonly to: number
}

/** The heights that there are above a point of the wall: from the skirting to under the ceiling, less the lift-on. mm. */
export function roomAt({ wall, rules }: Pick<Elevation, 'wall' | 'rules'>, x: number) {
  const ceiling = heightAlong(wall.ceiling, x) ?? wall.height
  return { from: floorAt(wall.floor, x) + (wall.skirting ?? 0), to: ceiling - rules.liftOn }
}

/**
 * Stacks of so many works, the highest of each at the top, in a row with one gap. A held work keeps its place: its stack
 * stands on its axis. Refuses `stack-held-apart`, where two held works of a stack stand on different axes, and what
 * rows refuse.
 */
export function inStacks(
  works: readonly Sized[],
  wish: StackWish,
  elevation: Pick<Elevation, 'wall' | 'rules'>,
  ramp: Ramp = [],
): Arranged {
  const stacks = sharedOut(works, wish.each)
  const alone = stacks.length === 1
  const box = alone && stacks[0] ? bounds(stacks[0].map(standing)) : null
  const row = layRow({
    from: wish.from,
    to: wish.to,
    rule: { rule: 'gap', gap: wish.between, axis: wish.axis ?? (box === null ? null : centreOf(box).x) },
    works: stacks.map((stack, index) => {
      const width = Math.max(...stack.map(each => each.width))
      const held = heldAxis(stack)
      return { id: String(index), width, heldAt: held === null ? null : held - width / 2 }
    }),
  })
  if (!row.fits) {
    // A stack is no work: what may be left out is its widest.
    const cures = row.cures.filter(cure => cure.kind !== 'leave-out' && cure.kind !== 'let-go')
    return { spots: new Map(), leftOver: [], misfits: [{ shortBy: row.shortBy, way: 'longer', where: '', cures }] }
  }
  const misfits: Misfit[] = []
  const spots = new Map<string, Spot>()
  stacks.forEach((stack, index) => {
    const x = row.works[index]?.centre ?? 0
    const laid = layStack({
      works: stack.map(({ work, height, stays }) => ({
        id: work.placement,
        height,
        heldAt: stays ? work.centreY - height / 2 : null,
      })),
      gap: wish.gap,
      line: wish.line + floorAt(ramp, x),
      by: wish.by,
      room: roomAt(elevation, x),
    })
    if (!laid.fits) {
      misfits.push({
        shortBy: laid.shortBy,
        way: 'higher',
        where: alone ? '' : `stack ${index + 1}`,
        cures: laid.cures,
      })
    }
    const stays = new Set(stack.filter(each => each.stays).map(each => each.work.placement))
    for (const { id, centre } of laid.works) if (!stays.has(id)) spots.set(id, { x, centreY: centre })
  })
  return { misfits, leftOver: [], spots: misfits.length > 0 ? new Map() : spots }
}

/** From left to right so many to a stack; in each the highest first, of equally high ones the left one. */
function sharedOut(works: readonly Sized[], each: number): readonly (readonly Sized[])[] {
  const many = Math.max(1, Math.floor(each))
  const ordered = [...works].sort((a, b) => a.work.x - b.work.x)
  const stacks = Array.from({ length: Math.ceil(ordered.length / many) }, (_, at) =>
    ordered.slice(at * many, (at + 1) * many),
  )
  return stacks.map(stack => stack.sort((a, b) => b.work.centreY - a.work.centreY || a.work.x - b.work.x))
}

function heldAxis(stack: readonly Sized[]): number | null {
  const [first, ...others] = stack.filter(each => each.stays)
  if (first === undefined) return null
  const apart = others.find(({ work }) => Math.abs(work.x - first.work.x) > 1)
  if (apart !== undefined) {
    throw new Refusal(
      'stack-held-apart',
      'Two works of one stack stay where they are, on different axes. Let one go.',
      {
        details: { one: first.work.placement, other: apart.work.placement },
      },
    )
  }
  return first.work.x
}
