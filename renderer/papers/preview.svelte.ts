/** A paper as it would print, drawn anew when what it is made of changes; only the last one asked for is shown. */
import { untrack } from 'svelte'
import type { Input, Output } from '../../src/contract/contract.ts'
import { refusalOf } from '../host/client.svelte.ts'
import { jobs } from '../host/jobs.svelte.ts'

type Name = 'sheet.preview' | 'sheet.previewPlan' | 'sheet.previewPaper'

export class Preview<N extends Name> {
  /** What was drawn, and for which question. */
  drawn = $state.raw<{ readonly about: string; readonly paper: Output<N> } | null>(null)
  trouble = $state('')

  /**
   * To be made while a component begins.
   *
   * @param question null while it cannot be asked; `about` says what it is of, `stamp` all that it is made of
   */
  constructor(
    name: N,
    label: string,
    question: () => { readonly about: string; readonly stamp: string; readonly input: Input<N> } | null,
  ) {
    const stamp = $derived(question()?.stamp ?? '')
    $effect(() => {
      void stamp
      // Only the stamp asks for a new drawing: a job's progress, which a call also touches, must not.
      return untrack(() => this.draw(name, label, question()))
    })
  }

  private draw(
    name: N,
    label: string,
    asked: { readonly about: string; readonly input: Input<N> } | null,
  ): (() => void) | undefined {
    if (asked === null) return undefined
    const left = new AbortController()
    const here = () => !left.signal.aborted
    this.trouble = ''
    jobs.run(name, label, asked.input, left.signal).then(
      paper => {
        if (here()) this.drawn = { about: asked.about, paper }
      },
      (thrown: unknown) => {
        if (!here()) return
        this.drawn = null
        this.trouble = refusalOf(thrown).message
      },
    )
    // Nobody waits for it any more, and the next one asks for the same hands.
    return () => left.abort()
  }
}
