/** Several works made into one set, as one edit. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { centreOf } from '../../../src/geometry/rect.ts'
import { checkForm } from '../../../src/layout/set.ts'
import { bounds } from '../../../src/layout/snap.ts'
import { rectOf } from '../../../src/model/hung-rect.ts'
import { workFacts } from '../../../src/model/work-facts.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { addEntry } from '../exhibitions/entries.ts'
import { openExhibition } from '../exhibitions/open.ts'
import type { Writing } from '../service.ts'
import { insert, row, update, type Value } from '../sql.ts'
import { facePlanOf, placedOn } from '../walls/elevation.ts'
import { insertPlacement } from '../walls/placements.ts'
import { sortKeys, workName } from '../works/facts.ts'
import { refreshMass, refreshSize } from '../works/figures.ts'
import {
  checkPart,
  type Entry,
  entriesToGive,
  forgetKept,
  keepFixing,
  type Placement,
  placementOf,
  setParts,
  takeOff,
  takeOut,
} from './parts.ts'

export function make(writing: Writing, input: Received<'set.make'>): Output<'set.make'> {
  const { db } = writing
  const { works, exhibition, form, columns = null, gapX, gapY, keeps = '' } = input
  checkWorks(db, works)
  checkForm({ form, columns, gapX, gapY })
  if (exhibition !== undefined) openExhibition(db, exhibition)
  const shows = new Set(exhibition === undefined ? [] : [exhibition])
  const entries = works.flatMap((work, index) => entriesToGive(db, work, shows, `works.${index}`))
  const facts = agreed(db, works)
  const title = input.title ?? titleOf(db, works)
  writing.label(`Make a set of ${works.length} works: ${title}`)
  const set = writing.newId()
  insert(db, 'work', {
    ...facts,
    id: set,
    title,
    ...sortKeys(title, String(facts.maker ?? '')),
    set_form: form,
    set_columns: form === 'grid' ? columns : null,
    set_gap_x: gapX,
    set_gap_y: gapY,
    set_keeps: keeps,
    created_at: writing.now(),
  })
  const stood = spotOf(db, exhibition, entries)
  setParts(writing, set, works)
  refreshSize(db, set)
  refreshMass(db, set)
  const entry = exhibition === undefined ? null : enter(writing, exhibition, set, entries)
  const placement = entry === null || stood === null ? null : stand(writing, exhibition ?? '', entry, stood)
  return {
    id: set,
    entry,
    placement,
    entriesTaken: entries.length,
    placementsTaken: stood?.from.length ?? 0,
  }
}

function checkWorks(db: ReadHandle, works: readonly string[]): void {
  if (works.length < 2) throw new Refusal('set-too-small', 'A set is made of two works or more.', { field: 'works' })
  for (const [index, work] of works.entries()) {
    if (works.indexOf(work) !== index) {
      throw new Refusal('part-twice', 'This work is in the set already.', { field: `works.${index}` })
    }
    checkPart(db, work, `works.${index}`)
  }
}

const columns = [...Object.values(workFacts).map(fact => fact.column), 'uv_limit']

/** Facts on which all parts agree are the set's too; the others stay with the parts. */
function agreed(db: ReadHandle, works: readonly string[]): Record<string, Value> {
  const all = works.map(work => row<Record<string, Value>>(db, 'SELECT * FROM work WHERE id = :work', { work }) ?? {})
  const [first] = all
  if (first === undefined) return {}
  return Object.fromEntries(
    columns
      .filter(column => all.every(one => one[column] === first[column]))
      .map(column => [column, first[column] ?? null]),
  )
}

/** The words that all titles begin with, else the first title with how many more. */
function titleOf(db: ReadHandle, works: readonly string[]): string {
  const titles = works.map(work => workName(db, work).split(' '))
  const [first = []] = titles
  let same = 0
  while (same < first.length && titles.every(words => words[same] === first[same])) same++
  const begun = first
    .slice(0, same)
    .join(' ')
    .replace(/[\s,:;–-]+$/, '')
  if (begun.length >= 3) return begun
  return `${first.join(' ')} and ${works.length - 1} more`
}

/** The entry of the first part becomes that of the set: its place, number and status stay. The others go. */
function enter(writing: Writing, exhibition: string, set: string, entries: readonly Entry[]): string {
  const [first, ...rest] = entries
  if (first === undefined) return addEntry(writing, exhibition, set, null)
  const placed = placementOf(writing.db, first.id)
  if (placed !== undefined) takeOff(writing, placed.id)
  forgetKept(writing, first.id)
  // What its label said was proofed for the part alone.
  update(writing.db, 'entry', first.id, { work: set, label_proofed: '' })
  for (const entry of rest) takeOut(writing, entry)
  return first.id
}

interface Stood {
  readonly face: string
  /** Middle of the parts that stood on that face. */
  readonly x: number
  readonly y: number
  /** All of them followed the wall's own height. */
  readonly follows: boolean
  readonly from: readonly (Placement & { readonly work: string })[]
}

/** Where the parts stood together: on the wall of the first of them. */
function spotOf(db: ReadHandle, exhibition: string | undefined, entries: readonly Entry[]): Stood | null {
  const from = entries.flatMap(entry => {
    const placed = placementOf(db, entry.id)
    return placed === undefined ? [] : [{ ...placed, work: entry.work }]
  })
  const [first] = from
  if (first === undefined || exhibition === undefined) return null
  const { face } = first
  const ids = new Set(from.filter(one => one.face === face).map(one => one.id))
  const there = placedOn(db, exhibition, face, facePlanOf(db, exhibition, face)).filter(one => ids.has(one.placement))
  // A work without a size counts by its middle.
  const whole = bounds(there.map(one => rectOf(one) ?? { x: one.x, y: one.centreY, width: 0, height: 0 }))
  if (whole === null) return null
  return {
    face,
    ...centreOf(whole),
    follows: there.every(one => one.rule === 'face'),
    from,
  }
}

function stand(writing: Writing, exhibition: string, entry: string, stood: Stood): string {
  const { face, x, y, follows, from } = stood
  const id = writing.newId()
  const at = follows ? ({ face, x, rule: 'face', y: null } as const) : ({ face, x, rule: 'hand', y } as const)
  insertPlacement(writing.db, id, exhibition, entry, at)
  update(writing.db, 'placement', id, { label_side: from[0]?.label_side ?? '' })
  for (const part of from) keepFixing(writing, id, part.work, part)
  return id
}
