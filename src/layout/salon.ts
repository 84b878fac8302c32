/**
 * A salon hang: works of very different sizes close together in a stretch of wall, no two nearer than one clear
 * distance, `hypot(max(0, dx), max(0, dy))`. The largest go to the middle and the others are set against what hangs
 * already, as near to the middle as they come; several orders are tried and the calmest is taken. The rule it keeps:
 * nothing is left to chance, so the same works always give the same hang, and held works stay where they are.
 * One constant distance between nearest edges is common practice; the largest in the middle is from memory.
 */
import { Refusal } from '../contract/refusal.ts'
import type { Point, Rect } from '../geometry/rect.ts'
import { centreOf, clearDistance, moved, right, top } from '../geometry/rect.ts'
import { salonCures } from './salon-cures.ts'
import type { SalonAnswer, SalonQuestion } from './salon-shape.ts'
import { forbiddenAlong, forbiddenUp, type Keep, nearestFree } from './shifts.ts'
import { bounds } from './snap.ts'

const SLACK = 1e-6

export interface Hung extends Rect {
  readonly id: string
  readonly held: boolean
}

type Item = SalonQuestion['works'][number]

/** Lays a salon hang. mm. Refuses `span-empty` where the stretch or its heights have no extent. */
export function laySalon(question: SalonQuestion): SalonAnswer {
  const { from, to, bottom, top: highest, works } = question
  if (!(to > from)) throw new Refusal('span-empty', 'The stretch must end after it begins.', { field: 'to' })
  if (!(highest > bottom)) {
    throw new Refusal('span-empty', 'The highest edge must be above the lowest.', { field: 'top' })
  }
  const hung = bestOf(question)
  if (hung === null) {
    return { fits: false, works: [], box: null, nearest: null, widest: null, mean: null, ...salonCures(question) }
  }
  const places = new Map(hung.map(each => [each.id, each]))
  return {
    fits: true,
    shortBy: 0,
    way: 'longer',
    cures: [],
    works: works.flatMap(({ id }) => {
      const at = places.get(id)
      return at === undefined ? [] : [{ id, x: at.x, y: at.y }]
    }),
    box: bounds(hung),
    ...gapsOf(hung),
  }
}

/** The smallest clear distance of any two, and of each work's nearest the largest and the mean. */
export function gapsOf(
  hung: readonly (Rect & { readonly id: string })[],
): Pick<SalonAnswer, 'nearest' | 'widest' | 'mean'> {
  const own = hung.flatMap(a => {
    const [first, ...others] = hung.filter(b => b !== a).map(b => ({ gap: clearDistance(a, b), a: a.id, b: b.id }))
    if (first === undefined) return []
    return [others.reduce((least, each) => (each.gap < least.gap - SLACK ? each : least), first)]
  })
  const [first] = own
  if (first === undefined) return { nearest: null, widest: null, mean: null }
  return {
    nearest: own.reduce((least, each) => (each.gap < least.gap - SLACK ? each : least), first),
    widest: own.reduce((most, each) => (each.gap > most.gap + SLACK ? each : most), first),
    mean: own.reduce((sum, each) => sum + each.gap, 0) / own.length,
  }
}

const bySize = {
  area: ({ width, height }: Item) => width * height,
  side: ({ width, height }: Item) => Math.max(width, height),
  height: ({ height }: Item) => height,
  width: ({ width }: Item) => width,
} as const

interface Way {
  /** Which goes first: the middle goes to it, so each way begins with what is large in some way. */
  readonly first: (item: Item) => number
  /** How much wider than high the whole grows, where the stretch lets it. */
  readonly proportion: number
  /** It grows from the left end of the stretch: where it is full, the largest in the middle would bar the others. */
  readonly fromEnd?: boolean
}

/** Ways to build. The most different first: where time is short only the first few are tried. */
const ways: readonly Way[] = [
  { first: bySize.area, proportion: 1.9 },
  { first: bySize.area, proportion: 1.9, fromEnd: true },
  { first: bySize.height, proportion: 1.4 },
  { first: bySize.side, proportion: 2.6 },
  { first: bySize.area, proportion: 1.4 },
  { first: bySize.width, proportion: 1.9 },
  { first: bySize.side, proportion: 1.9 },
  { first: bySize.area, proportion: 2.6 },
  { first: bySize.height, proportion: 1.9 },
  { first: bySize.side, proportion: 1.4 },
  { first: bySize.height, proportion: 1.9, fromEnd: true },
  { first: bySize.width, proportion: 1.4 },
]

/** Of all ways that fit the calmest three, drawn in, and of these the calmest; of many works fewer, for the time it takes. */
function bestOf(question: SalonQuestion): readonly Hung[] | null {
  const many = question.works.length
  const found = ways.slice(0, many > 30 ? 3 : ways.length).flatMap(way => {
    const ground = groundOf(question, way)
    const hung = build(question, ground, way)
    return hung === null ? [] : [{ hung, ground, unrest: unrestOf(hung, ground) }]
  })
  const drawn = found
    .sort((a, b) => a.unrest - b.unrest)
    .slice(0, many > 30 ? 1 : 3)
    .map(({ hung, ground }) => {
      const centred = centre(drawIn(hung, ground), ground)
      return { hung: centred, unrest: unrestOf(centred, ground) }
    })
    .sort((a, b) => a.unrest - b.unrest)
  return drawn[0]?.hung ?? null
}

/** Whether it fits in one of the first three ways: for what would make it fit, where much must be tried. */
export function fitsPlainly(question: SalonQuestion): boolean {
  return ways.slice(0, 3).some(way => build(question, groundOf(question, way), way) !== null)
}

/** What a hang is built on: its limits, what is in its way, how far from the middle a place counts as. */
interface Ground {
  readonly bay: Rect
  readonly gap: number
  readonly keeps: readonly Keep[]
  readonly held: readonly Hung[]
  readonly middle: Point
  /** One over half the width and half the height of the rectangle that all works and their gaps would fill. */
  readonly across: number
  readonly up: number
}

function groundOf(question: SalonQuestion, { proportion }: Way): Ground {
  const { from, to, bottom, top: highest, works, gap, centre, keeps = [] } = question
  const held = works.flatMap(({ id, width, height, heldAt }) =>
    heldAt === null || heldAt === undefined ? [] : [{ id, width, height, ...heldAt, held: true }],
  )
  const area = works.reduce((sum, { width, height }) => sum + (width + gap) * (height + gap), 0)
  const high = Math.min(highest - bottom, Math.sqrt(area / proportion))
  return {
    bay: { x: from, y: bottom, width: to - from, height: highest - bottom },
    gap,
    keeps,
    held,
    middle: centre,
    across: (2 * high) / area,
    up: 2 / high,
  }
}

/**
 * How far out the farthest edge comes: 1 at the sides of the rectangle that grows. The fourth powers keep that a
 * rectangle with soft corners; squares would make a lens of it.
 */
function outness({ x, y, width, height }: Rect, ground: Ground): number {
  return out(x, width, ground.middle.x, ground.across) + out(y, height, ground.middle.y, ground.up)
}

/** The part of one direction: of an edge at `at` and a size. */
function out(at: number, size: number, middle: number, scale: number): number {
  const far = (Math.abs(at + size / 2 - middle) + size / 2) * scale
  return far * far * far * far
}

function build({ works }: SalonQuestion, real: Ground, { first, fromEnd }: Way): readonly Hung[] | null {
  const ground = fromEnd === true ? { ...real, middle: { x: real.bay.x, y: real.middle.y } } : real
  const free = works
    .filter(work => (work.heldAt ?? null) === null)
    .map((item, index) => ({ item, index, size: first(item) }))
    .sort((a, b) => b.size - a.size || a.index - b.index)
  const hung: Hung[] = [...ground.held]
  for (const { item } of free) {
    const place = bestPlace(item, hung, ground)
    if (place === null) return null
    hung.push({ id: item.id, ...place, held: false })
  }
  return hung
}

/** Each work from the outside in is taken off and hung again where it comes nearest to the middle, twice. */
function drawIn(hung: readonly Hung[], ground: Ground): readonly Hung[] {
  let now = hung
  for (let round = 0; round < 2; round++) {
    const outer = now.filter(work => !work.held).sort((a, b) => outness(b, ground) - outness(a, ground))
    for (const work of outer) {
      const rest = now.filter(each => each.id !== work.id)
      const place = bestPlace(work, rest, ground)
      if (place === null || outness(place, ground) >= outness(work, ground) - SLACK) continue
      now = now.map(each => (each.id === work.id ? { ...each, ...place } : each))
    }
  }
  return now
}

/**
 * The place nearest to the middle: there itself, or against one of those that hang or an edge of the stretch, level or
 * in line with any of them. A best place always touches something or is the middle, so no raster is needed.
 */
function bestPlace(
  { width, height }: Pick<Rect, 'width' | 'height'>,
  hung: readonly Rect[],
  ground: Ground,
): Rect | null {
  const { gap, keeps, bay, middle } = ground
  const blocks: readonly Keep[] = [...hung.map(rect => ({ ...rect, margin: gap })), ...keeps]
  const alongs = [middle.x - width / 2, bay.x, right(bay) - width]
  const ups = [middle.y - height / 2, bay.y, top(bay) - height]
  const [touchX, touchY] = [[...alongs], [...ups]]
  for (const block of blocks) {
    const { x, y, margin } = block
    const beside = [right(block) + margin, x - margin - width]
    const above = [top(block) + margin, y - margin - height]
    touchX.push(...beside)
    touchY.push(...above)
    alongs.push(x, right(block) - width, x + (block.width - width) / 2, ...beside)
    ups.push(y, top(block) - height, y + (block.height - height) / 2, ...above)
  }
  const score = (at: number, along: boolean) => ({
    at,
    out: along ? out(at, width, middle.x, ground.across) : out(at, height, middle.y, ground.up),
  })
  const nearX = inside(alongs, bay.x, right(bay) - width).map(at => score(at, true))
  const nearY = inside(ups, bay.y, top(bay) - height).map(at => score(at, false))
  let best: Rect | null = null
  let least = Number.POSITIVE_INFINITY
  /** Of the lines across that one touching line, the nearest that is free; farther ones than the best are not looked at. */
  const search = (touching: number, own: number, lines: typeof nearX, along: boolean) => {
    for (const line of lines) {
      if (own + line.out >= least - SLACK) return
      const [x, y] = along ? [touching, line.at] : [line.at, touching]
      if (!isFree(x, y, width, height, blocks)) continue
      best = { x, y, width, height }
      least = own + line.out
      return
    }
  }
  const byOut = (a: { readonly out: number }, b: { readonly out: number }) => a.out - b.out
  nearX.sort(byOut)
  nearY.sort(byOut)
  for (const x of inside(touchX, bay.x, right(bay) - width)) search(x, score(x, true).out, nearY, true)
  for (const y of inside(touchY, bay.y, top(bay) - height)) search(y, score(y, false).out, nearX, false)
  return best
}

/** Each place once, and only those within the stretch. */
function inside(places: readonly number[], least: number, most: number): number[] {
  const sorted = places.filter(at => at >= least - SLACK && at <= most + SLACK).sort((a, b) => a - b)
  return sorted.filter((at, index) => index === 0 || at - (sorted[index - 1] ?? 0) > SLACK)
}

/** Plain numbers, for it is asked hundreds of thousands of times. */
function isFree(x: number, y: number, width: number, height: number, blocks: readonly Keep[]): boolean {
  for (const block of blocks) {
    const dx = Math.max(block.x - x - width, x - block.x - block.width)
    const dy = Math.max(block.y - y - height, y - block.y - block.height)
    const { margin } = block
    if (dx >= margin - SLACK || dy >= margin - SLACK) continue
    if (dx <= 0 || dy <= 0 || dx * dx + dy * dy < (margin - SLACK) * (margin - SLACK)) return false
  }
  return true
}

/** The middle of the whole to where it was asked for, as far as the stretch and what is in the way let it. */
function centre(hung: readonly Hung[], ground: Ground): readonly Hung[] {
  if (ground.held.length > 0) return hung
  const { bay, keeps, middle } = ground
  const box = bounds(hung)
  if (box === null) return hung
  const wanted = { x: middle.x - centreOf(box).x, y: middle.y - centreOf(box).y }
  const shift = (works: readonly Hung[], dx: number, dy: number) =>
    works.map(each => ({ ...each, ...moved(each, dx, dy) }))
  const goes = (rects: readonly Rect[], along: boolean, by: number, least: number, most: number): number => {
    const stretches = rects.flatMap(rect =>
      keeps.flatMap(keep => (along ? forbiddenAlong(rect, keep) : forbiddenUp(rect, keep))),
    )
    // The nearest to what was wanted: counted from there.
    const from = stretches.map(each => ({ from: each.from - by, to: each.to - by }))
    return by + (nearestFree(from, least - by, most - by) ?? -by)
  }
  const dx = goes(hung, true, wanted.x, bay.x - box.x, right(bay) - right(box))
  const aside = shift(hung, dx, 0)
  const dy = goes(aside, false, wanted.y, bay.y - box.y, top(bay) - top(box))
  return shift(aside, 0, dy)
}

/** How uneven a hang is: large works far out, empty corners of its rectangle, its weight beside its middle. */
function unrestOf(hung: readonly Hung[], ground: Ground): number {
  const box = bounds(hung)
  if (box === null) return 0
  const area = hung.reduce((sum, { width, height }) => sum + width * height, 0)
  const out = hung.reduce((sum, work) => sum + work.width * work.height * outness(work, ground), 0) / area
  const at = hung.reduce(
    (sum, work) => {
      const { x, y } = centreOf(work)
      const share = (work.width * work.height) / area
      return { x: sum.x + x * share, y: sum.y + y * share }
    },
    { x: 0, y: 0 },
  )
  const middle = centreOf(box)
  const beside = Math.hypot((at.x - middle.x) / box.width, (at.y - middle.y) / box.height)
  const empty = 1 - area / (box.width * box.height)
  return out + empty + beside
}
