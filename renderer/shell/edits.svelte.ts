/** What undo and redo would do, in words, and doing it. */
import { watchAlways } from '../host/catalogue.svelte.ts'
import { call } from '../host/client.svelte.ts'
import { desk } from '../host/desk.svelte.ts'
import { frame } from './frame.svelte.ts'

class Edits {
  // Undo is each person's own, and sitting down is no edit that a change notice would tell of.
  readonly query = watchAlways(
    'edit.state',
    () => ({}),
    () => desk.person?.id,
  )
  readonly undoes = $derived(this.query.value?.undo ?? null)
  readonly redoes = $derived(this.query.value?.redo ?? null)

  async undo(): Promise<void> {
    await frame.attempt(async () => frame.say(`Taken back: ${(await call('edit.undo', {})).undone}`))
  }

  async redo(): Promise<void> {
    await frame.attempt(async () => frame.say(`Done again: ${(await call('edit.redo', {})).redone}`))
  }
}

export const edits = new Edits()
