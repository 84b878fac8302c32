/** The end of the show as it is looked at: which works, in which order, which are ticked to be moved. */
import type { LeavingLine } from '../../src/contract/areas/leaving.ts'
import { leavingSteps } from '../../src/record/leaving.ts'
import { watch } from '../host/catalogue.svelte.ts'
import { show } from '../shell/show.svelte.ts'

export const sights = ['all', 'to settle', ...leavingSteps, 'done'] as const
export type Sight = (typeof sights)[number]

export class Leave {
  words = $state('')
  sight = $state<Sight>('all')
  order = $state<'show' | 'lender' | 'crate'>('show')
  ticked = $state.raw<ReadonlySet<string>>(new Set())

  readonly list = watch('leaving.list', () => (show.id === null ? null : { exhibition: show.id }))
  private readonly places = watch('location.list', () => ({}))
  readonly named = $derived(this.places.value?.places ?? [])
  readonly all = $derived<readonly LeavingLine[]>(this.list.value?.lines ?? [])
  readonly lines = $derived.by(() => {
    const words = this.words
      .toLowerCase()
      .split(/\s+/u)
      .filter(word => word !== '')
    const found = this.all.filter(line => {
      const text =
        `${line.running} ${line.number} ${line.title} ${line.lender} ${line.where} ${line.cameIn}`.toLowerCase()
      return words.every(word => text.includes(word)) && isSeen(line, this.sight)
    })
    const { order } = this
    if (order === 'show') return found
    const key = (line: LeavingLine) => (order === 'lender' ? line.lender : line.cameIn)
    // What has none stands last.
    return found.toSorted((a, b) => Number(key(a) === '') - Number(key(b) === '') || collator.compare(key(a), key(b)))
  })
  readonly things = $derived(
    this.all
      .filter(({ id }) => this.ticked.has(id))
      .map(({ id, title, number }) => ({ kind: 'work' as const, id, title: title || number })),
  )
  /** For each step how many works need it, and of how many it is done. */
  readonly counts = $derived(
    leavingSteps.map(step => {
      const of = this.all.flatMap(line => line.steps.filter(each => each.step === step))
      return { step, done: of.filter(each => each.done).length, all: of.length }
    }),
  )
  readonly nowhere = $derived(this.all.filter(line => line.lacks.some(isNowhere)).length)
  readonly stopped = $derived(this.all.filter(line => line.lacks.some(lack => lack.stops)).length)

  tick(ids: readonly string[]): void {
    const next = new Set(this.ticked)
    const all = ids.every(id => next.has(id))
    for (const id of ids) {
      if (all) next.delete(id)
      else next.add(id)
    }
    this.ticked = next
  }
}

const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' })

/** Of many works at once this is so, and told once for all of them. */
export function isNowhere({ code }: LeavingLine['lacks'][number]): boolean {
  return code === 'nowhere'
}

function isSeen({ lacks, next }: LeavingLine, sight: Sight): boolean {
  if (sight === 'all') return true
  if (sight === 'to settle') return lacks.length > 0
  return sight === 'done' ? next === null : next === sight
}
