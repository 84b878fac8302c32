/** The exhibition on the table and what several parts of the window say about it; the works selected in it. */

import { watchAlways } from '../host/catalogue.svelte.ts'
import { listen } from '../host/client.svelte.ts'

const kept = 'hangwright-exhibition'

class Show {
  private chosen = $state(localStorage.getItem(kept) ?? '')
  readonly list = watchAlways('exhibition.list', () => ({}))
  readonly exhibitions = $derived(this.list.value?.exhibitions ?? [])
  readonly exhibition = $derived(
    this.exhibitions.find(one => one.id === this.chosen) ??
      this.exhibitions.find(one => one.state !== 'closed') ??
      this.exhibitions[0] ??
      null,
  )
  readonly id = $derived(this.exhibition?.id ?? null)
  readonly closed = $derived(this.exhibition?.state === 'closed')
  readonly rooms = watchAlways('room.list', () => ({}))
  readonly plan = watchAlways('room.plan', () => (this.list.value === undefined ? null : { exhibition: this.id }))
  readonly frieze = watchAlways('exhibition.frieze', () => (this.id === null ? null : { exhibition: this.id }))

  /** Selected works, by the work's id, in the order they were taken. */
  selected = $state.raw<readonly string[]>([])
  private readonly chosenSet = $derived(new Set(this.selected))

  constructor() {
    listen(event => {
      if (event.kind === 'opened') this.selected = []
    })
  }

  choose(id: string): void {
    this.chosen = id
    this.selected = []
    localStorage.setItem(kept, id)
  }

  isSelected(work: string): boolean {
    return this.chosenSet.has(work)
  }

  select(works: readonly string[]): void {
    this.selected = works
  }

  /** The wall behind a face, with its room, as the key plan knows it. */
  wallOf(face: string) {
    for (const room of this.plan.value?.rooms ?? []) {
      const wall = room.walls.find(one => one.face === face)
      if (wall) return { room, wall }
    }
    return null
  }
}

export const show = new Show()
