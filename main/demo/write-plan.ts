/** Puts the demo's rooms where they stand in the building, their party walls as one wall each. */
import { north, parties, partyWall, places } from './museum/plan.ts'
import type { Session } from './session.ts'

export async function writePlan(session: Session, daysAgo: number): Promise<void> {
  const { rooms } = session.read('room.list', {})
  const roomOf = (name: string) => rooms.find(room => room.name === name)
  await session.edit('Put the rooms together', 'plan.placeRoom', daysAgo, act => {
    act('plan.placeRoom', {
      rooms: places.map(({ room, at: [x, y] }) => ({
        id: roomOf(room)?.id ?? '',
        changes: { at: { was: null, to: [x, y] as [number, number] } },
      })),
    })
    act('plan.setNorth', { was: null, to: north })
    for (const pair of parties) {
      const [id, other] = pair.map(([room, name]) => roomOf(room)?.walls.find(wall => wall.name === name)?.id ?? '')
      act('wall.share', { id: id ?? '', with: other ?? '', thickness: partyWall })
    }
  })
}
