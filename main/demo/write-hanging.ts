/**
 * What has been done on the demo's walls: services looked for, marks made and drilled, works hung by one person and
 * checked by another, a photograph that was tried and taken off again, whose holes stayed. Two walls stand finished,
 * one half way; the rest is planned.
 */
import type { Input } from '../../src/contract/contract.ts'
import { crew } from './museum/fixings.ts'
import { readings } from './museum/light.ts'
import { type DemoDone, done, tried } from './museum/placements.ts'
import type { Do, Session } from './session.ts'
import type { ShowIds } from './write-checklist.ts'
import type { HouseIds } from './write-house.ts'

type Marks = Input<'mark.services'>['marks']

interface Wall {
  readonly face: string
  readonly placementOf: (key: string) => string
  readonly marksOf: (keys: readonly string[]) => Marks
}

function wallOf(session: Session, house: HouseIds, show: ShowIds, wall: string): Wall {
  const face = house.faces.get(wall) ?? ''
  const { works } = session.read('wall.elevation', { exhibition: show.exhibition, face })
  const { marks } = session.read('mark.ofFace', { exhibition: show.exhibition, face })
  const placementOf = (key: string) => {
    const entry = show.works.get(key)?.entry
    return works.find(work => work.entry === entry)?.placement ?? ''
  }
  const marksOf = (keys: readonly string[]): Marks => {
    const placements = new Set(keys.map(placementOf))
    return marks.filter(mark => placements.has(mark.placement)).map(({ placement, slot }) => ({ placement, slot }))
  }
  return { face, placementOf, marksOf }
}

/** Detector first, then pencil, then drill: the order in which the program lets it be ticked. */
function drill(act: Do, exhibition: string, face: string, marks: Marks): void {
  act('mark.services', { exhibition, face, marks, checked: true })
  act('mark.set', { exhibition, face, marks, to: 'marked' })
  act('mark.set', { exhibition, face, marks, to: 'drilled' })
}

/** By whoever sits at the desk; what the other person checked waits for `writeChecked`. */
export async function writeHung(session: Session, house: HouseIds, show: ShowIds, daysAgo: number): Promise<void> {
  const { exhibition } = show
  await writeTried(session, house, show, daysAgo + 1)
  const walls = done.map(each => [each, wallOf(session, house, show, each.wall)] as const)
  await session.edit('Drill and hang the first walls', 'mark.set', daysAgo, act => {
    for (const [each, { face, marksOf, placementOf }] of walls) {
      drill(act, exhibition, face, marksOf([...each.hung, ...(each.drilled ?? [])]))
      const marked = marksOf(each.marked ?? [])
      if (marked.length > 0) act('mark.services', { exhibition, face, marks: marked, checked: true })
      for (const to of statesOf(each)) {
        const keys = to === 'locked' ? (each.locked ?? []) : each.hung
        act('placement.setState', { placements: keys.map(placementOf), to })
      }
    }
  })
}

function statesOf({ level, locked }: DemoDone): readonly ('hung' | 'level' | 'locked')[] {
  return [
    'hung',
    ...(level === true ? (['level'] as const) : []),
    ...(locked === undefined ? [] : (['locked'] as const)),
  ]
}

/** A look by somebody else than the one who hung them. */
export async function writeChecked(session: Session, house: HouseIds, show: ShowIds, daysAgo: number): Promise<void> {
  const walls = done.map(each => [each, wallOf(session, house, show, each.wall)] as const)
  await session.edit('Check what hangs', 'placement.setState', daysAgo, act => {
    for (const [{ checked = [] }, { placementOf }] of walls) {
      if (checked.length > 0) act('placement.setState', { placements: checked.map(placementOf), to: 'checked' })
    }
    for (const { work, ...read } of readings) {
      act('light.addReading', { work: show.works.get(work)?.work ?? '', ...read })
    }
  })
  await session.edit('Set the crew of the show', 'crew.set', daysAgo, act => {
    const { teams, hours, spare } = crew
    const changes = {
      teams: { was: null, to: teams },
      hours: { was: null, to: hours },
      spare: { was: null, to: spare },
    }
    act('crew.set', { exhibition: show.exhibition, changes })
  })
}

/** Put into a gap, drilled for, dropped by a late change. The first of its holes is filled, the other is still open. */
async function writeTried(session: Session, house: HouseIds, show: ShowIds, daysAgo: number): Promise<void> {
  const { exhibition } = show
  const entry = show.works.get(tried.work)?.entry ?? ''
  const face = house.faces.get(tried.wall) ?? ''
  const { x, y } = tried
  await session.edit('Try a photograph in the gap of the west wall', 'placement.put', daysAgo, act => {
    const { placements } = act('placement.put', {
      exhibition,
      places: [{ entry, face, x, rule: 'hand', y, was: null }],
    })
    for (const id of placements) {
      act('placement.update', { id, changes: { fixing: { was: null, to: house.fixings[tried.fixing] } } })
    }
  })
  const { marksOf } = wallOf(session, house, show, tried.wall)
  const marks = marksOf([tried.work])
  await session.edit('Drill for the photograph', 'mark.set', daysAgo, act => drill(act, exhibition, face, marks))
  const change = { kind: 'drop', entry } as const
  const { offers } = session.read('late.offer', { exhibition, change })
  const stays = offers.find(offer => offer.moves.length === 0)
  if (stays === undefined) throw new Error('nobody offers to leave the other works where they are')
  await session.edit('Take the photograph off again and fill one of its holes', 'late.take', daysAgo, act => {
    act('late.take', { exhibition, change, key: stays.key, moves: [] })
    const [first] = session.read('mark.ofFace', { exhibition, face }).dead
    if (first === undefined) throw new Error('its holes have gone')
    act('mark.fill', { marks: [first.id], filled: true })
  })
}
