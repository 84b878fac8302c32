/** The demo's rules of the hang, and how the works of a section hang together. */
import { rules, sectionHang } from './museum/rules.ts'
import type { Session } from './session.ts'
import type { ShowIds } from './write-checklist.ts'

export async function writeRules(session: Session, show: ShowIds, daysAgo: number): Promise<void> {
  const { exhibition } = show
  const { rooms } = session.read('room.list', {})
  await session.edit('Give the hang its rules', 'sequence.addRule', daysAgo, act => {
    for (const { kind, works, room, within, reason } of rules) {
      const of = rooms.find(({ name }) => name === room)
      act('sequence.addRule', {
        ...{ exhibition, kind, reason, works: works.map(key => show.works.get(key)?.work ?? '') },
        ...(of === undefined ? {} : { places: [{ kind: 'room', id: of.id }] }),
        ...(within === undefined ? {} : { within }),
      })
    }
    const { sections } = session.read('sequence.sections', { exhibition })
    const of = sections.find(({ title }) => title === sectionHang.section)?.section ?? ''
    act('section.update', { id: of, changes: sectionHang.changes })
  })
}
