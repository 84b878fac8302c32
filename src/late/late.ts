/**
 * A change when half the wall is drilled: another frame, two works swapped, one dropped, everything lower. It looks at
 * every stretch of the row about the change, spaces it anew with and without its drilled works, and at keeping the holes
 * that are there; what fits is offered, cheapest first, with its price in holes and moved works.
 *
 * Within a stretch whose two ends stay, equal gaps are the least spread there is, so trying every stretch finds the
 * least spread for each set of neighbours that may move. Offers that another beats in everything are left out.
 */
import { type Before, beats, before, costOf, priceOf, type Spot, spotOf } from './cost.ts'
import { byPrice, handful } from './handful.ts'
import type { Change, LateAnswer, LateQuestion, LateWork, Move, Offer } from './late-shape.ts'
import { whyNoRoom } from './room.ts'
import { type Placed, type Row, rowAbout } from './row.ts'
import { inTheRow, isChanged, isGone, lowered, nearestTo, outerEdges, rectOf, type Try } from './ways.ts'

const SAME = 0.05

/** Ways out of a change, cheapest first. mm. Refuses nothing: what cannot be said is in `problem`. */
export function lateOffers(question: LateQuestion): LateAnswer {
  const gone = new Set(question.works.map(work => work.id).filter(id => isGone(question.change, id)))
  const after = afterChange(question.works, question.change).filter(work => !gone.has(work.id))
  const was = before(question, gone)
  const { change } = question
  const about =
    change.kind === 'lower'
      ? null
      : (after.find(work => isChanged(change, work.id))?.id ?? nearestTo(question, after) ?? null)
  // Every way keeps the row's works and their bay, so both are looked up once.
  const row =
    about === null
      ? null
      : rowAbout(
          about,
          after.map(work => rectOf(work, spotOf(work))),
          question.wall,
        )
  const tries = change.kind === 'lower' ? lowered(after, change.by, question.say) : inTheRow(question, after, was, row)
  const offers: Offer[] = []
  const seen = new Set<string>()
  const were = new Map(question.works.map(work => [work.id, rectOf(work, spotOf(work))]))
  const wall: Wall = { question, was, were, after, row, gone: [...gone] }
  const reasons: string[] = []
  for (const each of tries) {
    const moves = movesOf(wall, each.spots)
    const same = moves.map(move => `${move.id} ${move.x.toFixed(2)} ${move.y.toFixed(2)}`).join('|')
    // Which works go lower is the choice itself, also where two choices come to the same on this wall.
    if (seen.has(same) && change.kind !== 'lower') continue
    seen.add(same)
    const offer = offerOf(wall, each, moves)
    if (typeof offer !== 'string') offers.push(offer)
    else if (reasons.length === 0) reasons.push(offer)
  }
  const stopped: string[] = []
  const may = allowedBy(question, stopped)
  // Lowering some of the works is another outcome, not a worse way to the same one.
  const best =
    change.kind === 'lower'
      ? offers.filter(may).sort(byPrice)
      : handful(
          offers,
          offer => may(offer) && !offers.some(other => other !== offer && beats(other.cost, offer.cost) && may(other)),
        )
  return {
    offers: best,
    problem: best.some(offer => offer.cost.hungMoved === 0)
      ? ''
      : problemOf(question, best, after, row, { room: reasons[0] ?? '', stop: stopped[0] ?? '' }),
  }
}

/** Whether the wall's own checks let an offer be, each asked once; what they say is added to `stopped`. */
function allowedBy({ stops }: LateQuestion, stopped: string[]): (offer: Offer) => boolean {
  const known = new Map<Offer, boolean>()
  return offer => {
    const before = known.get(offer)
    if (before !== undefined) return before
    const said = stops(offer.places)
    if (said !== '') stopped.push(said)
    known.set(offer, said === '')
    return said === ''
  }
}

function problemOf(
  { change, leastGap, leastMargin, say }: LateQuestion,
  offers: readonly Offer[],
  after: readonly LateWork[],
  row: Row | null,
  reason: { readonly room: string; readonly stop: string },
): string {
  const least = `with gaps of ${say(leastGap)} or more`
  if (offers.length > 0) return `Nothing fits ${least} unless a work that hangs is moved.`
  if (change.kind === 'lower') {
    const said = reason.room === '' ? reason.stop.replace(/\.$/, '') : reason.room
    return `${said === '' ? 'There is no room' : said}. Type a shorter length, or move that work first.`
  }
  if (reason.stop !== '') {
    return `There is room, but the wall’s own checks would stop it. ${reason.stop} Cure that first, or hang this one elsewhere.`
  }
  const inRow = row === null ? [] : after.filter(work => row.ids.includes(work.id))
  const wants = inRow.reduce((sum, work) => sum + work.width + leastGap, -leastGap) + 2 * leastMargin
  const over = row === null ? 0 : wants - (row.to - row.from)
  const why = over > SAME ? `: the row is ${say(over)} too long for its place` : barred(reason.room)
  return `Nothing fits ${least} on this wall${why}. Take a work off it, hang this one elsewhere, or allow narrower gaps in the house rules.`
}

function barred(reason: string): string {
  return reason === '' ? '' : `: ${reason}`
}

/** The works as the change makes them, in their old places. */
function afterChange(works: readonly LateWork[], change: Change): readonly LateWork[] {
  switch (change.kind) {
    case 'different':
      return works.map(work =>
        work.id === change.id ? { ...work, width: change.width, height: change.height, holes: change.holes } : work,
      )
    case 'replace':
      return works.flatMap(work =>
        work.id === change.id ? [work, { ...change.by, x: work.x, stands: work.stands }] : [work],
      )
    case 'swap': {
      const one = works.find(work => work.id === change.one)
      const other = works.find(work => work.id === change.other)
      if (one === undefined || other === undefined) return works
      return works.map(work => {
        if (work.id === one.id) return { ...work, x: other.x, stands: other.stands }
        return work.id === other.id ? { ...work, x: one.x, stands: one.stands } : work
      })
    }
    default:
      return works
  }
}

/** What every offer of one question is reckoned against. */
interface Wall {
  readonly question: LateQuestion
  readonly was: Before
  /** Works as they stand before the change. */
  readonly were: ReadonlyMap<string, Placed>
  /** Works as the change leaves them, in their old places. */
  readonly after: readonly LateWork[]
  readonly row: Row | null
  readonly gone: readonly string[]
}

function movesOf({ after, was }: Wall, spots: ReadonlyMap<string, Spot>): readonly Move[] {
  return after.flatMap(work => {
    const spot = spots.get(work.id) ?? spotOf(work)
    const old = was.spots.get(work.id)
    return old !== undefined && isMoved(old, spot)
      ? [{ id: work.id, x: spot.x, y: spot.y, wasX: old.x, wasY: old.y }]
      : []
  })
}

/** The offer, or why there is no room for it. */
function offerOf(wall: Wall, { key, says, spots }: Try, moves: readonly Move[]): Offer | string {
  const { question, was, after, row } = wall
  const standing = after.map(work => ({ work, spot: spots.get(work.id) ?? spotOf(work) }))
  const rects = standing.map(({ work, spot }) => rectOf(work, spot))
  const touched = new Set(moves.map(move => move.id))
  for (const { id } of after) if (isChanged(question.change, id)) touched.add(id)
  const barred = whyNoRoom(rects, touched, question, wall.were)
  if (barred !== '') return barred
  const inRow = row === null ? [] : rects.filter(rect => row.ids.includes(rect.id)).sort((a, b) => a.x - b.x)
  const gaps = row === null ? [] : gapsAlong(row, inRow)
  const { cost, holes } = costOf(question, was, standing, gaps, row === null ? 0 : endsMoved(question, row, inRow))
  const idle = new Set(was.holes.unused)
  return {
    key,
    says,
    moves,
    places: standing.filter(({ work }) => touched.has(work.id)).map(({ work, spot }) => ({ id: work.id, ...spot })),
    off: wall.gone,
    cost,
    price: priceOf(cost, question.prices),
    newHoles: holes.missing.filter(need => touched.has(need.work)),
    deadHoles: holes.unused.filter(id => !idle.has(id)),
    gaps,
  }
}

function isMoved(old: Spot | undefined, spot: Spot): boolean {
  return old === undefined || Math.hypot(old.x - spot.x, old.y - spot.y) > SAME
}

function endsMoved(question: LateQuestion, row: Row, inRow: readonly Placed[]): number {
  const were = outerEdges(question, row)
  const left = Math.min(...inRow.map(rect => rect.x))
  const right = Math.max(...inRow.map(rect => rect.x + rect.width))
  return Math.abs(left - were.left) + Math.abs(right - were.right)
}

/** Clear distances from the bay's left bound to its right one. */
function gapsAlong(row: Row, inRow: readonly Placed[]): readonly number[] {
  const gaps: number[] = []
  let at = row.from
  for (const rect of inRow) {
    gaps.push(rect.x - at)
    at = rect.x + rect.width
  }
  gaps.push(row.to - at)
  return gaps
}
