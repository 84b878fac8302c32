/** The works of a wall as a late change makes them, before anybody says where they go: what its checks are asked with. */
import type { LateChange } from '../contract/areas/marks.ts'
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'

/** The works of the wall as the change makes them, still in their old places; what leaves the wall is not among them. */
export interface Changed {
  readonly works: readonly PlacedWork[]
  /** What has another frame or back, by entry. */
  readonly anew: ReadonlySet<string>
  /** Walls that the change is about: what is stopped on one of them is no news on another. */
  readonly walls: readonly Elevation[]
}

/** The works with the other frame and back. */
export function worksIfDifferent(
  elevation: Elevation,
  change: Extract<LateChange, { kind: 'different' }>,
): PlacedWork[] {
  return elevation.works.map((work): PlacedWork => {
    if (work.entry !== change.entry || work.size === null) return work
    return {
      ...work,
      size: { ...work.size, width: change.width, height: change.height, depth: change.depth ?? work.size.depth },
      back: change.back ?? work.back,
    }
  })
}

/** One work dropped, or with another frame and back. */
export function changedBy(wall: Elevation, change: Extract<LateChange, { kind: 'drop' | 'different' }>): Changed {
  if (change.kind === 'drop') return { ...asItIs(wall), works: wall.works.filter(work => work.entry !== change.entry) }
  return { works: worksIfDifferent(wall, change), anew: new Set([change.entry]), walls: [wall] }
}

/** Nothing but places changes. */
export function asItIs(wall: Elevation): Changed {
  return { works: wall.works, anew: new Set(), walls: [wall] }
}

/** `one` leaves this wall, and `other` comes from another. */
export function replaced(wall: Elevation, one: string, from: Elevation, other: string): Changed {
  const came = from.works.filter(work => work.entry === other)
  return { ...asItIs(wall), works: [...wall.works.filter(work => work.entry !== one), ...came], walls: [wall, from] }
}
