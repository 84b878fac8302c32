/** A catalogue with somebody at its desk, a show, and a room of 9140 × 5200 that it may stand things in. */
import { newCatalogue, type Opened, openOn, ownFolder } from './opened.ts'

export interface ShowInRoom {
  readonly here: Opened
  readonly show: string
  readonly room: string
  /** From the north wall on, clockwise; the room's 0, 0 is its north-western corner. */
  readonly walls: readonly string[]
}

export async function showInRoom(): Promise<ShowInRoom> {
  const folder = ownFolder()
  const here = openOn(folder, newCatalogue(folder))
  const person = await here.call('person.add', {
    name: 'Ann Weir',
    role: '',
    lengthUnit: 'mm',
    paper: 'A4',
    fraction: 16,
  })
  await here.call('desk.sit', { person: person.id })
  const { id: show } = await here.call('exhibition.add', { title: 'Low Water' })
  const { id: room, walls } = await here.call('room.add', {
    name: 'Room 1',
    height: 3450,
    walls: [{ length: 9140 }, { length: 5200 }, { length: 9140 }, { length: 5200 }],
  })
  return { here, show, room, walls }
}
