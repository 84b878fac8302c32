/** What the record's screen shows: which day, which works, in which order, and what is ticked to be moved. */
import type { Place, WhereLine } from '../../src/contract/areas/movements.ts'
import { watch } from '../host/catalogue.svelte.ts'
import { show } from '../shell/show.svelte.ts'
import { inField } from './words.ts'

export type Order = 'work' | 'place' | 'since'
const pageOf = 200

export class Recorded {
  /** Null is now. */
  at = $state<string | null>(null)
  scope = $state<'show' | 'all'>('show')
  words = $state('')
  order = $state<Order>('work')
  page = $state(0)
  /** Ticked to be moved, by key. */
  ticked = $state.raw<ReadonlyMap<string, WhereLine>>(new Map())
  /** Of which the way through time is shown. */
  chosen = $state.raw<{ readonly kind: WhereLine['kind']; readonly id: string; readonly title: string } | null>(null)

  readonly ofShow = $derived(this.scope === 'show' && show.id !== null)
  readonly where = watch('movement.where', () => {
    if (show.list.value === undefined) return null
    return {
      ...(this.at === null ? {} : { at: this.at }),
      ...(this.ofShow && show.id !== null ? { exhibition: show.id } : {}),
      ...(this.words.trim() === '' ? {} : { words: this.words }),
      order: this.order,
      offset: this.page * pageOf,
      limit: pageOf,
    }
  })
  readonly places = watch('location.list', () => ({}))
  readonly named = $derived<readonly Place[]>(this.places.value?.places ?? [])
  readonly lines = $derived(this.where.value?.lines ?? [])
  readonly pages = $derived(Math.ceil((this.where.value?.total ?? 0) / pageOf))

  tick(line: WhereLine): void {
    const next = new Map(this.ticked)
    if (!next.delete(line.id)) next.set(line.id, line)
    this.ticked = next
  }

  search(words: string): void {
    this.words = words
    this.page = 0
  }

  /** By days: back and forth from the moment shown. */
  step(days: number): void {
    const date = new Date(this.at ?? Date.now())
    date.setDate(date.getDate() + days)
    this.at = date.getTime() >= Date.now() ? null : date.toISOString()
  }

  /** The day on show, from its first moment to its last, by the clock of this machine. */
  day(): { readonly from: string; readonly to: string } {
    const first = new Date(this.at ?? Date.now())
    first.setHours(0, 0, 0, 0)
    const last = new Date(first)
    last.setHours(23, 59, 59, 999)
    return { from: first.toISOString(), to: last.toISOString() }
  }

  get field(): string {
    return inField(this.at ?? new Date().toISOString())
  }
}
