/**
 * What is doubtful among all numbers of a catalogue: one number at two works, two permanent numbers at one, numbers that
 * a slip in copying would make of each other. A doubt accuses nobody: both may be right, and a person can say so.
 *
 * Numbers that follow one another are one sign apart by nature (1995.5.2 and 1995.5.3), so that being near alone says
 * nothing. It does where something else speaks for a slip: the two works read the same, the number is the only one
 * with its beginning, or the only one written in its form.
 */
import type { NumberKind } from '../contract/areas/works-shape.ts'
import { nearNumber } from './numbers.ts'

export interface HeldNumber {
  readonly id: string
  readonly work: string
  readonly kind: NumberKind
  readonly text: string
  /** The normal form. */
  readonly norm: string
  /** Whose number it is; null for the house's own, and where nobody said. */
  readonly party: string | null
}

export type DoubtCode = 'number-twice' | 'number-kinds' | 'number-two' | 'number-near'

export interface NumberDoubt {
  readonly code: DoubtCode
  /** Two or more, in the order of their ids. */
  readonly numbers: readonly HeldNumber[]
  /** What it follows from, as text: a settlement holds while this stays. */
  readonly figures: string
}

/** Kinds that stand for one work each. One loan, one receipt and one exhibition number may stand for several. */
const identifying: ReadonlySet<NumberKind> = new Set(['permanent', 'lender', 'former'])
/** Shorter ones are running numbers: 11 stands for something else at each lender. */
const telling = 4

/** One series of numbers, in which each stands for one work. */
function seriesOf({ kind, party }: HeldNumber): string {
  return kind === 'lender' ? `lender ${party ?? '?'}` : kind
}

function doubt(code: DoubtCode, numbers: readonly HeldNumber[]): NumberDoubt {
  const sorted = numbers.toSorted((a, b) => (a.id < b.id ? -1 : 1))
  return {
    code,
    numbers: sorted,
    figures: JSON.stringify(sorted.map(({ id, kind, norm, work }) => [id, kind, norm, work])),
  }
}

/** Those that share a key with another, by it. Of 90,000 numbers few do, and an array for each is dear. */
function shared(numbers: readonly HeldNumber[], key: (number: HeldNumber) => string): Map<string, HeldNumber[]> {
  const seen = new Set<string>()
  const twice = new Set<string>()
  const keys = numbers.map(key)
  for (const one of keys) (seen.has(one) ? twice : seen).add(one)
  return twice.size === 0
    ? new Map()
    : Map.groupBy(
        numbers.filter((_, at) => twice.has(keys[at] ?? '')),
        key,
      )
}

const severalWorks = (numbers: readonly HeldNumber[]) => numbers.some(one => one.work !== numbers[0]?.work)

/** The same number: twice in one series, or of two kinds. */
function same(numbers: readonly HeldNumber[]): NumberDoubt[] {
  const found: NumberDoubt[] = []
  for (const [norm, group] of shared(numbers, one => one.norm)) {
    if (norm === '') continue
    const told = new Set<string>()
    for (const [series, alike] of Map.groupBy(group, seriesOf)) {
      const [first] = alike
      if (first === undefined || alike.length < 2 || !identifying.has(first.kind)) continue
      // Nobody said whose these are: two lenders may both have a 12.
      if (series === 'lender ?' && norm.length < telling) continue
      found.push(doubt('number-twice', alike))
      for (const one of alike) told.add(one.id)
    }
    const others = group.filter(one => one.kind !== 'exhibition')
    const kinds = new Set(others.map(one => one.kind))
    if (kinds.size < 2 || norm.length < telling || !others.some(one => identifying.has(one.kind))) continue
    // At one work a loan number may well be the lender's number too.
    if (severalWorks(others) && others.some(one => !told.has(one.id))) found.push(doubt('number-kinds', others))
  }
  return found
}

/** Permanent is the number that a work has now: of two, one is a former number. */
function two(numbers: readonly HeldNumber[]): NumberDoubt[] {
  const permanent = numbers.filter(one => one.kind === 'permanent')
  return [...shared(permanent, one => one.work).values()]
    .filter(of => new Set(of.map(one => one.norm)).size > 1)
    .map(of => doubt('number-two', of))
}

/** The beginning of a number, up to and with its first figures. */
const headOf = (norm: string) => /^\D*\d+/.exec(norm)?.[0] ?? ''

/** `L-2031.7` and `L-88.12` have one form, `A-#.#`. */
const formOf = (norm: string) => norm.replace(/\d+/g, '#').replace(/\p{L}+/gu, 'A')

function counted(of: readonly string[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>()
  for (const one of of) counts.set(one, (counts.get(one) ?? 0) + 1)
  return counts
}

/** Enough to be a custom of the house, and so few that they are an exception to it. */
const customary = 3
const rare = (count: number, of: number) => count <= Math.max(1, of / 20)

type Pair = readonly [HeldNumber, HeldNumber]

/** Numbers of one series whose beginning stands alone, where another with the same rest begins as many do. */
function lonelyBeginnings(series: readonly HeldNumber[]): Pair[] {
  const heads = series.map(one => headOf(one.norm))
  const counts = counted(heads)
  const count = (at: number) => counts.get(heads[at] ?? '') ?? 0
  const restOf = (one: HeldNumber, at: number) => one.norm.slice(heads[at]?.length)
  let lonely = 0
  for (const each of counts.values()) if (each === 1) lonely++
  // Where many years have one work each, being alone is no exception.
  if (lonely === 0 || !rare(lonely, counts.size)) return []
  const byRest = new Map<string, HeldNumber[]>()
  for (const [at, one] of series.entries()) {
    const rest = restOf(one, at)
    if (count(at) === 1 && rest !== '') byRest.set(rest, [...(byRest.get(rest) ?? []), one])
  }
  return series.flatMap((one, at) =>
    count(at) < customary
      ? []
      : (byRest.get(restOf(one, at)) ?? [])
          .filter(other => nearNumber(other.norm, one.norm))
          .map((other): Pair => [other, one]),
  )
}

/** What parts runs of letters and figures. */
const marks = /[ -/:-@[-`{-~]/g

/** The same letters and figures with other marks between them, where one of the two is not the house's way to write. */
function otherMarks(series: readonly HeldNumber[]): Pair[] {
  let forms: ReadonlyMap<string, number> | undefined
  function count(one: HeldNumber): number {
    forms ??= counted(series.map(each => formOf(each.norm)))
    return forms.get(formOf(one.norm)) ?? 0
  }
  const pairs: Pair[] = []
  for (const [bare, alike] of shared(series, one => one.norm.replace(marks, ''))) {
    if (bare.length < telling) continue
    for (const [at, one] of alike.entries()) {
      for (const other of alike.slice(at + 1)) {
        if (one.norm === other.norm) continue
        const [fewer, more] = [count(one), count(other)].sort((a, b) => a - b) as [number, number]
        if (more >= customary && rare(fewer, more)) pairs.push([one, other])
      }
    }
  }
  return pairs
}

/** Of two works that read the same, and no third does: a work written down twice, its number copied with a slip. */
function twinsNear(
  byWork: ReadonlyMap<string, readonly HeldNumber[]>,
  twins: readonly (readonly [string, string])[],
): Pair[] {
  return twins.flatMap(([a, b]) =>
    (byWork.get(a) ?? []).flatMap(one =>
      (byWork.get(b) ?? [])
        .filter(other => seriesOf(one) === seriesOf(other) && nearNumber(one.norm, other.norm))
        .map((other): Pair => [one, other]),
    ),
  )
}

/**
 * Every doubt among these numbers, which are all of a catalogue. `twins` are pairs of works with one maker, title and
 * date that no third work has. The order of the numbers changes nothing.
 */
export function numberDoubts(
  numbers: readonly HeldNumber[],
  twins: readonly (readonly [string, string])[],
): NumberDoubt[] {
  const known = numbers.filter(one => identifying.has(one.kind) && one.norm !== '')
  const pairs = [...Map.groupBy(known, seriesOf).values()].flatMap(series => [
    ...lonelyBeginnings(series),
    ...otherMarks(series),
  ])
  pairs.push(
    ...twinsNear(
      Map.groupBy(known, one => one.work),
      twins,
    ),
  )
  const near = new Map<string, NumberDoubt>()
  for (const pair of pairs) {
    const made = doubt('number-near', pair)
    near.set(made.figures, made)
  }
  return [...same(numbers), ...two(numbers), ...near.values()]
}
