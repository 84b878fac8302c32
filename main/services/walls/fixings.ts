/** The library of fixings: generic kinds, rated as the user's own packet says. No rating is invented. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { changeFields, notFound } from '../change.ts'
import type { Reading, Writing } from '../service.ts'
import { insert, rows, value } from '../sql.ts'

export type StoredFixing = Output<'fixing.list'>['fixings'][number]

export const fixingSelect = `SELECT id, name, kind, hole_offset AS holeOffset, rated_kg AS ratedKg, wall_type AS wallType,
  shank, length, source, note FROM fixing_kind`

export function list({ db }: Reading): Output<'fixing.list'> {
  return { fixings: rows<StoredFixing>(db, `${fixingSelect} ORDER BY kind, rated_kg, name, id`) }
}

export function add(writing: Writing, input: Received<'fixing.add'>): Output<'fixing.add'> {
  const id = writing.newId()
  writing.label(`Add the fixing ${input.name}`)
  insert(writing.db, 'fixing_kind', {
    id,
    name: input.name,
    kind: input.kind,
    hole_offset: input.holeOffset,
    rated_kg: input.ratedKg,
    wall_type: input.wallType ?? '',
    shank: input.shank ?? null,
    length: input.length ?? null,
    source: input.source ?? '',
    note: input.note ?? '',
  })
  return { id }
}

export function change(writing: Writing, { id, changes }: Received<'fixing.update'>): Output<'fixing.update'> {
  const name = value<string>(writing.db, 'SELECT name FROM fixing_kind WHERE id = :id', { id })
  if (name === undefined) throw notFound('fixing')
  writing.label(`Change the fixing ${name}`)
  const columns = {
    name: 'name',
    holeOffset: 'hole_offset',
    ratedKg: 'rated_kg',
    wallType: 'wall_type',
    shank: 'shank',
    length: 'length',
    source: 'source',
    note: 'note',
  }
  const { saved, clashes } = changeFields(writing, 'fixing_kind', id, changes, columns, 'fixing')
  return { saved, clashes }
}
