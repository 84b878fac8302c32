/** First days of the demo: people at the desk, lenders, fixings in the drawers, the building as it was measured. */
import type { Input, Output } from '../../src/contract/contract.ts'
import { type DemoFixing, equipment, type FixingKey, fixings, timed } from './museum/fixings.ts'
import { building, type LenderKey, lenders, people } from './museum/house.ts'
import { type DemoWall, rooms } from './museum/rooms.ts'
import type { Do, Session } from './session.ts'

type WallChanges = Input<'wall.update'>['changes']

export interface HouseIds {
  readonly lenders: Readonly<Record<LenderKey, string>>
  readonly fixings: Readonly<Record<FixingKey, string>>
  /** Face of each wall by the wall's key. */
  readonly faces: ReadonlyMap<string, string>
  readonly technician: Output<'person.add'>
  readonly coordinator: Output<'person.add'>
  readonly registrar: Output<'person.add'>
}

function mapValues<K extends string, V, W>(of: Readonly<Record<K, V>>, make: (value: V) => W): Record<K, W> {
  // The same keys go in and come out.
  return Object.fromEntries(Object.entries<V>(of).map(([key, value]) => [key, make(value)])) as Record<K, W>
}

function pairs(heights: readonly (readonly [number, number])[]): [number, number][] {
  return heights.map(([x, y]) => [x, y])
}

function behindChanges(behind: NonNullable<DemoWall['behind']>): Partial<WallChanges> {
  const { studs, joints, ceiling, rail, railKgPerMetre, datumBy, seen } = behind
  return {
    behindSeen: { was: '', to: seen },
    ...(studs === undefined ? {} : { studs: { was: [], to: [...studs] } }),
    ...(joints === undefined ? {} : { joints: { was: [], to: [...joints] } }),
    ...(ceiling === undefined ? {} : { ceiling: { was: [], to: pairs(ceiling) } }),
    ...(rail === undefined ? {} : { rail: { was: [], to: pairs(rail) } }),
    ...(railKgPerMetre === undefined ? {} : { railKgPerMetre: { was: null, to: railKgPerMetre } }),
    ...(datumBy === undefined ? {} : { datumBy: { was: '', to: datumBy } }),
  }
}

function addFixing(act: Do, fixing: (typeof fixings)[FixingKey]): string {
  const { ratings = [], inStock, ...kind }: DemoFixing = fixing
  const { id } = act('fixing.add', kind)
  for (const rating of ratings) act('fixing.rate', { id, ...rating })
  if (inStock !== undefined) act('fixing.stock', { id, changes: { inStock: { was: null, to: inStock } } })
  return id
}

function addWallDetails(act: Do, wall: DemoWall, id: string): void {
  act('wall.update', {
    id,
    changes: {
      skirting: { was: null, to: wall.skirting },
      ...(wall.studs === undefined
        ? {}
        : { studFirst: { was: null, to: wall.studs[0] }, studSpacing: { was: null, to: wall.studs[1] } }),
      ...(wall.backing === undefined
        ? {}
        : { backingFrom: { was: null, to: wall.backing[0] }, backingTo: { was: null, to: wall.backing[1] } }),
      ...(wall.floor === undefined ? {} : { floor: { was: [], to: pairs(wall.floor) } }),
      ...(wall.behind === undefined ? {} : behindChanges(wall.behind)),
    },
  })
  for (const opening of wall.openings ?? []) act('opening.add', { wall: id, ...opening })
  for (const thing of wall.keepClears ?? []) act('keepClear.add', { wall: id, ...thing })
}

export async function writeHouse(session: Session, daysAgo: number): Promise<HouseIds> {
  const begun = await session.edit('Set up people, lenders and fixings', 'person.add', daysAgo, act => ({
    coordinator: act('person.add', people.coordinator),
    technician: act('person.add', people.technician),
    registrar: act('person.add', people.registrar),
    lenders: mapValues(lenders, ({ unit: _, ...lender }) => act('party.add', lender).id),
    fixings: mapValues(fixings, fixing => addFixing(act, fixing)),
    equipment: equipment.map(each => act('equipment.add', each).id),
    timed: act('crew.setMinutes', { ...timed, was: null }),
  }))
  session.sit(begun.technician)
  const walls = await session.edit('Measure the three rooms', 'room.add', daysAgo - 2, act => {
    act('room.setBuilding', { name: building })
    return rooms.flatMap(room => {
      const made = act('room.add', {
        name: room.name,
        number: room.number,
        height: room.height,
        walls: room.walls.map(wall => ({
          name: wall.name,
          length: wall.length,
          angle: wall.angle,
          wallType: wall.type,
          ...(wall.lengthText === undefined ? {} : { lengthText: wall.lengthText }),
        })),
      })
      return room.walls.map((wall, index) => {
        const id = made.walls[index] ?? ''
        addWallDetails(act, wall, id)
        return [id, wall.key] as const
      })
    })
  })
  const keys = new Map(walls)
  const faces = session
    .read('room.list', {})
    .rooms.flatMap(room => room.walls)
    .map(wall => [keys.get(wall.id) ?? '', wall.face] as const)
  return { ...begun, faces: new Map(faces) }
}
