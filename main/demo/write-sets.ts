/** The demo's sets: made of works that are measured by then, and each part fixed by itself where its set stands. */
import { sets } from './museum/sets.ts'
import { works } from './museum/works.ts'
import type { Do, Session } from './session.ts'
import type { ShowIds } from './write-checklist.ts'
import type { HouseIds } from './write-house.ts'

/** The show with its sets, each known by its own key beside the works. */
export function writeSets(session: Session, show: ShowIds, daysAgo: number): Promise<ShowIds> {
  const { exhibition } = show
  return session.edit(`Make ${sets.length} sets of their parts`, 'set.make', daysAgo, act => {
    const made = sets.map(({ key, parts, ...how }) => {
      const { id, entry } = act('set.make', { works: parts.map(part => idOf(show, part)), exhibition, ...how })
      return [key, { work: id, entry: entry ?? '' }] as const
    })
    act('exhibition.renumber', { id: exhibition })
    return { ...show, works: new Map([...show.works, ...made]) }
  })
}

/** What each part of a placed set hangs on; nothing for a work that is no set. */
export function fixParts(act: Do, placement: string, key: string, house: HouseIds, show: ShowIds): void {
  for (const part of sets.find(set => set.key === key)?.parts ?? []) {
    const fixing = works.find(work => work.key === part)?.fixing
    if (fixing === undefined) continue
    act('set.fix', {
      placement,
      work: idOf(show, part),
      changes: { fixing: { was: null, to: house.fixings[fixing] } },
    })
  }
}

function idOf(show: ShowIds, key: string): string {
  return show.works.get(key)?.work ?? ''
}
