/** What is fixed on a wall: openings, and what works must keep clear of. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { changeFields, notFound } from '../change.ts'
import type { Writing } from '../service.ts'
import { insert, remove, row, value } from '../sql.ts'

function wallName(writing: Writing, wall: string): string {
  const name = value<string>(
    writing.db,
    `SELECT room.name || ' ' || wall.name FROM wall JOIN room ON room.id = wall.room WHERE wall.id = :wall`,
    { wall },
  )
  if (name === undefined) throw notFound('wall', 'wall')
  return name
}

function fixed(writing: Writing, table: 'opening' | 'keep_clear', id: string): { kind: string; wall: string } {
  const found = row<{ kind: string; wall: string }>(writing.db, `SELECT kind, wall FROM ${table} WHERE id = :id`, {
    id,
  })
  if (found === undefined) throw notFound(table === 'opening' ? 'opening' : 'thing on a wall')
  return found
}

const place = { kind: 'kind', x: 'x', y: 'y', width: 'width', height: 'height', label: 'label' }

export function addOpening(writing: Writing, input: Received<'opening.add'>): Output<'opening.add'> {
  writing.label(`Add a ${input.kind} to ${wallName(writing, input.wall)}`)
  const id = writing.newId()
  insert(writing.db, 'opening', { id, ...input, label: input.label ?? '' })
  return { id }
}

export function changeOpening(writing: Writing, { id, changes }: Received<'opening.update'>): Output<'opening.update'> {
  const { kind, wall } = fixed(writing, 'opening', id)
  writing.label(`Change a ${kind} of ${wallName(writing, wall)}`)
  const { saved, clashes } = changeFields(writing, 'opening', id, changes, place, 'opening')
  return { saved, clashes }
}

export function removeOpening(writing: Writing, { id }: Received<'opening.remove'>): Output<'opening.remove'> {
  const { kind, wall } = fixed(writing, 'opening', id)
  writing.label(`Remove a ${kind} of ${wallName(writing, wall)}`)
  remove(writing.db, 'opening', id)
  return { done: true }
}

export function addKeepClear(writing: Writing, input: Received<'keepClear.add'>): Output<'keepClear.add'> {
  writing.label(`Add a ${input.kind} to ${wallName(writing, input.wall)}`)
  const id = writing.newId()
  insert(writing.db, 'keep_clear', { id, ...input, label: input.label ?? '', reason: input.reason ?? '' })
  return { id }
}

export function changeKeepClear(
  writing: Writing,
  { id, changes }: Received<'keepClear.update'>,
): Output<'keepClear.update'> {
  const { kind, wall } = fixed(writing, 'keep_clear', id)
  writing.label(`Change a ${kind} of ${wallName(writing, wall)}`)
  const columns = { ...place, margin: 'margin', reason: 'reason' }
  const { saved, clashes } = changeFields(writing, 'keep_clear', id, changes, columns, 'thing on a wall')
  return { saved, clashes }
}

export function removeKeepClear(writing: Writing, { id }: Received<'keepClear.remove'>): Output<'keepClear.remove'> {
  const { kind, wall } = fixed(writing, 'keep_clear', id)
  writing.label(`Remove a ${kind} of ${wallName(writing, wall)}`)
  remove(writing.db, 'keep_clear', id)
  return { done: true }
}
