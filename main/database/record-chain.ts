/**
 * The chain of movements: each carries a hash over its own figures and the hash of the one before. Who alters, inserts
 * or takes out one past the triggers has to make every later one anew; `check` then finds the first that does not join.
 * It does not prove who wrote a record, nor that nobody made the whole chain anew.
 */
import { createHash } from 'node:crypto'
import type Database from 'better-sqlite3'

export interface MovementRow {
  readonly id: string
  readonly at: string
  readonly place: string
  readonly place_kind: string
  readonly place_words: string
  readonly location: string | null
  readonly spot: string
  readonly method: string
  readonly people: string
  readonly reason: string
  readonly condition: string
  readonly corrects: string | null
  readonly struck: number
  readonly recorded_at: string
  readonly recorded_by: string
}

export interface MovedRow {
  readonly id: string
  readonly work: string | null
  readonly crate: string | null
  readonly at: string
  readonly place: string
  readonly from_place: string
  readonly from_words: string
  readonly part_of: string | null
  readonly condition: string
  readonly plan: string
  readonly plan_words: string
}

/** SHA-256 over what stands in the rows, in the order of their columns, and the hash before; 64 hex figures. */
export function chainHash(before: string, movement: MovementRow, moved: readonly MovedRow[]): string {
  const { id, at, place, place_kind, place_words, location, spot, method, people } = movement
  const { reason, condition, corrects, struck, recorded_at, recorded_by } = movement
  const said = [id, at, place, place_kind, place_words, location, spot, method, people]
  const more = [reason, condition, corrects, struck, recorded_at, recorded_by]
  const things = moved.map(each => [
    each.id,
    each.work,
    each.crate,
    each.at,
    each.place,
    each.from_place,
    each.from_words,
    // Movements from before there were these keep their hash.
    ...(each.plan !== ''
      ? [each.part_of, each.condition, each.plan, each.plan_words]
      : each.part_of === null && each.condition === ''
        ? []
        : [each.part_of, each.condition]),
  ])
  return createHash('sha256')
    .update(JSON.stringify([before, ...said, ...more, things]))
    .digest('hex')
}

/** The first movement that does not join the one before; null where all do. */
export function brokenLink(db: Database.Database): { readonly id: string; readonly at: string } | null {
  const movements = db.prepare<[], MovementRow & { readonly hash: string }>('SELECT * FROM movement ORDER BY rowid')
  const moved = db.prepare<[string], MovedRow>('SELECT * FROM moved WHERE movement = ? ORDER BY rowid')
  let before = ''
  for (const each of movements.iterate()) {
    if (chainHash(before, each, moved.all(each.id)) !== each.hash) return { id: each.id, at: each.at }
    before = each.hash
  }
  return null
}
