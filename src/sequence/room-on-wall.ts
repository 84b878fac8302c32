/** Works put on a wall by hand or by a key: where a row of them finds room, and what stands wrong there. mm. */

export interface Span {
  readonly from: number
  readonly to: number
}

export interface OnWall {
  readonly entry: string
  /** Of its middle. */
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

export interface Clear {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** The left end of a row moved as little as can be so that it stays on the wall; at the wall's left end if it is longer. */
export function keptOn(left: number, long: number, length: number): number {
  return Math.max(0, Math.min(left, length - long))
}

/**
 * The left end of a row that comes to a wall: behind the last work, or else in the first free stretch that takes it, both
 * `gap` from what is there. Where none does it stands at the wall's right end, over whatever is there.
 *
 * @param works spans of works that stay
 * @param openings spans that no work stands in
 */
export function roomFor(
  long: number,
  length: number,
  gap: number,
  works: readonly Span[],
  openings: readonly Span[],
): number {
  const last = works.reduce((most, { to }) => Math.max(most, to), 0)
  const taken = [...works, ...openings].sort((a, b) => a.from - b.from)
  const free: Span[] = []
  let from = 0
  for (const span of taken) {
    free.push({ from: from === 0 ? 0 : from + gap, to: span.from - gap })
    from = Math.max(from, span.to)
  }
  free.push({ from: from === 0 ? 0 : from + gap, to: length })
  const takes = free.filter(({ from, to }) => to - from >= long - 1e-6)
  const room = takes.find(({ from }) => from >= last) ?? takes[0]
  // On a wall of its own it keeps off the end as it would off a work.
  if (room === undefined) return keptOn(last + gap, long, length)
  return room.from === 0 ? Math.min(gap, room.to - long) : room.from
}

export interface Faults {
  /** Beyond an end of the wall. */
  readonly outside: readonly string[]
  /** In another work. */
  readonly within: readonly string[]
  /** Over the edge of an opening. */
  readonly opening: readonly string[]
}

/** Less than this is a matter of rounding. */
const slack = 0.5

/** What a hand may have put where it can't hang, each by its entry; `openings` by their lower left corner. */
export function faultsOn(works: readonly OnWall[], length: number, openings: readonly Clear[]): Faults {
  const reach = (one: OnWall, x: number, y: number, width: number, height: number) =>
    Math.abs(one.x - x) - (one.width + width) / 2 < -slack && Math.abs(one.y - y) - (one.height + height) / 2 < -slack
  const holds = (one: OnWall, { x, y, width, height }: Clear) =>
    one.x - one.width / 2 >= x - slack &&
    one.x + one.width / 2 <= x + width + slack &&
    one.y - one.height / 2 >= y - slack &&
    one.y + one.height / 2 <= y + height + slack
  const those = (is: (one: OnWall) => boolean) => works.filter(is).map(({ entry }) => entry)
  return {
    outside: those(({ x, width }) => x - width / 2 < -slack || x + width / 2 > length + slack),
    within: those(one => works.some(other => other !== one && reach(one, other.x, other.y, other.width, other.height))),
    opening: those(one =>
      openings.some(
        clear =>
          reach(one, clear.x + clear.width / 2, clear.y + clear.height / 2, clear.width, clear.height) &&
          !holds(one, clear),
      ),
    ),
  }
}
