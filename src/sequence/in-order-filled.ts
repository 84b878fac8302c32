/**
 * Where no cut of the checklist's order hangs every work, the fewest are taken out of it: a work for which the order
 * leaves no room hangs where room is left over, and one that is too wide for what is left has a bay kept for it, on which
 * the order is cut anew. Which bay is kept is tried one after the other, the widest work first; a better choice of several
 * at once may exist.
 */
import { broken } from './across.ts'
import { allowedOn } from './allowed.ts'
import { apart } from './apart.ts'
import { hangInOrderKept } from './in-order-kept.ts'
import { type Block, blocksOf } from './packed.ts'
import { at, type Hang, type Problem } from './problem.ts'
import { RowWorth } from './row-worth.ts'
import { type Scale, turnedPairs } from './terms.ts'
import { unitsOf } from './units.ts'

interface Cut {
  readonly hang: Hang
  readonly out: readonly number[]
}

/** Cuts that are tried, as far as so many bays and works are looked at in all. */
const looksOfAll = 900_000
/** Of all ways to keep so many bays, those that are followed on. */
const followed = 8

/**
 * @param order the free works in the order that is kept
 * @param whole its best cut
 * @returns the cut itself where it leaves nothing out; yields between rounds, so that a person may cancel
 */
export function* inOrderFilled(
  problem: Problem,
  order: readonly number[],
  scale: Scale,
  whole: Cut,
): Generator<void, Cut> {
  if (whole.out.length === 0) return whole
  const filling = new Filling(problem, order, scale)
  let best = filling.fill(whole, new Map())
  // Walls that are too short for all need no such search to be filled.
  let left = filling.mayTakeAll() ? Math.floor(looksOfAll / (order.length * problem.bays.length)) : 0
  let open: readonly Tried[] = [best]
  while (open.length > 0 && best.out.length > 0 && left > 0) {
    const next: Tried[] = []
    for (const { out, kept } of open) {
      const block = filling.blocks.find(one => !kept.has(one) && out.some(work => one.works.includes(work)))
      if (block === undefined) continue
      for (const bay of filling.baysFor(block, kept)) {
        if (left <= 0) break
        left -= 1
        next.push(filling.cut(new Map([...kept, [block, bay] as const])))
      }
      yield
    }
    open = next.sort(closer).slice(0, followed)
    for (const one of open) if (one.out.length < best.out.length) best = one
  }
  // A bay that was cut shorter than it is may hang a work off the axis that a rule wants it on.
  return apart(problem, best, unitsOf(problem))
}

/** Less left out, then nearer to the order. */
function closer(one: Tried, other: Tried): number {
  return one.wide - other.wide || one.turned - other.turned
}

interface Tried extends Cut {
  /** Pairs of works that are met the other way round than in the order. */
  readonly turned: number
  /** Width of what is left out, mm. */
  readonly wide: number
  /** Blocks that a bay was kept for. */
  readonly kept: ReadonlyMap<Block, number>
}

class Filling {
  /** The widest first. */
  readonly blocks: readonly Block[]
  private readonly problem: Problem
  private readonly order: readonly number[]
  private readonly scale: Scale
  private readonly worths: RowWorth
  private readonly rank: ReadonlyMap<number, number>

  constructor(problem: Problem, order: readonly number[], scale: Scale) {
    this.problem = problem
    this.order = order
    this.scale = scale
    this.worths = new RowWorth(problem, scale)
    this.rank = new Map(order.map((work, index) => [work, index] as const))
    this.blocks = [...blocksOf(problem, order, unitsOf(problem))].sort((a, b) => b.width - a.width)
  }

  /** Whether all works together are no longer than all bays that any of them may hang on. */
  mayTakeAll(): boolean {
    const used = this.problem.bays.filter((_, bay) => this.blocks.some(({ may }) => may[bay] === true))
    const room = used.reduce((sum, { from, to, margin, gap }) => sum + Math.max(0, to - from - 2 * margin + gap), 0)
    const least = Math.min(...used.map(({ gap }) => gap))
    return this.order.reduce((sum, work) => sum + at(this.problem.works, work).width + least, 0) <= room
  }

  /** Bays that take a block beside those that they are kept for. */
  baysFor(block: Block, kept: ReadonlyMap<Block, number>): readonly number[] {
    return [...this.problem.bays.keys()].filter(bay => {
      const works = [...kept].flatMap(([one, on]) => (on === bay ? one.works : []))
      const row = [...works, ...block.works]
      return block.may[bay] === true && this.worths.leftOver(bay, row, row.length) >= -1e-6
    })
  }

  /** The order cut anew, each block of `kept` on the bay kept for it. */
  cut(kept: ReadonlyMap<Block, number>): Tried {
    const set = new Set([...kept.keys()].flatMap(({ works }) => works))
    const bays = this.problem.bays.map((bay, index) => {
      const taken = [...kept]
        .filter(([, on]) => on === index)
        .map(([{ works, width }]) => width + works.length * bay.gap)
      return { ...bay, to: bay.to - taken.reduce((sum, each) => sum + each, 0) }
    })
    const order = this.order.filter(work => !set.has(work))
    return this.fill(hangInOrderKept({ ...this.problem, bays }, order, this.scale, 10), kept)
  }

  /**
   * What the cut left out, and what a bay is kept for, put into the rows, the widest first: where its turn is nearest, or,
   * if more finds room then, where least is left over.
   */
  fill(cut: Cut, kept: ReadonlyMap<Block, number>): Tried {
    const near = this.filledBy(cut, kept, 'turned')
    if (near.out.length === 0) return near
    const tight = this.filledBy(cut, kept, 'left')
    return tight.wide < near.wide ? tight : near
  }

  private filledBy(cut: Cut, kept: ReadonlyMap<Block, number>, least: 'turned' | 'left'): Tried {
    const hang = cut.hang.map(row => [...row])
    const out: number[] = []
    // Where its own bay is too short for what rules draw together, the cut may have hung a part of it.
    const open = this.blocks
      .map(block => ({ block, works: block.works.filter(work => !hang.some(row => row.includes(work))) }))
      .filter(({ works }) => works.length > 0)
      .sort((a, b) => Number(kept.has(b.block)) - Number(kept.has(a.block)))
    for (const { block, works } of open)
      if (works.length < block.works.length || !this.place(hang, block, kept.get(block), least)) out.push(...works)
    const wide = out.reduce((sum, work) => sum + at(this.problem.works, work).width, 0)
    return { hang, out, wide, turned: turnedPairs(this.ranksOf(hang)), kept }
  }

  private place(hang: number[][], block: Block, only: number | undefined, least: 'turned' | 'left'): boolean {
    const { works, may } = block
    const [own = 0] = this.ranksOf([works])
    const met = this.ranksOf(hang)
    const later = met.filter(rank => rank < own).length
    let [begins, turnedBefore] = [0, 0]
    const choices = hang.flatMap((row, bay) => {
      const from = begins
      begins += row.length
      if (may[bay] !== true || (only !== undefined && only !== bay)) {
        for (const rank of this.ranksOf([row])) turnedBefore += rank > own ? 1 : -1
        return []
      }
      const so = [...works, ...row]
      const left = this.worths.leftOver(bay, so, so.length)
      return Array.from({ length: row.length + 1 }, (_, place) => {
        if (place > 0) turnedBefore += (met[from + place - 1] ?? 0) > own ? 1 : -1
        return { bay, place, left, turned: later + turnedBefore }
      })
    })
    const open = choices.filter(({ left }) => left >= -1e-6)
    for (const { bay, place } of open.sort((a, b) => a[least] - b[least] || a.turned - b.turned)) {
      const was = at(hang, bay)
      const so = was.toSpliced(place, 0, ...works)
      if (!allowedOn(this.problem, bay, so)) continue
      hang[bay] = so
      if (broken(this.problem, hang) === null) return true
      hang[bay] = was
    }
    return false
  }

  private ranksOf(hang: Hang): readonly number[] {
    return hang.flat().map(work => this.rank.get(work) ?? 0)
  }
}
