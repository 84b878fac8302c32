/**
 * The walls of a room in another order: under the hand that drags one, stepped by keys, or on its way to the catalogue.
 * The rule it keeps: table and plan show one order, and a drag that is let go of is one edit, or none.
 */
import type { RoomRow, WallRow } from '../../src/contract/areas/rooms.ts'
import { call } from '../host/client.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'
import { show } from '../shell/show.svelte.ts'

interface Draft {
  readonly room: string
  readonly ids: readonly string[]
  /** The catalogue's answer that stood when the last write came back; another answer takes the draft's place. */
  readonly until: readonly WallRow[] | null
}

class WallOrder {
  private draft = $state.raw<Draft | null>(null)
  /** The wall under the hand. */
  held = $state<string | null>(null)
  /** What a reader is told after a step. */
  said = $state('')
  private writing = 0
  private last = Promise.resolve()

  /** The room's walls as they are shown now. */
  of(room: RoomRow): readonly WallRow[] {
    const { draft } = this
    if (draft === null || draft.room !== room.id) return room.walls
    if (draft.until !== null && draft.until !== room.walls) return room.walls
    const walls = draft.ids.flatMap(id => room.walls.find(wall => wall.id === id) ?? [])
    return walls.length === room.walls.length ? walls : room.walls
  }

  take(wall: string): void {
    this.held = wall
  }

  /** Holds it over the place with so many other walls before it. */
  over(room: RoomRow, before: number): void {
    if (this.held === null) return
    const rest = this.of(room).flatMap(wall => (wall.id === this.held ? [] : [wall.id]))
    this.draft = { room: room.id, ids: [...rest.slice(0, before), this.held, ...rest.slice(before)], until: null }
  }

  async release(room: RoomRow): Promise<void> {
    const { held } = this
    this.held = null
    if (held !== null) await this.write(room, held)
  }

  /** Ends a drag as if it had not been; false where none goes on. */
  cancel(): boolean {
    if (this.held === null) return false
    this.held = null
    this.draft = null
    return true
  }

  async step(room: RoomRow, wall: string, by: -1 | 1): Promise<void> {
    const walls = this.of(room)
    const at = walls.findIndex(one => one.id === wall)
    const to = at + by
    const moved = walls[at]
    if (moved === undefined || to < 0 || to >= walls.length) return
    const rest = walls.flatMap(one => (one.id === wall ? [] : [one.id]))
    this.draft = { room: room.id, ids: [...rest.slice(0, to), wall, ...rest.slice(to)], until: null }
    this.said = `${moved.name} is wall ${to + 1} of ${walls.length} now.`
    await this.write(room, wall)
  }

  /** One write after another: each says before which wall, which the one ahead of it may change. */
  private write(room: RoomRow, wall: string): Promise<void> {
    const { draft } = this
    if (draft === null) return this.last
    if (this.writing === 0 && room.walls.every((one, index) => one.id === draft.ids[index])) {
      this.draft = null
      return this.last
    }
    const before = draft.ids[draft.ids.indexOf(wall) + 1] ?? null
    this.writing++
    this.last = this.last.then(async () => {
      const done = await frame.attempt(() => call('wall.move', { id: wall, before }))
      this.writing--
      if (!done) this.draft = null
      else if (this.writing === 0 && this.draft !== null && this.held === null) {
        this.draft = { ...this.draft, until: show.rooms.value?.rooms.find(one => one.id === room.id)?.walls ?? [] }
      }
    })
    return this.last
  }
}

export const wallOrder = new WallOrder()
