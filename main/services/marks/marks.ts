/**
 * Pencil, detector, drill: marks as they are made. What is planned is computed each time; what was made is a row. A hole
 * is never forgotten: it stays when its work moves or leaves, until somebody says that it is filled.
 */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { defaultSteps } from '../../../src/hang/printing.ts'
import { calledOn } from '../../../src/model/face-findings.ts'
import { deadHoles, wantedHoles } from '../../../src/model/holes-of-face.ts'
import { type MarksStyle, marksOfFace } from '../../../src/model/marks-of-face.ts'
import { notFound } from '../change.ts'
import { openExhibition } from '../exhibitions/open.ts'
import type { Reading, Writing } from '../service.ts'
import { insert, remove, row, update } from '../sql.ts'
import { elevationOf } from '../walls/elevation.ts'
import { entryName, faceName } from '../walls/placements.ts'
import { asMade, madeOn, type StoredMark } from './made.ts'

export const plain: MarksStyle = { unit: 'mm', steps: defaultSteps }

export function ofFace({ db }: Reading, { exhibition, face }: Received<'mark.ofFace'>): Output<'mark.ofFace'> {
  const elevation = elevationOf(db, exhibition, face)
  const wanted = wantedHoles(elevation, plain)
  const made = madeOn(db, exhibition, face)
  const byPlace = new Map(made.map(mark => [`${mark.placement} ${mark.slot}`, mark]))
  const works = new Map(elevation.works.map(work => [work.placement, work]))
  const problems = [...marksOfFace(elevation, plain)].flatMap(([placement, marks]) => {
    const work = works.get(placement)
    return 'problem' in marks && work !== undefined ? [{ placement, name: calledOn(work), text: marks.problem }] : []
  })
  const unknown = new Set(problems.map(problem => problem.placement))
  const planned = wanted.flatMap(hole => {
    const work = works.get(hole.placement)
    if (work === undefined) return []
    const mark = byPlace.get(`${hole.placement} ${hole.slot}`)
    return [
      {
        placement: hole.placement,
        entry: work.entry,
        name: calledOn(work),
        slot: hole.slot,
        called: hole.called,
        planned: { x: hole.x, y: hole.y },
        state: mark?.state ?? ('planned' as const),
        made: mark === undefined ? null : asMade(mark),
        away: mark === undefined ? null : Math.hypot(mark.x - hole.x, mark.y - hole.y),
      },
    ]
  })
  // Made for a work whose marks cannot be computed any more: still there, and not dead.
  const left = made.flatMap(mark => {
    const work = mark.placement === null ? undefined : works.get(mark.placement)
    if (work === undefined || !unknown.has(work.placement)) return []
    return [
      {
        placement: work.placement,
        entry: work.entry,
        name: calledOn(work),
        slot: mark.slot,
        called: mark.slot,
        planned: null,
        state: mark.state,
        made: asMade(mark),
        away: null,
      },
    ]
  })
  const drilled = made.filter(mark => mark.state === 'drilled' && mark.filled_at === '')
  const idle = new Set(
    deadHoles(
      wanted,
      drilled.filter(mark => mark.placement === null || !unknown.has(mark.placement)),
    ),
  )
  return {
    marks: [...planned, ...left],
    dead: drilled.filter(mark => idle.has(mark.id) && !unknown.has(mark.placement ?? '')).map(asMade),
    filled: made.filter(mark => mark.filled_at !== '').map(asMade),
    problems,
  }
}

interface Asked {
  readonly placement: string
  readonly slot: string
  readonly entry: string
  readonly x: number
  readonly y: number
  readonly bearingY: number
  readonly fixing: string | null
  readonly fixingName: string
  readonly kind: string
  readonly made: StoredMark | undefined
}

/** What each asked mark is now; refuses one that is not on this face or cannot be computed. */
function askedMarks(writing: Writing, input: Received<'mark.services'> | Received<'mark.set'>): readonly Asked[] {
  const { db } = writing
  openExhibition(db, input.exhibition)
  const elevation = elevationOf(db, input.exhibition, input.face)
  const marks = marksOfFace(elevation, plain)
  const wanted = new Map(wantedHoles(elevation, plain).map(hole => [`${hole.placement} ${hole.slot}`, hole]))
  const made = new Map(madeOn(db, input.exhibition, input.face).map(mark => [`${mark.placement} ${mark.slot}`, mark]))
  return input.marks.map(({ placement, slot }, index) => {
    const field = `marks.${index}`
    const work = elevation.works.find(each => each.placement === placement)
    if (work === undefined) throw notFound('work on this wall', `${field}.placement`)
    const why = marks.get(placement)
    const key = `${placement} ${slot}`
    const hole = wanted.get(key)
    if (hole === undefined) {
      if (why !== undefined && 'problem' in why) {
        throw new Refusal('no-marks', `${calledOn(work)}: ${why.problem}`, { field: `${field}.placement` })
      }
      throw notFound('mark of this work', `${field}.slot`)
    }
    const fixing = hole.keeps ? hole.hung.keeper : hole.hung.fixing
    return {
      ...hole,
      entry: work.entry,
      fixing: fixing?.id ?? null,
      fixingName: fixing?.name ?? '',
      kind: fixing?.kind ?? '',
      made: made.get(key),
    }
  })
}

function write(writing: Writing, face: string, exhibition: string, asked: Asked, set: Partial<StoredMark>): void {
  if (asked.made !== undefined) {
    update(writing.db, 'mark', asked.made.id, { ...set })
    return
  }
  insert(writing.db, 'mark', {
    id: writing.newId(),
    exhibition,
    face,
    placement: asked.placement,
    slot: asked.slot,
    x: asked.x,
    y: asked.y,
    bearing_y: asked.bearingY,
    fixing: asked.fixing,
    fixing_name: asked.fixingName,
    kind: asked.kind,
    state: 'marked',
    ...set,
  })
}

function named(writing: Writing, asked: readonly Asked[]): string {
  const [first] = asked
  const entries = new Set(asked.map(mark => mark.entry))
  return first !== undefined && entries.size === 1 ? entryName(writing.db, first.entry) : `${entries.size} works`
}

export function set(writing: Writing, input: Received<'mark.set'>): Output<'mark.set'> {
  const { db } = writing
  const asked = askedMarks(writing, input)
  const stamp = { at: writing.now(), by: writing.person?.name ?? '' }
  const reason = input.reason ?? ''
  writing.label(
    `${named(writing, asked)} on ${faceName(db, input.face)}: ${input.to}${reason === '' ? '' : ` (${reason})`}`,
  )
  let changed = 0
  for (const [index, mark] of asked.entries()) {
    const was = mark.made?.state ?? 'planned'
    const field = `marks.${index}`
    if (was === input.to && !(was === 'marked' && isElsewhere(mark))) continue
    if (was === 'drilled' && reason === '') {
      throw new Refusal('drilled-stays', 'A drilled hole is there. Say why if it was ticked by mistake.', {
        field: 'reason',
      })
    }
    if (input.to === 'drilled' && (mark.made?.services_at ?? '') === '') {
      throw new Refusal('services-not-checked', 'Look for pipes and cables first, and tick that.', { field })
    }
    changed += 1
    if (input.to === 'planned') {
      if (mark.made !== undefined) remove(db, 'mark', mark.made.id)
    } else if (input.to === 'marked') {
      // A pencil mark is made where it is planned now; one made elsewhere is rubbed out.
      write(writing, input.face, input.exhibition, mark, {
        state: 'marked',
        x: mark.x,
        y: mark.y,
        bearing_y: mark.bearingY,
        marked_at: stamp.at,
        marked_by: stamp.by,
        drilled_at: '',
        drilled_by: '',
        note: reason === '' ? (mark.made?.note ?? '') : reason,
        // Services were looked for where the mark was, not where it is now.
        ...(isElsewhere(mark) ? { services_at: '', services_by: '' } : {}),
      })
    } else {
      if (mark.made?.state === 'marked' && isElsewhere(mark)) {
        throw new Refusal('mark-moved', 'The plan has moved this mark since it was made: mark it anew, then drill.', {
          field,
          details: { madeX: mark.made.x, madeY: mark.made.y, x: mark.x, y: mark.y },
        })
      }
      write(writing, input.face, input.exhibition, mark, {
        state: 'drilled',
        drilled_at: stamp.at,
        drilled_by: stamp.by,
      })
    }
  }
  return { changed }
}

function isElsewhere({ made, x, y }: Asked): boolean {
  return made !== undefined && Math.hypot(made.x - x, made.y - y) > 0.5
}

export function services(writing: Writing, input: Received<'mark.services'>): Output<'mark.services'> {
  const asked = askedMarks(writing, input)
  writing.label(`${named(writing, asked)}: services ${input.checked ? 'checked' : 'not checked'}`)
  const at = input.checked ? writing.now() : ''
  const by = input.checked ? (writing.person?.name ?? '') : ''
  let changed = 0
  for (const [index, mark] of asked.entries()) {
    if (mark.made?.state === 'drilled') {
      if (input.checked) continue
      throw new Refusal('drilled-stays', 'This mark is drilled: what was checked before stays on record.', {
        field: `marks.${index}`,
      })
    }
    if ((mark.made?.services_at !== undefined && mark.made.services_at !== '') === input.checked) continue
    changed += 1
    if (input.checked && mark.made === undefined) {
      // Looking for services needs a place on the wall: the mark is made with it.
      write(writing, input.face, input.exhibition, mark, {
        services_at: at,
        services_by: by,
        marked_at: at,
        marked_by: by,
      })
    } else if (mark.made !== undefined) update(writing.db, 'mark', mark.made.id, { services_at: at, services_by: by })
  }
  return { changed }
}

function storedMark(writing: Writing, id: string, field: string): StoredMark {
  const found = row<StoredMark>(writing.db, 'SELECT * FROM mark WHERE id = :id', { id })
  if (found === undefined) throw notFound('mark', field)
  openExhibition(writing.db, found.exhibition, field)
  return found
}

export function fill(writing: Writing, input: Received<'mark.fill'>): Output<'mark.fill'> {
  const marks = input.marks.map((id, index) => storedMark(writing, id, `marks.${index}`))
  const count = marks.length === 1 ? 'a hole' : `${marks.length} holes`
  writing.label(input.filled ? `Fill ${count}` : `Take back that ${count} were filled`)
  let changed = 0
  for (const [index, mark] of marks.entries()) {
    if ((mark.filled_at !== '') === input.filled) continue
    if (input.filled && isUsed(writing, mark)) {
      throw new Refusal('hole-in-use', 'A work hangs on this hole, or shall. Move the work first.', {
        field: `marks.${index}`,
      })
    }
    update(writing.db, 'mark', mark.id, {
      filled_at: input.filled ? writing.now() : '',
      filled_by: input.filled ? (writing.person?.name ?? '') : '',
    })
    changed += 1
  }
  return { changed }
}

function isUsed(writing: Writing, mark: StoredMark): boolean {
  const { dead } = ofFace(writing, { exhibition: mark.exhibition, face: mark.face })
  return !dead.some(each => each.id === mark.id)
}

export function note(writing: Writing, input: Received<'mark.note'>): Output<'mark.note'> {
  storedMark(writing, input.id, 'id')
  writing.label('Write a note on a mark')
  update(writing.db, 'mark', input.id, { note: input.note })
  return { done: true }
}
