/**
 * A value of the catalogue as one hand knows it. A hand is faster than the catalogue: what it wrote counts until the
 * answer that shows it has come, and a form is emptied of what was written, not of what was typed meanwhile.
 */

/** By then the answer to an edit has come on any machine; ms. */
const SHOWN_BY = 2000

export class Known<V> {
  private readonly value: () => V
  private fresh = $state.raw<{ readonly over: V; readonly to: V } | null>(null)

  /** `value` is what the catalogue says. */
  constructor(value: () => V) {
    this.value = value
  }

  readonly now = $derived.by((): V => {
    const value = this.value()
    return this.fresh !== null && this.fresh.over === value ? this.fresh.to : value
  })

  /** What was written over the value. */
  keep(to: V): void {
    const fresh = { over: this.value(), to }
    this.fresh = fresh
    // An edit that was taken back before anybody asked leaves the value as it was: then the catalogue's word counts.
    setTimeout(() => {
      if (this.fresh === fresh) this.fresh = null
    }, SHOWN_BY)
  }
}

/** What a field of a form for the next entry holds once `written` is in the catalogue: what was typed since, if anything. */
export function emptied(typed: string, written: string): string {
  return typed === written ? '' : typed
}
