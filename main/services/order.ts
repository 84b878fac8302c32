/**
 * Places in an order as numbers between their neighbours, so that moving one thing changes one row. When two
 * neighbours have come too close, the whole order is spread anew.
 */
import type { WriteHandle } from '../database/handles.ts'
import { rows, update } from './sql.ts'

interface Placed {
  readonly id: string
  readonly position: number
}

const closest = 1e-6

/**
 * Moves `ids` (in the order given) before `before`, or to the end, within the ordered rows of one table.
 * `ordered` is the whole order as it is; rows of `ids` need not be in it yet.
 */
export function moveBefore(
  db: WriteHandle,
  table: string,
  ordered: readonly Placed[],
  ids: readonly string[],
  before: string | null,
): void {
  const moving = new Set(ids)
  const rest = ordered.filter(each => !moving.has(each.id))
  const found = before === null ? -1 : rest.findIndex(each => each.id === before)
  const at = found === -1 ? rest.length : found
  const low = rest[at - 1]?.position
  const high = rest[at]?.position
  const from = low ?? (high ?? 0) - ids.length - 1
  const step = high === undefined ? 1 : (high - from) / (ids.length + 1)
  if (step > closest) {
    for (const [index, id] of ids.entries()) update(db, table, id, { position: from + step * (index + 1) })
    return
  }
  const whole = [...rest.slice(0, at).map(each => each.id), ...ids, ...rest.slice(at).map(each => each.id)]
  for (const [index, id] of whole.entries()) update(db, table, id, { position: index + 1 })
}

/** Rows of a table in order, by a condition of the caller's own. */
export function orderedRows(
  db: WriteHandle,
  table: string,
  where = '1',
  parameters: Readonly<Record<string, string | null>> = {},
): Placed[] {
  return rows(db, `SELECT id, position FROM ${table} WHERE ${where} ORDER BY position, id`, parameters)
}

export function nextPosition(ordered: readonly Placed[]): number {
  return (ordered.at(-1)?.position ?? 0) + 1
}
