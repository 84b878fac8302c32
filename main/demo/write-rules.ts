/** The demo's rules of the hang. */
import { rules } from './museum/rules.ts'
import type { Session } from './session.ts'
import type { ShowIds } from './write-checklist.ts'

export async function writeRules(session: Session, show: ShowIds, daysAgo: number): Promise<void> {
  const { exhibition } = show
  const { rooms } = session.read('room.list', {})
  for (const { kind, works, room, within, reason } of rules) {
    const of = rooms.find(({ name }) => name === room)
    await session.edit('Give a rule of the hang', 'sequence.addRule', daysAgo, act => {
      act('sequence.addRule', {
        ...{ exhibition, kind, reason, works: works.map(key => show.works.get(key)?.work ?? '') },
        ...(of === undefined ? {} : { places: [{ kind: 'room', id: of.id }] }),
        ...(within === undefined ? {} : { within }),
      })
    })
  }
}
