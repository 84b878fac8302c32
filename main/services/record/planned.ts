/** Planned movements as they are read: what is open, overdue or done, with what is to be said of each. */
import type { PlannedLine } from '../../../src/contract/areas/planned.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { Reader } from '../../../src/model/work-findings.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { dateAt } from '../days.ts'
import type { Reading } from '../service.ts'
import { partIdsOf } from '../sets/figures.ts'
import { row, rows, value } from '../sql.ts'
import { firstNumber } from '../works/figures.ts'
import { readerOf } from '../works/findings.ts'
import { nameOf } from './carry.ts'
import { collator, placeNamed } from './places.ts'
import { type Asked, planTeller } from './planned-notes.ts'
import { openPlans, type Planned, placeSaid, plannedMoves } from './planned-rows.ts'
import { standingOf, standingWorks } from './standing.ts'

const pageOf = 200

interface Facts {
  readonly number: string
  readonly title: string
  /** All that finds it. */
  readonly found: string
}

function factsOf(db: ReadHandle, { kind, thing }: Planned): Facts {
  const found = row<Facts>(
    db,
    kind === 'work'
      ? `SELECT coalesce(${firstNumber}, '') AS number, title, numbers || ' ' || title || ' ' || maker AS found FROM work WHERE id = :thing`
      : "SELECT '' AS number, name AS title, name AS found FROM location WHERE id = :thing",
    { thing },
  )
  return found ?? { number: '', title: '', found: '' }
}

type Wanted = Pick<Received<'planned.list'>, 'from' | 'to' | 'state' | 'words' | 'thing'>

/** Those asked for in the order of their time, with the words of each. Refuses `dates-reversed`. */
export function plannedFound(db: ReadHandle, now: string, { from, to, state = 'open', words = '', thing }: Wanted) {
  if (from !== undefined && to !== undefined && from > to) {
    throw new Refusal('dates-reversed', 'The end lies before the beginning: turn the two dates round.', { field: 'to' })
  }
  const today = dateAt(now)
  const wanted = words.toLocaleLowerCase('en').split(/\s+/u)
  const all = plannedMoves(db)
  return all.flatMap(plan => {
    const { movement, day } = plan
    if (state !== 'all' && (movement === null) !== (state === 'open')) return []
    if (thing !== undefined && plan.thing !== thing) return []
    const overdue = movement === null && day < today
    // What should have been done long ago is first on the paper of today.
    const late = overdue && (to === undefined || to >= today)
    if (!late && ((from !== undefined && day < from) || (to !== undefined && day > to))) return []
    const facts = factsOf(db, plan)
    const place = placeSaid(db, plan)
    const text = `${facts.found} ${place} ${plan.spot}`.toLocaleLowerCase('en')
    return wanted.every(word => text.includes(word)) ? [{ plan, facts, place, overdue }] : []
  })
}

export type PlannedFound = ReturnType<typeof plannedFound>[number]

export function overdueFirst(found: readonly PlannedFound[]): PlannedFound[] {
  return found.toSorted((a, b) => Number(b.overdue) - Number(a.overdue))
}

/** Lines of these, whose findings count all other open plans. */
export function plannedLines(
  db: ReadHandle,
  reader: Reader,
  now: string,
  found: readonly PlannedFound[],
): PlannedLine[] {
  const told = planTeller(db, reader, now, openPlans(db))
  return found.map(({ plan, facts, place, overdue }) => {
    const { placeWords: _, movement, ...rest } = plan
    const { number, title } = facts
    const said = { ...rest, number, title, words: place, overdue }
    if (movement === null) {
      const { fromWords, way, findings } = told(plan)
      return { ...said, fromWords, way, done: null, findings: [...findings] }
    }
    const { fromWords, ...done } = row<{ fromWords: string; movement: string; at: string; words: string }>(
      db,
      `SELECT moved.from_words AS fromWords, movement.id AS movement, movement.at, movement.place_words AS words
       FROM moved JOIN movement ON movement.id = moved.movement WHERE moved.movement = :movement AND moved.plan = :id`,
      { movement, id: plan.id },
    ) ?? { fromWords: '', movement, at: now, words: '' }
    return { ...said, fromWords, way: '', done, findings: [] }
  })
}

export function list(reading: Reading, input: Received<'planned.list'>): Output<'planned.list'> {
  const { db, person } = reading
  const { order = 'day', offset = 0, limit = pageOf, exhibition } = input
  const now = reading.now()
  const found = plannedFound(db, now, input)
  const by = {
    day: () => 0,
    work: (a: PlannedFound, b: PlannedFound) =>
      collator.compare(a.facts.number, b.facts.number) || collator.compare(a.facts.title, b.facts.title),
    place: (a: PlannedFound, b: PlannedFound) => collator.compare(a.place, b.place),
  }[order]
  const shown = overdueFirst(found)
    .toSorted(by)
    .slice(offset, offset + limit)
  return {
    lines: plannedLines(db, readerOf(person, undefined), now, shown),
    total: found.length,
    overdue: found.filter(({ overdue }) => overdue).length,
    toPlan: exhibition === undefined ? 0 : toPlan(db, exhibition, now).length,
  }
}

/** Works on walls of a show's plan that neither stand there nor are planned to go there. Refuses `not-found`. */
export function toPlan(
  db: ReadHandle,
  exhibition: string,
  now: string,
): { work: string; face: string; spot: string }[] {
  if (value(db, 'SELECT id FROM exhibition WHERE id = :exhibition', { exhibition }) === undefined) {
    throw notFound('exhibition', 'exhibition')
  }
  const standing = new Map(standingWorks(db, now, exhibition).map(stood => [stood.thing, stood.place]))
  // A set that never moved as one is where its parts are.
  const isAt = (work: string, face: string) => {
    if (standing.has(work)) return standing.get(work) === face
    const parts = partIdsOf(db, work)
    return parts.length > 0 && parts.every(part => standingOf(db, 'work', part, now)?.place === face)
  }
  const planned = new Set(openPlans(db).map(({ thing, place }) => `${thing} ${place}`))
  return rows<{ work: string; face: string; nth: number }>(
    db,
    `SELECT entry.work, placement.face, (SELECT count(*) FROM placement AS before WHERE before.face = placement.face
        AND before.exhibition = placement.exhibition AND before.x < placement.x) + 1 AS nth
     FROM placement JOIN entry ON entry.id = placement.entry JOIN face ON face.id = placement.face
     JOIN wall ON wall.id = face.wall JOIN room ON room.id = wall.room WHERE placement.exhibition = :exhibition
     ORDER BY room.position, room.id, wall.position, wall.id, placement.face, placement.x, placement.id`,
    { exhibition },
  ).flatMap(({ work, face, nth }) =>
    planned.has(`${work} ${face}`) || isAt(work, face) ? [] : [{ work, face, spot: `position ${nth}` }],
  )
}

export function check(reading: Reading, input: Received<'planned.check'>): Output<'planned.check'> {
  const { db, person } = reading
  const to = placeNamed(db, input.to, 'to')
  const told = planTeller(db, readerOf(person, undefined), reading.now(), openPlans(db))
  return {
    notes: thingsAsked(db, input).flatMap(({ kind, thing }) => {
      const plan: Asked = {
        id: '',
        kind,
        thing,
        place: to.place,
        placeWords: to.words,
        day: input.day,
        hour: input.hour ?? '',
      }
      return told(plan).findings
    }),
  }
}

/** Works and crates asked for, each once. Refuses `bad-input` where there is none, and what is no thing that moves. */
export function thingsAsked(
  db: ReadHandle,
  { works = [], crates = [] }: Pick<Received<'planned.add'>, 'works' | 'crates'>,
): { readonly kind: 'work' | 'crate'; readonly thing: string; readonly name: string }[] {
  const named = (kind: 'work' | 'crate', ids: readonly string[], field: string) =>
    [...new Set(ids)].map((thing, index) => ({ kind, thing, name: nameOf(db, kind, thing, `${field}.${index}`) }))
  const things = [...named('work', works, 'works'), ...named('crate', crates, 'crates')]
  if (things.length > 0) return things
  throw new Refusal('bad-input', 'Say what is to be moved: a work, several, or a crate with all in it.', {
    field: 'works',
  })
}
