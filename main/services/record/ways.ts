/** The way that a thing takes to a place, through the doorways and lifts that the plan and the agreed places know. */
import type { CarriedWay } from '../../../src/contract/areas/movements.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { sayIn } from '../../../src/hang/marks.ts'
import type { Reader } from '../../../src/model/work-findings.ts'
import { sameWidth } from '../../../src/plan/door-pairs.ts'
import { type KnownPassages, type Passage, type Passed, wayKnown } from '../../../src/record/carry-way.ts'
import type { Box } from '../../../src/record/fit.ts'
import { shortWay, type Untold, untoldSaid, waySaid } from '../../../src/record/way-words.ts'
import type { ReadHandle } from '../../database/handles.ts'
import type { Reading } from '../service.ts'
import { row, rows } from '../sql.ts'
import { readerOf } from '../works/findings.ts'
import { nameOf } from './carry.ts'
import { placeNamed, placeOf } from './places.ts'
import { standingCrates, standingOf } from './standing.ts'

interface Door {
  readonly id: string
  readonly room: string
  readonly roomName: string
  readonly storey: string
  readonly width: number
  readonly height: number
  readonly label: string
  readonly leadsTo: string | null
  readonly other: string | null
}

/** What no room of the plan is, storey by storey. */
const beyond = (storey: string) => `beyond ${storey}`

/** Doorways as one hole where they are the two sides of one: its clear size is the lesser of both. */
function doorsOf(db: ReadHandle): readonly { readonly here: Door; readonly there: Door | null }[] {
  const doors = rows<Door>(
    db,
    `SELECT opening.id, room.id AS room, room.name AS roomName, room.storey, opening.width, opening.height, opening.label,
      opening.leads_to AS leadsTo, opening.other
     FROM opening JOIN wall ON wall.id = opening.wall JOIN room ON room.id = wall.room
     WHERE opening.kind IN ('door', 'passage') ORDER BY room.position, room.id, wall.position, opening.x, opening.id`,
  )
  const behind = (door: Door): Door | null => {
    const told = doors.find(({ id, other }) => id === door.other || other === door.id)
    if (told !== undefined) return told
    const back = doors.filter(
      each =>
        each.room === door.leadsTo &&
        each.leadsTo === door.room &&
        each.other === null &&
        Math.abs(each.width - door.width) <= sameWidth,
    )
    return back.length === 1 ? (back[0] ?? null) : null
  }
  const seen = new Set<string>()
  return doors.flatMap(here => {
    if (seen.has(here.id)) return []
    const there = behind(here)
    if (there !== null) seen.add(there.id)
    return [{ here, there }]
  })
}

function passagesOf(db: ReadHandle): KnownPassages {
  const rooms = rows<{ id: string; name: string; storey: string }>(db, 'SELECT id, name, storey FROM room')
  const byId = new Map(rooms.map(room => [room.id, room]))
  const called = (label: string) => (label === '' ? '' : ` (${label})`)
  const outOf = ({ room, roomName, storey, width, height, label }: Door): Passage => ({
    kind: 'door',
    words: `the doorway out of ${roomName}${called(label)}`,
    ends: [room, beyond(storey)],
    width,
    height,
    depth: null,
  })
  const inside: Passage[] = []
  const out: Passage[] = []
  const unsaid: Passage[] = []
  for (const { here, there } of doorsOf(db)) {
    const next = byId.get(there?.room ?? here.leadsTo ?? '')
    if (next === undefined) out.push(outOf(here))
    else {
      inside.push({
        kind: 'door',
        words: `the doorway between ${here.roomName} and ${next.name}${called(here.label || (there?.label ?? ''))}`,
        ends: [here.room, next.id],
        width: Math.min(here.width, there?.width ?? here.width),
        height: Math.min(here.height, there?.height ?? here.height),
        depth: null,
      })
    }
    unsaid.push(outOf(here), ...(there === null ? [] : [outOf(there)]))
  }
  const storeys = [...new Set(rooms.map(({ storey }) => storey))]
  const open = new Set(out.map(({ ends }) => ends[1]))
  // A lift opens somewhere on each storey: beyond its rooms where a doorway leads there, else in one of them.
  const stops = (storey: string) =>
    open.has(beyond(storey)) ? [beyond(storey)] : rooms.filter(room => room.storey === storey).map(({ id }) => id)
  const lifts = rows<Box & { readonly name: string }>(
    db,
    `SELECT name, width, height, depth FROM location WHERE kind = 'lift' AND width IS NOT NULL AND height IS NOT NULL
     AND depth IS NOT NULL ORDER BY name`,
  ).flatMap(({ name, ...cabin }) =>
    storeys.flatMap((below, at) =>
      storeys
        .slice(at + 1)
        .flatMap(above =>
          stops(below).flatMap(from =>
            stops(above).map(
              (to): Passage => ({ kind: 'lift', words: `the lift ${name}`, ends: [from, to], ...cabin }),
            ),
          ),
        ),
    ),
  )
  return { inside, out: [...out, ...lifts], unsaid, outside: storeys.map(beyond) }
}

/** The room that a place is in, through crates and vehicles, at that moment; null where no room of the plan is. */
function roomAround(db: ReadHandle, place: string, at: string): string | null {
  const crates = standingCrates(db, at)
  const seen = new Set<string>()
  for (let each = place; !seen.has(each); ) {
    seen.add(each)
    const room = placeOf(db, each)?.room ?? null
    if (room !== null) return room
    each = crates.get(each)?.place ?? each
  }
  return null
}

function boxOf(db: ReadHandle, kind: 'work' | 'crate', id: string): Box | null {
  const found = row<{ width: number | null; height: number | null; depth: number | null }>(
    db,
    kind === 'crate'
      ? 'SELECT width, height, depth FROM location WHERE id = :id'
      : `SELECT coalesce(hang_width, hang_diameter) AS width, coalesce(hang_height, hang_diameter) AS height,
         coalesce(hang_depth, 0) AS depth FROM work WHERE id = :id`,
    { id },
  )
  if (found === undefined || found.width === null || found.height === null || found.depth === null) return null
  return { width: found.width, height: found.height, depth: found.depth }
}

/** Asks the plan once for as many things as there are. */
export function wayTeller(db: ReadHandle, { unit, steps }: Reader) {
  let known: KnownPassages | undefined
  const length = sayIn(unit, steps)

  /** `from`: null where the record has it nowhere. `to`: null for out of the building. */
  return (
    { kind, id, name }: { readonly kind: 'work' | 'crate'; readonly id: string; readonly name: string },
    from: string | null,
    to: string | null,
    at: string,
  ): CarriedWay => {
    const start = from === null ? null : roomAround(db, from, at)
    const end = to === null ? null : roomAround(db, to, at)
    const way = { kind, id, name, through: [], tightest: null, fit: null }
    const box = boxOf(db, kind, id)
    const untold = (told: Untold): CarriedWay => {
      const [from, to] = [start, end].map(room =>
        room === null ? 'outside its rooms' : (placeOf(db, room)?.words ?? ''),
      )
      return { ...way, told, text: untoldSaid(told, name, kind, { from: from ?? '', to: to ?? '' }) }
    }
    if (start === null && end === null) return untold('outside')
    if (start === end) return { ...way, told: 'same', text: '' }
    if (box === null) return untold('no-size')
    known ??= passagesOf(db)
    const found = wayKnown(box, known, start, end)
    if (found === null || found.tightest === null) return untold('none')
    const { tightest, through } = found
    return {
      ...way,
      told: 'way',
      fit: tightest.fit,
      through: through.map(passedOf),
      tightest: through.indexOf(tightest),
      text: waySaid({ name, box }, found, tightest, length),
    }
  }
}

/**
 * What a sheet says of the ways of these movements by the plan as it is now, by movement and thing; nothing where no
 * room was left or entered. A set says nothing: its parts go by themselves.
 */
export function waysOfMovements(
  db: ReadHandle,
  reader: Reader,
  movements: Output<'movement.list'>['movements'],
): (movement: string, thing: string) => string {
  const tell = wayTeller(db, reader)
  const length = sayIn(reader.unit, reader.steps)
  const ways = new Map<string, string>()
  for (const { movement, at, place, struck, correctedBy, things } of movements) {
    if (struck || correctedBy !== null) continue
    const left = new Map(
      rows<{ id: string; place: string }>(
        db,
        'SELECT coalesce(work, crate) AS id, from_place AS place FROM moved WHERE movement = :movement',
        { movement },
      ).map(each => [each.id, each.place]),
    )
    for (const { kind, id, title } of things) {
      if (things.some(({ partOf }) => partOf === id)) continue
      const from = left.get(id) ?? ''
      const way = tell({ kind, id, name: title }, from === '' ? null : from, place, at)
      ways.set(`${movement} ${id}`, shortWay(way, length))
    }
  }
  return (movement, thing) => ways.get(`${movement} ${thing}`) ?? ''
}

function passedOf({ passage, fit, over, spare }: Passed): CarriedWay['through'][number] {
  const { kind, words, width, height, depth } = passage
  return { kind, words, width, height, depth, fit, over, spare }
}

export function way(
  reading: Reading,
  { works = [], crates = [], to, at }: Received<'movement.way'>,
): Output<'movement.way'> {
  const { db, person, now } = reading
  const moment = at === undefined ? now() : new Date(at).toISOString()
  const end = to === undefined ? null : placeNamed(db, to, 'to').place
  const tell = wayTeller(db, readerOf(person, undefined))
  const things = [
    ...works.map((id, nth) => ({ kind: 'work' as const, id, field: `works.${nth}` })),
    ...crates.map((id, nth) => ({ kind: 'crate' as const, id, field: `crates.${nth}` })),
  ]
  return {
    ways: things.map(({ field, ...thing }) => {
      const name = nameOf(db, thing.kind, thing.id, field)
      return tell({ ...thing, name }, standingOf(db, thing.kind, thing.id, moment)?.place ?? null, end, moment)
    }),
  }
}
