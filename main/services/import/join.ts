/**
 * Two works that turned out to be one. The older one stays and takes what the newer one has and it lacks; its own
 * values are never overwritten. A work that stands on a wall by itself can't be taken into another.
 */
import { factColumns } from '../../../src/checklist/fields.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { notFound } from '../change.ts'
import type { Writing } from '../service.ts'
import { remove, row, rows, run, update, type Value, value } from '../sql.ts'
import { refuseRecorded, workName } from '../works/facts.ts'
import { refreshBack, refreshMass, refreshNumbers, refreshPicture, refreshSize } from '../works/figures.ts'

/** Tables whose rows go over to the work that stays. */
const goingOver = [
  'work_size',
  'work_mass',
  'work_value',
  'work_back',
  'picture',
  'import_value',
  'import_question',
  'hang_rule_work',
] as const

/** Returns the work that stays. Refuses `not-found`, `placed`, `recorded`. */
export function joinWorks(writing: Writing, stays: string, goes: string): string {
  const { db } = writing
  if (stays === goes) return stays
  const kept = row<Record<string, Value>>(db, 'SELECT * FROM work WHERE id = :stays', { stays })
  const given = row<Record<string, Value>>(db, 'SELECT * FROM work WHERE id = :goes', { goes })
  if (kept === undefined || given === undefined) throw notFound('work', 'answer')
  if (
    value(db, 'SELECT placement.id FROM placement JOIN entry ON entry.id = placement.entry WHERE entry.work = :goes', {
      goes,
    }) !== undefined
  ) {
    throw new Refusal(
      'placed',
      `${workName(db, goes)} stands on a wall by itself. Take it off the wall first, then say that it is the same work.`,
      { field: 'answer' },
    )
  }
  refuseRecorded(db, goes, 'answer')
  for (const [work, facts] of [
    [stays, kept],
    [goes, given],
  ] as const) {
    if (facts.parent === null && facts.set_form === '') continue
    throw new Refusal(
      'part-of-set',
      `${workName(db, work)} is ${facts.parent === null ? 'a set' : 'part of a set'}. Take the set apart first, then say that it is the same work.`,
      { field: 'answer' },
    )
  }
  const columns: Record<string, Value> = {}
  for (const column of [...Object.values(factColumns), 'lender']) {
    const now = kept[column] ?? null
    const other = given[column] ?? null
    if ((now === null || now === '') && other !== null && other !== '') columns[column] = other
  }
  update(db, 'work', stays, columns)
  for (const table of goingOver) run(db, `UPDATE ${table} SET work = :stays WHERE work = :goes`, { stays, goes })
  run(db, "UPDATE document SET subject = :stays WHERE subject_kind = 'work' AND subject = :goes", { stays, goes })
  for (const number of rows<{ id: string; kind: string; norm: string }>(
    db,
    'SELECT id, kind, norm FROM work_number WHERE work = :goes',
    { goes },
  )) {
    const there = value(db, 'SELECT id FROM work_number WHERE work = :stays AND kind = :kind AND norm = :norm', {
      stays,
      kind: number.kind,
      norm: number.norm,
    })
    if (there === undefined) update(db, 'work_number', number.id, { work: stays })
  }
  for (const entry of rows<{ id: string; exhibition: string }>(
    db,
    'SELECT id, exhibition FROM entry WHERE work = :goes',
    { goes },
  )) {
    const { exhibition } = entry
    const there = value(db, 'SELECT id FROM entry WHERE work = :stays AND exhibition = :exhibition', {
      stays,
      exhibition,
    })
    if (there === undefined) update(db, 'entry', entry.id, { work: stays })
    else remove(db, 'entry', entry.id)
  }
  // Each part of it goes by an edit of its own row, so that undo brings all of it back.
  for (const { id } of rows<{ id: string }>(db, 'SELECT id FROM work_number WHERE work = :goes', { goes }))
    remove(db, 'work_number', id)
  remove(db, 'work', goes)
  refreshSize(db, stays)
  refreshMass(db, stays)
  refreshBack(db, stays)
  refreshPicture(db, stays)
  refreshNumbers(db, stays)
  return stays
}
