/** Works under the hand on the sequence: chosen one by one or in stretches, carried over walls, put down as one edit. */
import { keptOn, roomFor } from '../../src/sequence/room-on-wall.ts'
import { show } from '../shell/show.svelte.ts'
import type { Sequence } from './sequence.svelte.ts'

interface Place {
  readonly entry: string
  readonly x: number
}

export class Carry {
  private readonly sequence: Sequence
  /** Where a stretch of works begins that Shift takes to another. */
  private anchor: string | null = null
  private held = $state.raw<{
    readonly entry: string
    readonly from: number
    readonly moved: boolean
    readonly alone: boolean
  } | null>(null)
  over = $state.raw<{ readonly face: string; readonly places: readonly Place[] } | null>(null)
  /** Works of the walls as visitors meet them. */
  private readonly met = $derived.by(() =>
    (this.sequence.walls.value?.walls ?? []).flatMap(({ face, works }) =>
      [...works].sort((a, b) => a.x - b.x).map(({ entry, x, stays }) => ({ entry, x, stays, face })),
    ),
  )

  constructor(sequence: Sequence) {
    this.sequence = sequence
  }

  /** The works that go along with one: all that are selected with it and may move, as visitors meet them. */
  along(entry: string): readonly string[] {
    const work = this.sequence.works.get(entry)
    if (work === undefined || !show.isSelected(work.work)) return [entry]
    const chosen = new Set(
      [...this.sequence.works.values()].filter(one => show.isSelected(one.work)).map(one => one.entry),
    )
    const hung = this.met.filter(one => chosen.has(one.entry))
    const stays = new Set(hung.filter(one => one.stays).map(one => one.entry))
    const order = [...hung.map(one => one.entry), ...chosen].filter((one, at, all) => all.indexOf(one) === at)
    return order.filter(one => !stays.has(one))
  }

  /** Ctrl adds one or lets it go, Shift takes all that are met between; otherwise this one alone. */
  choose(entry: string, { more, stretch }: { readonly more: boolean; readonly stretch: boolean }): void {
    const workOf = (one: string) => this.sequence.works.get(one)?.work ?? ''
    const own = workOf(entry)
    const [from, to] = [this.anchor, entry].map(one => this.met.findIndex(each => each.entry === one))
    if (stretch && from !== undefined && to !== undefined && from >= 0 && to >= 0) {
      show.select(this.met.slice(Math.min(from, to), Math.max(from, to) + 1).map(one => workOf(one.entry)))
      return
    }
    this.anchor = entry
    if (!more) show.select([own])
    else show.select(show.isSelected(own) ? show.selected.filter(one => one !== own) : [...show.selected, own])
  }

  press(event: PointerEvent, entry: string): void {
    if (event.button !== 0) return
    const more = event.ctrlKey || event.metaKey
    const work = this.sequence.works.get(entry)
    const several =
      work !== undefined && show.isSelected(work.work) && show.selected.length > 1 && !more && !event.shiftKey
    // Pressed on one of several, they are carried together; let go without a move, it is chosen alone.
    if (!several) this.choose(entry, { more, stretch: event.shiftKey })
    const stays = this.met.some(one => one.entry === entry && one.stays)
    if (!stays && !show.closed) this.held = { entry, from: event.clientX, moved: false, alone: several }
  }

  get carries(): boolean {
    return this.held !== null
  }

  /** `at` is the wall under the hand, and where on it. */
  move(clientX: number, at: () => { readonly face: string; readonly x: number } | null): void {
    if (this.held === null) return
    if (!this.held.moved && Math.abs(clientX - this.held.from) < 4) return
    if (!this.held.moved) this.held = { ...this.held, moved: true }
    const found = at()
    this.over = found === null ? null : { face: found.face, places: this.put(this.held.entry, found) }
  }

  /** Where works would be: on their own wall moved alike, on another side by side about the hand. */
  put(entry: string, { face, x }: { readonly face: string; readonly x: number }): readonly Place[] {
    const entries = this.along(entry)
    const there = new Map(this.met.filter(one => one.face === face).map(one => [one.entry, one.x] as const))
    const own = there.get(entry)
    const length = this.wall(face)?.length ?? Number.POSITIVE_INFINITY
    if (own !== undefined && entries.every(one => there.has(one))) {
      const at = entries.map(one => ({ entry: one, x: (there.get(one) ?? 0) + x - own }))
      const left = Math.min(...at.map(one => one.x - this.widthOf(one.entry) / 2))
      const right = Math.max(...at.map(one => one.x + this.widthOf(one.entry) / 2))
      const by = keptOn(left, right - left, length) - left
      return at.map(one => ({ entry: one.entry, x: one.x + by }))
    }
    return this.inRow(entries, keptOn(x - this.longOf(entries) / 2, this.longOf(entries), length))
  }

  /** Behind the last work of a wall, or where else it has room. */
  behind(entry: string, face: string): readonly Place[] {
    const entries = this.along(entry)
    const wall = this.wall(face)
    const works = this.met
      .filter(one => one.face === face && !entries.includes(one.entry))
      .map(one => ({ from: one.x - this.widthOf(one.entry) / 2, to: one.x + this.widthOf(one.entry) / 2 }))
    const openings = (wall?.openings ?? []).map(({ x, width }) => ({ from: x, to: x + width }))
    const length = wall?.length ?? Number.POSITIVE_INFINITY
    return this.inRow(entries, roomFor(this.longOf(entries), length, this.gap, works, openings))
  }

  async release(): Promise<void> {
    const [to, held] = [this.over, this.held]
    this.held = null
    this.over = null
    if (held === null) return
    if (!held.moved && held.alone) this.choose(held.entry, { more: false, stretch: false })
    if (held.moved && to !== null) await this.sequence.putAll(to.places.map(one => ({ ...one, face: to.face })))
  }

  leave(): void {
    this.held = null
    this.over = null
  }

  private get gap(): number {
    return this.sequence.capacity.value?.gap ?? 0
  }

  private wall(face: string) {
    return this.sequence.walls.value?.walls.find(one => one.face === face)
  }

  private widthOf(entry: string): number {
    return this.sequence.works.get(entry)?.width ?? 300
  }

  private longOf(entries: readonly string[]): number {
    return entries.reduce((sum, one) => sum + this.widthOf(one), this.gap * (entries.length - 1))
  }

  /** Side by side from a left end. */
  private inRow(entries: readonly string[], from: number): readonly Place[] {
    let left = from
    return entries.map(entry => {
      const x = left + this.widthOf(entry) / 2
      left += this.widthOf(entry) + this.gap
      return { entry, x }
    })
  }
}
