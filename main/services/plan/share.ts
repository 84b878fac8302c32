/** One wall seen from the two rooms it stands between. Both rows point at each other, or neither does. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { facing } from '../../../src/plan/back-to-back.ts'
import type { ReadHandle, WriteHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { pairOpenings } from '../rooms/fixtures.ts'
import type { Writing } from '../service.ts'
import { row, rows, update } from '../sql.ts'
import { plan } from './get.ts'

interface Stored {
  readonly id: string
  readonly room: string
  readonly called: string
  readonly thickness: number | null
  readonly backs: string | null
  readonly exhibition: string | null
}

function wallOf(db: WriteHandle, id: string, field: string): Stored {
  const stored = row<Stored>(
    db,
    `SELECT wall.id, wall.room, room.name || ' ' || wall.name AS called, wall.thickness, wall.backs, wall.exhibition
     FROM wall JOIN room ON room.id = wall.room WHERE wall.id = :id`,
    { id },
  )
  if (stored === undefined) throw notFound('wall', field)
  if (stored.exhibition !== null)
    throw new Refusal('partition', 'A partition has two faces of its own and stands in one room.', { field })
  return stored
}

/** Both rows point at each other and are as thick; neither may back another wall. */
export function makeOneWall({ db }: Writing, a: string, b: string, thickness: number | null): void {
  update(db, 'wall', a, { backs: b, thickness })
  update(db, 'wall', b, { backs: a, thickness })
}

/** Makes two walls one, without their doorways; refuses what cannot be. */
export function shareWalls(
  writing: Writing,
  input: Received<'wall.share'>,
): { readonly a: Stored; readonly b: Stored } {
  const { db } = writing
  const [a, b] = [wallOf(db, input.id, 'id'), wallOf(db, input.with, 'with')]
  if (a.room === b.room)
    throw new Refusal('same-room', 'One wall stands between two rooms; these are both of one.', { field: 'with' })
  for (const [wall, field] of [
    [a, 'id'],
    [b, 'with'],
  ] as const) {
    if (wall.backs !== null && wall.backs !== a.id && wall.backs !== b.id) {
      const next = wallOf(db, wall.backs, field)
      throw new Refusal('shared', `${wall.called} is the other side of ${next.called}. Part those first.`, { field })
    }
  }
  const thickness = input.thickness ?? a.thickness ?? b.thickness
  makeOneWall(writing, a.id, b.id, thickness)
  return { a, b }
}

export function share(writing: Writing, input: Received<'wall.share'>): Output<'wall.share'> {
  const { a, b } = shareWalls(writing, input)
  const walls = plan(writing, { exhibition: null }).rooms.flatMap(room => (room.at === null ? [] : room.walls))
  const [here, there] = [walls.find(wall => wall.id === a.id), walls.find(wall => wall.id === b.id)]
  const through = here === undefined || there === undefined ? [] : (facing(here, there)?.through ?? [])
  for (const [id, other] of through) pairOpenings(writing, { id, other })
  writing.label(`Make one wall of ${a.called} and ${b.called}`)
  return { doorways: through.length }
}

/** Openings that are one hole in both walls. */
export function pairedThrough(db: ReadHandle, a: string, b: string) {
  return rows<{ mine: string; their: string }>(
    db,
    `SELECT mine.id AS mine, their.id AS their FROM opening AS mine JOIN opening AS their ON their.id = mine.other
     WHERE mine.wall = :a AND their.wall = :b ORDER BY mine.id`,
    { a, b },
  )
}

/** Two walls again, with doorways of their own. */
export function partWalls(writing: Writing, a: string, b: string): void {
  for (const { mine } of pairedThrough(writing.db, a, b)) pairOpenings(writing, { id: mine, other: null })
  update(writing.db, 'wall', a, { backs: null })
  update(writing.db, 'wall', b, { backs: null })
}

export function unshare(writing: Writing, { id }: Received<'wall.unshare'>): Output<'wall.unshare'> {
  const wall = wallOf(writing.db, id, 'id')
  if (wall.backs !== null) partWalls(writing, id, wall.backs)
  writing.label(`Part ${wall.called} from the next room’s wall`)
  return { done: true }
}
