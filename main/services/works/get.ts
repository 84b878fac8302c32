/** Everything about one work. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { inForce } from '../../../src/model/in-force.ts'
import { workFacts } from '../../../src/model/work-facts.ts'
import { notFound } from '../change.ts'
import { wallCalled } from '../rooms/called.ts'
import type { Reading } from '../service.ts'
import { wholeOf } from '../sets/figures.ts'
import { partOfWork, setOfWork } from '../sets/read.ts'
import { row, rows } from '../sql.ts'
import { asFact, hangingSizeOf, massesOf, numberOrder, sizesOf } from './figures.ts'
import { findingsOfWorks, readerOf } from './findings.ts'

type Got = Output<'work.get'>

const facts = Object.entries(workFacts)
  .map(([field, { column }]) => `${column} AS ${field}`)
  .join(', ')

export function get({ db, person }: Reading, { id, unit }: Received<'work.get'>): Got {
  const found = row<Got['facts']>(db, `SELECT ${facts} FROM work WHERE id = :id`, { id })
  if (found === undefined) throw notFound('work')
  const sizes = sizesOf(db, id).map(asFact)
  const masses = massesOf(db, id).map(asFact)
  const hanging = hangingSizeOf(db, id)
  const inForceByPart = new Map(
    [...new Set(sizes.map(size => size.part))].map(part => [part, inForce(sizes.filter(s => s.part === part))]),
  )
  const mass = inForce(masses)
  const set = setOfWork(db, id)
  const whole = set === null ? null : wholeOf(db, id)
  return {
    id,
    facts: found,
    lenderName: row<{ name: string }>(db, 'SELECT name FROM party WHERE id = :id', { id: found.lender })?.name ?? '',
    numbers: rows(
      db,
      `SELECT id, kind, text, since, "by", note FROM work_number WHERE work = :id ORDER BY ${numberOrder}, id`,
      { id },
    ),
    sizes: sizes.map(({ id: size, label, count, unit, raw, kind, source, by, at, chosen, ...rest }) => ({
      id: size,
      part: rest.part as Got['sizes'][number]['part'], // checked by the table
      label,
      height: rest.height,
      width: rest.width,
      depth: rest.depth,
      diameter: rest.diameter,
      count,
      unit,
      raw,
      kind,
      source,
      by,
      at,
      approximate: rest.approximate === 1,
      chosen,
      inForce: inForceByPart.get(rest.part)?.id === size,
    })),
    masses: masses.map(({ id: one, kg, raw, kind, source, by, at, approximate, chosen }) => ({
      id: one,
      kg,
      raw,
      kind,
      source,
      by,
      at,
      approximate: approximate === 1,
      chosen,
      inForce: mass?.id === one,
    })),
    backs: rows<Omit<Got['backs'][number], 'data'> & { data: string }>(
      db,
      `SELECT id, method, data, seen_from AS seenFrom, "by", at, note FROM work_back WHERE work = :id ORDER BY at DESC, id DESC`,
      { id },
    ).map(back => ({ ...back, data: JSON.parse(back.data) })),
    pictures: rows(
      db,
      'SELECT id, hash, name, width_px AS widthPx, height_px AS heightPx FROM picture WHERE work = :id ORDER BY position, id',
      { id },
    ),
    documents: rows(
      db,
      `SELECT id, hash, name, mime, bytes, at FROM document WHERE subject_kind = 'work' AND subject = :id ORDER BY at, id`,
      { id },
    ),
    size: set === null ? (hanging === undefined ? null : asHanging(hanging)) : (whole?.size ?? null),
    mass: set === null ? (mass?.kg ?? null) : (whole?.mass ?? null),
    entries: rows(
      db,
      `SELECT entry.id, entry.exhibition, exhibition.title AS exhibitionTitle, entry.running,
        coalesce(room.name || ' ' || ${wallCalled}, '') AS "where"
       FROM entry JOIN exhibition ON exhibition.id = entry.exhibition
       LEFT JOIN placement ON placement.entry = entry.id LEFT JOIN face ON face.id = placement.face
       LEFT JOIN wall ON wall.id = face.wall LEFT JOIN room ON room.id = wall.room
       WHERE entry.work = :id ORDER BY exhibition.position, exhibition.id`,
      { id },
    ),
    markNotes: rows(
      db,
      `SELECT mark.id AS mark, exhibition.title AS exhibitionTitle, room.name || ' ' || ${wallCalled} AS "where", mark.slot,
        mark.note, iif(mark.drilled_at = '', mark.marked_at, mark.drilled_at) AS at,
        iif(mark.drilled_at = '', mark.marked_by, mark.drilled_by) AS "by"
       FROM mark JOIN placement ON placement.id = mark.placement JOIN entry ON entry.id = placement.entry
       JOIN exhibition ON exhibition.id = entry.exhibition JOIN face ON face.id = mark.face
       JOIN wall ON wall.id = face.wall JOIN room ON room.id = wall.room
       WHERE entry.work = :id AND mark.note <> '' ORDER BY at DESC, mark.id`,
      { id },
    ),
    set,
    partOf: partOfWork(db, id),
    questions: rows(db, 'SELECT id FROM import_question WHERE work = :id AND answer IS NULL', { id }).length,
    findings: findingsOfWorks(db, [id], readerOf(person, unit)),
  }
}

export function asHanging(hanging: NonNullable<ReturnType<typeof hangingSizeOf>>): NonNullable<Got['size']> {
  const { fact, part, height, width, depth, diameter } = hanging
  return { height, width, depth, diameter, part, kind: fact.kind, at: fact.at }
}
