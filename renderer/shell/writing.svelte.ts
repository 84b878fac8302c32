/**
 * What a hand writes into one field of the catalogue: what stood there when it began, what is typed, what was wrong
 * with it, and what somebody else wrote meanwhile. A hand is faster than the catalogue: what is typed while the last
 * text is being written is kept and written after it, based on it.
 */
import { refusalOf } from '../host/client.svelte.ts'
import { Known } from './known.svelte.ts'

/** What came of writing: it is there, it cannot be, or the field holds something else by now. */
export type Written<V> =
  | { readonly to: V }
  | { readonly problem: string }
  | { readonly clash: { readonly theirs: V; readonly says?: string } }

export class Writing<V extends number | string | null> {
  private readonly known: Known<V>
  private readonly show: (value: V) => string
  private readonly save: (was: V, text: string) => Promise<Written<V>>
  /** What is typed; null while nobody writes. */
  text = $state<string | null>(null)
  problem = $state('')
  clash = $state.raw<{ readonly theirs: V; readonly says?: string } | null>(null)
  private based: V
  private sending = false
  private again = false

  /** `value` is what the catalogue says, `show` how it is typed, and `save` writes a text over what it was. */
  constructor(value: () => V, show: (value: V) => string, save: (was: V, text: string) => Promise<Written<V>>) {
    this.known = new Known(value)
    this.show = show
    this.save = save
    this.based = value()
  }

  /** What the field holds, as far as this hand knows. */
  readonly now = $derived.by((): V => this.known.now)
  readonly shown = $derived.by(() => this.text ?? this.show(this.now))

  type(text: string): void {
    if (this.text === null) this.based = this.now
    this.text = text
    this.problem = ''
  }

  leave(): void {
    this.text = null
    this.problem = ''
    this.clash = null
  }

  /** Writes what is typed; over what somebody else wrote, where `over` says so. */
  async commit(over?: { readonly theirs: V }): Promise<void> {
    if (this.text === null) return
    if (this.sending) {
      this.again = true
      return
    }
    const typed = this.text.trim()
    if (over === undefined && typed === this.show(this.based)) return this.leave()
    const was = over === undefined ? this.based : over.theirs
    this.sending = true
    try {
      const written = await this.save(was, typed)
      if ('problem' in written) this.problem = written.problem
      else if ('clash' in written) this.clash = written.clash
      else this.keep(written.to, typed)
    } catch (thrown) {
      this.problem = refusalOf(thrown).message
    } finally {
      this.sending = false
    }
    const { again } = this
    this.again = false
    if (again && this.problem === '' && this.clash === null) await this.commit()
  }

  private keep(to: V, typed: string): void {
    this.known.keep(to)
    this.based = to
    this.clash = null
    if (this.text?.trim() === typed) this.leave()
  }
}
