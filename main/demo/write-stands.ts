/** What stands in the demo's rooms, how its doors turn and where they lead; works on both faces of a partition. */
import { doorways, onPartition, partition, things, tracks, zones } from './museum/stands.ts'
import type { Session } from './session.ts'
import type { ShowIds } from './write-checklist.ts'
import type { HouseIds } from './write-house.ts'

export async function writeStands(session: Session, house: HouseIds, show: ShowIds, daysAgo: number): Promise<void> {
  const { exhibition } = show
  const { rooms } = session.read('room.list', {})
  const roomOf = (name: string) => rooms.find(room => room.name === name)?.id ?? ''
  const holeOf = (wall: string) => {
    const face = house.faces.get(wall)
    const found = rooms.flatMap(room => room.walls).find(one => one.face === face)
    return found?.openings.find(({ kind }) => kind === 'door' || kind === 'passage')?.id ?? ''
  }
  await session.edit('Set out what stands in the rooms', 'standing.add', daysAgo, act => {
    for (const { of, swing } of doorways) {
      const [one, other] = of.map(holeOf)
      act('opening.pair', { id: one ?? '', other: other ?? '' })
      if (swing !== '') act('opening.update', { id: one ?? '', changes: { swing: { was: '', to: swing } } })
    }
    for (const { room, whose, ...thing } of things) {
      act('standing.add', { ...thing, room: roomOf(room), exhibition: whose === 'show' ? exhibition : null })
    }
    for (const { room, ...track } of tracks) act('track.add', { ...track, room: roomOf(room) })
    for (const { rooms: names, ...zone } of zones) act('zone.add', { ...zone, rooms: names.map(roomOf) })
    const { room, from, ...facts } = partition
    const { faces } = act('partition.add', { ...facts, exhibition, room: roomOf(room), from: [from[0], from[1]] })
    for (const { side, work, x, fixing } of onPartition) {
      const entry = show.works.get(work)?.entry ?? ''
      const place = { entry, face: faces[side], x, rule: 'face', y: null, was: null } as const
      const { placements } = act('placement.put', { exhibition, places: [place] })
      const changes = { fixing: { was: null, to: house.fixings[fixing] } }
      act('placement.update', { id: placements[0] ?? '', changes })
    }
  })
}
