/** Why the hang in front of a person is as it is: asked of one work or one wall, and again when either changes. */
import type { Input, Output } from '../../src/contract/contract.ts'
import { refusalOf } from '../host/client.svelte.ts'
import { jobs } from '../host/jobs.svelte.ts'
import { show } from '../shell/show.svelte.ts'
import type { Sequence } from './sequence.svelte.ts'

type Of = Input<'sequence.explain'>['of']

export class Reasons {
  /** A wall that was chosen; while none is, the one work that is selected is asked about. */
  wall = $state<string | null>(null)
  told = $state.raw<Output<'sequence.explain'> | null>(null)
  /** Why nothing is told: the refusal's sentence. */
  refused = $state('')
  private readonly sequence: Sequence
  private running: AbortController | null = null
  readonly of = $derived.by((): Of | null => {
    if (this.wall !== null) return { face: this.wall }
    const [only, ...others] = show.selected
    if (only === undefined || others.length > 0) return null
    const entry = [...this.sequence.works.values()].find(({ work }) => work === only)?.entry
    return entry === undefined ? null : { entry }
  })

  constructor(sequence: Sequence) {
    this.sequence = sequence
    $effect(() => {
      const { of } = this
      const exhibition = show.id
      const walls = sequence.walls.value
      const faces = sequence.proposal?.faces
      const weights = sequence.weights
      if (of === null || exhibition === null || walls === undefined) {
        this.leave()
        return
      }
      const asked = setTimeout(
        () => void this.ask({ exhibition, weights, of, ...(faces === undefined ? {} : { faces }) }),
        120,
      )
      return () => clearTimeout(asked)
    })
    $effect(() => () => this.leave())
  }

  private leave(): void {
    this.running?.abort()
    this.running = null
    // What was told of another hang is not true of this one.
    this.told = null
    this.refused = ''
  }

  private async ask(input: Input<'sequence.explain'>): Promise<void> {
    this.leave()
    const own = new AbortController()
    this.running = own
    try {
      const told = await jobs.run('sequence.explain', 'Looking where else it could hang', input, own.signal)
      if (own.signal.aborted) return
      this.told = told
      this.refused = ''
    } catch (thrown) {
      if (own.signal.aborted) return
      const refused = refusalOf(thrown)
      this.told = null
      this.refused = refused.code === 'cancelled' ? '' : refused.message
    }
  }
}
