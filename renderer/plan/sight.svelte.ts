/**
 * How much of the building is seen and how large: fitted until somebody zooms or moves it. `view` is the truth that
 * hand and figures go by. While it changes from frame to frame the drawing made at `drawn`, and the words on it made at
 * `told`, are carried to it as pictures, and are drawn anew one after the other when the view comes to rest, so that a
 * building costs no more to zoom than a room.
 */
import type { Point } from '../../src/drawing/room-plan.ts'
import type { Box } from '../../src/plan/place.ts'
import {
  bearable,
  carriage,
  fitted,
  fromSheet,
  type Sheet,
  type SheetView,
  seen,
  toSheet,
  zoomed,
} from '../../src/plan/sheet-view.ts'
import { Held } from '../shell/held.svelte.ts'

const edge = 64
/** Of a drawing in parts: rooms and what stands in them, then words and figures. */
const ink = 0
const words = 1
/** Wider than the screen, so that a name does not leave before its letters do. */
const more = 80

export class Sight {
  sheet = $state.raw<Sheet>({ width: 900, height: 560 })
  private chosen = $state.raw<SheetView | null>(null)
  private readonly box: () => Box | null
  readonly view = $derived.by(() => this.chosen ?? this.fitting())
  private readonly held = new Held<SheetView>(
    2,
    () => this.view,
    drawn => bearable(carriage(drawn, this.view)),
  )
  /** The view that rooms are drawn at. */
  readonly drawn = $derived.by(() => this.held.of(ink))
  /** The view that names, figures and ways are drawn at. */
  readonly told = $derived.by(() => this.held.of(words))
  readonly moves = $derived.by(() => this.held.holds(ink))
  readonly drawnCarriage = $derived.by(() => carriedTo(this.drawn, this.view))
  readonly toldCarriage = $derived.by(() => carriedTo(this.told, this.view))
  private kept: { readonly box: Box; readonly scale: number } | null = null
  /**
   * A box about what is seen that stays the same while the view moves within it, so that rooms are taken in and out of
   * the drawing now and then and not in every frame.
   */
  readonly around = $derived.by(() => {
    const { view, kept } = this
    const inner = seen(view, this.sheet, more)
    const holds =
      kept !== null &&
      kept.box.left <= inner.left &&
      kept.box.top <= inner.top &&
      kept.box.right >= inner.right &&
      kept.box.bottom >= inner.bottom &&
      view.scale / kept.scale < 1.6
    if (holds) return kept.box
    const box = seen(view, this.sheet, Math.max(this.sheet.width, this.sheet.height) / 2)
    this.kept = { box, scale: view.scale }
    return box
  })

  constructor(box: () => Box | null) {
    this.box = box
  }

  private fitting(): SheetView {
    return fitted(this.box() ?? { left: -6000, top: -4000, right: 6000, bottom: 4000 }, this.sheet, edge)
  }

  fit(box: Box | null = null): void {
    this.settle()
    this.chosen = box === null ? null : fitted(box, this.sheet, edge)
  }

  /** Holds what is seen where it is, whatever becomes of the rooms. */
  keep(): void {
    this.chosen = this.view
  }

  zoom(factor: number, at: Point = [this.sheet.width / 2, this.sheet.height / 2]): void {
    this.go(zoomed(this.view, at, factor))
  }

  pan(dx: number, dy: number): void {
    const { scale, x, y } = this.view
    this.go({ scale, x: x + dx, y: y + dy })
  }

  private go(to: SheetView): void {
    this.held.go(() => {
      this.chosen = to
    })
  }

  /** Draws everything where the view has it, at once. */
  settle(): void {
    this.held.settle()
  }

  toSheet(point: Point): Point {
    return toSheet(this.view, point)
  }

  fromSheet(point: Point): Point {
    return fromSheet(this.view, point)
  }
}

function carriedTo(drawn: SheetView, view: SheetView): string {
  const { factor, x, y } = carriage(drawn, view)
  return `translate(${x}px, ${y}px) scale(${factor})`
}
