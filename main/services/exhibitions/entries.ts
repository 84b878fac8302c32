/** Works in a show: put in, ordered, numbered, taken out. A work leaves a show without leaving the catalogue. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { changeFields, notFound } from '../change.ts'
import { moveBefore, nextPosition, orderedRows } from '../order.ts'
import type { Writing } from '../service.ts'
import { insert, remove as removeRow, row, rows, update, value } from '../sql.ts'
import { refusePartOfSet } from '../works/facts.ts'
import { openExhibition } from './open.ts'

function checkSection(db: ReadHandle, exhibition: string, section: string | null): void {
  if (section === null) return
  const of = value<string>(db, 'SELECT exhibition FROM section WHERE id = :section', { section })
  if (of !== exhibition) throw notFound('section in this exhibition', 'section')
}

const inSection = 'exhibition = :exhibition AND section IS :section'

/** Puts one work at the end of a section. The caller has labelled the edit. */
export function addEntry(writing: Writing, exhibition: string, work: string, section: string | null): string {
  const { db } = writing
  openExhibition(db, exhibition)
  checkSection(db, exhibition, section)
  const id = writing.newId()
  const position = nextPosition(orderedRows(db, 'entry', inSection, { exhibition, section }))
  insert(db, 'entry', { id, exhibition, work, section, position, running: '', running_before: '', status: 'wanted' })
  return id
}

export function add(writing: Writing, input: Received<'entry.add'>): Output<'entry.add'> {
  const { exhibition, works, section = null } = input
  const title = openExhibition(writing.db, exhibition)
  const entries: string[] = []
  let already = 0
  for (const [index, work] of works.entries()) {
    if (value(writing.db, 'SELECT id FROM work WHERE id = :work', { work }) === undefined) {
      throw notFound('work', `works.${index}`)
    }
    const there = value(writing.db, 'SELECT id FROM entry WHERE exhibition = :exhibition AND work = :work', {
      exhibition,
      work,
    })
    if (there === undefined) refusePartOfSet(writing.db, work, `works.${index}`)
    if (there === undefined) entries.push(addEntry(writing, exhibition, work, section))
    else already++
  }
  writing.label(`Put ${entries.length === 1 ? 'a work' : `${entries.length} works`} into ${title}`)
  return { entries, already }
}

interface Entry {
  readonly id: string
  readonly exhibition: string
  readonly section: string | null
  readonly work: string
}

/** The entries asked for, all of one open exhibition. */
function entriesOf(db: ReadHandle, ids: readonly string[]): { entries: Entry[]; exhibition: string; title: string } {
  const entries = ids.map((id, index) => {
    const found = row<Entry>(db, 'SELECT id, exhibition, section, work FROM entry WHERE id = :id', { id })
    if (found === undefined) throw notFound('work in this show', `entries.${index}`)
    return found
  })
  const exhibition = entries[0]?.exhibition ?? ''
  const stranger = entries.findIndex(entry => entry.exhibition !== exhibition)
  if (stranger !== -1) {
    throw new Refusal('bad-input', 'These works stand in different exhibitions.', { field: `entries.${stranger}` })
  }
  return { entries, exhibition, title: openExhibition(db, exhibition) }
}

function count(n: number): string {
  return n === 1 ? 'one work' : `${n} works`
}

export function move(writing: Writing, input: Received<'entry.move'>): Output<'entry.move'> {
  const { db } = writing
  const { section, before } = input
  const ids = [...new Set(input.entries)]
  const { entries, exhibition } = entriesOf(db, ids)
  checkSection(db, exhibition, section)
  if (before !== null) {
    const beside = row<Entry>(db, 'SELECT id, exhibition, section, work FROM entry WHERE id = :before', { before })
    if (beside?.exhibition !== exhibition || beside.section !== section)
      throw notFound('work in that section', 'before')
  }
  writing.label(`Move ${count(ids.length)} in the order`)
  // A place before one of the moved works itself is the place before the next that stays.
  const ordered = orderedRows(db, 'entry', inSection, { exhibition, section })
  const moving = new Set(ids)
  const from = before === null ? -1 : ordered.findIndex(each => each.id === before)
  const stays = from === -1 ? undefined : ordered.slice(from).find(each => !moving.has(each.id))
  for (const entry of entries) if (entry.section !== section) update(db, 'entry', entry.id, { section })
  moveBefore(db, 'entry', ordered, ids, stays?.id ?? null)
  return { done: true }
}

export function setRunning(
  writing: Writing,
  { id, was, to }: Received<'entry.setRunning'>,
): Output<'entry.setRunning'> {
  entriesOf(writing.db, [id])
  writing.label(`Number a work ${to === '' ? 'with nothing' : to}`)
  const before = value<string>(writing.db, 'SELECT running FROM entry WHERE id = :id', { id }) ?? ''
  const { saved, clashes } = changeFields(
    writing,
    'entry',
    id,
    { running: { was, to } },
    { running: 'running' },
    'work in this show',
  )
  if (saved.length > 0 && before !== to) update(writing.db, 'entry', id, { running_before: before })
  return { saved, clashes }
}

export function setStatus(writing: Writing, input: Received<'entry.setStatus'>): Output<'entry.setStatus'> {
  const { entries } = entriesOf(writing.db, input.entries)
  writing.label(`Mark ${count(entries.length)} as ${input.to}`)
  for (const entry of entries) update(writing.db, 'entry', entry.id, { status: input.to })
  return { changed: entries.length }
}

export function remove(writing: Writing, input: Received<'entry.remove'>): Output<'entry.remove'> {
  const { db } = writing
  const { entries, title } = entriesOf(db, [...new Set(input.entries)])
  for (const [index, entry] of entries.entries()) {
    const placed = row<{ id: string; state: string }>(db, 'SELECT id, state FROM placement WHERE entry = :id', {
      id: entry.id,
    })
    if (placed !== undefined && placed.state !== 'planned') {
      throw new Refusal('hung', 'A work that hangs is taken off the wall before it leaves the show.', {
        field: `entries.${index}`,
      })
    }
    if (placed !== undefined) removeRow(db, 'placement', placed.id)
    for (const kept of rows<{ id: string }>(db, 'SELECT id FROM kept_place WHERE entry = :id', { id: entry.id })) {
      removeRow(db, 'kept_place', kept.id)
    }
    removeRow(db, 'entry', entry.id)
  }
  writing.label(`Take ${count(entries.length)} out of ${title}`)
  return { removed: entries.length }
}

export function renumber(
  writing: Writing,
  { id, from = 1 }: Received<'exhibition.renumber'>,
): Output<'exhibition.renumber'> {
  const { db } = writing
  const title = openExhibition(db, id, 'id')
  writing.label(`Number the works of ${title} in their order`)
  let changed = 0
  const inOrder = rows<{ id: string; running: string }>(
    db,
    `SELECT entry.id, entry.running FROM entry LEFT JOIN section ON section.id = entry.section
     WHERE entry.exhibition = :id ORDER BY section.position IS NULL, section.position, entry.position, entry.id`,
    { id },
  )
  for (const [index, entry] of inOrder.entries()) {
    const running = String(from + index)
    if (entry.running === running) continue
    update(db, 'entry', entry.id, { running, running_before: entry.running })
    changed++
  }
  return { changed }
}
