/**
 * Measures of a room, changed. The figure in force of a wall or corner is its newest used measured row, else its newest
 * used drawn one; `wall.length` and `corner.angle` keep it, so that everything that reads them goes on.
 */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { formatLength } from '../../../src/measure/format.ts'
import { cornerBounds } from '../../../src/model/corner.ts'
import { measureName } from '../../../src/plan/survey.ts'
import { changeFields, notFound, yesNoColumn } from '../change.ts'
import { drawRoom } from '../rooms/draw.ts'
import type { Writing } from '../service.ts'
import { insert, remove, row, update, value } from '../sql.ts'
import { type StoredSide, type StoredSurvey, sidesOf, surveyRowsOf } from './survey-read.ts'

type Kind = StoredSurvey['kind']

export function addMeasure(writing: Writing, input: Received<'survey.add'>): Output<'survey.add'> {
  const { db } = writing
  const room = value<string>(db, 'SELECT name FROM room WHERE id = :id', { id: input.room })
  if (room === undefined) throw notFound('room', 'room')
  const sides = sidesOf(db, input.room)
  if (sides.length < 3) {
    throw new Refusal('room-open', 'Add walls until they come round to the first; then it can be measured across.', {
      field: 'room',
    })
  }
  const place = (corner: string, field: string) => {
    const at = sides.findIndex(({ from }) => from === corner)
    if (at < 0) throw notFound('corner of this room', field)
    return at
  }
  const from = place(input.from, 'from')
  const to = input.to === null ? from : place(input.to, 'to')
  if (input.to === input.from) {
    throw new Refusal('same-corner', 'A length runs between two corners. Name another.', { field: 'to' })
  }
  const kind = kindOf(from, input.to === null ? null : to, sides.length)
  if (kind === 'angle') refuseAngle(input.value, 'value')
  const side = kind === 'side' ? sides[sideAt(from, to, sides.length)] : undefined
  writing.label(`Measure ${measureName({ kind, from, to })} of ${room}: ${said(kind, input.value)}`)
  if (side !== undefined) keepSide(writing, input.room, side)
  if (kind === 'angle') {
    const before = sides.find(each => each.to === input.from)
    if (before !== undefined) keepCorner(writing, input.room, before)
  }
  const id = insertRow(writing, input.room, {
    kind,
    wall: side?.id ?? null,
    from: kind === 'side' ? null : input.from,
    to: kind === 'diagonal' ? input.to : null,
    value: input.value,
    text: input.text ?? '',
    how: input.how ?? 'measured',
    note: input.note ?? '',
  })
  keepInForce(writing, input.room)
  return { id }
}

function kindOf(from: number, to: number | null, count: number): Kind {
  if (to === null) return 'angle'
  const apart = Math.abs(from - to)
  return apart === 1 || apart === count - 1 ? 'side' : 'diagonal'
}

/** A wall begins at the corner of its own place. */
const sideAt = (from: number, to: number, count: number) => ((from + 1) % count === to ? from : to)

function refuseAngle(degrees: number, field: string): void {
  const { least, most } = cornerBounds
  if (degrees > least && degrees < most) return
  throw new Refusal('no-angle', `The angle of a corner lies between ${least}° and ${most}°.`, { field })
}

const said = (kind: Kind, of: number) => (kind === 'angle' ? `${of}°` : formatLength(of, { unit: 'mm' }))

function measureOf(writing: Writing, id: string) {
  const found = row<{ room: string; name: string; kind: Kind; value: number }>(
    writing.db,
    `SELECT survey.room, room.name, survey.kind, survey.value FROM survey JOIN room ON room.id = survey.room
     WHERE survey.id = :id`,
    { id },
  )
  if (found === undefined) throw notFound('measure')
  return found
}

export function changeMeasure(writing: Writing, { id, changes }: Received<'survey.update'>): Output<'survey.update'> {
  const { room, name, kind, value: was } = measureOf(writing, id)
  if (kind === 'angle' && changes.value !== undefined) refuseAngle(changes.value.to, 'changes.value.to')
  writing.label(`Change a measure of ${name}, ${said(kind, changes.value?.to ?? was)}`)
  const columns = { value: 'value', text: 'text', used: yesNoColumn('used'), note: 'note' }
  const { saved, clashes } = changeFields(writing, 'survey', id, changes, columns, 'measure')
  keepInForce(writing, room)
  return { saved, clashes }
}

export function removeMeasure(writing: Writing, { id }: Received<'survey.remove'>): Output<'survey.remove'> {
  const { room, name, kind, value: was } = measureOf(writing, id)
  writing.label(`Remove a measure of ${name}, ${said(kind, was)}`)
  remove(writing.db, 'survey', id)
  keepInForce(writing, room)
  return { done: true }
}

type NewRow = Pick<StoredSurvey, 'kind' | 'wall' | 'from' | 'to' | 'value' | 'text' | 'how' | 'note'>

function insertRow(writing: Writing, room: string, { from, to, ...measure }: NewRow, more: Partial<StoredSurvey> = {}) {
  const id = writing.newId()
  const { used = true, at = writing.now(), by = writing.person?.name ?? '' } = more
  insert(writing.db, 'survey', { id, room, ...measure, from_corner: from, to_corner: to, used: used ? 1 : 0, at, by })
  return id
}

const side = (wall: string) => ({ kind: 'side', wall, from: null, to: null, note: '' }) as const
const corner = (from: string) => ({ kind: 'angle', wall: null, from, to: null, note: '' }) as const

/** The figure that a wall had before anything was surveyed stays as a row that does not count. */
function keepSide(writing: Writing, room: string, before: StoredSide): void {
  if (surveyRowsOf(writing.db, room).some(one => one.wall === before.id)) return
  const { length, lengthText, measuredAt, measuredBy } = before
  const row = { ...side(before.id), value: length, text: lengthText, how: 'measured' } as const
  insertRow(writing, room, row, { used: false, at: measuredAt, by: measuredBy })
}

/** And that of a corner, where somebody had given it one. */
function keepCorner(writing: Writing, room: string, { to, angle, measuredAt, measuredBy }: StoredSide): void {
  if (angle === null || angle === 90 || angle === 180) return
  if (surveyRowsOf(writing.db, room).some(one => one.kind === 'angle' && one.from === to)) return
  const row = { ...corner(to), value: angle, text: '', how: 'measured' } as const
  insertRow(writing, room, row, { used: false, at: measuredAt, by: measuredBy })
}

/** A length typed for a wall is its measure from now on; what was measured before stays and no longer counts. */
export function measureSide(writing: Writing, room: string, before: StoredSide): void {
  const { db } = writing
  const now = sidesOf(db, room).find(({ id }) => id === before.id)
  if (now === undefined) return
  const { measuredAt: at, measuredBy: by } = { measuredAt: writing.now(), measuredBy: writing.person?.name ?? '' }
  update(db, 'wall', now.id, { measured_at: at, measured_by: by })
  if (now.length === before.length) return
  keepSide(writing, room, before)
  setAside(writing, room, one => one.wall === now.id)
  insertRow(writing, room, { ...side(now.id), value: now.length, text: now.lengthText, how: 'measured' })
}

/** An angle typed for the corner at a wall's right end, alike; an emptied one leaves none that counts. */
export function measureCorner(writing: Writing, room: string, before: StoredSide): void {
  const now = sidesOf(writing.db, room).find(({ id }) => id === before.id)
  if (now === undefined || now.angle === before.angle) return
  keepCorner(writing, room, before)
  setAside(writing, room, one => one.kind === 'angle' && one.from === now.to)
  if (now.angle !== null) insertRow(writing, room, { ...corner(now.to), value: now.angle, text: '', how: 'measured' })
}

/**
 * Lengths and angles that a hand drew anew, in the order of the walls, null where it left them; what was measured of them stays and no longer
 * counts, as do the diagonals that are named.
 */
export function redraw(
  writing: Writing,
  room: string,
  lengths: readonly (number | null)[],
  angles: readonly (number | null)[],
  diagonals: readonly string[],
): void {
  for (const [at, before] of sidesOf(writing.db, room).entries()) {
    const [length = null, angle = null] = [lengths[at], angles[at]]
    if (length !== null) {
      keepSide(writing, room, before)
      setAside(writing, room, one => one.wall === before.id)
      insertRow(writing, room, { ...side(before.id), value: length, text: '', how: 'drawn' })
    }
    if (angle !== null) {
      keepCorner(writing, room, before)
      setAside(writing, room, one => one.kind === 'angle' && one.from === before.to)
      insertRow(writing, room, { ...corner(before.to), value: angle, text: '', how: 'drawn' })
    }
  }
  setAside(writing, room, ({ id }) => diagonals.includes(id))
  keepInForce(writing, room)
}

function setAside({ db }: Writing, room: string, which: (row: StoredSurvey) => boolean): void {
  for (const one of surveyRowsOf(db, room)) {
    if (one.used && one.how === 'measured' && which(one)) update(db, 'survey', one.id, { used: 0 })
  }
}

/** What a plan says of a new room: every length and given angle as drawn, until somebody measures. */
export function keepDrawn(writing: Writing, room: string): void {
  for (const { id, length, lengthText, to, angle } of sidesOf(writing.db, room)) {
    insertRow(writing, room, { ...side(id), value: length, text: lengthText, how: 'drawn' })
    if (angle !== null) insertRow(writing, room, { ...corner(to), value: angle, text: '', how: 'drawn' })
  }
}

/** Writes the figures in force where they are others, and draws the room. */
function keepInForce(writing: Writing, room: string): void {
  const { db } = writing
  const all = surveyRowsOf(db, room)
  for (const wall of sidesOf(db, room)) {
    const length = newest(all.filter(one => one.wall === wall.id))
    if (length !== undefined && (length.value !== wall.length || length.text !== wall.lengthText)) {
      const measured = { measured_at: length.at, measured_by: length.by }
      update(db, 'wall', wall.id, { length: length.value, length_text: length.text, ...measured })
    }
    const angles = all.filter(one => one.kind === 'angle' && one.from === wall.to)
    const angle = newest(angles)?.value ?? (angles.length > 0 ? null : wall.angle)
    if (angle !== wall.angle) update(db, 'corner', wall.to, { angle })
  }
  drawRoom(writing, room)
}

function newest(rows: readonly StoredSurvey[]): StoredSurvey | undefined {
  const used = rows.filter(one => one.used)
  return used.findLast(one => one.how === 'measured') ?? used.at(-1)
}
