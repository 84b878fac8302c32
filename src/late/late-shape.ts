/**
 * What a late change is asked from and what it answers. Works are rectangles about their centres; holes are where a
 * drill has been. The rule it keeps: a hole is a fact, and nothing that hangs is moved unless a person chooses that.
 */
import type { HeightRule } from '../hang/height.ts'
import type { WallFacts } from '../hang/wall.ts'

/** How far along a work is: what it costs to move it. */
export type Standing = 'free' | 'drilled' | 'hung'

/** One hole a work needs, from its centre: right and up positive. */
export interface NeededHole {
  readonly slot: string
  readonly dx: number
  readonly dy: number
}

/** A hole that is there, wherever its work is now. */
export interface DrilledHole {
  readonly id: string
  readonly x: number
  readonly y: number
}

export interface LateWork {
  readonly id: string
  /** What people call it. */
  readonly name: string
  readonly width: number
  readonly height: number
  /** Centre along the wall. */
  readonly x: number
  /** Which of its points stands at which height. */
  readonly stands: HeightRule
  readonly standing: Standing
  readonly held: boolean
  /** None while its back is not measured. */
  readonly holes: readonly NeededHole[]
  readonly labelled: boolean
}

export type Change =
  | {
      readonly kind: 'different'
      readonly id: string
      readonly width: number
      readonly height: number
      readonly holes: readonly NeededHole[]
    }
  | { readonly kind: 'swap'; readonly one: string; readonly other: string }
  /** Another work, from elsewhere, takes this one’s place. */
  | { readonly kind: 'replace'; readonly id: string; readonly by: LateWork }
  | { readonly kind: 'drop'; readonly id: string }
  | { readonly kind: 'lower'; readonly by: number }

export interface LateQuestion {
  readonly wall: Pick<WallFacts, 'length' | 'height' | 'floor' | 'skirting' | 'ceiling' | 'openings' | 'keepClears'>
  readonly works: readonly LateWork[]
  readonly drilled: readonly DrilledHole[]
  readonly change: Change
  readonly leastGap: number
  readonly leastMargin: number
  readonly prices: Prices
  /** A hole this near serves: the same number on the tape. mm. */
  readonly sameHole: number
  /** A length with its unit as the reader of the sentences writes it. */
  readonly say: (mm: number) => string
  /**
   * What the wall's own checks would stop if works stood there, as a clause or sentence; empty where nothing is new.
   * Asked only of ways that have room and are about to be offered, for it is dear.
   */
  readonly stops: (places: Offer['places']) => string
}

/** What each consequence weighs, in points. House rules; the order they keep matters more than their size. */
export interface Prices {
  readonly hungMoved: number
  readonly newHole: number
  readonly deadHole: number
  readonly moved: number
  readonly label: number
  readonly gapSpreadPerMm: number
  readonly endsPerMm: number
  readonly offLinePerMm: number
}

export interface Cost {
  readonly hungMoved: number
  /** Works moved that do not hang yet. */
  readonly moved: number
  /** More holes to drill than before the change; negative where holes that are there serve again. */
  readonly newHoles: number
  /** More holes that nothing hangs on than before the change. */
  readonly deadHoles: number
  /** Labels that come to another place. */
  readonly labels: number
  /** Widest gap of the row less its narrowest, mm. */
  readonly gapSpread: number
  /** How far the row’s two outer edges move, summed, mm: its margins change. */
  readonly ends: number
  /** How far the works that were changed hang off the height that their rule gives, summed, mm. */
  readonly offLine: number
}

export interface Move {
  readonly id: string
  readonly x: number
  readonly y: number
  readonly wasX: number
  readonly wasY: number
}

export interface Offer {
  /** Keys the way it was found, for a person's choice to name it again. */
  readonly key: string
  /** One sentence: what happens. */
  readonly says: string
  readonly moves: readonly Move[]
  /** Where every work stands that moves or is changed, moved or not. */
  readonly places: readonly { readonly id: string; readonly x: number; readonly y: number }[]
  readonly off: readonly string[]
  readonly cost: Cost
  readonly price: number
  readonly newHoles: readonly { readonly work: string; readonly slot: string; readonly x: number; readonly y: number }[]
  readonly deadHoles: readonly string[]
  readonly gaps: readonly number[]
}

export interface LateAnswer {
  /** Cheapest first; none of those before the first that moves a hung work does so. */
  readonly offers: readonly Offer[]
  /** Why nothing that leaves hung works alone is possible; empty where something is. */
  readonly problem: string
}
