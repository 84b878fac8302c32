/** A set taken apart, as one edit: the reverse of making it. */

import type { PlacedWork } from '../../../src/contract/areas/walls.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { hungOf } from '../../../src/model/parts-of-set.ts'
import { notFound } from '../change.ts'
import { addEntry } from '../exhibitions/entries.ts'
import { moveBefore, orderedRows } from '../order.ts'
import type { Writing } from '../service.ts'
import { row, rows, update } from '../sql.ts'
import { facePlanOf, placedOn } from '../walls/elevation.ts'
import { insertPlacement } from '../walls/placements.ts'
import { removeWork, workName } from '../works/facts.ts'
import { partIdsOf, setFactsOf } from './figures.ts'
import { forgetKept, openEntriesOf, placementOf, refuseFrozen, takeOff } from './parts.ts'

export function takeApart(writing: Writing, { id }: Received<'set.takeApart'>): Output<'set.takeApart'> {
  const { db } = writing
  if (setFactsOf(db, id) === undefined) throw notFound('set')
  const closed = rows<{ title: string }>(
    db,
    `SELECT exhibition.title FROM entry JOIN exhibition ON exhibition.id = entry.exhibition
     WHERE entry.work = :id AND exhibition.state = 'closed'`,
    { id },
  )
  if (closed.length > 0) {
    throw new Refusal(
      'shown-as-set',
      `${workName(db, id)} was shown as a set in ${closed.map(show => show.title).join(', ')}, which is closed: it stays one there.`,
      { field: 'id' },
    )
  }
  refuseFrozen(db, id, 'id')
  const parts = partIdsOf(db, id)
  writing.label(`Take the set ${workName(db, id)} apart`)
  const entries: string[] = []
  const placements: string[] = []
  for (const entry of openEntriesOf(db, id)) {
    const stood = placedParts(writing, entry)
    const placed = placementOf(db, entry.id)
    if (placed !== undefined) takeOff(writing, placed.id)
    forgetKept(writing, entry.id)
    const [first = '', ...rest] = parts
    update(db, 'entry', entry.id, { work: first, label_proofed: '' })
    const own = [entry.id, ...rest.map(part => addEntry(writing, entry.exhibition, part, entry.section))]
    behind(writing, entry, own.slice(1))
    for (const [index, part] of parts.entries()) {
      const at = stood.get(part)
      const of = own[index]
      if (at === undefined || of === undefined || placed === undefined) continue
      const placement = writing.newId()
      insertPlacement(db, placement, entry.exhibition, of, { face: placed.face, x: at.x, rule: 'hand', y: at.centreY })
      update(db, 'placement', placement, {
        fixing: at.fixing?.id ?? null,
        keeper: at.keeper?.id ?? null,
        lock_tool: at.lockTool,
        hooks_apart: at.hooksApart,
        label_side: index === 0 ? placed.label_side : '',
      })
      placements.push(placement)
    }
    entries.push(...own)
  }
  for (const part of parts) update(db, 'work', part, { parent: null, part_order: null })
  removeWork(writing, id)
  return { works: parts, entries: entries.length, placements: placements.length }
}

/** Each part as it hangs, by its work; nothing where the set is not placed or cannot be laid. */
function placedParts(
  writing: Writing,
  entry: { readonly id: string; readonly exhibition: string },
): ReadonlyMap<string, PlacedWork> {
  const placed = placementOf(writing.db, entry.id)
  if (placed === undefined) return new Map()
  const plan = facePlanOf(writing.db, entry.exhibition, placed.face)
  const work = placedOn(writing.db, entry.exhibition, placed.face, plan).find(one => one.placement === placed.id)
  return new Map(work === undefined ? [] : hungOf(work).map(part => [part.work, part]))
}

/** Entries right behind another one, in this order. */
function behind(
  writing: Writing,
  entry: { readonly id: string; readonly exhibition: string; readonly section: string | null },
  ids: readonly string[],
): void {
  const ordered = orderedRows(writing.db, 'entry', 'exhibition = :exhibition AND section IS :section', {
    exhibition: entry.exhibition,
    section: entry.section,
  })
  const at = ordered.findIndex(each => each.id === entry.id)
  const next = ordered.slice(at + 1).find(each => !ids.includes(each.id))
  moveBefore(writing.db, 'entry', ordered, ids, next?.id ?? null)
}

/** The entry of a part that leaves its set, right behind that of the set. */
export function enterBehind(
  writing: Writing,
  entry: { readonly id: string; readonly exhibition: string; readonly section: string | null },
  works: readonly string[],
): void {
  const ids = works.flatMap(work => {
    const there = row(writing.db, 'SELECT id FROM entry WHERE exhibition = :exhibition AND work = :work', {
      exhibition: entry.exhibition,
      work,
    })
    return there === undefined ? [addEntry(writing, entry.exhibition, work, entry.section)] : []
  })
  behind(writing, entry, ids)
}
