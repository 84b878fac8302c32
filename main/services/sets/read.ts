/** The parts of sets as lists, a work's page and a wall show them. */
import type { PlacedPart, PlacedSet, SetFacts } from '../../../src/contract/areas/sets.ts'
import type { Output } from '../../../src/contract/contract.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { row, rows } from '../sql.ts'
import type { StoredFixing } from '../walls/fixings.ts'
import { firstNumber } from '../works/figures.ts'
import { ofSet, setFactsOf } from './figures.ts'

type Size = NonNullable<PlacedPart['size']>

interface StoredPart {
  readonly work: string
  readonly number: string | null
  readonly title: string
  readonly height: number | null
  readonly width: number | null
  readonly depth: number | null
  readonly diameter: number | null
  readonly part: Size['part']
  readonly kind: Size['kind']
  readonly at: string
  readonly mass: number | null
}

const partColumns = `work.id AS work, ${firstNumber} AS number, work.title, work.hang_height AS height,
  work.hang_width AS width, work.hang_depth AS depth, work.hang_diameter AS diameter, work.hang_part AS part,
  work.hang_source AS kind, work.hang_at AS at, work.mass`

function asPart({ work, number, title, height, width, mass, ...size }: StoredPart) {
  const { depth, diameter, part, kind, at } = size
  return {
    work,
    number: number ?? '',
    title,
    size: height === null || width === null ? null : { height, width, depth, diameter, part, kind, at },
    mass,
  }
}

export function setOfWork(db: ReadHandle, work: string): Output<'work.get'>['set'] {
  const facts = setFactsOf(db, work)
  if (facts === undefined) return null
  const parts = rows<StoredPart>(db, `SELECT ${partColumns} FROM work ${ofSet}`, { set: work })
  return { ...facts, parts: parts.map(asPart) }
}

export function partOfWork(db: ReadHandle, work: string): Output<'work.get'>['partOf'] {
  const found = row<{ id: string; title: string; order: number; parts: number }>(
    db,
    `SELECT above.id, above.title,
       (SELECT count(*) FROM work AS other WHERE other.parent = above.id
         AND (other.part_order, other.id) <= (work.part_order, work.id)) AS "order",
       (SELECT count(*) FROM work AS other WHERE other.parent = above.id) AS parts
     FROM work JOIN work AS above ON above.id = work.parent WHERE work.id = :work`,
    { work },
  )
  return found ?? null
}

interface StoredPlacedPart extends StoredPart {
  readonly placement: string
  readonly picture: string | null
  readonly method: NonNullable<PlacedPart['back']>['method'] | null
  readonly data: string | null
  readonly seenFrom: NonNullable<PlacedPart['back']>['seenFrom'] | null
  readonly fixing: string | null
  readonly keeper: string | null
  readonly lockTool: string | null
  readonly hooksApart: number | null
}

/** By placement: the sets that stand on a face, each with its parts as they hang. */
export function setsOn(
  db: ReadHandle,
  exhibition: string,
  face: string,
  fixings: ReadonlyMap<string, StoredFixing>,
): ReadonlyMap<string, PlacedSet> {
  const sets = rows<SetFacts & { placement: string }>(
    db,
    `SELECT placement.id AS placement, work.set_form AS form, work.set_columns AS columns,
       coalesce(work.set_gap_x, 0.0) AS gapX, coalesce(work.set_gap_y, 0.0) AS gapY, work.set_keeps AS keeps
     FROM placement JOIN entry ON entry.id = placement.entry JOIN work ON work.id = entry.work
     WHERE placement.exhibition = :exhibition AND placement.face = :face AND work.set_form <> ''`,
    { exhibition, face },
  )
  if (sets.length === 0) return new Map()
  const parts = Map.groupBy(
    rows<StoredPlacedPart>(
      db,
      `SELECT placement.id AS placement, ${partColumns}, work.picture, back.method, back.data, back.seen_from AS seenFrom,
         own.fixing, own.keeper, own.lock_tool AS lockTool, own.hooks_apart AS hooksApart
       FROM placement JOIN entry ON entry.id = placement.entry JOIN work ON work.parent = entry.work
       LEFT JOIN work_back AS back ON back.id =
         (SELECT id FROM work_back WHERE work_back.work = work.id ORDER BY at DESC, id DESC LIMIT 1)
       LEFT JOIN placement_part AS own ON own.placement = placement.id AND own.work = work.id
       WHERE placement.exhibition = :exhibition AND placement.face = :face ORDER BY work.part_order, work.id`,
      { exhibition, face },
    ),
    part => part.placement,
  )
  return new Map(
    sets.map(({ placement, ...facts }) => [
      placement,
      { ...facts, parts: (parts.get(placement) ?? []).map(part => asPlaced(part, fixings)) },
    ]),
  )
}

function asPlaced(stored: StoredPlacedPart, fixings: ReadonlyMap<string, StoredFixing>): PlacedPart {
  const { picture, method, data, seenFrom, fixing, keeper, lockTool, hooksApart } = stored
  return {
    ...asPart(stored),
    picture,
    back: method === null || data === null || seenFrom === null ? null : { method, data: JSON.parse(data), seenFrom },
    fixing: fixing === null ? null : (fixings.get(fixing) ?? null),
    keeper: keeper === null ? null : (fixings.get(keeper) ?? null),
    lockTool: lockTool ?? '',
    hooksApart,
  }
}
