/**
 * What the plan leaves to settle, told each time anew: rooms that do not close or that lie over one another, openings their wall has no room for, and
 * what a show has standing in the way.
 */
import type { WallRow } from '../../../src/contract/areas/rooms.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import type { Finding } from '../../../src/contract/shared.ts'
import { sayIn } from '../../../src/hang/marks.ts'
import { halfTyped } from '../../../src/model/outline.ts'
import { openingFindings, standFindings } from '../../../src/plan/room-stands.ts'
import { swingsHere } from '../../../src/plan/seen-from-behind.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { surveyFindings } from '../plan/survey-findings.ts'
import { ruleNumber } from '../rules.ts'
import type { Reading } from '../service.ts'
import { readerOf } from '../works/findings.ts'
import { overlapFindings } from './overlap-findings.ts'
import { partitionsOf } from './partitions.ts'
import { partitionFaces, roomsOf } from './read.ts'
import { sharedFindings } from './shared-findings.ts'
import { thingsOf } from './standing.ts'

export function findings(
  { db, person }: Reading,
  { exhibition = null }: Received<'room.findings'>,
): Output<'room.findings'> {
  const reader = readerOf(person, undefined)
  const say = sayIn(reader.unit, reader.steps)
  const rooms = roomsOf(db).map(room => ({ ...room, closed: room.walls.length > 2 && halfTyped(room.walls) === null }))
  return {
    findings: [
      ...rooms.flatMap(room => surveyFindings(db, room, room.outline)),
      ...sharedFindings(db, say),
      ...overlapFindings(db, rooms, say),
      ...standsFindings(db, rooms, exhibition, say),
    ],
  }
}

interface Room {
  readonly id: string
  readonly name: string
  readonly walls: readonly WallRow[]
  readonly closed: boolean
}

function standsFindings(
  db: ReadHandle,
  rooms: readonly Room[],
  exhibition: string | null,
  say: (mm: number) => string,
): Finding[] {
  const rules = { within: ruleNumber(db, 'closesWithin'), clearBefore: ruleNumber(db, 'clearBefore') }
  const partitions = Map.groupBy(partitionsOf(db, exhibition), ({ room }) => room)
  const things = Map.groupBy(thingsOf(db, exhibition), ({ room }) => room)
  const swingOf = swingsHere(rooms.flatMap(({ walls }) => walls.flatMap(wall => wall.openings)))
  const here = (wall: WallRow): WallRow => ({
    ...wall,
    openings: wall.openings.map(one => ({ ...one, swing: swingOf(one) })),
  })
  return rooms.flatMap(room => [
    ...room.walls.flatMap(wall => openingFindings(room.name, wall, say)),
    ...standFindings(
      {
        name: room.name,
        walls: room.walls.map(here),
        closed: room.closed,
        partitions: partitions.get(room.id) ?? [],
        faces: partitions.has(room.id) ? partitionFaces(db, exhibition, room.id) : [],
        things: (things.get(room.id) ?? []).map(({ at: [x, y], ...thing }) => ({ ...thing, x, y })),
      },
      rules,
      say,
    ),
  ])
}
