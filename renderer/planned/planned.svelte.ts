/** What the screen of planned movements shows: which of them, in which order, and what is ticked. */

import type { Place } from '../../src/contract/areas/movements.ts'
import type { PlannedLine } from '../../src/contract/areas/planned.ts'
import { watch } from '../host/catalogue.svelte.ts'
import { inField } from '../record/words.ts'
import { show } from '../shell/show.svelte.ts'

export type Order = 'day' | 'work' | 'place'
export type State = 'open' | 'done' | 'all'
const pageOf = 200

/** The day of the clock of this machine, as a field of dates takes it. */
export const todayInField = () => inField(new Date().toISOString()).slice(0, 10)

export class Plans {
  words = $state('')
  order = $state<Order>('day')
  state = $state<State>('open')
  page = $state(0)
  /** The day of the movement sheet, and of what was recorded. */
  day = $state(todayInField())
  ticked = $state.raw<ReadonlySet<string>>(new Set())
  /** Whose facts are laid open beside the list. */
  chosen = $state<string | null>(null)

  readonly list = watch('planned.list', () => {
    if (show.list.value === undefined) return null
    return {
      state: this.state,
      ...(this.words.trim() === '' ? {} : { words: this.words }),
      ...(show.id === null || show.closed ? {} : { exhibition: show.id }),
      order: this.order,
      offset: this.page * pageOf,
      limit: pageOf,
    }
  })
  readonly places = watch('location.list', () => ({}))
  readonly named = $derived<readonly Place[]>(this.places.value?.places ?? [])
  readonly lines = $derived<readonly PlannedLine[]>(this.list.value?.lines ?? [])
  readonly pages = $derived(Math.ceil((this.list.value?.total ?? 0) / pageOf))
  /** Ticked and still open, in the order of the list. */
  readonly taken = $derived(this.lines.filter(line => this.ticked.has(line.id) && line.done === null))

  tick(line: PlannedLine): void {
    if (line.done !== null) return
    const next = new Set(this.ticked)
    if (!next.delete(line.id)) next.add(line.id)
    this.ticked = next
  }

  search(words: string): void {
    this.words = words
    this.page = 0
  }

  /** The day on show, from its first moment to its last, by the clock of this machine. */
  span(): { readonly from: string; readonly to: string } {
    const from = new Date(`${this.day}T00:00`)
    const to = new Date(from)
    to.setHours(23, 59, 59, 999)
    return { from: from.toISOString(), to: to.toISOString() }
  }
}
