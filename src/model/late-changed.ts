/** The works of a wall as a late change makes them, before anybody says where they go: what its checks are asked with. */
import type { LateChange } from '../contract/areas/marks.ts'
import type { PlacedPart, PlacedSet } from '../contract/areas/sets.ts'
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import { layPlaced } from './parts-of-set.ts'

/** The works of the wall as the change makes them, still in their old places; what leaves the wall is not among them. */
export interface Changed {
  readonly works: readonly PlacedWork[]
  /** What has another frame or back, by entry. */
  readonly anew: ReadonlySet<string>
  /** Walls that the change is about: what is stopped on one of them is no news on another. */
  readonly walls: readonly Elevation[]
}

type Different = Extract<LateChange, { kind: 'different' }>

/** The works with the other frame and back; a set is as large as its parts then make it. */
export function worksIfDifferent(elevation: Elevation, change: Different): PlacedWork[] {
  return elevation.works.map((work): PlacedWork => {
    if (work.entry !== change.entry) return work
    return work.set === null ? framedAnew(work, change) : setIfDifferent(work, work.set, change)
  })
}

function framedAnew<W extends Pick<PlacedPart, 'size' | 'back'>>(work: W, change: Different): W {
  if (work.size === null) return work
  const { width, height, depth = work.size.depth } = change
  return { ...work, size: { ...work.size, width, height, depth }, back: change.back ?? work.back }
}

function setIfDifferent(work: PlacedWork, was: PlacedSet, change: Different): PlacedWork {
  const set = { ...was, parts: was.parts.map(part => (part.work === change.part ? framedAnew(part, change) : part)) }
  const laid = layPlaced(set)
  if (work.size === null || 'problem' in laid) return work
  return { ...work, set, size: { ...work.size, width: laid.width, height: laid.height } }
}

/** In words, why a frame cannot be asked about as it was said; empty where it can. */
export function whyNoFrame(wall: Elevation, { entry, part }: Different): string {
  const set = wall.works.find(work => work.entry === entry)?.set ?? null
  if (set === null) return part === undefined ? '' : 'This work is no set: it has no parts.'
  if (part === undefined) return 'This is a set. Say which of its parts came otherwise; its own size follows.'
  if (!set.parts.some(each => each.work === part)) return 'This part is not in the set any more.'
  const laid = layPlaced(set)
  return 'problem' in laid ? laid.problem : ''
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
