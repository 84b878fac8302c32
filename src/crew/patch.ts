/**
 * What is left in a wall when a show comes down: holes to fill and what is painted over them. The rule it keeps: a hole
 * that was made counts as it was made, and only where none was is the planned one counted.
 */

/** mm, as on the wall's plane. */
export interface Hole {
  readonly x: number
  readonly y: number
  /** Null where nobody has said; a house value stands in. */
  readonly diameter: number | null
  readonly depth: number | null
}

export interface Patch {
  readonly count: number
  /** Millilitres of filler, with as much again for what is sanded off. */
  readonly fillerMl: number
  /** Square metres; patches that overlap are painted once, and nothing beyond the wall. */
  readonly paintM2: number
}

/** Both from memory: a plug's hole, and how deep it goes where the fixing's length is not known. */
const usualDiameter = 6
const usualDepth = 35
/** Filler shrinks and is sanded off: as much again, from memory. */
const overfill = 2

/** `side` of the square that is painted over a hole, mm; the wall's `length` and `height`. */
export function patchOf(
  holes: readonly Hole[],
  side: number,
  wall: { readonly length: number; readonly height: number },
): Patch {
  const volume = holes.reduce(
    (sum, { diameter, depth }) => sum + (Math.PI / 4) * (diameter ?? usualDiameter) ** 2 * (depth ?? usualDepth),
    0,
  )
  const squares = holes.map(({ x, y }) => ({
    from: Math.max(0, x - side / 2),
    to: Math.min(wall.length, x + side / 2),
    bottom: Math.max(0, y - side / 2),
    top: Math.min(wall.height, y + side / 2),
  }))
  return { count: holes.length, fillerMl: (volume * overfill) / 1000, paintM2: unionArea(squares) / 1e6 }
}

interface Area {
  readonly from: number
  readonly to: number
  readonly bottom: number
  readonly top: number
}

/** Area that the rectangles cover together: strips between all left and right edges, in each the joined heights. */
export function unionArea(areas: readonly Area[]): number {
  const real = areas.filter(each => each.to > each.from && each.top > each.bottom)
  const cuts = [...new Set(real.flatMap(each => [each.from, each.to]))].sort((a, b) => a - b)
  let sum = 0
  for (let index = 0; index + 1 < cuts.length; index++) {
    const from = cuts[index] ?? 0
    const to = cuts[index + 1] ?? 0
    const over = real.filter(each => each.from <= from && each.to >= to).sort((a, b) => a.bottom - b.bottom)
    let covered = 0
    let reached = Number.NEGATIVE_INFINITY
    for (const each of over) {
      covered += Math.max(0, each.top - Math.max(each.bottom, reached))
      reached = Math.max(reached, each.top)
    }
    sum += covered * (to - from)
  }
  return sum
}
