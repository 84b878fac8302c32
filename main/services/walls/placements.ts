/** Works put on walls, moved, held, marked as hung, taken off. What hangs or is held does not move by a command about others. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { ReadHandle, WriteHandle } from '../../database/handles.ts'
import { type Clash, type Columns, changeFields, jsonColumn, notFound, yesNoColumn } from '../change.ts'
import { openExhibition } from '../exhibitions/open.ts'
import { wallCalled } from '../rooms/called.ts'
import type { Reading, Writing } from '../service.ts'
import { insert, remove as removeRow, row, rows, update, value } from '../sql.ts'
import { facePlanOf } from './face-plan.ts'

export interface StoredPlacement {
  readonly id: string
  readonly exhibition: string
  readonly entry: string
  readonly face: string
  readonly x: number
  readonly rule: 'face' | 'centre' | 'top' | 'bottom' | 'eye' | 'hand'
  readonly y: number | null
  readonly held: number
  readonly state: string
  readonly hooks_apart: number | null
}

export const placedSelect = 'SELECT id, exhibition, entry, face, x, rule, y, held, state, hooks_apart FROM placement'

export function faceName(db: ReadHandle, face: string, field = 'face'): string {
  const name = value<string>(
    db,
    `SELECT room.name || ' ' || ${wallCalled} FROM face JOIN wall ON wall.id = face.wall JOIN room ON room.id = wall.room
     WHERE face.id = :face`,
    { face },
  )
  if (name === undefined) throw notFound('wall', field)
  return name
}

/** The face as a show may use it: of a wall of the building, or of a partition of its own. Refuses `not-found`. */
export function refuseOtherShow(db: ReadHandle, exhibition: string, face: string, field = 'face'): void {
  const free = value(
    db,
    `SELECT 1 FROM face JOIN wall ON wall.id = face.wall
     WHERE face.id = :face AND (wall.exhibition IS NULL OR wall.exhibition = :exhibition)`,
    { face, exhibition },
  )
  if (free === undefined) throw notFound('wall in this show', field)
}

export function entryName(db: ReadHandle, entry: string): string {
  const found = row<{ running: string; title: string }>(
    db,
    'SELECT entry.running, work.title FROM entry JOIN work ON work.id = entry.work WHERE entry.id = :entry',
    { entry },
  )
  return found === undefined ? 'a work' : [found.running, found.title].filter(text => text !== '').join(' ')
}

/** Refuses to move what hangs (`hung`), is held (`held`) or has holes in the wall where it is (`drilled`). */
export function refuseFixed(
  db: ReadHandle,
  stored: { readonly id: string; readonly entry: string; readonly held: number; readonly state: string },
  field: string,
): void {
  const named = entryName(db, stored.entry)
  if (stored.state !== 'planned') {
    throw new Refusal('hung', `${named} is ${stored.state}. Take it down before you move it.`, { field })
  }
  if (stored.held === 1) throw new Refusal('held', `${named} is held here. Let it go before you move it.`, { field })
  const holes = row(db, `SELECT 1 FROM mark WHERE placement = :id AND state = 'drilled' LIMIT 1`, { id: stored.id })
  if (holes !== undefined) {
    throw new Refusal('drilled', `${named} is drilled here. Ask for a late change: it says what moving it costs.`, {
      field,
    })
  }
}

type Place = Received<'placement.put'>['places'][number]
type Spot = Pick<Place, 'face' | 'x' | 'rule' | 'y'>

function spot({ face, x, rule, y }: Spot): Spot {
  return { face, x, rule, y }
}

/** A new placement: planned, free, nothing chosen yet. */
export function insertPlacement(db: WriteHandle, id: string, exhibition: string, entry: string, at: Spot): void {
  insert(db, 'placement', {
    id,
    exhibition,
    entry,
    ...at,
    held: 0,
    state: 'planned',
    fixing: null,
    keeper: null,
    lock_tool: '',
    hooks_apart: null,
    label_side: '',
    note: '',
  })
}

function sameSpot(a: Spot, b: Spot): boolean {
  return a.face === b.face && Math.abs(a.x - b.x) < 1e-6 && a.rule === b.rule && a.y === b.y
}

export function put(writing: Writing, input: Received<'placement.put'>): Output<'placement.put'> {
  const { db } = writing
  openExhibition(db, input.exhibition)
  const placements: string[] = []
  const clashes: Clash[] = []
  for (const [index, place] of input.places.entries()) {
    const field = `places.${index}`
    const of = value<string>(db, 'SELECT exhibition FROM entry WHERE id = :entry', { entry: place.entry })
    if (of !== input.exhibition) throw notFound('work in this show', `${field}.entry`)
    refuseOtherShow(db, input.exhibition, place.face, `${field}.face`)
    const stored = row<StoredPlacement>(db, `${placedSelect} WHERE entry = :entry`, { entry: place.entry })
    const there = stored === undefined ? null : spot(stored)
    const hooks = stored?.hooks_apart ?? null
    const sameHooks = place.hooksApart === undefined || place.hooksApart.to === hooks
    if (there !== null && sameSpot(there, place) && sameHooks) {
      placements.push(stored?.id ?? '')
      continue
    }
    if (place.hooksApart !== undefined && !sameHooks && place.hooksApart.was !== hooks) {
      const { was, to } = place.hooksApart
      clashes.push({ code: 'clash', id: place.entry, field: 'hooksApart', was, yours: to, theirs: hooks })
      continue
    }
    if (there === null ? place.was !== null : place.was === null || !sameSpot(there, place.was)) {
      clashes.push({
        code: 'clash',
        id: place.entry,
        field: 'place',
        was: place.was,
        yours: spot(place),
        theirs: there,
      })
      continue
    }
    if (stored === undefined) {
      const id = writing.newId()
      insertPlacement(db, id, input.exhibition, place.entry, spot(place))
      if (place.hooksApart !== undefined) update(db, 'placement', id, { hooks_apart: place.hooksApart.to })
      placements.push(id)
    } else {
      refuseFixed(db, stored, field)
      const apart = place.hooksApart === undefined ? {} : { hooks_apart: place.hooksApart.to }
      update(db, 'placement', stored.id, { ...spot(place), ...apart })
      placements.push(stored.id)
    }
  }
  const [first] = input.places
  const what = input.places.length === 1 && first ? entryName(db, first.entry) : `${input.places.length} works`
  writing.label(input.label ?? `Place ${what} on ${first ? faceName(db, first.face) : 'a wall'}`)
  return { placements, clashes }
}

function placed(db: ReadHandle, id: string, field: string): StoredPlacement {
  const stored = row<StoredPlacement>(db, `${placedSelect} WHERE id = :id`, { id })
  if (stored === undefined) throw notFound('work on a wall', field)
  openExhibition(db, stored.exhibition, field)
  return stored
}

function all(db: ReadHandle, ids: readonly string[]): StoredPlacement[] {
  return [...new Set(ids)].map((id, index) => placed(db, id, `placements.${index}`))
}

function count(works: readonly unknown[], db: ReadHandle, first: StoredPlacement | undefined): string {
  return works.length === 1 && first ? entryName(db, first.entry) : `${works.length} works`
}

export function remove(writing: Writing, input: Received<'placement.remove'>): Output<'placement.remove'> {
  const { db } = writing
  const works = all(db, input.placements)
  for (const [index, stored] of works.entries()) refuseFixed(db, stored, `placements.${index}`)
  writing.label(`Take ${count(works, db, works[0])} off the wall`)
  for (const stored of works) removeRow(db, 'placement', stored.id)
  return { removed: works.length }
}

const columns: Columns = {
  held: yesNoColumn('held'),
  fixing: 'fixing',
  keeper: 'keeper',
  lockTool: 'lock_tool',
  hooksApart: 'hooks_apart',
  labelSide: 'label_side',
  note: 'note',
}

export function change(writing: Writing, { id, changes }: Received<'placement.update'>): Output<'placement.update'> {
  const { db } = writing
  const stored = placed(db, id, 'id')
  for (const field of ['fixing', 'keeper'] as const) {
    const fixing = changes[field]?.to
    if (
      typeof fixing === 'string' &&
      value(db, 'SELECT id FROM fixing_kind WHERE id = :fixing', { fixing }) === undefined
    ) {
      throw notFound('fixing', `changes.${field}.to`)
    }
  }
  writing.label(`Change how ${entryName(db, stored.entry)} is fixed`)
  const { saved, clashes } = changeFields(writing, 'placement', id, changes, columns, 'work on a wall')
  return { saved, clashes }
}

export function hold(writing: Writing, { placements, held }: Received<'placement.hold'>): Output<'placement.hold'> {
  const works = all(writing.db, placements)
  writing.label(`${held ? 'Hold' : 'Let go'} ${count(works, writing.db, works[0])}`)
  let changed = 0
  for (const stored of works) {
    if ((stored.held === 1) === held) continue
    update(writing.db, 'placement', stored.id, { held: held ? 1 : 0 })
    changed++
  }
  return { changed }
}

export function setState(
  writing: Writing,
  { placements, to }: Received<'placement.setState'>,
): Output<'placement.setState'> {
  const works = all(writing.db, placements)
  writing.label(`${count(works, writing.db, works[0])}: ${to}`)
  let changed = 0
  for (const stored of works) {
    if (stored.state === to) continue
    if (to === 'checked') refuseOwnCheck(writing, stored)
    writeStep(writing, stored.id, to)
    changed++
  }
  return { changed }
}

/** One state after another, each with its time and name. */
export function writeStep(writing: Writing, placement: string, state: StoredPlacement['state']): void {
  const { db } = writing
  update(db, 'placement', placement, { state })
  insert(db, 'placement_step', {
    id: writing.newId(),
    placement,
    state,
    at: writing.now(),
    by: writing.person?.name ?? '',
  })
}

export function steps({ db }: Reading, { exhibition, face }: Received<'placement.steps'>): Output<'placement.steps'> {
  faceName(db, face)
  return {
    steps: rows<Output<'placement.steps'>['steps'][number]>(
      db,
      `SELECT step.placement, step.state, step.at, step.by FROM placement_step AS step
       JOIN placement ON placement.id = step.placement
       WHERE placement.exhibition = :exhibition AND placement.face = :face ORDER BY step.at, step.id`,
      { exhibition, face },
    ),
  }
}

/** Checked means by a second person, by name, of what hangs; where nobody said who hung it, the name is enough. */
function refuseOwnCheck({ db, person }: Writing, stored: StoredPlacement): void {
  const name = entryName(db, stored.entry)
  const refuse = (code: string, text: string) => new Refusal(code, text, { field: 'to' })
  if (stored.state === 'planned') {
    throw refuse('not-hung', `${name} does not hang yet: tell that it does, then somebody else checks it.`)
  }
  if (person === null) throw refuse('no-name', 'A second check has a name: say who is at this desk.')
  const hung = row<{ by: string }>(
    db,
    `SELECT "by" FROM placement_step WHERE placement = :id AND state IN ('hung', 'level', 'locked')
     ORDER BY state <> 'hung', at DESC, id DESC LIMIT 1`,
    { id: stored.id },
  )
  if (hung === undefined || hung.by === '' || hung.by !== person.name) return
  throw refuse('same-person', `${hung.by} hung ${name}: somebody else checks it.`)
}

const planColumns: Columns = {
  centreLine: 'centre_line',
  rule: 'rule',
  eyeFraction: 'eye_fraction',
  plannedLux: 'planned_lux',
  visitorOrder: 'visitor_order',
  viewingDistance: 'viewing_distance',
  viewers: jsonColumn('viewers', []),
  colour: 'colour',
  note: 'note',
}

export function plan(writing: Writing, input: Received<'wall.plan'>): Output<'wall.plan'> {
  const { db } = writing
  const { exhibition, face } = input
  openExhibition(db, exhibition)
  refuseOtherShow(db, exhibition, face)
  writing.label(`Plan ${faceName(db, face)}`)
  const id = facePlanOf(writing, exhibition, face)
  const { saved, clashes } = changeFields(writing, 'face_plan', id, input.changes, planColumns, 'wall plan')
  return { saved, clashes }
}
