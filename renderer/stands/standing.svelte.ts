/** What stands in a room now, as the hand takes it: of the building and of the show that is open. */
import { watch } from '../host/catalogue.svelte.ts'
import { show } from '../shell/show.svelte.ts'
import type { Item } from './item.ts'

export class Standing {
  private readonly partitions = watch('partition.list', () => (show.id === null ? null : { exhibition: show.id }))
  private readonly stands = watch('standing.list', () => ({ exhibition: show.id }))
  private readonly room: () => string | null
  readonly zones = $derived(this.stands.value?.zones ?? [])
  /** Tracks first, so that what is on the floor is taken hold of before them. */
  readonly items = $derived.by((): readonly Item[] => {
    const id = this.room()
    const here = (one: { readonly room: string }) => one.room === id
    return [
      ...(this.stands.value?.tracks ?? []).filter(here).map(row => ({ family: 'track' as const, row })),
      ...(this.stands.value?.things ?? []).filter(here).map(row => ({ family: 'thing' as const, row })),
      ...(this.partitions.value?.partitions ?? []).filter(here).map(row => ({ family: 'partition' as const, row })),
    ]
  })

  constructor(room: () => string | null) {
    this.room = room
  }
}
