/** What the screen of sums shows: which day, which works, whose sum, in which currency. */
import { type Day, dateOf, dayOf } from '../../src/light/day.ts'
import { watch } from '../host/catalogue.svelte.ts'
import { show } from '../shell/show.svelte.ts'

const pageOf = 200

/** The day of the period that is nearest. */
function within({ first, last }: { readonly first: string; readonly last: string }, day: Day): string {
  return dateOf(Math.max(dayOf(first), Math.min(dayOf(last), day)))
}

export class Insured {
  /** As it was chosen; null is today, or the day nearest to it in the period. */
  private chosen = $state<string | null>(null)
  scope = $state<'show' | 'all'>('show')
  /** Empty is the currency of most values. */
  currency = $state('')
  group = $state('all')
  page = $state(0)

  readonly asked = $derived({
    ...(this.scope === 'show' && show.id !== null ? { exhibition: show.id } : {}),
    ...(this.currency === '' ? {} : { currency: this.currency }),
  })
  readonly days = watch('insured.days', () =>
    show.list.value === undefined ? null : { ...this.asked, group: this.group },
  )
  readonly day = $derived.by(() => {
    const period = this.days.value
    if (period === undefined) return null
    return within(period, dayOf(this.chosen ?? period.today))
  })
  readonly told = watch('insured.day', () =>
    this.day === null
      ? null
      : { ...this.asked, day: this.day, group: this.group, offset: this.page * pageOf, limit: pageOf },
  )
  readonly pages = $derived(Math.ceil((this.told.value?.total ?? 0) / pageOf))
  readonly lines = $derived(this.told.value?.lines ?? [])

  go(day: string): void {
    this.chosen = day
    this.page = 0
  }

  step(days: number): void {
    const period = this.days.value
    if (this.day === null || period === undefined) return
    this.go(within(period, dayOf(this.day) + days))
  }

  of(group: string): void {
    this.group = group
    this.page = 0
  }
}
