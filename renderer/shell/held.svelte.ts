/**
 * A drawing while its view changes from frame to frame: each part of it is held at the view that it was drawn at, and
 * whoever draws carries it from there as one picture. Once the view has come to rest the parts are drawn anew, one in
 * each frame, so that no frame waits for all of them.
 */

/** This long without another change is rest, milliseconds. */
const rest = 120

class Part<V> {
  /** What it is held at; null while it is drawn at the view itself. */
  at = $state.raw<V | null>(null)
}

export class Held<V> {
  private readonly parts: readonly Part<V>[]
  private readonly view: () => V
  /** Whether a part that was drawn at one view may still be carried to where the view is. */
  private readonly bears: (drawn: V, part: number) => boolean
  private resting: ReturnType<typeof setTimeout> | undefined
  private frame = 0
  /** The part whose turn it is; -1 while none is drawn anew. */
  private next = -1

  constructor(parts: number, view: () => V, bears: (drawn: V, part: number) => boolean) {
    this.parts = Array.from({ length: parts }, () => new Part<V>())
    this.view = view
    this.bears = bears
  }

  /** The view that a part is drawn at. */
  of(part: number): V {
    return this.parts[part]?.at ?? this.view()
  }

  /** Whether a part is carried. */
  holds(part: number): boolean {
    return this.parts[part]?.at != null
  }

  /** Changes the view and holds what is drawn where it was. */
  go(change: () => void): void {
    const from = this.view()
    for (const part of this.parts) part.at ??= from
    change()
    if (this.next >= 0) return
    clearTimeout(this.resting)
    if (this.parts.some((part, index) => part.at !== null && !this.bears(part.at, index))) this.begin(false)
    else this.resting = setTimeout(() => this.begin(true), rest)
  }

  /** Draws everything where the view has it, at once. */
  settle(): void {
    clearTimeout(this.resting)
    cancelAnimationFrame(this.frame)
    this.next = -1
    for (const part of this.parts) part.at = null
  }

  /** @param all every part; else those alone that can be carried no further */
  private begin(all: boolean): void {
    this.next = 0
    this.step(all)
  }

  private step(all: boolean): void {
    while (this.next < this.parts.length) {
      const part = this.parts[this.next]
      const worn = part?.at != null && (all || !this.bears(part.at, this.next))
      this.next += 1
      if (part === undefined || !worn) continue
      part.at = null
      this.frame = requestAnimationFrame(() => this.step(all))
      return
    }
    this.next = -1
    clearTimeout(this.resting)
    if (this.parts.some(part => part.at !== null)) this.resting = setTimeout(() => this.begin(true), rest)
  }
}
