/**
 * What a planner is asked: works in the order of the checklist, bays in the visitor's order, what must hold. A bay is a
 * free stretch of a wall: openings, what stays clear and works that stay where they are bound it, so that all that is
 * decided is which works stand on which bay, and in which order from its left end. Lengths mm, weights m².
 */

/** What a bay ends at: nothing, or a work that stays, by its place in `works`. */
type Neighbour = number | null

export interface Bay {
  readonly id: string
  /** Bays of one wall, in the order of the walls. */
  readonly face: string
  readonly from: number
  readonly to: number
  /** Free at least at either end, and between two works: for hands, and for their labels. */
  readonly margin: number
  readonly gap: number
  readonly leftOf: Neighbour
  readonly rightOf: Neighbour
  /** Upright lines that the visitor comes along: axes of doorways, from the left end of the wall. */
  readonly axes: readonly number[]
}

export interface Work {
  readonly id: string
  readonly width: number
  readonly height: number
  /** Visual weight. */
  readonly weight: number
  /** Light that it may receive, lux; null where nobody said. */
  readonly limit: number | null
  /** Place of its section among the sections, and its own in the checklist. */
  readonly section: number
  readonly rank: number
  /** For each bay, how well the viewers there are served by it (0 to 1); null where it may not hang there. */
  readonly served: readonly (number | null)[]
  /** The bay before which it stands, if it stays where it is: it is decided already. */
  readonly stays: { readonly before: number } | null
}

/** What must hold between works; all by their place in `works`. What bars a work from a bay stands in `served`. */
export interface Rules {
  /** Stand side by side, in this order. */
  readonly together: readonly (readonly number[])[]
  /** Stand side by side, in whichever order. */
  readonly beside: readonly (readonly number[])[]
  readonly oneWall: readonly (readonly number[])[]
  readonly notBeside: readonly (readonly [number, number])[]
  readonly notFacing: readonly (readonly [number, number])[]
  /** Met before all others, or after them. */
  readonly first: readonly Leads[]
  readonly last: readonly Leads[]
  /** Stands across one of these upright lines of bays. */
  readonly onAxis: readonly { readonly work: number; readonly at: readonly AxisOfBay[] }[]
}

export interface Leads {
  readonly work: number
  /** Those that it is held against; null for all. What stays is no matter of it: it bars bays. */
  readonly among: readonly number[] | null
  /** Only what hangs on these bays counts; null for all. */
  readonly bays: readonly number[] | null
  /** Only what hangs on the same wall counts. */
  readonly sameWall: boolean
}

export interface AxisOfBay {
  readonly bay: number
  readonly x: number
}

/** How much each term counts: any numbers of 0 or more, not all 0. */
export interface TermWeights {
  readonly order: number
  readonly balance: number
  readonly evenness: number
  readonly light: number
  readonly sight: number
  readonly rhythm: number
}
export type Term = keyof TermWeights
export const terms = ['order', 'balance', 'evenness', 'light', 'sight', 'rhythm'] as const satisfies readonly Term[]

export interface Problem {
  readonly bays: readonly Bay[]
  readonly works: readonly Work[]
  /** Bays of one wall that only what is kept clear parts, from the left: works at their ends are neighbours. */
  readonly chains?: readonly (readonly number[])[]
  /** Pairs of bays that look at each other, by their place. */
  readonly facing: readonly (readonly [number, number])[]
  readonly rules: Rules
  readonly weights: TermWeights
  /** Whether each work keeps its place in the checklist, or sections alone do. */
  readonly orderBy: 'work' | 'section'
}

/** For each bay the works on it, from its left end, by their place in `works`. */
export type Hang = readonly (readonly number[])[]

export const noRules: Rules = {
  together: [],
  beside: [],
  oneWall: [],
  notBeside: [],
  notFacing: [],
  first: [],
  last: [],
  onAxis: [],
}

/** Whether anything must hold between works: then each row is looked at by its rules. */
export function hasRules({ rules }: Pick<Problem, 'rules'>): boolean {
  return Object.values(rules).some(list => list.length > 0)
}

/** Length that works and what must stay free between and beside them leave over; below 0 they do not fit. */
export function leftOver(problem: Problem, bay: number, works: readonly number[]): number {
  const { from, to, margin, gap } = at(problem.bays, bay)
  let left = to - from - 2 * margin + (works.length > 0 ? gap : 0)
  for (const work of works) left -= at(problem.works, work).width + gap
  return left
}

/**
 * Centres of works in a bay, from the wall's left end. What is left over goes in equal parts to both ends and all gaps.
 * They overlap or stick out where `leftOver` is below 0.
 */
export function centresIn(problem: Problem, bay: number, works: readonly number[]): readonly number[] {
  const { from, margin, gap } = at(problem.bays, bay)
  const each = leftOver(problem, bay, works) / (works.length + 1)
  let x = from + margin + each
  return works.map(work => {
    const { width } = at(problem.works, work)
    const centre = x + width / 2
    x += width + gap + each
    return centre
  })
}

/** An element that is there: places in a problem are checked when it is made. */
export function at<T>(list: readonly T[], index: number): T {
  const found = list[index]
  if (found === undefined) throw new RangeError(`nothing at ${index}`)
  return found
}
