/**
 * What stretch of time is looked at, and what of it the pointer is on. While it changes from frame to frame the lines of
 * each band are carried to it as one picture, and are drawn anew at rest or where they can be carried no further.
 */
import { Held } from '../shell/held.svelte.ts'

export type Span = readonly [number, number]

/** Lines are drawn as far beyond what is seen, as a share of it. */
export const beyond = 0.25
/** So much nearer than they were drawn, lines look coarse. */
const nearest = 1.6

/** Bands of the drawing, each drawn anew by itself. */
export const bands = ['humidity', 'celsius'] as const

/** Nobody reads a stretch shorter than this; seconds. */
const shortest = 1800

export class Sight {
  private readonly all: () => Span
  private chosen = $state.raw<Span | null>(null)
  /** The moment that is read out; null where none is. */
  pointer = $state<number | null>(null)

  /** `all` is from the first reading to the last, in seconds. */
  constructor(all: () => Span) {
    this.all = all
  }

  readonly span = $derived.by((): Span => this.chosen ?? this.all())
  private readonly held = new Held<Span>(
    bands.length,
    () => this.span,
    drawn => this.bears(drawn),
  )

  /** The stretch that the lines of a band are drawn for. */
  drawn(of: (typeof bands)[number]): Span {
    return this.held.of(bands.indexOf(of))
  }

  private bears([from, until]: Span): boolean {
    const more = (until - from) * beyond
    const [first, last] = this.span
    return first >= from - more && last <= until + more && until - from <= (last - first) * nearest
  }

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
    this.held.go(() => this.look(start, start + long))
  }

  /** By a share of what is seen. */
  pan(share: number): void {
    const [from, until] = this.span
    const by = (until - from) * share
    this.held.go(() => this.look(from + by, until + by))
  }

  /** A stretch in the middle, with as much again on both sides. */
  show(from: number, until: number): void {
    const long = Math.max(until - from, shortest)
    this.held.settle()
    this.look(from - long, until + long)
  }

  whole(): void {
    this.held.settle()
    this.chosen = null
  }
}
