/**
 * How prices are moved that make a bound (subgradients: Held, Wolfe and Crowder, Mathematical Programming 6, 1974): by
 * steps towards what is used too much, as long as the bound is above what is known; shorter ones, from the best prices
 * so far, after many rounds that did not lower it.
 */
import type { JointModel } from './joint-model.ts'

/** Rounds without a lower bound after which steps become shorter; how much; and how short they are at the end. */
const patience = 15
const shorter = 0.7
const shortest = 1e-3
/** How much of its last direction a step keeps, so that it does not go to and fro. */
const steady = 0.7

type Kinds<K extends string> = { readonly [Kind in K]: Float64Array }

export class Steps<K extends string> {
  readonly direction: Kinds<K>
  lowest = Number.POSITIVE_INFINITY
  private readonly kinds: readonly K[]
  private readonly kept: Kinds<K>
  private stride: number
  private idle = 0

  /** @param stride of the first steps; 1 where prices begin far from the best */
  constructor(prices: Kinds<K>, stride: number) {
    this.stride = stride
    this.kinds = Object.keys(prices) as K[]
    this.direction = copied(this.kinds, prices, true)
    this.kept = copied(this.kinds, prices, false)
  }

  /** Whether steps are so short that nothing comes of them. */
  get done(): boolean {
    return this.stride <= shortest
  }

  /** Says what bound prices gave; true where they were set back to the best ones. */
  told(bound: number, prices: Kinds<K>): boolean {
    this.idle = bound < this.lowest - 1e-6 ? 0 : this.idle + 1
    if (bound < this.lowest) {
      this.lowest = bound
      for (const kind of this.kinds) this.kept[kind].set(prices[kind])
    }
    if (this.idle <= patience) return false
    this.stride *= shorter
    this.idle = 0
    this.back(prices)
    return true
  }

  /** Sets prices to those of the lowest bound. */
  back(prices: Kinds<K>): void {
    for (const kind of this.kinds) prices[kind].set(this.kept[kind])
  }

  /** Turns the direction towards what is used too much; false where all is used as it is there. */
  turn(used: Kinds<K>): boolean {
    let some = false
    for (const kind of this.kinds) {
      const [old, now] = [this.direction[kind], used[kind]]
      for (let index = 0; index < now.length; index += 1) {
        if (now[index] !== 0) some = true
        old[index] = (now[index] ?? 0) + steady * (old[index] ?? 0)
      }
    }
    return some
  }

  /** By how much of the direction prices are moved. */
  length(known: number): number {
    const size = this.kinds.reduce((sum, kind) => this.direction[kind].reduce((of, each) => of + each * each, sum), 0)
    return (this.stride * Math.max(1e-6, this.lowest - known)) / Math.max(1e-12, size)
  }
}

function copied<K extends string>(kinds: readonly K[], of: Kinds<K>, empty: boolean): Kinds<K> {
  const made = kinds.map(kind => [kind, empty ? new Float64Array(of[kind].length) : of[kind].slice()] as const)
  return Object.fromEntries(made) as Kinds<K>
}

/** The width of works that a bay would have at such a price of width, and what that is worth. */
export function widthAt({ share, most, perUneven }: JointModel, bay: number, price: number) {
  const [even, full] = [share[bay] ?? 0, most[bay] ?? 0]
  const worthOf = (width: number) => price * width - perUneven * Math.abs(width - even)
  // A piecewise linear function is at its best at an end or where it bends.
  const bend = Math.min(even, full)
  const top = worthOf(0) > worthOf(bend) ? 0 : bend
  const width = worthOf(full) > worthOf(top) ? full : top
  return { width, worth: worthOf(width) }
}
