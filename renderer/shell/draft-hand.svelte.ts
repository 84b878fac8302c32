/**
 * What a hand on a drawing has in common, whatever it moves: one thing is chosen; from where it was taken hold of, or by
 * steps of the keys, a draft of its place is drawn; whatever is done until the hand lets go is one edit, based on the
 * place that it began from.
 */
import { desk } from '../host/desk.svelte.ts'

interface Draft<T, P> {
  /** What it is based on. */
  readonly of: T
  /** The row that was on the screen then; another in its place is the catalogue's own answer. */
  readonly seen: unknown
  readonly to: P
  /** Written; it stands until the catalogue's own answer is here. */
  readonly landed: boolean
}

/** Nudges that follow each other as quickly as this, milliseconds, are one edit. */
const rest = 450

/** T is what is moved, P its place, H how it is held. */
export abstract class DraftHand<T, P, H extends { readonly of: T }> {
  chosen = $state<string | null>(null)
  private draft = $state.raw<Draft<T, P> | null>(null)
  protected hold: H | null = null
  /** The row on the screen when the hand took hold, or stepped first. */
  private held: unknown = null
  private timer: ReturnType<typeof setTimeout> | undefined

  /** As it is stored. */
  protected abstract rowOf(of: T): { readonly id: string }
  protected abstract stored(of: T): P
  protected abstract same(a: P, b: P): boolean
  /** As it is stored once it has been put there. */
  protected abstract placed(of: T, to: P): T
  /** False where that did not go through; the draft is taken back then. */
  protected abstract put(of: T, to: P): Promise<boolean>

  /** Something is under the hand. */
  get holds(): boolean {
    return this.hold !== null
  }

  /** What it moves by, mm. */
  protected get step(): number {
    return desk.imperial ? 25.4 / desk.fraction : 1
  }

  /** Where it stands now: under the hand, or as stored. */
  protected now(of: T): P {
    const { draft } = this
    const row = this.rowOf(of)
    if (draft === null || this.rowOf(draft.of).id !== row.id || (draft.landed && draft.seen !== row))
      return this.stored(of)
    return draft.to
  }

  /**
   * What a change is based on: where this hand put it last, although the catalogue's answer may not be here yet. Edits
   * leave one after the other, so by the time that the change is written the catalogue has it there.
   */
  protected based(of: T): T {
    const { draft } = this
    return draft?.landed === true && draft.seen === this.rowOf(of) ? this.placed(of, draft.to) : of
  }

  /** Whether the hand has moved it since it took hold. */
  protected get moved(): boolean {
    const { draft } = this
    return draft !== null && !draft.landed && !this.same(this.stored(draft.of), draft.to)
  }

  protected begin(hold: H): void {
    void this.land()
    const row = this.rowOf(hold.of)
    this.chosen = row.id
    this.held = row
    this.hold = { ...hold, of: this.based(hold.of) }
  }

  /** What is held stands there, as long as the hand holds it. */
  protected drawn(of: T, to: P): void {
    this.draft = { of, seen: this.held, to, landed: false }
  }

  /** By whole steps; `large` is ten of them, or an inch. Steps that follow one another begin from where the first did. */
  protected stepped(of: T, large: boolean, to: (by: number) => P): void {
    const { draft } = this
    const goesOn = draft !== null && !draft.landed && this.rowOf(draft.of).id === this.rowOf(of).id
    if (!goesOn) this.held = this.rowOf(of)
    this.drawn(goesOn ? draft.of : this.based(of), to(large ? (desk.imperial ? 25.4 : 10) : this.step))
    clearTimeout(this.timer)
    this.timer = setTimeout(() => void this.land(), rest)
  }

  /** Puts it somewhere at once, from where this hand put it last. */
  protected putNow(of: T, to: (from: P) => P): Promise<void> {
    void this.land()
    const base = this.based(of)
    this.held = this.rowOf(of)
    this.drawn(base, to(this.stored(base)))
    return this.land()
  }

  /** Ends what goes on as if it had not been; false where nothing does. */
  cancel(): boolean {
    const going = this.hold !== null || (this.draft !== null && !this.draft.landed)
    clearTimeout(this.timer)
    this.hold = null
    this.draft = null
    return going
  }

  /** Chooses nothing. */
  leave(): void {
    void this.land()
    this.chosen = null
  }

  async land(): Promise<void> {
    clearTimeout(this.timer)
    const { draft } = this
    if (draft === null || draft.landed) return
    if (this.same(this.stored(draft.of), draft.to)) {
      this.draft = null
      return
    }
    this.draft = { ...draft, landed: true }
    if (!(await this.put(draft.of, draft.to))) this.draft = null
  }

  protected forget(): void {
    this.draft = null
  }
}
