/**
 * Whether a rule holds in a show as it hangs, or as a proposal would hang it: said plainly, work by work, without any
 * planner. What is shown of a rule comes from here, and the planner is tested against it.
 */
import { type Extent, type HangRule, pairsOf, type Within } from './hang-rule.ts'

/** A work where it hangs, in the order in which works are met. */
export interface Spot extends Extent {
  readonly work: number
  /** An unbroken length of wall: neighbours on it are beside one another. */
  readonly run: string
}

export interface Hung {
  readonly spots: readonly Spot[]
  readonly faces: (a: Extent, b: Extent) => boolean
  /** By work: the place of its section. */
  readonly sections: readonly number[]
}

/**
 * - held, broken.
 * - open: some of its works hang nowhere, and what hangs breaks nothing yet.
 */
export type RuleState = 'held' | 'broken' | 'open'

export function stateOf(rule: HangRule, hung: Hung): RuleState {
  const spots = rule.works.flatMap(work => hung.spots.filter(spot => spot.work === work))
  if (broken(rule, spots, hung)) return 'broken'
  return spots.length < rule.works.length ? 'open' : 'held'
}

function broken(rule: HangRule, spots: readonly Spot[], hung: Hung): boolean {
  const { kind, faces, works } = rule
  switch (kind) {
    case 'stays':
    case 'only on':
    case 'light':
      return spots.some(spot => !faces.includes(spot.face))
    case 'not on':
      return spots.some(spot => faces.includes(spot.face))
    case 'one wall':
      return new Set(spots.map(spot => spot.face)).size > 1
    case 'side by side':
    case 'in this order':
      return apart(kind === 'in this order', works, spots, hung)
    case 'not beside':
      return pairsOf(works).some(([a, b]) => beside(a, b, hung))
    case 'not facing':
      return pairsOf(works).some(([a, b]) => {
        const [one, other] = [a, b].map(work => spots.find(spot => spot.work === work))
        return one !== undefined && other !== undefined && hung.faces(one, other)
      })
    case 'axis':
      return spots.some(
        ({ face, from, to }) => !rule.axes.some(axis => axis.face === face && axis.x >= from && axis.x <= to),
      )
    case 'first':
    case 'last':
      return spots.some(spot => !leads(spot, kind === 'first', rule.within ?? 'show', faces, hung))
  }
}

/** Those of the group that hang are not side by side, or in another order than they are given. */
function apart(ordered: boolean, works: readonly number[], spots: readonly Spot[], { spots: all }: Hung): boolean {
  if (spots.length < 2) return false
  if (new Set(spots.map(spot => spot.run)).size > 1) return true
  const row = all.filter(spot => spot.run === spots[0]?.run).map(spot => spot.work)
  const places = row.flatMap((work, place) => (works.includes(work) ? [place] : []))
  const [from, to] = [places[0] ?? 0, places.at(-1) ?? 0]
  // Where some hang nowhere yet, what stands between may still make way for them.
  if (spots.length === works.length && to - from !== places.length - 1) return true
  const given = works.filter(work => row.includes(work))
  return ordered && places.some((place, index) => row[place] !== given[index])
}

function beside(a: number, b: number, { spots }: Hung): boolean {
  const one = spots.find(spot => spot.work === a)
  if (one === undefined) return false
  const row = spots.filter(spot => spot.run === one.run)
  const at = row.indexOf(one)
  return row[at - 1]?.work === b || row[at + 1]?.work === b
}

function leads(
  spot: Spot,
  first: boolean,
  within: Within,
  faces: readonly string[],
  { spots, sections }: Hung,
): boolean {
  if (within === 'room' && !faces.includes(spot.face)) return false
  const among = spots.filter(({ work, face }) => {
    if (within === 'wall') return face === spot.face
    if (within === 'room') return faces.includes(face)
    return within === 'show' || sections[work] === sections[spot.work]
  })
  return (first ? among[0] : among.at(-1)) === spot
}
