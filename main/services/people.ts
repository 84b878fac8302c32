/** Who has sat at this desk, and how each likes their figures. */
import type { Person } from '../../src/contract/areas/desk.ts'
import type { Output, Received } from '../../src/contract/contract.ts'
import type { ReadHandle } from '../database/handles.ts'
import { notFound } from './change.ts'
import type { Reading, ServicesOf, Writing } from './service.ts'
import { insert, row, rows, update } from './sql.ts'

interface Stored {
  readonly id: string
  readonly name: string
  readonly role: string
  readonly length_unit: Person['lengthUnit']
  readonly paper: Person['paper']
  readonly fraction: Person['fraction']
}

const select = 'SELECT id, name, role, length_unit, paper, fraction FROM person'

function asPerson(stored: Stored): Person {
  const { length_unit, ...rest } = stored
  return { ...rest, lengthUnit: length_unit }
}

export function personOf(db: ReadHandle, id: string): Person | null {
  const stored = row<Stored>(db, `${select} WHERE id = :id`, { id })
  return stored === undefined ? null : asPerson(stored)
}

function list({ db }: Reading): Output<'person.list'> {
  return { people: rows<Stored>(db, `${select} ORDER BY name COLLATE NOCASE, id`).map(asPerson) }
}

function add(writing: Writing, input: Received<'person.add'>): Output<'person.add'> {
  const { lengthUnit, ...plain } = input
  const id = writing.newId()
  writing.label(`Add ${input.name} to the desk`)
  insert(writing.db, 'person', { id, ...plain, length_unit: lengthUnit, created_at: writing.now() })
  return { id, ...input }
}

function change(writing: Writing, input: Received<'person.update'>): Output<'person.update'> {
  const { id, lengthUnit, ...plain } = input
  const before = personOf(writing.db, id)
  if (before === null) throw notFound('person')
  writing.label(`Change how ${before.name} likes figures`)
  const given = Object.entries({ ...plain, length_unit: lengthUnit }).filter(([, value]) => value !== undefined)
  // What is left has no undefined in it.
  update(writing.db, 'person', id, Object.fromEntries(given) as Record<string, string | number>)
  return personOf(writing.db, id) ?? before
}

export const peopleServices: ServicesOf<'person.list' | 'person.add' | 'person.update'> = {
  'person.list': list,
  'person.add': add,
  'person.update': change,
}
