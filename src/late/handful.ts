/**
 * The few ways out that a person would tell apart. The cheapest comes first; another is kept only where it differs from
 * every one kept so far in something that is counted or seen. Ways that move what hangs come last and are kept apart.
 */
import type { Cost, Offer } from './late-shape.ts'

/** Ways that leave what hangs alone, and ways that do not. More nobody reads. */
const MOST = 5
const MOST_HUNG = 2
/** Differences in gaps, margins and height that nobody weighs against each other, mm. */
const SEEN = { gapSpread: 15, ends: 30, offLine: 5 } as const
/** Of the larger: 300 and 330 mm between widest and narrowest gap are the same uneven row. */
const PART = 0.15

interface Ranked {
  readonly cost: Cost
  readonly price: number
}

/** Ways that leave what hangs alone first, then by price. */
export function byPrice(a: Ranked, b: Ranked): number {
  return Math.sign(a.cost.hungMoved) - Math.sign(b.cost.hungMoved) || a.price - b.price
}

/**
 * At most a handful of offers, cheapest first, none like another; a left and a right twin stand beside each other.
 * `may` is asked only of what would be kept.
 */
export function handful<O extends Ranked & Pick<Offer, 'key'>>(
  offers: readonly O[],
  may: (offer: O) => boolean = () => true,
): readonly O[] {
  const kept: O[] = []
  for (const offer of [...offers].sort(byPrice)) {
    const hung = offer.cost.hungMoved > 0
    const peers = kept.filter(other => other.cost.hungMoved > 0 === hung)
    if (peers.length >= (hung ? MOST_HUNG : MOST)) continue
    const like = kept.filter(other => alike(other.cost, offer.cost))
    const twin = like.length === 1 && like[0] !== undefined && isTwin(like[0], offer)
    if ((like.length === 0 || twin) && may(offer)) kept.push(offer)
  }
  return kept
}

/** The same price for the same things, once from the left and once from the right. */
function isTwin(a: Ranked & Pick<Offer, 'key'>, b: Ranked & Pick<Offer, 'key'>): boolean {
  const other = (key: string) => key.replaceAll(/left|right/g, side => (side === 'left' ? 'right' : 'left'))
  return (
    Math.abs(a.price - b.price) < 0.5 && /left|right/.test(a.key) && (other(a.key) === b.key || sides(a.key, b.key))
  )
}

/** One hole serves again, the left in one offer and the right in the other. */
function sides(a: string, b: string): boolean {
  return a.startsWith('hole-') && b.startsWith('hole-') && a.endsWith('-left') !== b.endsWith('-left')
}

function alike(a: Cost, b: Cost): boolean {
  const close = (one: number, other: number, least: number) =>
    Math.abs(one - other) <= Math.max(least, PART * Math.max(Math.abs(one), Math.abs(other)))
  const few = Math.max(a.moved, b.moved) <= 3
  return (
    a.hungMoved === b.hungMoved &&
    a.newHoles === b.newHoles &&
    a.deadHoles === b.deadHoles &&
    Math.abs(a.moved - b.moved) <= (few ? 0 : 2) &&
    Math.abs(a.labels - b.labels) <= (few ? 0 : 2) &&
    close(a.gapSpread, b.gapSpread, SEEN.gapSpread) &&
    close(a.ends, b.ends, SEEN.ends) &&
    Math.abs(a.offLine - b.offLine) <= SEEN.offLine
  )
}
