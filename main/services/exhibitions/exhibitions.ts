/** Exhibitions and their sections: made, renamed, copied, moved on, removed. */

import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { daySaid } from '../../../src/light/day.ts'
import { changeFields, notFound } from '../change.ts'
import { moveBefore, nextPosition, orderedRows } from '../order.ts'
import { copyStands, onCopied } from '../rooms/copy-stands.ts'
import { dropStands } from '../rooms/drop.ts'
import { rulesOf } from '../rules.ts'
import { copyRules } from '../sequence/rules-follow.ts'
import type { Reading, Writing } from '../service.ts'
import { insert, remove as removeRow, row, rows, update, type Value, value } from '../sql.ts'
import { firstPicture } from '../works/list.ts'
import { openExhibition } from './open.ts'

export function list({ db }: Reading): Output<'exhibition.list'> {
  return {
    exhibitions: rows(
      db,
      `SELECT exhibition.id, title, venue, opens, closes, state, exhibition.note,
        (SELECT count(*) FROM entry WHERE entry.exhibition = exhibition.id) AS works,
        (SELECT count(*) FROM placement WHERE placement.exhibition = exhibition.id) AS placed
       FROM exhibition ORDER BY position, exhibition.id`,
    ),
  }
}

export function add(writing: Writing, input: Received<'exhibition.add'>): Output<'exhibition.add'> {
  const { opens = '', closes = '' } = input
  checkDates(opens, closes, 'closes')
  const id = writing.newId()
  writing.label(`Make the exhibition ${input.title}`)
  insert(writing.db, 'exhibition', {
    id,
    title: input.title,
    venue: input.venue ?? '',
    opens,
    closes,
    state: 'planning',
    note: '',
    position: nextPosition(orderedRows(writing.db, 'exhibition')),
  })
  return { id }
}

function checkDates(opens: string, closes: string, field: string): void {
  if (opens !== '' && closes !== '' && closes < opens) {
    throw new Refusal('bad-input', `It closes on ${daySaid(closes)}, before it opens on ${daySaid(opens)}.`, { field })
  }
}

export function change(writing: Writing, { id, changes }: Received<'exhibition.update'>): Output<'exhibition.update'> {
  const title = openExhibition(writing.db, id, 'id')
  const stored = row<{ opens: string; closes: string }>(
    writing.db,
    'SELECT opens, closes FROM exhibition WHERE id = :id',
    { id },
  )
  checkDates(changes.opens?.to ?? stored?.opens ?? '', changes.closes?.to ?? stored?.closes ?? '', 'changes.closes.to')
  writing.label(changes.title === undefined ? `Change ${title}` : `Rename ${title} to ${changes.title.to}`)
  const columns = { title: 'title', venue: 'venue', opens: 'opens', closes: 'closes', note: 'note' }
  const { saved, clashes } = changeFields(writing, 'exhibition', id, changes, columns, 'exhibition')
  return { saved, clashes }
}

export function setState(
  writing: Writing,
  { id, was, to }: Received<'exhibition.setState'>,
): Output<'exhibition.setState'> {
  const stored = row<{ title: string; state: string }>(
    writing.db,
    'SELECT title, state FROM exhibition WHERE id = :id',
    { id },
  )
  if (stored === undefined) throw notFound('exhibition')
  if (stored.state !== was) {
    throw new Refusal('clash', `${stored.title} is ${stored.state} by now.`, {
      field: 'to',
      details: { was, yours: to, theirs: stored.state },
    })
  }
  writing.label(`${stored.title}: ${was} → ${to}`)
  update(writing.db, 'exhibition', id, { state: to })
  return { done: true }
}

export function copy(writing: Writing, input: Received<'exhibition.copy'>): Output<'exhibition.copy'> {
  const { db } = writing
  const from = row<Record<string, Value>>(db, 'SELECT * FROM exhibition WHERE id = :id', { id: input.id })
  if (from === undefined) throw notFound('exhibition')
  writing.label(`Copy ${String(from.title)} as ${input.title}`)
  const id = writing.newId()
  insert(db, 'exhibition', {
    ...from,
    id,
    title: input.title,
    state: 'planning',
    position: nextPosition(orderedRows(db, 'exhibition')),
  })
  const sections = copyRows(writing, 'section', input.id, id, {})
  const entries = copyRows(writing, 'entry', input.id, id, { section: sections })
  const copies = copyStands(writing, input.id, id)
  if (input.placements) {
    onCopied(writing, copies, copyRows(writing, 'face_plan', input.id, id, {}), 'face_plan')
    // What hangs, hangs in the show it was hung for; in the copy it is a plan.
    const placements = copyRows(writing, 'placement', input.id, id, { entry: entries }, { state: 'planned' })
    onCopied(writing, copies, placements, 'placement')
    copyPartFixings(writing, placements)
  }
  copyRules(writing, input.id, id, copies, input.placements)
  wholeSets(writing, id)
  return { id }
}

/** What parts of sets hang on, with their copied placements. */
function copyPartFixings(writing: Writing, placements: ReadonlyMap<string, string>): void {
  for (const [from, to] of placements) {
    for (const own of rows<Record<string, Value>>(
      writing.db,
      'SELECT * FROM placement_part WHERE placement = :from ORDER BY work',
      { from },
    )) {
      insert(writing.db, 'placement_part', { ...own, id: writing.newId(), placement: to })
    }
  }
}

/** A closed show may hold works that became parts of a set since: its copy holds the set. */
function wholeSets(writing: Writing, exhibition: string): void {
  const { db } = writing
  const parts = rows<{ entry: string; set: string }>(
    db,
    `SELECT entry.id AS entry, work.parent AS "set" FROM entry JOIN work ON work.id = entry.work
     WHERE entry.exhibition = :exhibition AND work.parent IS NOT NULL ORDER BY entry.position, entry.id`,
    { exhibition },
  )
  for (const { entry, set } of parts) {
    const placed = value<string>(db, 'SELECT id FROM placement WHERE entry = :entry', { entry })
    if (placed !== undefined) removeRow(db, 'placement', placed)
    const there = value(db, 'SELECT id FROM entry WHERE exhibition = :exhibition AND work = :set', { exhibition, set })
    if (there === undefined) update(db, 'entry', entry, { work: set })
    else removeRow(db, 'entry', entry)
  }
}

/** Copies an exhibition's rows of one table under new ids, with references turned over; old id → new id. */
function copyRows(
  writing: Writing,
  table: string,
  from: string,
  to: string,
  references: Readonly<Record<string, ReadonlyMap<string, string>>>,
  fixed: Readonly<Record<string, Value>> = {},
): Map<string, string> {
  const known = new Map<string, string>()
  for (const each of rows<Record<string, Value> & { id: string }>(
    writing.db,
    `SELECT * FROM ${table} WHERE exhibition = :from ORDER BY id`,
    { from },
  )) {
    const id = writing.newId()
    known.set(each.id, id)
    const turned = Object.entries(references).map(([column, map]) => {
      const old = each[column]
      return [column, typeof old === 'string' ? (map.get(old) ?? null) : null]
    })
    insert(writing.db, table, { ...each, id, exhibition: to, ...Object.fromEntries(turned), ...fixed })
  }
  return known
}

export function remove(writing: Writing, { id }: Received<'exhibition.remove'>): Output<'exhibition.remove'> {
  const { db } = writing
  const title = openExhibition(db, id, 'id')
  const hung =
    value<number>(db, `SELECT count(*) FROM placement WHERE exhibition = :id AND state <> 'planned'`, { id }) ?? 0
  if (hung > 0) {
    throw new Refusal('hung', `${hung} works of ${title} hang. Take them down before you remove the exhibition.`, {
      field: 'id',
    })
  }
  if ((value<number>(db, 'SELECT count(*) FROM sheet_print WHERE exhibition = :id', { id }) ?? 0) > 0) {
    throw new Refusal('printed', `Sheets of ${title} have been printed. Close it instead; its record stays.`, {
      field: 'id',
    })
  }
  const holes =
    value<number>(db, `SELECT count(*) FROM mark WHERE exhibition = :id AND state = 'drilled' AND filled_at = ''`, {
      id,
    }) ?? 0
  if (holes > 0) {
    throw new Refusal('holes-left', `${holes} holes of ${title} are in the walls. Fill them first, or close it.`, {
      field: 'id',
    })
  }
  writing.label(`Remove the exhibition ${title}`)
  for (const layout of rows<{ id: string }>(db, 'SELECT id FROM kept_layout WHERE exhibition = :id', { id })) {
    for (const place of rows<{ id: string }>(db, 'SELECT id FROM kept_place WHERE layout = :layout', {
      layout: layout.id,
    })) {
      removeRow(db, 'kept_place', place.id)
    }
    removeRow(db, 'kept_layout', layout.id)
  }
  for (const table of ['mark', 'placement', 'face_plan', 'entry', 'section']) {
    for (const each of rows<{ id: string }>(db, `SELECT id FROM ${table} WHERE exhibition = :id`, { id })) {
      removeRow(db, table, each.id)
    }
  }
  dropStands(writing, id)
  removeRow(db, 'exhibition', id)
  return { done: true }
}

export function frieze({ db }: Reading, { exhibition }: Received<'exhibition.frieze'>): Output<'exhibition.frieze'> {
  return {
    sections: rows(db, 'SELECT id, title FROM section WHERE exhibition = :exhibition ORDER BY position, id', {
      exhibition,
    }),
    works: rows(
      db,
      `SELECT entry.id AS entry, work.id AS work, entry.section AS section, entry.running AS running, work.title AS title,
        work.hang_height AS height, work.hang_width AS width, coalesce(work.picture, ${firstPicture}) AS picture,
        placement.face AS face, work.medium AS medium, coalesce(party.name, '') AS lender,
        (SELECT min(light_limit) FROM work AS one WHERE one.id = work.id OR one.parent = work.id) AS "lightLimit"
       FROM entry JOIN work ON work.id = entry.work LEFT JOIN section ON section.id = entry.section
       LEFT JOIN party ON party.id = work.lender
       LEFT JOIN placement ON placement.entry = entry.id
       WHERE entry.exhibition = :exhibition
       ORDER BY section.position IS NULL, section.position, entry.position, entry.id`,
      { exhibition },
    ),
  }
}

export function addSection(writing: Writing, { exhibition, title }: Received<'section.add'>): Output<'section.add'> {
  openExhibition(writing.db, exhibition)
  const id = writing.newId()
  writing.label(`Add the section ${title}`)
  const position = nextPosition(orderedRows(writing.db, 'section', 'exhibition = :exhibition', { exhibition }))
  insert(writing.db, 'section', { id, exhibition, title, position })
  return { id }
}

const sectionColumns = {
  title: 'title',
  hang: 'hang',
  rows: 'rows',
  columns: 'columns',
  align: 'align',
  gapDown: 'gap_down',
  gapAcross: 'gap_across',
  alike: 'alike',
  lowest: 'lowest',
  highest: 'highest',
} as const

function sectionOf(writing: Writing, id: string): { exhibition: string; title: string } {
  const found = row<{ exhibition: string; title: string }>(
    writing.db,
    'SELECT exhibition, title FROM section WHERE id = :id',
    { id },
  )
  if (found === undefined) throw notFound('section')
  openExhibition(writing.db, found.exhibition, 'id')
  return found
}

export function changeSection(writing: Writing, { id, changes }: Received<'section.update'>): Output<'section.update'> {
  const { title } = sectionOf(writing, id)
  writing.label(
    changes.title === undefined ? `Change how ${title} hangs` : `Rename the section ${title} to ${changes.title.to}`,
  )
  const { saved, clashes } = changeFields(writing, 'section', id, changes, sectionColumns, 'section')
  if (saved.includes('lowest') || saved.includes('highest')) edgesApart(writing, id, saved)
  return { saved, clashes }
}

/** Refuses `edges-crossed` where no work could hang between the lowest and the highest edge. */
function edgesApart({ db }: Writing, id: string, saved: readonly string[]): void {
  const rule = rulesOf(db)
  const own = row<{ lowest: number | null; highest: number | null }>(
    db,
    'SELECT lowest, highest FROM section WHERE id = :id',
    { id },
  )
  const lowest = own?.lowest ?? Number(rule('stackLowest'))
  const highest = own?.highest ?? Number(rule('stackHighest'))
  if (lowest < highest) return
  const house = own?.lowest === null ? ' of the house rules' : ''
  throw new Refusal(
    'edges-crossed',
    `The lowest edge${house} is ${lowest} mm above the floor and the highest ${highest} mm: nothing can hang between them.`,
    { field: saved.includes('lowest') ? 'changes.lowest' : 'changes.highest', details: { lowest, highest } },
  )
}

export function moveSection(writing: Writing, { id, before }: Received<'section.move'>): Output<'section.move'> {
  const { exhibition, title } = sectionOf(writing, id)
  const ordered = orderedRows(writing.db, 'section', 'exhibition = :exhibition', { exhibition })
  if (before !== null && !ordered.some(each => each.id === before))
    throw notFound('section in this exhibition', 'before')
  writing.label(`Move the section ${title}`)
  if (before !== id) moveBefore(writing.db, 'section', ordered, [id], before)
  return { done: true }
}

export function removeSection(writing: Writing, { id }: Received<'section.remove'>): Output<'section.remove'> {
  const { exhibition, title } = sectionOf(writing, id)
  writing.label(`Remove the section ${title}`)
  const left = orderedRows(writing.db, 'entry', 'exhibition = :exhibition AND section IS NULL', { exhibition })
  let position = nextPosition(left)
  for (const entry of orderedRows(writing.db, 'entry', 'section = :id', { id })) {
    update(writing.db, 'entry', entry.id, { section: null, position: position++ })
  }
  removeRow(writing.db, 'section', id)
  return { done: true }
}
