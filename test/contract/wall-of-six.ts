/**
 * The worked wall of six in a catalogue: sizes and places are DERIVED in the design (gaps of 632 mm, left edges 900, 2 012,
 * 3 354, 4 526, 6 118, 7 230, all centres on the line); works and names are invented.
 */
import { newCatalogue, type Opened, openOn, ownFolder } from './opened.ts'

/** Height, width, drop, inset, left edge. */
const six = [
  ['A', 620, 480, 95, 40, 900],
  ['B', 910, 710, 140, 55, 2012],
  ['C', 540, 540, 70, 35, 3354],
  ['D', 1220, 960, 210, 60, 4526],
  ['E', 620, 480, 95, 40, 6118],
  ['F', 760, 1010, 130, 50, 7230],
] as const

export interface WallOfSix {
  readonly here: Opened
  readonly show: string
  readonly faces: readonly string[]
  readonly hook: string
  /** By title. */
  readonly work: Readonly<Record<string, string>>
  readonly entry: Readonly<Record<string, string>>
  readonly place: Readonly<Record<string, string>>
}

/** Tamsin Oake is at the desk; Ivo Marl is known, too. */
export async function wallOfSix(): Promise<WallOfSix> {
  const folder = ownFolder()
  const here = openOn(folder, newCatalogue(folder))
  const { call } = here
  for (const name of ['Tamsin Oake', 'Ivo Marl']) {
    await call('person.add', { name, role: 'technician', lengthUnit: 'mm', paper: 'A4', fraction: 16 })
  }
  await sitDown(here, 'Tamsin Oake')
  const show = (await call('exhibition.add', { title: 'Low Water' })).id
  const room = await call('room.add', {
    name: 'Room 1',
    height: 3450,
    walls: [{ length: 9140 }, { length: 5200 }, { length: 9140 }, { length: 5200 }],
  })
  if (room.walls.length !== 4) throw new Error('a room of four walls has another number')
  const faces = ((await call('room.list', {})).rooms[0]?.walls ?? []).map(wall => wall.face)
  const hook = (await call('fixing.add', { name: 'hook', kind: 'hook', holeOffset: 14, ratedKg: 22.7 })).id
  const ids: Record<'work' | 'entry' | 'place', Record<string, string>> = { work: {}, entry: {}, place: {} }
  for (const [title, height, width, drop, inset, left] of six) {
    const work = await call('work.add', { title, exhibition: show })
    const entry = work.entry ?? ''
    await call('work.addSize', { work: work.id, part: 'framed', height, width, raw: '', kind: 'measured' })
    await call('work.setBack', {
      work: work.id,
      method: 'd-rings',
      seenFrom: 'front',
      data: { left: { drop, inset }, right: { drop, inset } },
    })
    const put = await call('placement.put', {
      exhibition: show,
      places: [{ entry, face: faces[0] ?? '', x: left + width / 2, rule: 'face', y: null, was: null }],
    })
    const [placement = ''] = put.placements
    await call('placement.update', { id: placement, changes: { fixing: { was: null, to: hook } } })
    ids.work[title] = work.id
    ids.entry[title] = entry
    ids.place[title] = placement
  }
  return { here, show, faces, hook, ...ids }
}

export async function sitDown({ call }: Opened, name: string): Promise<void> {
  const { people } = await call('person.list', {})
  await call('desk.sit', { person: people.find(person => person.name === name)?.id ?? '' })
}
