/**
 * How the works of a stretch of wall balance about an axis: figures to look at, never to move anything by. The centre
 * of visual weight against the axis, the published deviation of the centre of mass, the work that pulls most, rhythm,
 * the longest empty stretch, how full it is. Lengths mm, x along the wall from its left end, y above its floor.
 */
export interface Standing {
  readonly id: string
  /** Edges of what hangs. */
  readonly left: number
  readonly bottom: number
  readonly width: number
  readonly height: number
  /** m², and where it sits from the middle of the work, right and up. */
  readonly weight: number
  readonly right: number
  readonly up: number
  /** L* of the whole work, 0 to 100; null where its picture is not known. */
  readonly lightness: number | null
}

export interface BalanceQuestion {
  readonly from: number
  readonly to: number
  readonly axis: number
  readonly works: readonly Standing[]
}

export interface Pull {
  readonly id: string
  /** How far it alone draws the centre from the axis, mm to the right. All pulls add up to the deviation. */
  readonly pull: number
}

export interface Balance {
  /** m². */
  readonly weight: number
  /** Centre of visual weight. */
  readonly x: number
  readonly y: number
  /** From the axis, mm to the right, and in per cent of the stretch. */
  readonly off: number
  readonly offShare: number
  readonly pulls: readonly Pull[]
  /** The one that draws most to the side where the centre lies; null where it lies on the axis. */
  readonly cause: Pull | null
  /** Deviation of the centre of mass on areas, within what bounds the works: 0 centred, 100 at an edge's middle. */
  readonly dcm: number
  readonly rhythm: Rhythm
  /** Σ widths of what is filled / length. Works over one another count once. */
  readonly fill: number
  readonly empty: { readonly from: number; readonly to: number; readonly length: number }
}

export interface Rhythm {
  /** Clear gaps between neighbours, from left to right; works one above the other have none. */
  readonly gaps: readonly number[]
  /** Standard deviation of the gaps over their mean: 0 are equal gaps. Null with fewer than two gaps. */
  readonly gapVariation: number | null
  /** Share of neighbours that change in size (by a third of the smaller or more). Null with fewer than two works. */
  readonly sizeChanges: number | null
  /** Share of neighbours whose lightness is 20 L* apart or more. Null where fewer than two are known. */
  readonly toneChanges: number | null
}

/** Null where nothing hangs on the stretch. Works are taken as they come; their order does not matter. */
export function balanceOf({ from, to, axis, works }: BalanceQuestion): Balance | null {
  if (works.length === 0) return null
  const weight = works.reduce((sum, work) => sum + work.weight, 0)
  const mean = (of: (work: Standing) => number) =>
    weight > 0
      ? works.reduce((sum, work) => sum + work.weight * of(work), 0) / weight
      : works.reduce((sum, work) => sum + of(work), 0) / works.length
  const x = mean(work => work.left + work.width / 2 + work.right)
  const y = mean(work => work.bottom + work.height / 2 + work.up)
  const off = x - axis
  const pulls = works.map(work => ({
    id: work.id,
    pull: (weight > 0 ? work.weight / weight : 1 / works.length) * (work.left + work.width / 2 + work.right - axis),
  }))
  const most = pulls.reduce<Pull | null>(
    (best, one) => (one.pull * off > 0 && (best === null || Math.abs(one.pull) > Math.abs(best.pull)) ? one : best),
    null,
  )
  const filled = covered(works, from, to)
  return {
    weight,
    x,
    y,
    off,
    offShare: (100 * off) / (to - from),
    pulls,
    cause: Math.abs(off) < 0.5 ? null : most,
    dcm: deviationOfCentre(works),
    rhythm: rhythmOf(works),
    fill: filled.length / (to - from),
    empty: filled.empty,
  }
}

/**
 * Deviation of the centre of mass, on areas: `200 hypot(x̄/w − 1/2, ȳ/h − 1/2)` within the w × h that bounds them.
 * Hübner & Fillinger 2016, Frontiers in Psychology 7:335, there on the pixels of a picture. 0 for nothing.
 */
export function deviationOfCentre(
  rects: readonly { readonly left: number; readonly bottom: number; readonly width: number; readonly height: number }[],
): number {
  if (rects.length === 0) return 0
  const left = Math.min(...rects.map(rect => rect.left))
  const bottom = Math.min(...rects.map(rect => rect.bottom))
  const width = Math.max(...rects.map(rect => rect.left + rect.width)) - left
  const height = Math.max(...rects.map(rect => rect.bottom + rect.height)) - bottom
  return deviationWithin(rects, { left, bottom, width, height })
}

/** The same within a given frame: the picture's own edges, as the published measure has it. */
export function deviationWithin(
  rects: readonly { readonly left: number; readonly bottom: number; readonly width: number; readonly height: number }[],
  frame: { readonly left: number; readonly bottom: number; readonly width: number; readonly height: number },
): number {
  const area = rects.reduce((sum, rect) => sum + rect.width * rect.height, 0)
  if (area === 0 || frame.width === 0 || frame.height === 0) return 0
  const x = rects.reduce((sum, rect) => sum + rect.width * rect.height * (rect.left + rect.width / 2), 0) / area
  const y = rects.reduce((sum, rect) => sum + rect.width * rect.height * (rect.bottom + rect.height / 2), 0) / area
  return 200 * Math.hypot((x - frame.left) / frame.width - 0.5, (y - frame.bottom) / frame.height - 0.5)
}

/** How much of a stretch works take up, those over one another once, and its longest empty part. mm. */
export function covered(works: readonly Pick<Standing, 'left' | 'width'>[], from: number, to: number) {
  let at = from
  let length = 0
  let empty = { from, to: from, length: 0 }
  const free = (end: number) => {
    if (end - at > empty.length) empty = { from: at, to: end, length: end - at }
  }
  for (const work of [...works].sort((a, b) => a.left - b.left)) {
    const start = Math.max(work.left, from)
    const end = Math.min(work.left + work.width, to)
    if (end <= at) continue
    free(start)
    length += end - Math.max(start, at)
    at = end
  }
  free(to)
  return { length, empty }
}

function rhythmOf(works: readonly Standing[]): Rhythm {
  const sorted = [...works].sort((a, b) => a.left + a.width / 2 - (b.left + b.width / 2))
  const pairs = sorted.slice(1).flatMap((after, index) => {
    const before = sorted[index]
    return before === undefined || after.left < before.left + before.width ? [] : [[before, after] as const]
  })
  const gaps = pairs.map(([before, after]) => after.left - before.left - before.width)
  const share = (changes: readonly boolean[]) =>
    changes.length === 0 ? null : changes.filter(Boolean).length / changes.length
  const area = (work: Standing) => work.width * work.height
  return {
    gaps,
    gapVariation: gaps.length < 2 ? null : variation(gaps),
    sizeChanges: share(pairs.map(([a, b]) => Math.max(area(a), area(b)) >= (4 / 3) * Math.min(area(a), area(b)))),
    toneChanges: share(
      pairs.flatMap(([a, b]) =>
        a.lightness === null || b.lightness === null ? [] : [Math.abs(a.lightness - b.lightness) >= 20],
      ),
    ),
  }
}

/** Standard deviation over the mean, of a whole, not a sample. */
function variation(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  if (mean === 0) return 0
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length) / mean
}
