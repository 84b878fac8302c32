/** What is fixed on a wall, openings and things to keep clear of alike, and how a hand moves or stretches it. */
import type { WallRow } from '../../src/contract/areas/rooms.ts'

export interface Place {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

export type Fixture = Place & { readonly id: string; readonly label: string } & (
    | {
        readonly family: 'opening'
        /** The face of a partition that it is seen on. */
        readonly side: WallRow['side']
        readonly kind: WallRow['openings'][number]['kind']
        readonly swing: WallRow['openings'][number]['swing']
        readonly leadsTo: string | null
        readonly depth: number | null
      }
    | {
        readonly family: 'keepClear'
        readonly kind: WallRow['keepClears'][number]['kind']
        readonly margin: number
        readonly reason: string
        readonly depth: number | null
        readonly reachable: boolean
      }
  )

type Cleared = Extract<Fixture, { readonly family: 'keepClear' }>
/** As much of it as a hand needs: the building's plan has no reasons. */
export type HeldFixture = Exclude<Fixture, Cleared> | Omit<Cleared, 'reason'>

export function fixturesOf(wall: Pick<WallRow, 'side' | 'openings' | 'keepClears'>): readonly Fixture[] {
  return [
    ...wall.openings.map(one => ({ ...one, side: wall.side, family: 'opening' as const })),
    ...wall.keepClears.map(one => ({ ...one, family: 'keepClear' as const })),
  ]
}

/** What of it the hand holds: the whole, or its edges by their sides. */
export interface Grip {
  readonly left: boolean
  readonly right: boolean
  readonly top: boolean
  readonly bottom: boolean
}
export const whole: Grip = { left: false, right: false, top: false, bottom: false }
const sides = [false, true] as const

/** The eight points that an outline is stretched by. */
export const grips: readonly Grip[] = [
  ...sides.flatMap(right => sides.map(top => ({ left: !right, right, top, bottom: !top }))),
  { ...whole, left: true },
  { ...whole, right: true },
  { ...whole, top: true },
  { ...whole, bottom: true },
]

const least = 10

/**
 * Where it stands after the hand went dx, dy (y up) from where it took hold, to whole steps and within the wall. Sizes
 * that the hand doesn't stretch stay exactly as they were.
 */
export function dragged(
  origin: Place,
  grip: Grip,
  dx: number,
  dy: number,
  wall: { readonly length: number; readonly height: number },
  step: number,
): Place {
  // An edge held in the middle is stretched one way and stays the other.
  const wide = grip.left || grip.right
  const high = grip.top || grip.bottom
  const x = along(
    origin.x,
    origin.width,
    high && !wide ? 0 : dx,
    { low: grip.left, high: grip.right },
    wall.length,
    step,
  )
  const y = along(
    origin.y,
    origin.height,
    wide && !high ? 0 : dy,
    { low: grip.bottom, high: grip.top },
    wall.height,
    step,
  )
  return { x: x.at, width: x.size, y: y.at, height: y.size }
}

function along(
  at: number,
  size: number,
  by: number,
  held: { readonly low: boolean; readonly high: boolean },
  end: number,
  step: number,
): { readonly at: number; readonly size: number } {
  const stepped = (value: number) => Math.round(value / step) * step
  const within = (value: number, low: number, high: number) => Math.min(Math.max(value, low), Math.max(low, high))
  if (by === 0) return { at, size }
  if (held.low) {
    const to = within(stepped(at + by), Math.min(0, at), at + size - least)
    return { at: to, size: at + size - to }
  }
  if (held.high) return { at, size: within(stepped(at + size + by), at + least, Math.max(end, at + size)) - at }
  return { at: within(stepped(at + by), Math.min(0, at), Math.max(end - size, at)), size }
}

export function samePlace(a: Place, b: Place): boolean {
  return a.x === b.x && a.y === b.y && a.width === b.width && a.height === b.height
}
