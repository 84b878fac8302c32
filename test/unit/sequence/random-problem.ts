/** Small random planning problems, and every hang of them: what the searches are held against. */
import { allowed } from '../../../src/sequence/allowed.ts'
import { chanceFrom, pickBelow } from '../../../src/sequence/chance.ts'
import type { Hang, Leads, Problem, Rules, Work } from '../../../src/sequence/problem.ts'

export interface Sizes {
  readonly works: number
  readonly bays: number
  /** Whether some rules hold. */
  readonly ruled: boolean
}

export function randomProblem(seed: number, { works, bays, ruled }: Sizes): Problem {
  const chance = chanceFrom(seed)
  const between = (least: number, most: number) => least + pickBelow(chance, most - least + 1)
  const lengths = Array.from({ length: bays }, () => between(1500, 5000))
  const sections = Math.max(1, Math.floor(works / 2))
  const made: Work[] = Array.from({ length: works }, (_, rank) => {
    const [width, height] = [between(200, 1100), between(200, 1100)]
    return {
      id: `w${rank}`,
      width,
      height,
      weight: (width * height * (1 + chance())) / 1e6,
      limit: [null, 50, 150, 200, 500][pickBelow(chance, 5)] ?? null,
      section: Math.min(sections - 1, Math.floor(rank / 2)),
      rank,
      served: lengths.map(() => (ruled && chance() < 0.1 ? null : Math.round(100 * chance()) / 100)),
      stays: null,
    }
  })
  const pair = () => {
    const one = pickBelow(chance, works)
    return [one, (one + 1 + pickBelow(chance, works - 1)) % works] as const
  }
  const leads = (): Leads => {
    const [work] = pair()
    const others = made.flatMap((_, index) => (index === work || chance() < 0.5 ? [] : [index]))
    const kind = pickBelow(chance, 4)
    const all = [...lengths.keys()]
    const room = all.slice(0, 1 + pickBelow(chance, all.length))
    return {
      work,
      among: kind === 1 ? others : null,
      bays: kind === 2 ? room : null,
      sameWall: kind === 3,
    }
  }
  const some = <T>(share: number, make: () => T): T[] => (ruled && works > 1 && chance() < share ? [make()] : [])
  const rules: Rules = {
    together: ruled && works > 3 ? [[1, 2]] : [],
    beside: some(0.4, () => [...pair()]),
    oneWall: some(0.3, () => [...pair()]),
    notBeside: some(1, pair),
    notFacing: some(1, pair),
    first: some(0.4, leads),
    last: some(0.25, leads),
    onAxis: some(0.2, () => {
      const bay = pickBelow(chance, bays)
      return { work: pickBelow(chance, works), at: [{ bay, x: between(0, lengths[bay] ?? 0) }] }
    }),
  }
  const weight = () => 0.2 + chance()
  return {
    bays: lengths.map((length, index) => ({
      id: `b${index}`,
      // Ruled: the last two bays are of one wall.
      face: `f${ruled ? Math.min(index, Math.max(1, bays - 2)) : index}`,
      from: 0,
      to: length,
      margin: 150,
      gap: 75,
      leftOf: null,
      rightOf: null,
      axes: chance() < 0.4 ? [Math.round(length * chance())] : [],
    })),
    works: made,
    facing: bays > 1 ? [[0, 1]] : [],
    rules,
    weights: {
      order: weight(),
      balance: weight(),
      evenness: weight(),
      light: weight(),
      sight: weight(),
      rhythm: weight(),
    },
    orderBy: chance() < 0.5 ? 'work' : 'section',
  }
}

export function permutations(list: readonly number[]): number[][] {
  if (list.length === 0) return [[]]
  return list.flatMap((first, index) =>
    permutations([...list.slice(0, index), ...list.slice(index + 1)]).map(rest => [first, ...rest]),
  )
}

/** Rows of `list` cut into as many runs as there are bays, in every way. */
export function cuts(list: readonly number[], bays: number): number[][][] {
  if (bays === 1) return [[[...list]]]
  return [...list.keys(), list.length].flatMap(end =>
    cuts(list.slice(end), bays - 1).map(rest => [list.slice(0, end), ...rest]),
  )
}

/** Every allowed hang of all works. */
export function* everyHang(problem: Problem): Generator<Hang> {
  for (const order of permutations([...problem.works.keys()])) {
    for (const hang of cuts(order, problem.bays.length)) if (allowed(problem, hang)) yield hang
  }
}
