/** Rules of a hang as they are given: what they are called, what each kind needs, and what it is held against. */
export const ruleKinds = [
  'stays',
  'side by side',
  'in this order',
  'one wall',
  'not beside',
  'not facing',
  'only on',
  'not on',
  'first',
  'last',
  'axis',
] as const
export type RuleKind = (typeof ruleKinds)[number]

/** What a work is the first or last of. */
export const withins = ['wall', 'room', 'section', 'show'] as const
export type Within = (typeof withins)[number]

/** What a rule's place may be. */
export const placeKinds = ['wall', 'room', 'doorway', 'bench'] as const
export type PlaceKind = (typeof placeKinds)[number]

interface Needs {
  /** Works that it names, at least and at most. */
  readonly least: number
  readonly most: number
  readonly place: 'none' | 'walls' | 'axis' | 'within'
}

/** No rule names more works. */
export const mostWorks = 60
const pair = { least: 2, most: mostWorks, place: 'none' } as const
const each = { least: 1, most: mostWorks, place: 'walls' } as const
const one = { least: 1, most: 1 } as const

export const ruleNeeds: Readonly<Record<RuleKind, Needs>> = {
  stays: { ...each, place: 'none' },
  // Works that stand side by side are seldom more than a dozen, and each order of theirs may be tried.
  'side by side': { ...pair, most: 12 },
  'in this order': { ...pair, most: 12 },
  'one wall': pair,
  'not beside': pair,
  'not facing': pair,
  'only on': each,
  'not on': each,
  first: { ...one, place: 'within' },
  last: { ...one, place: 'within' },
  axis: { ...one, place: 'axis' },
}

/** A length of a face, from its left end. mm */
export interface Extent {
  readonly face: string
  readonly from: number
  readonly to: number
}

/** A rule as a show is held against it; works by their place in the show. */
export interface HangRule {
  readonly id: string
  /** `light`: the walls where it may hang are those that are dark enough. */
  readonly kind: RuleKind | 'light'
  readonly works: readonly number[]
  /** Faces that it allows or forbids, those of its room, the one that it stays on. */
  readonly faces: readonly string[]
  readonly within: Within | null
  readonly axes: readonly { readonly face: string; readonly x: number }[]
}

/** Every two of a list. */
export function pairsOf(list: readonly number[]): (readonly [number, number])[] {
  return list.flatMap((a, index) => list.slice(index + 1).map(b => [a, b] as const))
}
