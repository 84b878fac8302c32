/** Lists of works, a page at a time, and the counts beside them. Filtering and sorting are SQLite's: 70,000 works stay here. */

import { normalNumber } from '../../../src/checklist/numbers.ts'
import type { WorkLine } from '../../../src/contract/areas/works.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { ruleNumber } from '../rules.ts'
import type { Reading } from '../service.ts'
import { rows, type Value, value } from '../sql.ts'
import { firstNumber } from './figures.ts'

type Filter = Received<'work.list'>

/** Each word a prefix, each quoted: what a person types is never the index's own syntax. */
export function fullTextQuery(search: string): string {
  const words = search.normalize('NFC').match(/[\p{L}\p{N}]+/gu) ?? []
  return words.map(word => `"${word}"*`).join(' ')
}

/** The newest listed size of the part that hangs, for works whose measured size is in force. */
const listedOf = `LEFT JOIN work_size AS listed ON work.hang_source = 'measured' AND listed.id = (
    SELECT id FROM work_size WHERE work_size.work = work.id AND kind = 'listed' AND part = work.hang_part
    ORDER BY chosen DESC, at DESC, id DESC LIMIT 1)`
const higher = '(work.hang_height - coalesce(listed.height, listed.diameter))'
const wider = '(work.hang_width - coalesce(listed.width, listed.diameter))'
const differ = `(abs(${higher}) > :differsBy OR abs(${wider}) > :differsBy)`

interface Built {
  readonly from: string
  readonly where: string
  readonly parameters: Record<string, Value>
}

function build(db: ReadHandle, filter: Filter): Built {
  const where: string[] = []
  const parameters: Record<string, Value> = {}
  let from = 'work LEFT JOIN party ON party.id = work.lender'
  if (filter.exhibition !== undefined) {
    parameters.exhibition = filter.exhibition
    from += ` LEFT JOIN entry ON entry.work = work.id AND entry.exhibition = :exhibition
      LEFT JOIN section ON section.id = entry.section
      LEFT JOIN placement ON placement.entry = entry.id
      LEFT JOIN face ON face.id = placement.face LEFT JOIN wall ON wall.id = face.wall LEFT JOIN room ON room.id = wall.room`
    where.push(filter.outside === true ? 'entry.id IS NULL' : 'entry.id IS NOT NULL')
    if (filter.section !== undefined) {
      where.push('entry.section = :section')
      parameters.section = filter.section
    }
    if (filter.settle === 'unplaced') where.push('placement.id IS NULL')
  }
  if (filter.lender !== undefined) {
    where.push('work.lender = :lender')
    parameters.lender = filter.lender
  }
  if (filter.kind !== undefined) {
    where.push('work.kind = :kind')
    parameters.kind = filter.kind
  }
  if (filter.settle === 'questions') where.push(`work.id IN (SELECT work FROM import_question WHERE answer IS NULL)`)
  if (filter.settle === 'unmeasured') where.push(`work.hang_source <> 'measured'`)
  if (filter.settle === 'differs') {
    parameters.differsBy = ruleNumber(db, 'differsBy')
    from += ` ${listedOf}`
    where.push(differ)
  }
  const search = filter.search?.trim() ?? ''
  if (search !== '') {
    const words = fullTextQuery(search)
    const number = normalNumber(search)
    const ways: string[] = []
    if (words !== '') {
      ways.push('work.n IN (SELECT rowid FROM work_fts WHERE work_fts MATCH :words)')
      parameters.words = words
    }
    if (number !== '') {
      // Upper bound of a prefix search that the index on norm can answer.
      ways.push(`work.id IN (SELECT work FROM work_number WHERE norm >= :number AND norm < :number || char(1114111))`)
      parameters.number = number
      if (filter.exhibition !== undefined) ways.push('entry.running = :number')
    }
    where.push(ways.length === 0 ? '0' : `(${ways.join(' OR ')})`)
  }
  return { from, where: where.length === 0 ? '1' : where.join(' AND '), parameters }
}

function order(filter: Filter): string {
  const way = filter.descending === true ? 'DESC' : 'ASC'
  const last = 'work.n'
  const inShow = filter.exhibition !== undefined && filter.outside !== true
  switch (filter.sort ?? 'order') {
    case 'order':
      return inShow
        ? `section.position IS NULL, section.position ${way}, entry.position ${way}, ${last}`
        : `${last} ${way}`
    case 'number':
      return `work.sort_number ${way}, ${last}`
    case 'title':
      return `work.sort_title ${way}, ${last}`
    case 'maker':
      return `work.sort_maker ${way}, work.sort_title, ${last}`
    case 'date':
      return `work.date_text ${way}, ${last}`
    case 'size':
      return `work.hang_height * work.hang_width ${way}, ${last}`
    case 'mass':
      return `work.mass ${way}, ${last}`
    case 'limit':
      return `work.light_limit ${way}, ${last}`
    case 'where':
      return inShow ? `room.position ${way}, wall.position ${way}, placement.x ${way}, ${last}` : `${last} ${way}`
  }
}

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

const inShow = `entry.id AS entry, entry.section AS section, entry.running AS running, entry.status AS status,
  placement.face AS face, room.name || ' ' || wall.name AS where_name,
  (SELECT count(*) FROM placement AS other JOIN entry AS e ON e.id = other.entry
    WHERE other.face = placement.face AND e.exhibition = :exhibition AND (other.x, other.id) <= (placement.x, placement.id)) AS place`
const inNone = `NULL AS entry, NULL AS section, NULL AS running, NULL AS status, NULL AS face, NULL AS where_name, NULL AS place`

export function list({ db }: Reading, filter: Filter): Output<'work.list'> {
  const { from, where, parameters } = build(db, filter)
  const offset = filter.offset ?? 0
  const total = value<number>(db, `SELECT count(*) FROM ${from} WHERE ${where}`, parameters) ?? 0
  const lines = rows<Line>(
    db,
    `SELECT work.id, work.title, work.maker, work.date_text, work.medium, work.kind, party.name AS lender_name,
      ${firstNumber} AS number,
      work.hang_height, work.hang_width, work.hang_depth, work.hang_diameter, work.hang_part, work.hang_source, work.hang_at,
      work.mass, work.method, work.light_limit, work.sensitivity, work.picture,
      (SELECT count(*) FROM import_question WHERE import_question.work = work.id AND answer IS NULL) AS questions,
      ${higher} AS differs_height, ${wider} AS differs_width,
      ${filter.exhibition === undefined ? inNone : inShow}
     FROM ${from} ${filter.settle === 'differs' ? '' : listedOf}
     WHERE ${where} ORDER BY ${order(filter)} LIMIT :limit OFFSET :offset`,
    { ...parameters, limit: filter.limit ?? 100, offset },
  )
  const differsBy = ruleNumber(db, 'differsBy')
  return { total, offset, works: lines.map(line => asLine(line, differsBy)) }
}

function asLine(line: Line, differsBy: number): WorkLine {
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
    differs: Math.abs(differs.height) > differsBy || Math.abs(differs.width) > differsBy ? differs : null,
  }
}

export function counts({ db }: Reading, { exhibition }: Received<'work.counts'>): Output<'work.counts'> {
  const parameters: Record<string, Value> = exhibition === undefined ? {} : { exhibition }
  const of =
    exhibition === undefined ? 'work' : 'work JOIN entry ON entry.work = work.id AND entry.exhibition = :exhibition'
  const one = (sql: string, more: Record<string, Value> = {}) => value<number>(db, sql, { ...parameters, ...more }) ?? 0
  return {
    works: one(`SELECT count(*) FROM ${of}`),
    frames: one(`SELECT coalesce(sum(work.hang_width), 0.0) FROM ${of}`),
    wall: value<number>(db, 'SELECT coalesce(sum(length), 0.0) FROM wall') ?? 0,
    lenders: rows(
      db,
      `SELECT work.lender AS id, coalesce(party.name, '') AS name, count(*) AS works FROM ${of}
       LEFT JOIN party ON party.id = work.lender GROUP BY work.lender ORDER BY works DESC, name`,
      parameters,
    ),
    kinds: rows(
      db,
      `SELECT work.kind AS kind, count(*) AS works FROM ${of} GROUP BY work.kind ORDER BY works DESC, kind`,
      parameters,
    ),
    questions: one(
      `SELECT count(*) FROM import_question JOIN work ON work.id = import_question.work
       ${exhibition === undefined ? '' : 'JOIN entry ON entry.work = work.id AND entry.exhibition = :exhibition'} WHERE answer IS NULL`,
    ),
    differs: one(`SELECT count(*) FROM ${of} ${listedOf} WHERE ${differ}`, { differsBy: ruleNumber(db, 'differsBy') }),
    unmeasured: one(`SELECT count(*) FROM ${of} WHERE work.hang_source <> 'measured'`),
    unplaced:
      exhibition === undefined
        ? 0
        : one(`SELECT count(*) FROM ${of} WHERE entry.id NOT IN (SELECT entry FROM placement)`),
  }
}
