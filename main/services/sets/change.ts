/** A set changed: its form and gaps, its parts and their order, what one part hangs on. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { checkForm } from '../../../src/layout/set.ts'
import { type Columns, changeFields, notFound, same } from '../change.ts'
import { openExhibition } from '../exhibitions/open.ts'
import type { Writing } from '../service.ts'
import { insert, remove, row, rows, update, value } from '../sql.ts'
import { workName } from '../works/facts.ts'
import { refreshMass, refreshSize } from '../works/figures.ts'
import { enterBehind } from './apart.ts'
import { partIdsOf, setFactsOf } from './figures.ts'
import { checkPart, entriesToGive, openEntriesOf, refuseFrozen, setParts, takeOut } from './parts.ts'

const columns: Columns = {
  form: 'set_form',
  columns: 'set_columns',
  gapX: 'set_gap_x',
  gapY: 'set_gap_y',
  keeps: 'set_keeps',
}

export function change(writing: Writing, { id, changes }: Received<'set.update'>): Output<'set.update'> {
  const { db } = writing
  const facts = setFactsOf(db, id)
  if (facts === undefined) throw notFound('set')
  refuseFrozen(db, id, 'id')
  const wanted = Object.fromEntries(
    Object.entries(changes).flatMap(([field, change]) => (change === undefined ? [] : [[field, change.to]])),
  )
  try {
    checkForm({ ...facts, ...wanted })
  } catch (error) {
    // A figure that was not changed is refused where the form was.
    if (!(error instanceof Refusal)) throw error
    const field = error.field !== undefined && error.field in wanted ? error.field : 'form'
    throw new Refusal(error.code, error.message, { field: `changes.${field}.to`, details: error.details })
  }
  writing.label(`Change how ${workName(db, id)} is laid out`)
  const { saved, clashes } = changeFields(writing, 'work', id, changes, columns, 'set')
  const now = setFactsOf(db, id)
  // Two people may each have changed a part of it: what stands now must lay out too.
  if (now !== undefined) checkForm(now)
  refreshSize(db, id)
  return { saved, clashes }
}

export function changeParts(writing: Writing, { id, was, to }: Received<'set.parts'>): Output<'set.parts'> {
  const { db } = writing
  if (setFactsOf(db, id) === undefined) throw notFound('set')
  const now = partIdsOf(db, id)
  writing.label(`Change the parts of ${workName(db, id)}`)
  if (!same(now, was) && !same(now, to)) {
    return { saved: [], clashes: [{ code: 'clash', id, field: 'parts', was, yours: to, theirs: now }] }
  }
  refuseFrozen(db, id, 'id')
  if (to.length < 2) {
    throw new Refusal('set-too-small', 'A set has two parts or more. Take it apart instead.', { field: 'to' })
  }
  for (const [index, work] of to.entries()) {
    if (to.indexOf(work) !== index) {
      throw new Refusal('part-twice', 'This part is in the set already.', { field: `to.${index}` })
    }
    if (!now.includes(work)) checkPart(db, work, `to.${index}`)
  }
  const entries = openEntriesOf(db, id)
  const shows = new Set(entries.map(entry => entry.exhibition))
  for (const [index, work] of to.entries()) {
    if (now.includes(work)) continue
    for (const entry of entriesToGive(db, work, shows, `to.${index}`)) takeOut(writing, entry)
  }
  const gone = now.filter(work => !to.includes(work))
  for (const work of gone) {
    update(db, 'work', work, { parent: null, part_order: null })
    for (const own of rows<{ id: string }>(db, 'SELECT id FROM placement_part WHERE work = :work', { work })) {
      remove(db, 'placement_part', own.id)
    }
  }
  for (const entry of entries) enterBehind(writing, entry, gone)
  setParts(writing, id, to)
  refreshSize(db, id)
  refreshMass(db, id)
  return { saved: ['parts'], clashes: [] }
}

const fixingColumns: Columns = {
  fixing: 'fixing',
  keeper: 'keeper',
  lockTool: 'lock_tool',
  hooksApart: 'hooks_apart',
}

export function fix(writing: Writing, input: Received<'set.fix'>): Output<'set.fix'> {
  const { db } = writing
  const { placement, work, changes } = input
  const placed = row<{ exhibition: string; set: string }>(
    db,
    `SELECT placement.exhibition, entry.work AS "set" FROM placement JOIN entry ON entry.id = placement.entry
     WHERE placement.id = :placement`,
    { placement },
  )
  if (placed === undefined) throw notFound('set on a wall', 'placement')
  openExhibition(db, placed.exhibition, 'placement')
  if (!partIdsOf(db, placed.set).includes(work)) throw notFound('part of this set', 'work')
  for (const field of ['fixing', 'keeper'] as const) {
    const to = changes[field]?.to
    if (typeof to === 'string' && value(db, 'SELECT id FROM fixing_kind WHERE id = :to', { to }) === undefined) {
      throw notFound('fixing', `changes.${field}.to`)
    }
  }
  writing.label(`Change how ${workName(db, work)} is fixed`)
  let id = value<string>(db, 'SELECT id FROM placement_part WHERE placement = :placement AND work = :work', {
    placement,
    work,
  })
  if (id === undefined) {
    id = writing.newId()
    insert(db, 'placement_part', { id, placement, work, fixing: null, keeper: null, lock_tool: '', hooks_apart: null })
  }
  const { saved, clashes } = changeFields(writing, 'placement_part', id, changes, fixingColumns, 'part of this set')
  return { saved, clashes }
}
