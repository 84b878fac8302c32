/** Movements as they were recorded: of one thing through time, and of a span of time with all that was carried. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import type { Reading } from '../service.ts'
import { rows, value } from '../sql.ts'
import { firstNumber } from '../works/figures.ts'
import { locationOf, moves } from './places.ts'
import { brokenWords } from './where.ts'

type Told = Output<'movement.history'>['movements'][number]
type Stored = Omit<Told, 'struck' | 'within' | 'finding'> & { readonly struck: number; readonly fromPlace: string }

const columns = `movement.id AS movement, movement.at, movement.place, movement.place_words AS words, movement.spot,
  movement.method, movement.people, movement.reason, movement.condition, movement.recorded_at AS recordedAt,
  movement.recorded_by AS recordedBy, movement.corrects,
  (SELECT later.id FROM movement AS later WHERE later.corrects = movement.id) AS correctedBy, movement.struck`

/** The title of a work, else its first number. */
const called = `coalesce(nullif(title, ''), ${firstNumber}, 'a set without title')`

/** A ring of crates is refused when it is recorded; a record from elsewhere must not lead round for ever either. */
const deepest = 8

export function history({ db }: Reading, { kind, id }: Received<'movement.history'>): Output<'movement.history'> {
  if (kind === 'work' && value(db, 'SELECT id FROM work WHERE id = :id', { id }) === undefined) throw notFound('work')
  if (kind === 'crate' && !moves(locationOf(db, id)?.kind ?? 'place')) throw notFound('crate')
  const own = ownOf(db, kind, id)
  const told = own.map((each, index): Told => {
    const { fromPlace, struck, ...rest } = each
    const before = own.slice(0, index).findLast(other => other.correctedBy === null && other.struck === 0)
    const joins = each.correctedBy !== null || struck === 1 || before === undefined || before.place === fromPlace
    return {
      ...rest,
      struck: struck === 1,
      within: '',
      finding: joins ? '' : brokenWords(rest.fromWords, before.words),
    }
  })
  return { movements: [...told, ...withCrates(db, own, '9999', deepest)].sort(byTime) }
}

const byTime = (a: Told, b: Told) => (a.at < b.at ? -1 : a.at > b.at ? 1 : a.movement < b.movement ? -1 : 1)

/** Its own movements with what was set right in them, in the order of their moments. */
function ownOf(db: ReadHandle, kind: 'work' | 'crate', id: string): Stored[] {
  return rows<Stored>(
    db,
    `SELECT ${columns}, moved.from_words AS fromWords, moved.from_place AS fromPlace, moved.condition AS ownCondition,
      moved.plan_words AS planned,
      coalesce((SELECT ${called} FROM work WHERE work.id = moved.part_of), '') AS withSet
     FROM moved JOIN movement ON movement.id = moved.movement WHERE moved.${kind} = :id
     UNION ALL SELECT ${columns}, '', '', '', '', '' FROM moved JOIN movement ON movement.corrects = moved.movement
     WHERE moved.${kind} = :id AND movement.struck = 1
     ORDER BY 2, 1`,
    { id },
  )
}

/** While it lay in a crate, it went where the crate went. */
function withCrates(db: ReadHandle, own: readonly Stored[], until: string, depth: number): Told[] {
  if (depth === 0) return []
  const stays = own.filter(each => each.correctedBy === null && each.struck === 0)
  return stays.flatMap((each, index) => {
    const crate = locationOf(db, each.place)
    if (crate === undefined || !moves(crate.kind)) return []
    const left = stays[index + 1]?.at ?? until
    const during = ownOf(db, 'crate', crate.id)
    const carried = during.filter(
      other => other.correctedBy === null && other.struck === 0 && other.at > each.at && other.at < left,
    )
    const around = during.filter(other => other.at < left)
    const outer = withCrates(db, around, left, depth - 1).filter(other => other.at > each.at)
    const inner = carried.map(
      ({ fromPlace: _, struck: __, ...rest }): Told => ({
        ...rest,
        ownCondition: '',
        planned: '',
        struck: false,
        within: crate.name,
        finding: '',
      }),
    )
    return [...inner, ...outer]
  })
}

const longest = 5000

export function list({ db }: Reading, { from, to }: Received<'movement.list'>): Output<'movement.list'> {
  return { movements: movementsBetween(db, from, to) }
}

/** Refuses `dates-reversed`, and what is too much for one answer. */
export function movementsBetween(db: ReadHandle, from: string, to: string): Output<'movement.list'>['movements'] {
  const [since, until] = [new Date(from).toISOString(), new Date(to).toISOString()]
  if (since > until) {
    throw new Refusal('dates-reversed', 'The end lies before the beginning: turn the two dates round.', { field: 'to' })
  }
  const stored = rows<Omit<Stored, 'fromPlace' | 'fromWords' | 'withSet' | 'ownCondition' | 'planned'>>(
    db,
    `SELECT ${columns} FROM movement WHERE movement.at BETWEEN :since AND :until ORDER BY movement.at, movement.id LIMIT ${longest + 1}`,
    { since, until },
  )
  if (stored.length > longest) {
    throw new Refusal('too-many', `More than ${longest} movements lie between the two. Ask for fewer days.`, {
      field: 'to',
    })
  }
  return stored.map(each => ({ ...each, struck: each.struck === 1, things: thingsOf(db, each.movement) }))
}

type Things = Output<'movement.list'>['movements'][number]['things']

function thingsOf(db: ReadHandle, movement: string): Things {
  return rows<Things[number]>(
    db,
    `SELECT iif(moved.work IS NULL, 'crate', 'work') AS kind, coalesce(moved.work, moved.crate) AS id,
      coalesce(${firstNumber}, '') AS number, coalesce(work.title, location.name) AS title, moved.from_words AS fromWords,
      moved.part_of AS partOf, moved.condition, moved.plan_words AS planned
     FROM moved LEFT JOIN work ON work.id = moved.work LEFT JOIN location ON location.id = moved.crate
     WHERE moved.movement = :movement ORDER BY moved.rowid`,
    { movement },
  )
}
