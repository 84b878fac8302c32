/**
 * What another place for a work would cost: it alone goes elsewhere, or changes places with one other. Points are
 * hundredths of the quality, by the same function that judges proposals; all others keep their bays and order.
 */
import { allowed, allowedOn } from './allowed.ts'
import { at, centresIn, type Hang, leftOver, type Problem, type Term, terms } from './problem.ts'
import { type BaysChanged, Standing } from './standing.ts'
import { type Centres, gainOf, judge, type Scale, scaleOf, sumsOf, type TermValues } from './terms.ts'

export interface OtherPlace {
  readonly bay: number
  /** Its centre there, mm from the left end of the wall. */
  readonly x: number
  /** The work that comes to where it was; null where it only moves. */
  readonly swapped: number | null
  readonly hang: Hang
  /** Points lost by going there; below 0 it would be better. */
  readonly price: number
  /** What of the price each term has. */
  readonly lost: TermValues
}

export interface OtherPlaces {
  /** The cheapest of all, and the cheapest on another wall; null where nothing is allowed. */
  readonly next: OtherPlace | null
  readonly elsewhere: OtherPlace | null
  /** Moves and exchanges that were looked at: those that fit and that no rule of their bays forbids. */
  readonly looked: number
}

interface Change {
  readonly bays: BaysChanged
  readonly bay: number
  readonly swapped: number | null
  readonly quality: number
}

/**
 * Where the hang breaks a rule already, as today's may, only what changes is held to the rules of its bays. Bays that
 * change are hung in equal gaps; works of all others stand where they do.
 *
 * @param centres where works stand now, if not in equal gaps
 * @returns null where the work hangs nowhere
 */
export function otherPlaces(
  problem: Problem,
  hang: Hang,
  work: number,
  scale: Scale = scaleOf(problem),
  centres?: Centres,
): OtherPlaces | null {
  const here = hang.findIndex(works => works.includes(work))
  if (here < 0) return null
  const standing = new Standing(problem, scale, hang, null)
  const stands = standsOf(problem, hang, scale, centres)
  const changes = everyChange(hang, work, here)
    .filter(({ bays }) =>
      bays.every(([bay, works]) => leftOver(problem, bay, works) >= -1e-6 && allowedOn(problem, bay, works)),
    )
    .map((change): Change => ({ ...change, quality: standing.asIf(change.bays).quality + stands(change.bays) }))
    .sort((a, b) => b.quality - a.quality)
  const keeps = allowed(problem, hang)
  const face = at(problem.bays, here).face
  const now = judge(problem, hang, scale, centres)
  const cheapest = (which: (change: Change) => boolean): OtherPlace | null => {
    for (const change of changes) {
      if (!which(change)) continue
      const changed = new Map(change.bays)
      const then = hang.map((works, bay) => changed.get(bay) ?? works)
      if (keeps && !allowed(problem, then)) continue
      const spread = centres?.map((row, bay) => (changed.has(bay) ? centresIn(problem, bay, at(then, bay)) : row))
      const judged = judge(problem, then, scale, spread)
      const row = at(then, change.bay)
      return {
        bay: change.bay,
        x: at(centresIn(problem, change.bay, row), row.indexOf(work)),
        swapped: change.swapped,
        hang: then,
        price: 100 * (now.quality - judged.quality),
        lost: pointsBetween(problem, now.values, judged.values),
      }
    }
    return null
  }
  return {
    next: cheapest(() => true),
    elsewhere: cheapest(({ bay }) => at(problem.bays, bay).face !== face),
    looked: changes.length,
  }
}

/** What the bays that stay as they are are worth more than in equal gaps. */
function standsOf(problem: Problem, hang: Hang, scale: Scale, centres: Centres | undefined) {
  if (centres === undefined) return () => 0
  const worth = (bay: number, own?: readonly number[]) =>
    gainOf(sumsOf(problem, scale, bay, at(hang, bay), own), problem, scale)
  const more = hang.map((_, bay) => worth(bay, at(centres, bay)) - worth(bay))
  const all = more.reduce((sum, one) => sum + one, 0)
  return (bays: BaysChanged) => all - bays.reduce((sum, [bay]) => sum + at(more, bay), 0)
}

/** What each term has of the difference between two qualities, in points; they add up to it. */
export function pointsBetween({ weights }: Pick<Problem, 'weights'>, one: TermValues, other: TermValues): TermValues {
  const all = terms.reduce((sum, term) => sum + weights[term], 0)
  const of = (term: Term) => (100 * weights[term] * (one[term] - other[term])) / all
  return {
    order: of('order'),
    balance: of('balance'),
    evenness: of('evenness'),
    light: of('light'),
    sight: of('sight'),
    rhythm: of('rhythm'),
  }
}

/** It alone to every place of every bay, and in the place of every other. */
function everyChange(hang: Hang, work: number, here: number): Omit<Change, 'quality'>[] {
  const left = at(hang, here).filter(other => other !== work)
  const own = at(hang, here).indexOf(work)
  const moves = hang.flatMap((works, bay) => {
    const rest = bay === here ? left : works
    return [...rest.keys(), rest.length].flatMap(place => {
      if (bay === here && place === own) return []
      const row = rest.toSpliced(place, 0, work)
      const bays: BaysChanged =
        bay === here
          ? [[here, row]]
          : [
              [here, left],
              [bay, row],
            ]
      return [{ bays, bay, swapped: null }]
    })
  })
  const swaps = hang.flatMap((works, bay) =>
    works.flatMap(other => {
      if (other === work) return []
      const change = (row: readonly number[]) => row.map(one => (one === work ? other : one === other ? work : one))
      const bays: BaysChanged =
        bay === here
          ? [[here, change(works)]]
          : [
              [here, change(at(hang, here))],
              [bay, change(works)],
            ]
      return [{ bays, bay, swapped: other }]
    }),
  )
  return [...moves, ...swaps]
}
