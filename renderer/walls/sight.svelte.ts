/**
 * How much of the wall is seen and how large: the one view, fitted until somebody zooms or moves it, with or without
 * what is behind it. Hand and tape go by `view`; while it changes from frame to frame the drawing is carried to it as a
 * picture, and is drawn anew at rest: what stands, what is said about it, and the works a slice at a time.
 */
import { type Box, fitView, panned, toWall, type View, zoomAt } from '../../src/drawing/view.ts'
import type { Point } from '../../src/geometry/rect.ts'
import { bearable, carriage } from '../../src/plan/sheet-view.ts'
import { Held } from '../shell/held.svelte.ts'

/** Of a drawing in parts: what stands, what is said. The others are slices of works. */
const still = 0
const said = 1
const first = 2
const slices = 5
/** So many works are drawn anew at once. */
const inOneFrame = 60

export class Sight {
  box = $state.raw<Box>({ width: 900, height: 470 })
  private chosen = $state.raw<View | null>(null)
  /** Where the hand is, in pixels of the drawing; null when it is elsewhere. */
  hand = $state.raw<Point | null>(null)
  /** Whether what is behind the wall is drawn: studs, joints, backing. */
  behind = $state(true)
  readonly wall: () => { readonly length: number; readonly height: number }
  readonly view = $derived.by((): View => this.chosen ?? fitView(this.wall(), this.box))
  readonly fitted = $derived.by(() => this.chosen === null)
  private readonly held = new Held<View>(
    first + slices,
    () => this.view,
    (drawn, part) => this.bears(drawn, part),
  )
  /** The view that the wall and the works are drawn at. */
  readonly drawn = $derived.by(() => this.held.of(still))
  /** The view that words, figures and lines about them are drawn at. */
  readonly told = $derived.by(() => this.held.of(said))
  readonly drawnCarriage = $derived.by(() => carriedTo(this.drawn, this.view))
  readonly toldCarriage = $derived.by(() => carriedTo(this.told, this.view))
  /** The chain keeps to its own height under the wall. */
  readonly chainCarriage = $derived.by(() => {
    const { factor, x } = between(this.told, this.view)
    return css(factor, x, this.chainAt(this.view) - this.chainAt(this.told) * factor)
  })
  private readonly scales = Array.from(
    { length: slices },
    (_, at) => new SliceScale(() => this.held.of(first + at).scale),
  )

  constructor(wall: () => { readonly length: number; readonly height: number }) {
    this.wall = wall
  }

  /** The scale at which the work at a place among so many is drawn. */
  scaleOf(at: number, count: number): number {
    return count <= inOneFrame ? this.drawn.scale : (this.scales[at % slices]?.value ?? this.drawn.scale)
  }

  /** How far down the dimension chain runs, pixels. */
  chainAt(view: View): number {
    return Math.min(view.floor + 33, this.box.height - 62)
  }

  fit(): void {
    this.held.settle()
    this.chosen = null
  }

  zoom(factor: number, at: Point = { x: this.box.width / 2, y: this.box.height / 2 }): void {
    this.held.go(() => {
      this.chosen = panned(zoomAt(this.view, at, factor), 0, 0, this.wall(), this.box)
    })
  }

  pan(dx: number, dy: number): void {
    this.held.go(() => {
      this.chosen = panned(this.view, dx, dy, this.wall(), this.box)
    })
  }

  onWall(at: Point): Point {
    return toWall(this.view, at)
  }

  /** Whether the view is on its way from one frame to the next. */
  get moves(): boolean {
    return this.held.holds(still)
  }

  private bears(drawn: View, part: number): boolean {
    // Numbers and marks of works may become large or small until there is time for each of them.
    if (part >= first) return true
    const to = between(drawn, this.view)
    // Figures are drawn as far as the drawing is wide; a wall that is moved far brings in others.
    return bearable(to) && (part !== said || to.factor !== 1 || Math.abs(to.x) < this.box.width / 4)
  }
}

/** By itself, so that works whose scale stays are not asked while the view moves. */
class SliceScale {
  private readonly of: () => number
  readonly value = $derived.by(() => this.of())

  constructor(of: () => number) {
    this.of = of
  }
}

function between(drawn: View, view: View) {
  return carriage(
    { scale: drawn.scale, x: drawn.left, y: drawn.floor },
    { scale: view.scale, x: view.left, y: view.floor },
  )
}

function carriedTo(drawn: View, view: View): string {
  const { factor, x, y } = between(drawn, view)
  return css(factor, x, y)
}

function css(factor: number, x: number, y: number): string {
  return `translate(${x}px, ${y}px) scale(${factor})`
}
