/** The library of fixings: generic kinds, rated as the user's own packet says. No rating is invented. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { USUAL_SOURCE, usualMissing } from '../../../src/hang/usual-fixings.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { changeFields, notFound } from '../change.ts'
import type { Reading, Writing } from '../service.ts'
import { insert, remove, row, rows, update, value } from '../sql.ts'

export type StoredFixing = Output<'fixing.list'>['fixings'][number]

type PlainFixing = Omit<StoredFixing, 'ratings'>

/** All kinds with their ratings, by kind and rating. */
export function fixingsOf(db: ReadHandle): StoredFixing[] {
  const ratings = new Map<string, StoredFixing['ratings']>()
  for (const { fixing, ...rating } of rows<StoredFixing['ratings'][number] & { fixing: string }>(
    db,
    'SELECT fixing, wall_type AS wallType, rated_kg AS ratedKg, source FROM fixing_rating ORDER BY wall_type',
  )) {
    ratings.set(fixing, [...(ratings.get(fixing) ?? []), rating])
  }
  return rows<PlainFixing>(
    db,
    `SELECT id, name, kind, hole_offset AS holeOffset, rated_kg AS ratedKg, wall_type AS wallType, shank, length, head,
       bit, tool, source, note FROM fixing_kind ORDER BY kind, rated_kg, name, id`,
  ).map(fixing => ({ ...fixing, ratings: ratings.get(fixing.id) ?? [] }))
}

export function list({ db }: Reading): Output<'fixing.list'> {
  return { fixings: fixingsOf(db) }
}

export function add(writing: Writing, input: Received<'fixing.add'>): Output<'fixing.add'> {
  const id = writing.newId()
  writing.label(`Add the fixing ${input.name}`)
  insert(writing.db, 'fixing_kind', {
    id,
    name: input.name,
    kind: input.kind,
    hole_offset: input.holeOffset,
    rated_kg: input.ratedKg,
    wall_type: input.wallType ?? '',
    shank: input.shank ?? null,
    length: input.length ?? null,
    head: input.head ?? null,
    bit: input.bit ?? '',
    tool: input.tool ?? '',
    source: input.source ?? '',
    note: input.note ?? '',
  })
  return { id }
}

/** Sizes of the trade's customary pieces; what they hold nobody knows before a packet is read. */
export function addUsual(writing: Writing): Output<'fixing.addUsual'> {
  const missing = usualMissing(fixingsOf(writing.db).map(fixing => fixing.name))
  const quiet: Writing = { ...writing, label: () => {} }
  for (const fixing of missing) add(quiet, { ...fixing, ratedKg: null, source: USUAL_SOURCE })
  writing.label(`Add ${missing.length} usual fixings, unrated`)
  return { added: missing.length }
}

export function change(writing: Writing, { id, changes }: Received<'fixing.update'>): Output<'fixing.update'> {
  writing.label(`Change the fixing ${nameOf(writing.db, id)}`)
  const columns = {
    name: 'name',
    kind: 'kind',
    holeOffset: 'hole_offset',
    ratedKg: 'rated_kg',
    wallType: 'wall_type',
    shank: 'shank',
    length: 'length',
    head: 'head',
    bit: 'bit',
    tool: 'tool',
    source: 'source',
    note: 'note',
  }
  const { saved, clashes } = changeFields(writing, 'fixing_kind', id, changes, columns, 'fixing')
  return { saved, clashes }
}

interface StoredRating {
  readonly id: string
  readonly rated_kg: number | null
}

function ratingFor(db: ReadHandle, fixing: string, wallType: string): StoredRating | undefined {
  return row<StoredRating>(
    db,
    'SELECT id, rated_kg FROM fixing_rating WHERE fixing = :fixing AND wall_type = :wallType',
    { fixing, wallType },
  )
}

function nameOf(db: ReadHandle, id: string): string {
  const name = value<string>(db, 'SELECT name FROM fixing_kind WHERE id = :id', { id })
  if (name === undefined) throw notFound('fixing')
  return name
}

/** One rating for one type of wall; another figure there than the one it was based on is a clash, and stays. */
export function rate(writing: Writing, input: Received<'fixing.rate'>): Output<'fixing.rate'> {
  const { db } = writing
  const { id, wallType, ratedKg, source, was } = input
  writing.label(`Rate ${nameOf(db, id)} in ${wallType}`)
  const stored = ratingFor(db, id, wallType)
  const theirs = stored?.rated_kg ?? null
  if (was !== undefined && was !== theirs && theirs !== ratedKg) {
    return { saved: [], clashes: [{ code: 'clash', id, field: 'ratedKg', was, yours: ratedKg, theirs }] }
  }
  const columns = { rated_kg: ratedKg, source }
  if (stored !== undefined) update(db, 'fixing_rating', stored.id, columns)
  else insert(db, 'fixing_rating', { id: writing.newId(), fixing: id, wall_type: wallType, ...columns })
  return { saved: ['ratedKg'], clashes: [] }
}

export function unrate(writing: Writing, { id, wallType }: Received<'fixing.unrate'>): Output<'fixing.unrate'> {
  const { db } = writing
  writing.label(`Take back the rating of ${nameOf(db, id)} in ${wallType}`)
  const stored = ratingFor(db, id, wallType)
  if (stored === undefined) throw notFound('rating for this wall', 'wallType')
  remove(db, 'fixing_rating', stored.id)
  return { done: true }
}
