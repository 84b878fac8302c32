/**
 * A problem as the joint bound sees it: the free works that may hang somewhere, in their order, what each is worth on each bay, how wide bays and
 * works are, what a pair out of order and one more run of a section cost. Widths in mean widths of a work, so that prices
 * of all kinds are of one size.
 */
import { at, type Problem, type Work } from './problem.ts'
import { gainOf, noSums, orderKeys, quality, type Scale, termsOfSums } from './terms.ts'

export interface JointModel {
  readonly works: number
  readonly bays: number
  readonly sections: number
  /** By work: its section; first and last place of those that may change places with it freely; its width. */
  readonly section: Int32Array
  readonly low: Float64Array
  readonly high: Float64Array
  readonly width: Float64Array
  /** By bay: the gap, room for works and gaps, an even share, the most that works may take, how many they may be. */
  readonly gap: Float64Array
  readonly room: Float64Array
  readonly share: Float64Array
  readonly most: Float64Array
  readonly many: Int32Array
  /** Axes of the bay that a work can stand on. */
  readonly axes: Int32Array
  /** By bay and work: worth of being seen there, -Infinity where it may not hang; and of standing on axes. */
  readonly served: Float64Array
  readonly focal: Float64Array
  /** Quality lost by a mean width too much or too little, a pair out of order, a run of a section. */
  readonly perUneven: number
  readonly perTurned: number
  readonly perRun: number
  /** Runs of sections that no hang has fewer of. */
  readonly fewestRuns: number
  /** Of a hang with all that is not counted here at its best. */
  readonly base: number
  /** Counts of works that a bay may have, none among them. */
  readonly counts: number
}

/** Lengths may be off by so much and still count as fitting. mm */
const slack = 0.01

export function jointModel(problem: Problem, scale: Scale): JointModel {
  const { bays, weights } = problem
  const keys = orderKeys(problem)
  const order = problem.works
    .flatMap((work, index) => (work.stays === null && !hangsNowhere(work) ? [index] : []))
    .sort((a, b) => at(keys, a) - at(keys, b))
  const works = order.map(index => at(problem.works, index))
  const key = order.map(index => at(keys, index))
  const names = [...new Set(works.map(work => work.section))]
  const all = Object.values(weights).reduce((sum, weight) => sum + weight, 0)
  const per = (of: Partial<typeof noSums>) => gainOf({ ...noSums, ...of }, problem, scale)
  const perRun = scale.all > scale.sections ? weights.order / all / 2 / (scale.all - scale.sections) : 0
  const mean = scale.width / works.length
  const axes = bays.map(bay =>
    bay.axes.filter(x => x > bay.from + bay.margin - slack && x < bay.to - bay.margin + slack).sort((a, b) => a - b),
  )
  const [perServed, perFocal] = [per({ served: 1 }), scale.heaviest > 0 ? per({ focal: 1 }) / scale.heaviest : 0]
  const usable = bays.map(bay => Math.max(0, bay.to - bay.from - 2 * bay.margin + slack))
  const may = (bay: number) => works.filter(({ served }) => (served[bay] ?? null) !== null)
  const many = Int32Array.from(bays, (bay, index) => mostOn(at(usable, index) + bay.gap, bay.gap, may(index)))
  return {
    works: works.length,
    bays: bays.length,
    sections: names.length,
    section: Int32Array.from(works, work => names.indexOf(work.section)),
    low: Float64Array.from(key, own => key.indexOf(own) + 1),
    high: Float64Array.from(key, own => key.lastIndexOf(own) + 1),
    width: Float64Array.from(works, work => work.width / mean),
    gap: Float64Array.from(bays, bay => bay.gap / mean),
    room: Float64Array.from(bays, (bay, index) => (at(usable, index) + bay.gap) / mean),
    share: Float64Array.from(bays, bay => (scale.fill * (bay.to - bay.from)) / mean),
    most: Float64Array.from(usable, length => length / mean),
    many,
    counts: 1 + Math.max(...many),
    axes: Int32Array.from(axes, own => own.length),
    served: Float64Array.from(
      bays.flatMap((_, bay) =>
        works.map(({ served }) => (served[bay] == null ? Number.NEGATIVE_INFINITY : perServed * (served[bay] ?? 0))),
      ),
    ),
    focal: Float64Array.from(axes.flatMap(own => works.map(work => perFocal * work.weight * across(own, work.width)))),
    perUneven: -per({ uneven: mean }),
    perTurned: scale.ordered === 0 ? 0 : weights.order / all / 2 / scale.ordered,
    perRun,
    base: quality({ order: 1, ...termsOfSums(noSums, scale) }, weights) + per({ balance: works.length }),
    fewestRuns: scale.sections,
  }
}

/** Whether no bay may take it: no hang can but leave it out. */
export function hangsNowhere({ served }: Pick<Work, 'served'>): boolean {
  return served.every(share => share === null)
}

/** How many of the narrowest works fit. */
function mostOn(room: number, gap: number, works: readonly { readonly width: number }[]): number {
  let left = room
  const widths = works.map(({ width }) => width).sort((a, b) => a - b)
  const first = widths.findIndex(width => {
    left -= width + gap
    return left < 0
  })
  return first < 0 ? widths.length : first
}

/** On how many of these lines a work can stand at once. */
function across(lines: readonly number[], width: number): number {
  return lines.reduce((most, x, index) => Math.max(most, lines.slice(index).filter(y => y - x <= width).length), 0)
}
