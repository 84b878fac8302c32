/**
 * What of the walls is drawn just now. A show of sixty walls that gives way to its proposals, or comes back, does so some
 * walls at a frame: all at once would hold whatever a hand does for longer than a frame.
 */

/** Walls that come or go at a frame; pairs are drawn one by one, since each is two walls and their notes. */
const wallsAtOnce = 3

export class Staged<Beside> {
  /** What stands beside the walls: as asked for, and when it is let go until nothing of it is drawn any more. */
  beside = $state.raw<Beside | null>(null)
  /** Walls as they stand, by themselves. */
  flow = $state(0)
  /** The strip of both hangs. */
  strip = $state(false)
  /** Walls beside what is proposed for them. */
  pairs = $state(0)

  constructor(asked: () => Beside | null, walls: () => number) {
    $effect(() => {
      const [beside, all] = [asked(), walls()]
      if (beside !== null) this.beside = beside
      let frame = 0
      const next = () => {
        if (beside !== null ? this.toPairs(all) : this.toFlow(all)) frame = requestAnimationFrame(next)
      }
      frame = requestAnimationFrame(next)
      return () => cancelAnimationFrame(frame)
    })
  }

  /** One step; false where nothing is left to do. */
  private toPairs(all: number): boolean {
    if (this.flow > 0) this.flow = Math.max(0, Math.min(this.flow, all) - wallsAtOnce)
    else if (!this.strip) this.strip = true
    else if (this.pairs < all) this.pairs += 1
    else return false
    return true
  }

  private toFlow(all: number): boolean {
    if (this.pairs > 0) this.pairs = Math.max(0, Math.min(this.pairs, all) - wallsAtOnce)
    else if (this.strip) this.strip = false
    else if (this.beside !== null) this.beside = null
    else if (this.flow < all) this.flow = Math.min(all, this.flow + wallsAtOnce)
    else return false
    return true
  }
}
