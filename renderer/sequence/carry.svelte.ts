/** Works under the hand on the sequence: chosen one by one or in stretches, carried over walls, put down as one edit. */
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
    if (own !== undefined && entries.every(one => there.has(one)))
      return entries.map(one => ({ entry: one, x: (there.get(one) ?? 0) + x - own }))
    const gap = this.sequence.capacity.value?.gap ?? 0
    return inRow(entries, one => this.widthOf(one), gap, x)
  }

  /** Behind the last work of a wall. */
  behind(entry: string, face: string): readonly Place[] {
    const entries = this.along(entry)
    const gap = this.sequence.capacity.value?.gap ?? 0
    const end = this.met
      .filter(one => one.face === face && !entries.includes(one.entry))
      .reduce((most, one) => Math.max(most, one.x + this.widthOf(one.entry) / 2), 0)
    const long = entries.reduce((sum, one) => sum + this.widthOf(one), gap * (entries.length - 1))
    return inRow(entries, one => this.widthOf(one), gap, end + gap + long / 2)
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

  private widthOf(entry: string): number {
    return this.sequence.works.get(entry)?.width ?? 300
  }
}

/** Side by side about a point. */
function inRow(
  entries: readonly string[],
  width: (entry: string) => number,
  gap: number,
  middle: number,
): readonly Place[] {
  const long = entries.reduce((sum, entry) => sum + width(entry), gap * (entries.length - 1))
  let left = middle - long / 2
  return entries.map(entry => {
    const x = left + width(entry) / 2
    left += width(entry) + gap
    return { entry, x }
  })
}
