/** One work as its page shows it: everything about it, its neighbours in the order of the show, and saving a fact. */
import type { Output } from '../../src/contract/contract.ts'
import { isPhotograph } from '../../src/record/condition/photographs.ts'
import { type Query, watch } from '../host/catalogue.svelte.ts'
import { call, refusalOf } from '../host/client.svelte.ts'
import { desk } from '../host/desk.svelte.ts'
import { readFact } from '../host/facts.ts'
import { jobs } from '../host/jobs.svelte.ts'
import { route } from '../shell/route.svelte.ts'
import { show } from '../shell/show.svelte.ts'

export type Got = Output<'work.get'>
export type FactKey = keyof Got['facts']

export class WorkShown {
  readonly id: string
  readonly query: Query<'work.get'>
  readonly got: Got | null = $derived.by(() => this.query.value ?? null)
  /** What refused the last file, in words, until the next one. */
  refused = $state<readonly string[]>([])

  readonly order = $derived(show.frieze.value?.works ?? [])
  readonly at = $derived.by(() => this.order.findIndex(work => work.work === this.id))
  readonly standing = $derived(this.order[this.at] ?? null)
  readonly before = $derived(this.at > 0 ? (this.order[this.at - 1] ?? null) : null)
  readonly after = $derived(this.at < 0 ? null : (this.order[this.at + 1] ?? null))

  constructor(id: string) {
    this.id = id
    this.query = watch('work.get', () => ({ id, unit: desk.unit }))
  }

  go(to: { readonly work: string } | null): void {
    if (to !== null) route.go('work', to.work)
  }

  /** Saves a text fact; the empty text of a fact that can be unknown is nothing. */
  fact(field: FactKey) {
    return async (to: string, was: string) => {
      const read = readFact(field, to)
      if ('problem' in read) return read.problem
      const based = readFact(field, was)
      if ('problem' in based) return based.problem
      const { clashes } = await call('work.update', {
        id: this.id,
        changes: { [field]: { was: based.value, to: read.value } },
      })
      return clashes[0] ?? null
    }
  }

  /** Pictures become pictures of this work, anything else is attached as a document. */
  async take(files: readonly File[]): Promise<void> {
    this.refused = []
    for (const file of files) {
      try {
        const { handle } = await jobs.upload(file)
        if (isPhotograph(file)) await jobs.run('work.addPicture', `Taking ${file.name}`, { work: this.id, handle })
        else await jobs.run('work.addDocument', `Attaching ${file.name}`, { work: this.id, handle })
      } catch (thrown) {
        this.refused = [...this.refused, `${file.name}: ${refusalOf(thrown).message}`]
      }
    }
  }
}
