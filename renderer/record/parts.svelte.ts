/** Which parts of what is moved go along, and how each arrived: what a movement's form knows beside its own fields. */
import type { Output } from '../../src/contract/contract.ts'
import { watch } from '../host/catalogue.svelte.ts'

export type Whole = Output<'movement.wholes'>['wholes'][number]

interface Asked {
  readonly works: readonly string[]
  readonly at?: string
}

export class PartsMoved {
  readonly #asked: () => Asked
  /** Parts whose box a hand has ticked or unticked. */
  readonly #said = $state<Record<string, boolean>>({})
  readonly conditions = $state<Record<string, string>>({})
  readonly #answer

  constructor(asked: () => Asked) {
    this.#asked = asked
    this.#answer = watch('movement.wholes', () => {
      const { works, ...rest } = asked()
      return works.length === 0 ? null : { works: [...works], ...rest }
    })
  }

  get wholes(): readonly Whole[] {
    return this.#answer.value?.wholes ?? []
  }

  goes(whole: Whole, part: string): boolean {
    const { works } = this.#asked()
    return this.#said[part] ?? (works.includes(part) || (whole.set !== null && works.includes(whole.set)))
  }

  tick(part: string, goes: boolean): void {
    this.#said[part] = goes
  }

  /** What goes beside or instead of what was chosen: parts ticked to it, parts of its sets that stay. */
  get carried(): { readonly works: string[]; readonly staying: string[] } {
    const { works } = this.#asked()
    const all = this.wholes.flatMap(whole =>
      whole.parts.map(({ work }) => ({ whole, work, goes: this.goes(whole, work) })),
    )
    const stays = new Set(all.filter(one => !one.goes).map(one => one.work))
    const going = all.filter(one => one.goes && !(one.whole.set !== null && works.includes(one.whole.set)))
    return {
      works: [...new Set([...works.filter(work => !stays.has(work)), ...going.map(one => one.work)])],
      staying: all
        .filter(one => !one.goes && one.whole.set !== null && works.includes(one.whole.set))
        .map(one => one.work),
    }
  }

  /** Of parts that go. */
  get arrived(): { readonly id: string; readonly condition: string }[] {
    return this.wholes.flatMap(whole =>
      whole.parts.flatMap(({ work }) => {
        const condition = (this.conditions[work] ?? '').trim()
        return condition === '' || !this.goes(whole, work) ? [] : [{ id: work, condition }]
      }),
    )
  }
}
