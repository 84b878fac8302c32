/** Walls hung as a proposal has them: one edit, all or nothing. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { notFound } from '../change.ts'
import { openExhibition } from '../exhibitions/open.ts'
import type { Writing } from '../service.ts'
import { remove, row, rows, update, value } from '../sql.ts'
import {
  entryName,
  faceName,
  insertPlacement,
  placedSelect,
  refuseFixed,
  refuseOtherShow,
  type StoredPlacement,
} from '../walls/placements.ts'

export function take(writing: Writing, input: Received<'sequence.take'>): Output<'sequence.take'> {
  const { db } = writing
  const { exhibition, faces } = input
  openExhibition(db, exhibition)
  const given = new Set<string>()
  let placed = 0
  for (const [at, { face, works }] of faces.entries()) {
    refuseOtherShow(db, exhibition, face, `faces.${at}.face`)
    for (const [index, { entry, x, y, was }] of works.entries()) {
      const field = `faces.${at}.works.${index}.entry`
      if (given.has(entry)) throw new Refusal('work-twice', 'A work hangs in one place.', { field })
      given.add(entry)
      const of = value<string>(db, 'SELECT exhibition FROM entry WHERE id = :entry', { entry })
      if (of !== exhibition) throw notFound('work in this show', field)
      const stored = row<StoredPlacement>(db, `${placedSelect} WHERE entry = :entry`, { entry })
      if ((stored?.face ?? null) !== was) {
        const there = stored === undefined ? 'on no wall' : `on ${faceName(db, stored.face)}`
        throw new Refusal(
          'changed-meanwhile',
          `${entryName(db, entry)} is ${there} now. Ask for proposals again: these were made before.`,
          { field },
        )
      }
      // In a stack or grid, or on a base, a work has a height of its own; else its wall's rule holds.
      const spot = y == null ? { face, x, rule: 'face' as const, y: null } : { face, x, rule: 'centre' as const, y }
      if (stored === undefined) insertPlacement(db, writing.newId(), exhibition, entry, spot)
      else {
        refuseFixed(db, stored, field)
        update(db, 'placement', stored.id, spot)
      }
      placed += 1
    }
  }
  const off = takenOff(writing, input, given)
  const [first] = faces
  const where = faces.length === 1 && first ? faceName(db, first.face) : `${faces.length} walls`
  writing.label(`Hang ${where} as proposed`)
  return { placed, off }
}

/** What stood on these walls, may move, and has no place on them any more. */
function takenOff(
  { db }: Writing,
  { exhibition, faces }: Received<'sequence.take'>,
  given: ReadonlySet<string>,
): number {
  let off = 0
  for (const { face, others } of faces) {
    if (others === 'stay') continue
    for (const stored of rows<StoredPlacement>(
      db,
      `${placedSelect} WHERE exhibition = :exhibition AND face = :face AND held = 0 AND state = 'planned'
       AND NOT EXISTS (SELECT 1 FROM mark WHERE mark.placement = placement.id) ORDER BY id`,
      { exhibition, face },
    )) {
      if (given.has(stored.entry)) continue
      remove(db, 'placement', stored.id)
      off += 1
    }
  }
  return off
}
