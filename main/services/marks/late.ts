/**
 * Late changes on the walls of a show: offered from the catalogue as it is, taken as one edit. What is taken is worked
 * out anew and must be what was shown; holes stay where they are, with or without a work.
 */

import type { LateChange, LateOffer } from '../../../src/contract/areas/marks.ts'
import type { Elevation } from '../../../src/contract/areas/walls.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { readBack } from '../../../src/hang/back.ts'
import { type HeightRuleName, ruleFromCentre } from '../../../src/hang/height.ts'
import { methodOf } from '../../../src/hang/methods.ts'
import { floorAt } from '../../../src/hang/wall.ts'
import { matchHoles } from '../../../src/late/holes.ts'
import { SAME_HOLE, wantedHoles } from '../../../src/model/holes-of-face.ts'
import { type LateStyle, lateOfShow } from '../../../src/model/late-of-show.ts'
import { latePricesFrom } from '../../../src/model/late-rules.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { openExhibition } from '../exhibitions/open.ts'
import { wallCalled } from '../rooms/called.ts'
import { ruleNumber } from '../rules.ts'
import type { Reading, Writing } from '../service.ts'
import { remove, row, rows, update, value } from '../sql.ts'
import { elevationOf, facePlanOf } from '../walls/elevation.ts'
import { entryName, writeStep } from '../walls/placements.ts'
import { hangingSizeOf } from '../works/figures.ts'
import { readerOf } from '../works/findings.ts'
import { addSize, chooseSize, setBack } from '../works/measures.ts'
import { madeOn } from './made.ts'
import { plain } from './marks.ts'

function facesOf(db: ReadHandle, exhibition: string, change: LateChange): readonly string[] {
  if (change.kind === 'lower') return change.faces
  const entries = change.kind === 'swap' ? [change.one, change.other] : [change.entry]
  return entries.map((entry, index) => {
    const field = change.kind === 'swap' ? `change.${index === 0 ? 'one' : 'other'}` : 'change.entry'
    const face = value<string>(db, 'SELECT face FROM placement WHERE entry = :entry AND exhibition = :exhibition', {
      entry,
      exhibition,
    })
    if (face === undefined) throw notFound('work on a wall of this show', field)
    return face
  })
}

function wallsNow(db: ReadHandle, exhibition: string, faces: readonly string[]): readonly Elevation[] {
  return [...new Set(faces)].map(face => elevationOf(db, exhibition, face))
}

/** A back that its method refuses is refused here too, before anything is reckoned with it. */
function checkBack(change: LateChange): void {
  if (change.kind === 'different' && change.back !== undefined) {
    readBack(methodOf(change.back.method).schema, change.back.data)
  }
}

function styleOf({ db, person }: Pick<Reading, 'db' | 'person'>, unit?: Received<'late.offer'>['unit']): LateStyle {
  return { ...readerOf(person, unit), prices: latePricesFrom(key => ruleNumber(db, key)) }
}

export function offer(reading: Reading, { exhibition, change, unit }: Received<'late.offer'>): Output<'late.offer'> {
  const { db } = reading
  checkBack(change)
  const faces = [...new Set(facesOf(db, exhibition, change))]
  const walls = wallsNow(db, exhibition, faces)
  const { offers, problem } = lateOfShow(walls, change, styleOf(reading, unit))
  return { offers: [...offers], problem, voids: faces.flatMap(face => lastSheet(db, exhibition, face)) }
}

function lastSheet(db: ReadHandle, exhibition: string, face: string): Output<'late.offer'>['voids'] {
  const last = row<{ revision: number; wall: string }>(
    db,
    `SELECT revision, ${wallCalled} AS wall FROM sheet_print JOIN face ON face.id = sheet_print.face
     JOIN wall ON wall.id = face.wall WHERE sheet_print.exhibition = :exhibition AND sheet_print.face = :face
     ORDER BY revision DESC LIMIT 1`,
    { exhibition, face },
  )
  return last === undefined ? [] : [{ face, ...last }]
}

export function take(writing: Writing, input: Received<'late.take'>): Output<'late.take'> {
  const { db } = writing
  const { exhibition, change, key } = input
  openExhibition(db, exhibition)
  checkBack(change)
  const { offers } = lateOfShow(wallsNow(db, exhibition, facesOf(db, exhibition, change)), change, styleOf(writing))
  const chosen = offers.find(each => each.key === key && sameMoves(each, input.moves))
  if (chosen === undefined) {
    throw new Refusal('offer-gone', 'The wall has changed since this was offered. Look at the offers again.', {
      field: 'key',
    })
  }
  writing.label(labelOf(writing, change))
  if (change.kind === 'different') writeFacts(writing, change)
  for (const gone of chosen.off) {
    loosenMarks(writing, gone.placement)
    remove(db, 'placement', gone.placement)
  }
  for (const move of chosen.moves) moveTo(writing, exhibition, move)
  const faces = new Set([...chosen.moves, ...chosen.deadHoles, ...chosen.newHoles].map(each => each.face))
  for (const face of faces) adoptHoles(writing, exhibition, face)
  return { moved: chosen.moves.length, taken: chosen.off.length }
}

function sameMoves(offered: LateOffer, moves: Received<'late.take'>['moves']): boolean {
  if (offered.moves.length !== moves.length) return false
  return offered.moves.every(move => {
    const shown = moves.find(each => each.entry === move.entry)
    return shown !== undefined && Math.hypot(shown.x - move.x, shown.y - move.y) < 0.01
  })
}

function labelOf({ db }: Writing, change: LateChange): string {
  switch (change.kind) {
    case 'different':
      return `Late change: another frame for ${entryName(db, change.entry)}`
    case 'swap':
      return `Late change: swap ${entryName(db, change.one)} and ${entryName(db, change.other)}`
    case 'drop':
      return `Late change: take ${entryName(db, change.entry)} off the wall`
    case 'lower':
      return `Late change: ${change.by >= 0 ? 'lower' : 'raise'} ${change.faces.length === 1 ? 'a wall' : `${change.faces.length} walls`} by ${Math.abs(change.by)} mm`
  }
}

/** The frame and back as measured now, as dated rows like any other measuring; the newest is what hangs. */
function writeFacts(writing: Writing, change: Extract<LateChange, { kind: 'different' }>): void {
  const { db } = writing
  const own = value<string>(db, 'SELECT work FROM entry WHERE id = :entry', { entry: change.entry })
  if (own === undefined) throw notFound('work in this show', 'change.entry')
  const work = change.part ?? own
  // The edit is the late change; the measuring inside it has no words of its own.
  const quiet: Writing = { ...writing, label: () => {} }
  const hanging = hangingSizeOf(db, work)
  const { width, height, depth = hanging?.depth ?? null } = change
  const { id } = addSize(quiet, {
    work,
    part: hanging?.part ?? 'framed',
    width,
    height,
    depth,
    raw: `${height} x ${width} mm`,
    kind: 'measured',
    source: 'late change',
  })
  // Where a person overruled the measure before, this one must hold now.
  if (hanging?.fact.chosen === true) chooseSize(quiet, { id, chosen: true })
  if (change.back !== undefined) setBack(quiet, { work, ...change.back })
}

/** Moves a placement; marks that were only in pencil go with it, holes stay where they are. */
function moveTo(writing: Writing, exhibition: string, move: LateOffer['moves'][number]): void {
  const { db } = writing
  const stored = row<{
    face: string
    rule: HeightRuleName | 'face'
    y: number | null
    state: string
    height: number | null
  }>(
    db,
    `SELECT placement.face, placement.rule, placement.y, placement.state, work.hang_height AS height
     FROM placement JOIN entry ON entry.id = placement.entry JOIN work ON work.id = entry.work WHERE placement.id = :id`,
    { id: move.placement },
  )
  if (stored === undefined) throw notFound('work on a wall', 'change')
  loosenMarks(writing, move.placement)
  const plan = facePlanOf(db, exhibition, move.face)
  const height = stored.height ?? 0
  const byRule = ruleFromCentre(plan.rule, move.y, height, plan.eyeFraction)
  // At the height that the wall's rule gives, it goes on following the wall.
  const follows = Math.abs(byRule.y - plan.centreLine - floorAt(plan.ramp, move.x)) < 0.05
  // A rule of its own that still gives this height stays too; not on another wall, whose floor is another datum.
  const own =
    stored.rule === 'face' || stored.face !== move.face
      ? null
      : ruleFromCentre(stored.rule, move.y, height, plan.eyeFraction)
  const keeps = own !== null && stored.y !== null && Math.abs(own.y - stored.y) < 0.05
  update(db, 'placement', move.placement, {
    face: move.face,
    x: move.x,
    ...(keeps ? {} : { rule: follows ? 'face' : 'hand', y: follows ? null : move.y }),
  })
  // Whatever was moved has to be hung and looked at again.
  if (stored.state !== 'planned') writeStep(writing, move.placement, 'planned')
}

/** A hole that is nobody's any more and lies where a work's mark comes now is that mark, drilled long ago. */
function adoptHoles(writing: Writing, exhibition: string, face: string): void {
  const { db } = writing
  const made = madeOn(db, exhibition, face)
  const own = new Set(made.map(mark => `${mark.placement} ${mark.slot}`))
  const orphans = made.filter(mark => mark.placement === null && mark.state === 'drilled' && mark.filled_at === '')
  const wanting = wantedHoles(elevationOf(db, exhibition, face), plain)
    .filter(hole => !own.has(`${hole.placement} ${hole.slot}`))
    .map(hole => ({ id: hole.placement, x: hole.x, y: hole.y, holes: [{ slot: hole.slot, dx: 0, dy: 0 }] }))
  for (const { work, slot, hole } of matchHoles(wanting, orphans, SAME_HOLE).served) {
    update(db, 'mark', hole, { placement: work, slot })
  }
}

/** Pencil marks of a work that moves are rubbed out; its holes are nobody's from now on. */
function loosenMarks({ db }: Writing, placement: string): void {
  for (const mark of rows<{ id: string; state: string }>(
    db,
    'SELECT id, state FROM mark WHERE placement = :placement',
    {
      placement,
    },
  )) {
    if (mark.state === 'marked') remove(db, 'mark', mark.id)
    else update(db, 'mark', mark.id, { placement: null })
  }
}
