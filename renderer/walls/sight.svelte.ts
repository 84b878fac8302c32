/** How much of the wall is seen and how large: the one view, fitted until somebody zooms or moves it, with or
 * without what is behind it. */
import { type Box, fitView, panned, toWall, type View, zoomAt } from '../../src/drawing/view.ts'
import type { Point } from '../../src/geometry/rect.ts'

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

  constructor(wall: () => { readonly length: number; readonly height: number }) {
    this.wall = wall
  }

  fit(): void {
    this.chosen = null
  }

  zoom(factor: number, at: Point = { x: this.box.width / 2, y: this.box.height / 2 }): void {
    this.chosen = zoomAt(this.view, at, factor)
    this.pan(0, 0)
  }

  pan(dx: number, dy: number): void {
    this.chosen = panned(this.view, dx, dy, this.wall(), this.box)
  }

  onWall(at: Point): Point {
    return toWall(this.view, at)
  }
}
