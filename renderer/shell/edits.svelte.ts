/** What undo and redo would do, in words, and doing it. */
import { watchAlways } from '../host/catalogue.svelte.ts'
import { call } from '../host/client.svelte.ts'
import { frame } from './frame.svelte.ts'

class Edits {
  readonly query = watchAlways('edit.state', () => ({}))
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
