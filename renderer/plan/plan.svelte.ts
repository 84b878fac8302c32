/** The plan that is on the table: its rooms as they are drawn, what is selected, and what was moved but not yet answered. */
import type { PlanRoomRow } from '../../src/contract/areas/plan.ts'
import type { Input } from '../../src/contract/contract.ts'
import { type DrawnRoom, drawRooms, placeOf, roomAt } from '../../src/plan/drawn-room.ts'
import { boxOf, type Place } from '../../src/plan/place.ts'
import { watch } from '../host/catalogue.svelte.ts'
import { call } from '../host/client.svelte.ts'
import { frame } from '../shell/frame.svelte.ts'
import { show } from '../shell/show.svelte.ts'

type Changes = Input<'plan.placeRoom'>['rooms'][number]['changes']

interface Ahead extends Place {
  /** What was on show when it had been written; undefined until then. An answer after that one is the catalogue's own. */
  readonly writtenOn?: unknown
}

export class Plan {
  readonly query = watch('plan.get', () => (show.list.value === undefined ? null : { exhibition: show.id }))
  private readonly wanted = $state<{ storey: string | null }>({ storey: null })
  /** Rooms that were put somewhere; drawn there until the catalogue's own answer is here. */
  private ahead = $state.raw<ReadonlyMap<string, Ahead>>(new Map())
  private readonly known = new Map<string, { readonly text: string; readonly room: DrawnRoom }>()
  /** Rooms whose wall is under the hand; written, they stand until the catalogue says so too. */
  private bending = $state.raw<{
    readonly rooms: readonly DrawnRoom[]
    readonly stored: string
    readonly written: boolean
  } | null>(null)
  room = $state.raw<string | null>(null)
  /** A wall of the room, or the face of one of its partitions. */
  wall = $state.raw<string | null>(null)

  readonly building = $derived(this.query.value?.building ?? null)
  readonly storeys = $derived(this.query.value?.storeys ?? [])
  readonly storey = $derived(
    this.wanted.storey !== null && this.storeys.includes(this.wanted.storey)
      ? this.wanted.storey
      : (this.storeys[0] ?? ''),
  )
  readonly rooms = $derived.by(() => {
    const rows = (this.query.value?.rooms ?? []).filter(room => room.storey === this.storey)
    const { bending } = this
    const drawn = drawRooms(
      rows.map(row => this.withAhead(row)),
      this.known,
    )
    return bending === null ? drawn : drawn.map(room => bending.rooms.find(({ id }) => id === room.id) ?? room)
  })
  readonly selected = $derived(this.rooms.find(room => room.id === this.room) ?? null)
  readonly selectedWall = $derived(this.selected?.walls.find(wall => wall.id === this.wall) ?? null)
  readonly selectedFace = $derived(this.selected?.faces.find(({ face }) => face === this.wall) ?? null)
  readonly waiting = $derived(this.rooms.filter(room => !room.placed))
  readonly box = $derived(boxOf(this.rooms.flatMap(room => room.corners)))

  constructor() {
    $effect(() => {
      const { value, stale } = this.query
      const left = [...this.ahead].filter(([id, { at, turn, writtenOn }]) => {
        const row = value?.rooms.find(one => one.id === id)
        if (row === undefined || (writtenOn !== undefined && writtenOn !== value && !stale)) return false
        return !(row.at?.[0] === at[0] && row.at[1] === at[1] && row.turn === turn)
      })
      if (left.length < this.ahead.size) this.ahead = new Map(left)
    })
    $effect(() => {
      const { bending } = this
      if (bending?.written === true && this.textOf(bending.rooms) !== bending.stored) this.bending = null
    })
  }

  private withAhead(row: PlanRoomRow): PlanRoomRow {
    const place = this.ahead.get(row.id)
    if (place === undefined) return row
    return { ...roomAt(row, placeOf(row), place), at: [...place.at], turn: place.turn }
  }

  private textOf(rooms: readonly DrawnRoom[]): string {
    return JSON.stringify(rooms.map(({ id }) => this.stored(id)))
  }

  /** Draws rooms with a wall elsewhere than it was. */
  bend(rooms: readonly DrawnRoom[]): void {
    this.bending = { rooms, stored: this.textOf(rooms), written: false }
  }

  /** The wall has been let go of: written, or as it was. */
  bent(written: boolean): void {
    this.bending = written && this.bending !== null ? { ...this.bending, written } : null
  }

  show(storey: string): void {
    this.wanted.storey = storey
    this.select(null)
  }

  select(room: string | null, wall: string | null = null): void {
    this.room = room
    this.wall = wall
  }

  private stored(room: string): PlanRoomRow | undefined {
    return this.query.value?.rooms.find(one => one.id === room)
  }

  /**
   * What a change is based on: as the catalogue has it, standing where this window put it last. Edits leave one after the
   * other, so by the time that the change is written the catalogue has it there too.
   */
  based(room: string): PlanRoomRow | undefined {
    const row = this.stored(room)
    const place = this.ahead.get(room)
    return row === undefined || place === undefined ? row : { ...row, at: [...place.at], turn: place.turn }
  }

  change(room: string, changes: Changes) {
    return call('plan.placeRoom', { rooms: [{ id: room, changes }] })
  }

  /** Puts rooms somewhere in one edit, with what becomes one there; what is drawn goes there at once. */
  async put(
    places: ReadonlyMap<string, Place>,
    one: Pick<Input<'plan.placeRoom'>, 'walls' | 'doorways'> = {},
  ): Promise<void> {
    const rooms = [...places].flatMap(([id, to]) => {
      const row = this.based(id)
      if (row === undefined) return []
      const at = { was: row.at, to: [to.at[0], to.at[1]] as [number, number] }
      return [{ id, changes: { at, turn: { was: row.turn, to: to.turn } } }]
    })
    this.ahead = new Map([...this.ahead, ...places])
    const done = await frame.attempt(async () => {
      const { clashes } = await call('plan.placeRoom', { rooms, ...one })
      if (clashes.length > 0) {
        frame.say('Meanwhile somebody else has moved it; it stands where they put it.')
        this.giveUp(places)
      }
    })
    if (!done) this.giveUp(places)
    const writtenOn = this.query.value
    this.ahead = new Map(
      [...this.ahead].map(([id, place]) => [id, place === places.get(id) ? { ...place, writtenOn } : place]),
    )
  }

  private giveUp(places: ReadonlyMap<string, Place>): void {
    this.ahead = new Map([...this.ahead].filter(([id]) => !places.has(id)))
  }

  /** Takes a room's place back: it stands aside again. */
  async takeOff(room: string): Promise<void> {
    const row = this.based(room)
    if (row !== undefined) await frame.attempt(() => this.change(room, { at: { was: row.at, to: null } }))
  }
}
