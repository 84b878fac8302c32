/** Lists of works, a page at a time, and the counts beside them. */
import type { WorkLine } from '../../../src/contract/areas/works-list.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { wallCalled } from '../rooms/called.ts'
import { ruleNumber } from '../rules.ts'
import type { Reading } from '../service.ts'
import { rows, type Value, value } from '../sql.ts'
import { firstNumber } from './figures.ts'
import { differing, higher, listedOf, wider } from './filter.ts'
import { orderedWorks } from './order.ts'

interface Line {
  readonly id: string
  readonly number: string | null
  readonly title: string
  readonly maker: string
  readonly date_text: string
  readonly medium: string
  readonly kind: WorkLine['kind']
  readonly lender_name: string | null
  readonly hang_height: number | null
  readonly hang_width: number | null
  readonly hang_depth: number | null
  readonly hang_diameter: number | null
  readonly hang_part: NonNullable<WorkLine['size']>['part']
  readonly hang_source: NonNullable<WorkLine['size']>['kind']
  readonly hang_at: string
  readonly mass: number | null
  readonly method: string
  readonly light_limit: number | null
  readonly sensitivity: WorkLine['sensitivity']
  readonly picture: string | null
  readonly parent: string | null
  readonly questions: number
  readonly differs_height: number | null
  readonly differs_width: number | null
  readonly entry: string | null
  readonly section: string | null
  readonly running: string | null
  readonly status: string | null
  readonly face: string | null
  readonly where_name: string | null
  readonly place: number | null
}

/** A set shows the first picture of its parts where it has none of its own. */
export const firstPicture = `(SELECT part.picture FROM work AS part WHERE part.parent = work.id AND part.picture IS NOT NULL
  ORDER BY part.part_order, part.id LIMIT 1)`

const inShow = `entry.id AS entry, entry.section AS section, entry.running AS running, entry.status AS status,
  placement.face AS face, room.name || ' ' || ${wallCalled} AS where_name,
  (SELECT count(*) FROM placement AS other JOIN entry AS e ON e.id = other.entry
    WHERE other.face = placement.face AND e.exhibition = :exhibition AND (other.x, other.id) <= (placement.x, placement.id)) AS place`
const inNone = `NULL AS entry, NULL AS section, NULL AS running, NULL AS status, NULL AS face, NULL AS where_name, NULL AS place`

const ofShow = `LEFT JOIN entry ON entry.work = work.id AND entry.exhibition = :exhibition
  LEFT JOIN placement ON placement.entry = entry.id
  LEFT JOIN face ON face.id = placement.face LEFT JOIN wall ON wall.id = face.wall LEFT JOIN room ON room.id = wall.room`

export function list({ db }: Reading, filter: Received<'work.list'>): Output<'work.list'> {
  const { exhibition, offset = 0, limit = 100 } = filter
  const works = orderedWorks(db, filter)
  const lines = rows<Line>(
    db,
    `SELECT work.id, work.title, work.maker, work.date_text, work.medium, work.kind, party.name AS lender_name,
      ${firstNumber} AS number,
      work.hang_height, work.hang_width, work.hang_depth, work.hang_diameter, work.hang_part, work.hang_source, work.hang_at,
      work.mass, work.method, work.light_limit, work.sensitivity, coalesce(work.picture, ${firstPicture}) AS picture, work.parent,
      (SELECT count(*) FROM import_question WHERE import_question.work = work.id AND answer IS NULL) AS questions,
      ${higher} AS differs_height, ${wider} AS differs_width,
      ${exhibition === undefined ? inNone : inShow}
     FROM json_each(:page) AS wanted CROSS JOIN work ON work.n = wanted.value LEFT JOIN party ON party.id = work.lender
     ${exhibition === undefined ? '' : ofShow} LEFT JOIN ${listedOf} ORDER BY wanted.key`,
    {
      page: JSON.stringify([...works.subarray(offset, offset + limit)]),
      ...(exhibition === undefined ? {} : { exhibition }),
    },
  )
  const differsBy = ruleNumber(db, 'differsBy')
  const parts = partsOf(db, lines)
  return { total: works.length, offset, works: lines.map(line => asLine(line, parts.get(line.id) ?? [], differsBy)) }
}

/** The parts of the sets among these lines. */
function partsOf(db: Reading['db'], lines: readonly Line[]): ReadonlyMap<string, WorkLine['parts']> {
  const found = rows<{ id: string; number: string | null; title: string; parent: string }>(
    db,
    `SELECT work.id, ${firstNumber} AS number, work.title, work.parent FROM json_each(:sets) AS one
     JOIN work ON work.parent = one.value ORDER BY work.part_order, work.id`,
    { sets: JSON.stringify(lines.map(line => line.id)) },
  )
  return new Map(
    [...Map.groupBy(found, part => part.parent)].map(([set, parts]) => [
      set,
      parts.map(({ id, number, title }) => ({ id, number: number ?? '', title })),
    ]),
  )
}

function asLine(line: Line, parts: WorkLine['parts'], differsBy: number): WorkLine {
  const { hang_height: height, hang_width: width } = line
  const differs = { height: line.differs_height ?? 0, width: line.differs_width ?? 0 }
  return {
    id: line.id,
    number: line.number ?? '',
    title: line.title,
    maker: line.maker,
    dateText: line.date_text,
    medium: line.medium,
    kind: line.kind,
    lender: line.lender_name ?? '',
    size:
      height === null || width === null
        ? null
        : {
            height,
            width,
            depth: line.hang_depth,
            diameter: line.hang_diameter,
            part: line.hang_part,
            kind: line.hang_source,
            at: line.hang_at,
          },
    mass: line.mass,
    method: line.method,
    lightLimit: line.light_limit,
    sensitivity: line.sensitivity,
    picture: line.picture,
    questions: line.questions,
    entry:
      line.entry === null
        ? null
        : {
            id: line.entry,
            section: line.section,
            running: line.running ?? '',
            status: line.status ?? '',
            where: line.face === null ? null : { face: line.face, name: line.where_name ?? '', place: line.place ?? 0 },
          },
    parts,
    partOf: line.parent,
    differs: Math.abs(differs.height) > differsBy || Math.abs(differs.width) > differsBy ? differs : null,
  }
}

const partWidths = 'SELECT coalesce(sum(hang_width), 0.0) FROM work WHERE parent IS NOT NULL'

/** Running length of all walls, mm; in a show also both faces of its partitions. */
function wallsToHang(db: ReadHandle, exhibition: string | undefined): number {
  return (
    value<number>(
      db,
      `SELECT coalesce(sum(wall.length), 0.0) FROM face JOIN wall ON wall.id = face.wall
       WHERE wall.exhibition IS NULL OR wall.exhibition = :exhibition`,
      { exhibition: exhibition ?? null },
    ) ?? 0
  )
}

export function counts({ db }: Reading, { exhibition }: Received<'work.counts'>): Output<'work.counts'> {
  const parameters: Record<string, Value> = exhibition === undefined ? {} : { exhibition }
  const one = (sql: string, more: Record<string, Value> = {}) => value<number>(db, sql, { ...parameters, ...more }) ?? 0
  const entered = 'entry CROSS JOIN work ON work.id = entry.work WHERE entry.exhibition = :exhibition'
  // Grouped as an index holds them, so that the rows of 70,000 works need not be read.
  const groups = rows<Group>(
    db,
    `SELECT sums.*, coalesce(party.name, '') AS name FROM (
       SELECT work.lender, work.kind, count(*) AS works, coalesce(sum(work.hang_width), 0.0) AS frames,
         sum(work.hang_source <> 'measured') AS unmeasured
       FROM ${exhibition === undefined ? 'work' : entered} GROUP BY work.lender, work.kind) AS sums
     LEFT JOIN party ON party.id = sums.lender`,
    parameters,
  )
  const lenders = summed(groups, ({ lender }) => lender)
  const kinds = summed(groups, ({ kind }) => kind)
  return {
    works: total(groups, ({ works }) => works),
    // In a show the parts of a set have no entries; in the catalogue each stands beside its set.
    frames: total(groups, ({ frames }) => frames) - (exhibition === undefined ? one(partWidths) : 0),
    wall: wallsToHang(db, exhibition),
    lenders: lenders.map(([{ lender: id, name }, works]) => ({ id, name, works })).sort(byWorks(({ name }) => name)),
    kinds: kinds.map(([{ kind }, works]) => ({ kind, works })).sort(byWorks(({ kind }) => kind)),
    questions: one(
      `SELECT count(*) FROM import_question JOIN work ON work.id = import_question.work
       ${exhibition === undefined ? '' : 'JOIN entry ON entry.work = work.id AND entry.exhibition = :exhibition'} WHERE answer IS NULL`,
    ),
    differs: one(
      `SELECT count(*) FROM ${differing}
       ${exhibition === undefined ? '' : 'AND work.id IN (SELECT work FROM entry WHERE exhibition = :exhibition)'}`,
      { differsBy: ruleNumber(db, 'differsBy') },
    ),
    unmeasured: total(groups, ({ unmeasured }) => unmeasured),
    unplaced:
      exhibition === undefined
        ? 0
        : one(`SELECT count(*) FROM entry WHERE exhibition = :exhibition AND id NOT IN (SELECT entry FROM placement)`),
  }
}

/** The works of one lender and kind. */
interface Group {
  readonly lender: string | null
  readonly kind: WorkLine['kind']
  readonly name: string
  readonly works: number
  /** Widths of their frames, mm. */
  readonly frames: number
  readonly unmeasured: number
}

function total(groups: readonly Group[], of: (group: Group) => number): number {
  return groups.reduce((sum, group) => sum + of(group), 0)
}

/** One group of each key, with the works of all that have it. */
function summed(groups: readonly Group[], of: (group: Group) => string | null): readonly (readonly [Group, number])[] {
  const found = Map.groupBy(groups, of)
  return [...found.values()].flatMap(some =>
    some.slice(0, 1).map(first => [first, total(some, one => one.works)] as const),
  )
}

function byWorks<T extends { readonly works: number }>(name: (one: T) => string) {
  return (a: T, b: T) => b.works - a.works || (name(a) < name(b) ? -1 : 1)
}
