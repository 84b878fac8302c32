/** What stretch of time is looked at, and what of it the pointer is on. */

/** Nobody reads a stretch shorter than this; seconds. */
const shortest = 1800

export class Sight {
  private readonly all: () => readonly [number, number]
  private chosen = $state.raw<readonly [number, number] | null>(null)
  /** The moment that is read out; null where none is. */
  pointer = $state<number | null>(null)

  /** `all` is from the first reading to the last, in seconds. */
  constructor(all: () => readonly [number, number]) {
    this.all = all
  }

  readonly span = $derived.by(() => this.chosen ?? this.all())

  /** Keeps inside what there is. */
  private look(from: number, until: number): void {
    const [first, last] = this.all()
    const long = Math.min(Math.max(until - from, shortest), last - first)
    const start = Math.min(Math.max(from, first), last - long)
    this.chosen = long >= last - first ? null : [start, start + long]
  }

  /** Nearer (below 1) or farther, the moment under the hand staying where it is. */
  zoom(by: number, at?: number): void {
    const [from, until] = this.span
    const fixed = at ?? (from + until) / 2
    const long = Math.max(shortest, (until - from) * by)
    const start = fixed - ((fixed - from) / (until - from)) * long
    this.look(start, start + long)
  }

  /** By a share of what is seen. */
  pan(share: number): void {
    const [from, until] = this.span
    const by = (until - from) * share
    this.look(from + by, until + by)
  }

  /** A stretch in the middle, with as much again on both sides. */
  show(from: number, until: number): void {
    const long = Math.max(until - from, shortest)
    this.look(from - long, until + long)
  }

  whole(): void {
    this.chosen = null
  }
}
