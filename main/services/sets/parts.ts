/**
 * What becomes of the entries and placements of works that go into a set or come out of it. The rule it keeps: a set
 * has one entry and one placement; what hangs, is held or drilled never changes by being put together or apart.
 */
import { Refusal } from '../../../src/contract/refusal.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { openExhibition } from '../exhibitions/open.ts'
import type { Writing } from '../service.ts'
import { insert, remove, row, rows, update } from '../sql.ts'
import { refuseFixed } from '../walls/placements.ts'
import { workName } from '../works/facts.ts'
import { setFactsOf } from './figures.ts'

export interface Entry {
  readonly id: string
  readonly exhibition: string
  readonly title: string
  readonly work: string
  readonly section: string | null
}

export interface Placement {
  readonly id: string
  readonly entry: string
  readonly face: string
  readonly x: number
  readonly rule: string
  readonly y: number | null
  readonly held: number
  readonly state: string
  readonly fixing: string | null
  readonly keeper: string | null
  readonly lock_tool: string
  readonly hooks_apart: number | null
  readonly label_side: string
}

/** Entries of a work in shows that may still change. What a closed show had stays as it was. */
export function openEntriesOf(db: ReadHandle, work: string): readonly Entry[] {
  return rows<Entry>(
    db,
    `SELECT entry.id, entry.exhibition, exhibition.title, entry.work, entry.section FROM entry
     JOIN exhibition ON exhibition.id = entry.exhibition WHERE entry.work = :work AND exhibition.state <> 'closed'
     ORDER BY exhibition.position, entry.id`,
    { work },
  )
}

export function placementOf(db: ReadHandle, entry: string): Placement | undefined {
  return row<Placement>(db, 'SELECT * FROM placement WHERE entry = :entry', { entry })
}

/** Refuses a set in a set, a part of another set, a work that is not there. */
export function checkPart(db: ReadHandle, work: string, field: string): void {
  const found = row<{ parent: string | null }>(db, 'SELECT parent FROM work WHERE id = :work', { work })
  if (found === undefined) throw notFound('work', field)
  if (found.parent !== null) {
    throw new Refusal(
      'part-of-set',
      `${workName(db, work)} is a part of ${workName(db, found.parent)} already. Take it out there first.`,
      { field, details: { set: found.parent } },
    )
  }
  if (setFactsOf(db, work) !== undefined) {
    throw new Refusal('set-in-set', `${workName(db, work)} is a set itself. Take it apart first.`, { field })
  }
}

/** Entries of a work that may go into a set of these shows. Refuses `in-another-show`, `hung`, `held`, `drilled`. */
export function entriesToGive(
  db: ReadHandle,
  work: string,
  shows: ReadonlySet<string>,
  field: string,
): readonly Entry[] {
  const entries = openEntriesOf(db, work)
  for (const entry of entries) {
    if (!shows.has(entry.exhibition)) {
      throw new Refusal(
        'in-another-show',
        `${workName(db, work)} stands in ${entry.title} by itself. Take it out of that show, or make the set there.`,
        { field, details: { exhibition: entry.exhibition } },
      )
    }
    const placed = placementOf(db, entry.id)
    if (placed !== undefined) refuseFixed(db, placed, field)
  }
  return entries
}

/** Refuses to change a set that hangs, is held or drilled in any show that is open. */
export function refuseFrozen(db: ReadHandle, set: string, field: string): void {
  for (const entry of openEntriesOf(db, set)) {
    const placed = placementOf(db, entry.id)
    if (placed !== undefined) refuseFixed(db, placed, field)
  }
}

/** Takes a placement off its wall with its pencil marks; refused before where it hangs or is drilled. */
export function takeOff(writing: Writing, placement: string): void {
  const { db } = writing
  for (const mark of rows<{ id: string }>(db, `SELECT id FROM mark WHERE placement = :placement AND state = 'marked'`, {
    placement,
  })) {
    remove(db, 'mark', mark.id)
  }
  remove(db, 'placement', placement)
}

/** Kept layouts know a work by its entry; what they kept of a part alone or of a set is of no use to the other. */
export function forgetKept(writing: Writing, entry: string): void {
  for (const kept of rows<{ id: string }>(writing.db, 'SELECT id FROM kept_place WHERE entry = :entry', { entry })) {
    remove(writing.db, 'kept_place', kept.id)
  }
}

/** Takes an entry out of its show, and what stands on a wall for it. */
export function takeOut(writing: Writing, entry: Entry): void {
  openExhibition(writing.db, entry.exhibition)
  const placed = placementOf(writing.db, entry.id)
  if (placed !== undefined) takeOff(writing, placed.id)
  forgetKept(writing, entry.id)
  remove(writing.db, 'entry', entry.id)
}

type Own = Pick<Placement, 'fixing' | 'keeper' | 'lock_tool' | 'hooks_apart'>

/** What a part hung on by itself goes with it. */
export function keepFixing(writing: Writing, placement: string, work: string, own: Own): void {
  const { fixing, keeper, lock_tool, hooks_apart } = own
  if (fixing === null && keeper === null && lock_tool === '' && hooks_apart === null) return
  insert(writing.db, 'placement_part', {
    id: writing.newId(),
    placement,
    work,
    fixing,
    keeper,
    lock_tool,
    hooks_apart,
  })
}

/** Joins works to a set, in this order. */
export function setParts(writing: Writing, set: string, parts: readonly string[]): void {
  for (const [index, part] of parts.entries()) {
    update(writing.db, 'work', part, { parent: set, part_order: index + 1 })
  }
  update(writing.db, 'work', set, { parts_count: parts.length })
}
