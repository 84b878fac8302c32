/** What the crew keeps: its size for a show, the house's own times, equipment, stock. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { isTimed, timeOf } from '../../../src/crew/minutes.ts'
import { changeFields, notFound } from '../change.ts'
import { openExhibition } from '../exhibitions/open.ts'
import type { Reading, ServicesOf, Writing } from '../service.ts'
import { insert, remove as removeRow, row, update, value } from '../sql.ts'
import { hardware } from './hardware.ts'
import { orders } from './orders.ts'
import { plan } from './plan.ts'
import { equipmentOf, timesOf } from './show.ts'

function set(writing: Writing, { exhibition, changes }: Received<'crew.set'>): Output<'crew.set'> {
  const title = openExhibition(writing.db, exhibition)
  writing.label(`Change the crew of ${title}`)
  const columns = { teams: 'crew_teams', hours: 'crew_hours', spare: 'crew_spare' }
  const { saved, clashes } = changeFields(writing, 'exhibition', exhibition, changes, columns, 'exhibition')
  return { saved, clashes }
}

function setMinutes(writing: Writing, input: Received<'crew.setMinutes'>): Output<'crew.setMinutes'> {
  const { key, was, to, source = '' } = input
  const { db } = writing
  if (!isTimed(key)) {
    throw new Refusal('not-found', `Nothing is timed under “${key}”. crew.plan lists what is.`, { field: 'key' })
  }
  const stored = row<{ minutes: number }>(db, 'SELECT minutes FROM method_time WHERE id = :key', { key })
  const now = stored?.minutes ?? null
  if (now !== was) {
    throw new Refusal('clash', 'Somebody else has changed this time meanwhile.', {
      field: 'to',
      details: { was, yours: to, theirs: now },
    })
  }
  const { label } = timeOf(timesOf(db), key)
  writing.label(to === null ? `Take the given time for: ${label}` : `Set the time for: ${label} → ${to} min`)
  if (to === null) {
    if (stored !== undefined) removeRow(db, 'method_time', key)
  } else if (stored === undefined) insert(db, 'method_time', { id: key, minutes: to, source })
  else update(db, 'method_time', key, { minutes: to, source })
  return { done: true }
}

function listEquipment({ db }: Reading): Output<'equipment.list'> {
  return { equipment: equipmentOf(db) }
}

function addEquipment(writing: Writing, input: Received<'equipment.add'>): Output<'equipment.add'> {
  const id = writing.newId()
  writing.label(`Add the equipment ${input.name}`)
  insert(writing.db, 'equipment', {
    id,
    name: input.name,
    carries_kg: input.carriesKg ?? null,
    reaches: input.reaches ?? null,
    count: input.count ?? 1,
    people: input.people ?? 1,
    note: input.note ?? '',
  })
  return { id }
}

function equipmentName(writing: Writing, id: string): string {
  const name = value<string>(writing.db, 'SELECT name FROM equipment WHERE id = :id', { id })
  if (name === undefined) throw notFound('equipment')
  return name
}

function changeEquipment(writing: Writing, { id, changes }: Received<'equipment.update'>): Output<'equipment.update'> {
  writing.label(`Change the equipment ${equipmentName(writing, id)}`)
  const columns = {
    name: 'name',
    carriesKg: 'carries_kg',
    reaches: 'reaches',
    count: 'count',
    people: 'people',
    note: 'note',
  }
  const { saved, clashes } = changeFields(writing, 'equipment', id, changes, columns, 'equipment')
  return { saved, clashes }
}

function removeEquipment(writing: Writing, { id }: Received<'equipment.remove'>): Output<'equipment.remove'> {
  writing.label(`Remove the equipment ${equipmentName(writing, id)}`)
  removeRow(writing.db, 'equipment', id)
  return { done: true }
}

function stock(writing: Writing, { id, changes }: Received<'fixing.stock'>): Output<'fixing.stock'> {
  const name = value<string>(writing.db, 'SELECT name FROM fixing_kind WHERE id = :id', { id })
  if (name === undefined) throw notFound('fixing')
  writing.label(`Count the stock of ${name}`)
  const { saved, clashes } = changeFields(writing, 'fixing_kind', id, changes, { inStock: 'in_stock' }, 'fixing')
  return { saved, clashes }
}

export const crewServices: ServicesOf<
  | 'crew.plan'
  | 'crew.hardware'
  | 'crew.orders'
  | 'crew.set'
  | 'crew.setMinutes'
  | 'equipment.list'
  | 'equipment.add'
  | 'equipment.update'
  | 'equipment.remove'
  | 'fixing.stock'
> = {
  'crew.plan': plan,
  'crew.hardware': hardware,
  'crew.orders': orders,
  'crew.set': set,
  'crew.setMinutes': setMinutes,
  'equipment.list': listEquipment,
  'equipment.add': addEquipment,
  'equipment.update': changeEquipment,
  'equipment.remove': removeEquipment,
  'fixing.stock': stock,
}
