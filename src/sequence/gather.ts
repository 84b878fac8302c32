/**
 * One hang gathered from several proposals: walls from this one, sections from that one. What is asked twice, what would
 * come off its wall and what would stand in one another is told, and settled by a person before anything is taken.
 */
import type { Elevation } from '../contract/areas/walls.ts'
import { centreOnFace } from '../model/centre-on-face.ts'

export interface WallToday extends Pick<Elevation['plan'], 'rule' | 'centreLine' | 'eyeFraction' | 'ramp'> {
  readonly face: string
  readonly works: readonly { readonly entry: string; readonly x: number; readonly y: number; readonly stays: boolean }[]
}

export interface ProposedWalls {
  readonly faces: readonly {
    readonly face: string
    readonly works: readonly { readonly entry: string; readonly x: number; readonly y?: number | null | undefined }[]
  }[]
}

export interface WorkSize {
  readonly section: string | null
  readonly width: number
  readonly height: number
}

export interface Picks {
  /** By wall, which of the proposals it is taken from. */
  readonly walls: ReadonlyMap<string, number>
  /** By section (null for works without one), which of the proposals its works are taken from. */
  readonly sections: ReadonlyMap<string | null, number>
  /** Of works that are asked for on two walls, the one that was chosen. */
  readonly on: ReadonlyMap<string, string>
  /** Works that may come off their walls. */
  readonly off: ReadonlySet<string>
}

export interface Gathered {
  /** Walls as they would be given: what is not named comes off them, or stays as it is. */
  readonly faces: readonly {
    readonly face: string
    readonly others: 'off' | 'stay'
    readonly works: readonly { readonly entry: string; readonly x: number; readonly y?: number | null | undefined }[]
  }[]
  /** To settle: works that are asked for on several walls, works that would come off, works that would overlap. */
  readonly twice: readonly { readonly entry: string; readonly faces: readonly string[] }[]
  readonly off: readonly string[]
  readonly overlaps: readonly { readonly face: string; readonly one: string; readonly other: string }[]
}

interface Asked {
  readonly entry: string
  readonly face: string
  readonly x: number
  /** Of a work in a stack or grid. */
  readonly y: number | null
}

export function gather(
  today: readonly WallToday[],
  proposals: readonly ProposedWalls[],
  sizes: ReadonlyMap<string, WorkSize>,
  picks: Picks,
): Gathered {
  const staying = new Set(today.flatMap(({ works }) => works.filter(({ stays }) => stays).map(({ entry }) => entry)))
  const asked = new Map<string, Asked[]>()
  const ask = (one: Asked) => {
    if (staying.has(one.entry)) return
    const before = asked.get(one.entry) ?? []
    // The same wall twice, by the wall and by the section: the wall's place counts.
    if (!before.some(({ face }) => face === one.face)) asked.set(one.entry, [...before, one])
  }
  for (const { face } of today) {
    const proposed = proposals[picks.walls.get(face) ?? -1]?.faces.find(one => one.face === face)
    for (const { entry, x, y } of proposed?.works ?? []) ask({ entry, face, x, y: y ?? null })
  }
  for (const [section, which] of picks.sections)
    for (const { face, works } of proposals[which]?.faces ?? [])
      for (const { entry, x, y } of works)
        if ((sizes.get(entry)?.section ?? null) === section) ask({ entry, face, x, y: y ?? null })

  const twice: { entry: string; faces: string[] }[] = []
  const given = new Map<string, Asked>()
  for (const [entry, places] of asked) {
    const chosen = places.length === 1 ? places[0] : places.find(({ face }) => face === picks.on.get(entry))
    if (chosen === undefined) twice.push({ entry, faces: places.map(({ face }) => face) })
    else given.set(entry, chosen)
  }
  const open = new Set(twice.map(({ entry }) => entry))
  const faces = today.flatMap(({ face }) => {
    const works = [...given.values()].filter(one => one.face === face).sort((a, b) => a.x - b.x)
    if (!picks.walls.has(face) && works.length === 0) return []
    const others = picks.walls.has(face) ? ('off' as const) : ('stay' as const)
    return [{ face, others, works: works.map(({ entry, x, y }) => (y === null ? { entry, x } : { entry, x, y })) }]
  })
  const off = today
    .filter(({ face }) => picks.walls.has(face))
    .flatMap(({ works }) => works.filter(({ stays }) => !stays).map(({ entry }) => entry))
    .filter(entry => !given.has(entry) && !open.has(entry) && !picks.off.has(entry))
  return { faces, twice, off, overlaps: overlapsOf(today, faces, given, sizes) }
}

/** Works that come to a wall and would stand in one that is left there though it could be moved. */
function overlapsOf(
  today: readonly WallToday[],
  faces: Gathered['faces'],
  given: ReadonlyMap<string, Asked>,
  sizes: ReadonlyMap<string, WorkSize>,
): Gathered['overlaps'] {
  return faces.flatMap(({ face, others, works }) => {
    const wall = today.find(one => one.face === face)
    if (wall === undefined || others === 'off') return []
    const left = wall.works.filter(({ entry, stays }) => !stays && !given.has(entry))
    return works.flatMap(({ entry, x, y }) => {
      const own = sizes.get(entry)
      return left.flatMap(other => {
        const size = sizes.get(other.entry)
        if (own === undefined || size === undefined) return []
        const beside = Math.abs(x - other.x) - (own.width + size.width) / 2
        const middle = y ?? centreOnFace({ rule: 'face', y: null, x }, wall, own.height)
        const above = Math.abs(middle - other.y) - (own.height + size.height) / 2
        return beside < -0.5 && above < -0.5 ? [{ face, one: entry, other: other.entry }] : []
      })
    })
  })
}
