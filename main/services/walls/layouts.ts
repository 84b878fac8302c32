/** Layouts of a wall kept under a name: kept, compared with today, taken back as one edit. */

import type { PlacedWork } from '../../../src/contract/areas/walls.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { centreOnFace } from '../../../src/model/centre-on-face.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { openExhibition } from '../exhibitions/open.ts'
import type { Reading, Writing } from '../service.ts'
import { insert, remove as removeRow, row, rows, update } from '../sql.ts'
import { facePlanOf, placedOn } from './elevation.ts'
import { entryName, faceName, insertPlacement } from './placements.ts'

interface Layout {
  readonly id: string
  readonly exhibition: string
  readonly face: string
  readonly name: string
}

interface KeptPlace {
  readonly entry: string
  readonly x: number
  readonly rule: PlacedWork['rule']
  readonly y: number | null
  readonly held: number
}

function layoutOf(db: ReadHandle, id: string): Layout {
  const found = row<Layout>(db, 'SELECT id, exhibition, face, name FROM kept_layout WHERE id = :id', { id })
  if (found === undefined) throw notFound('kept layout')
  return found
}

function placesOf(db: ReadHandle, layout: string): KeptPlace[] {
  return rows(db, 'SELECT entry, x, rule, y, held FROM kept_place WHERE layout = :layout ORDER BY x, id', { layout })
}

export function keep(writing: Writing, input: Received<'layout.keep'>): Output<'layout.keep'> {
  const { db } = writing
  const { exhibition, face, name } = input
  openExhibition(db, exhibition)
  writing.label(`Keep the layout of ${faceName(db, face)} as ${name}`)
  const works = placedOn(db, exhibition, face, facePlanOf(db, exhibition, face))
  if (works.length === 0)
    throw new Refusal('nothing-here', 'No work stands on this wall yet, so there is nothing to keep.', {
      field: 'face',
    })
  const id = writing.newId()
  insert(db, 'kept_layout', { id, exhibition, face, name, at: writing.now(), by: writing.person?.name ?? '' })
  for (const { entry, x, rule, y, held } of works) {
    insert(db, 'kept_place', { id: writing.newId(), layout: id, entry, x, rule, y, held: held ? 1 : 0 })
  }
  return { id }
}

export function compare({ db }: Reading, { id }: Received<'layout.compare'>): Output<'layout.compare'> {
  const { exhibition, face, name } = layoutOf(db, id)
  const plan = facePlanOf(db, exhibition, face)
  const here = placedOn(db, exhibition, face, plan)
  const then = new Map(placesOf(db, id).map(place => [place.entry, place]))
  const entries = [...new Set([...then.keys(), ...here.map(work => work.entry)])]
  return {
    name,
    places: entries.map(entry => {
      const facts = row<{
        running: string
        title: string
        height: number | null
        width: number | null
        face: string | null
      }>(
        db,
        `SELECT entry.running, work.title, work.hang_height AS height, work.hang_width AS width, placement.face
         FROM entry JOIN work ON work.id = entry.work LEFT JOIN placement ON placement.entry = entry.id WHERE entry.id = :entry`,
        { entry },
      )
      const kept = then.get(entry)
      const now = here.find(work => work.entry === entry)
      const elsewhere =
        now === undefined && facts?.face != null ? placedElsewhere(db, exhibition, facts.face, entry) : undefined
      const stands = now ?? elsewhere
      return {
        entry,
        running: facts?.running ?? '',
        title: facts?.title ?? '',
        kept: kept === undefined ? null : { x: kept.x, centreY: centreOnFace(kept, plan, facts?.height ?? 0) },
        now: stands === undefined ? null : { x: stands.x, centreY: stands.centreY, here: stands === now },
        size: stands?.size ?? sizeOf(db, entry),
      }
    }),
  }
}

function placedElsewhere(db: ReadHandle, exhibition: string, face: string, entry: string): PlacedWork | undefined {
  return placedOn(db, exhibition, face, facePlanOf(db, exhibition, face)).find(work => work.entry === entry)
}

function sizeOf(db: ReadHandle, entry: string): PlacedWork['size'] {
  const found = row<{
    height: number | null
    width: number | null
    depth: number | null
    diameter: number | null
    part: NonNullable<PlacedWork['size']>['part']
    kind: NonNullable<PlacedWork['size']>['kind']
    at: string
  }>(
    db,
    `SELECT hang_height AS height, hang_width AS width, hang_depth AS depth, hang_diameter AS diameter, hang_part AS part,
      hang_source AS kind, hang_at AS at FROM work JOIN entry ON entry.work = work.id WHERE entry.id = :entry`,
    { entry },
  )
  if (found === undefined || found.height === null || found.width === null) return null
  return { ...found, height: found.height, width: found.width }
}

export function take(writing: Writing, { id }: Received<'layout.take'>): Output<'layout.take'> {
  const { db } = writing
  const { exhibition, face, name } = layoutOf(db, id)
  openExhibition(db, exhibition, 'id')
  writing.label(`Take back the layout ${name} of ${faceName(db, face)}`)
  const kept = placesOf(db, id)
  const wanted = new Set(kept.map(place => place.entry))
  const stayed: string[] = []
  let moved = 0
  let added = 0
  let takenOff = 0
  const fixed = (one: { readonly held: number; readonly state: string }) => one.held === 1 || one.state !== 'planned'
  interface Now extends KeptPlace {
    readonly id: string
    readonly face: string
    readonly state: string
  }
  const now = rows<Now>(
    db,
    'SELECT id, face, entry, x, rule, y, held, state FROM placement WHERE exhibition = :exhibition ORDER BY id',
    { exhibition },
  )
  for (const one of now) {
    if (one.face !== face || wanted.has(one.entry)) continue
    if (fixed(one)) stayed.push(entryName(db, one.entry))
    else {
      removeRow(db, 'placement', one.id)
      takenOff++
    }
  }
  const byEntry = new Map(now.map(one => [one.entry, one]))
  for (const { entry, x, rule, y } of kept) {
    const stands = byEntry.get(entry)
    if (stands === undefined) {
      insertPlacement(db, writing.newId(), exhibition, entry, { face, x, rule, y })
      added++
    } else if (stands.face === face && stands.x === x && stands.rule === rule && stands.y === y) continue
    else if (fixed(stands)) stayed.push(entryName(db, entry))
    else {
      update(db, 'placement', stands.id, { face, x, rule, y })
      moved++
    }
  }
  return { moved, added, takenOff, stayed }
}

export function remove(writing: Writing, { id }: Received<'layout.remove'>): Output<'layout.remove'> {
  const { name } = layoutOf(writing.db, id)
  writing.label(`Forget the layout ${name}`)
  for (const place of rows<{ id: string }>(writing.db, 'SELECT id FROM kept_place WHERE layout = :id', { id })) {
    removeRow(writing.db, 'kept_place', place.id)
  }
  removeRow(writing.db, 'kept_layout', id)
  return { done: true }
}
