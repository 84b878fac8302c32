/**
 * What the checklist shows and what a person does in it: filter, sort, where the hand is, which field is being written.
 * It outlives the screen, so that one comes back to the list as one left it.
 */
import type { Output } from '../../src/contract/contract.ts'
import { call } from '../host/client.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'
import { show } from '../shell/show.svelte.ts'
import type { Field, Sort } from './columns.ts'
import { type ListQuery, pages } from './pages.svelte.ts'
import { groupedSlots, groupsOf, plainSlots } from './slots.ts'

export type Scope = 'show' | 'catalogue' | 'outside'
type Kind = Output<'work.counts'>['kinds'][number]['kind']
export type Settle = NonNullable<ListQuery['settle']>

class List {
  scope = $state<Scope>('show')
  search = $state('')
  lender = $state<string | null>(null)
  kind = $state<Kind | null>(null)
  settle = $state<Settle | null>(null)
  sort = $state<Sort>('order')
  descending = $state(false)
  /** Index of the work that has the keyboard. */
  at = $state(0)
  private anchor = 0
  writing = $state.raw<{ readonly work: string; readonly field: Field } | null>(null)
  asksRemoval = $state(false)
  adding = $state(false)

  readonly scopeNow = $derived<Scope>(show.id === null ? 'catalogue' : this.scope)
  readonly filtered = $derived(
    this.search.trim() !== '' || this.lender !== null || this.kind !== null || this.settle !== null,
  )
  readonly query = $derived<ListQuery>({
    ...(this.scopeNow !== 'catalogue' && show.id !== null ? { exhibition: show.id } : {}),
    ...(this.scopeNow === 'outside' ? { outside: true } : {}),
    ...(this.search.trim() === '' ? {} : { search: this.search.trim() }),
    ...(this.lender === null ? {} : { lender: this.lender }),
    ...(this.kind === null ? {} : { kind: this.kind }),
    ...(this.settle === null ? {} : { settle: this.settle }),
    // A work outside a show has no order there.
    sort: this.scopeNow !== 'show' && this.sort === 'order' ? 'title' : this.sort,
    ...(this.descending ? { descending: true } : {}),
  })
  /** The order of the show is on display whole, so that it can be changed here. */
  readonly ordered = $derived(this.scopeNow === 'show' && this.sort === 'order' && !this.descending && !this.filtered)
  readonly groups = $derived(groupsOf(show.frieze.value ?? { sections: [], works: [] }))
  readonly slots = $derived(
    this.ordered && this.groups.some(group => group.title !== '') ? groupedSlots(this.groups) : plainSlots(pages.total),
  )

  clear(): void {
    this.search = ''
    this.lender = null
    this.kind = null
    this.settle = null
  }

  sortBy(sort: Sort): void {
    this.descending = this.sort === sort && !this.descending
    this.sort = sort
  }

  /** Selects as the keys held say: alone, added, or all from where the selection began. */
  async choose(index: number, how: 'alone' | 'add' | 'range'): Promise<void> {
    const line = pages.line(index)
    this.asksRemoval = false
    if (how === 'range') {
      this.at = index
      const [from, to] = [Math.min(this.anchor, index), Math.max(this.anchor, index)]
      await frame.attempt(async () => show.select(await pages.between(from, to)))
      return
    }
    this.at = index
    this.anchor = index
    if (line === undefined) return
    if (how === 'alone') show.select([line.id])
    else if (show.isSelected(line.id)) show.select(show.selected.filter(id => id !== line.id))
    else show.select([...show.selected, line.id])
  }

  async chooseAll(): Promise<void> {
    const most = 5000
    await frame.attempt(async () => {
      show.select(await pages.between(0, Math.min(pages.total, most) - 1))
      if (pages.total > most) frame.say(`The first ${most} works are selected; more are not edited at once.`)
    })
  }

  /** The selected works of the show in its order. */
  taken() {
    return (show.frieze.value?.works ?? []).filter(work => show.isSelected(work.work))
  }

  /** One step up or down in the order of the show; over the edge of a section into the next. */
  async step(direction: -1 | 1): Promise<void> {
    const order = show.frieze.value?.works ?? []
    const taken = this.taken()
    const edge = direction === -1 ? taken[0] : taken.at(-1)
    if (!this.ordered || show.closed || edge === undefined) return
    const entries = taken.map(work => work.entry)
    const groups = this.groups
    const group = groups.findIndex(one => one.id === edge.section)
    const at = order.indexOf(edge)
    const neighbour = order[at + direction]
    const beyond = order[at + 2]
    const sameGroup = neighbour !== undefined && neighbour.section === edge.section
    const section = sameGroup ? edge.section : (groups[group + direction]?.id ?? undefined)
    if (section === undefined) return
    let before: string | null
    if (direction === -1) before = sameGroup ? neighbour.entry : null
    else if (sameGroup) before = beyond !== undefined && beyond.section === section ? beyond.entry : null
    else before = neighbour !== undefined && neighbour.section === section ? neighbour.entry : null
    await this.move(entries, section, before)
    this.at = Math.max(0, this.at + (sameGroup ? direction : 0))
  }

  async move(entries: readonly string[], section: string | null, before: string | null): Promise<void> {
    if (before !== null && entries.includes(before)) return
    await frame.attempt(() => call('entry.move', { entries: [...entries], section, before }))
  }

  async takeOut(): Promise<void> {
    const entries = this.taken().map(work => work.entry)
    this.asksRemoval = false
    if (entries.length === 0) return
    if (await frame.attempt(() => call('entry.remove', { entries }))) show.select([])
  }
}

export const list = new List()
