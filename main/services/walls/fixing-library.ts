/**
 * The library of fixings as a whole: a kind is copied with its ratings, leaves once nothing needs it, and says where it
 * is used. The rule it keeps: what a work hangs on, or a hole was made for, stays in the library.
 */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { wallCalled } from '../rooms/called.ts'
import type { Reading, Writing } from '../service.ts'
import { insert, remove as removeRow, row, rows, type Value } from '../sql.ts'

type Use = Output<'fixing.uses'>['fixings'][number]

function storedOf(db: ReadHandle, id: string): Record<string, Value> {
  const stored = row<Record<string, Value>>(db, 'SELECT * FROM fixing_kind WHERE id = :id', { id })
  if (stored === undefined) throw notFound('fixing')
  return stored
}

/** What a packet says holds for the copy until somebody says otherwise; the stock is of the first alone. */
export function copy(writing: Writing, { id, name }: Received<'fixing.copy'>): Output<'fixing.copy'> {
  const { db } = writing
  const stored = storedOf(db, id)
  writing.label(`Copy the fixing ${stored.name} as ${name}`)
  const made = writing.newId()
  insert(db, 'fixing_kind', { ...stored, id: made, name, in_stock: null })
  for (const rating of rows<Record<string, Value>>(
    db,
    'SELECT * FROM fixing_rating WHERE fixing = :id ORDER BY wall_type',
    { id },
  )) {
    insert(db, 'fixing_rating', { ...rating, id: writing.newId(), fixing: made })
  }
  return { id: made }
}

export function remove(writing: Writing, { id }: Received<'fixing.remove'>): Output<'fixing.remove'> {
  const { db } = writing
  const { name } = storedOf(db, id)
  const { works, holes } = countsOf(db).get(id) ?? { works: 0, holes: 0 }
  if (works + holes > 0) {
    const said = [
      works === 1 ? 'one work hangs on it' : works > 1 ? `${works} works hang on it` : '',
      holes === 1 ? 'one hole was made for it' : holes > 1 ? `${holes} holes were made for it` : '',
    ].filter(part => part !== '')
    throw new Refusal(
      'fixing-in-use',
      `${name} stays: ${said.join(' and ')}. Choose another fixing there first; what holes were made for is kept.`,
      { field: 'id', details: { works, holes } },
    )
  }
  writing.label(`Remove the fixing ${name}`)
  for (const rating of rows<{ id: string }>(db, 'SELECT id FROM fixing_rating WHERE fixing = :id', { id })) {
    removeRow(db, 'fixing_rating', rating.id)
  }
  removeRow(db, 'fixing_kind', id)
  return { done: true }
}

function countsOf(db: ReadHandle): ReadonlyMap<string, { readonly works: number; readonly holes: number }> {
  const counted = rows<{ fixing: string; works: number; holes: number }>(
    db,
    `SELECT id AS fixing,
       (SELECT count(*) FROM placement WHERE placement.fixing = fixing_kind.id OR placement.keeper = fixing_kind.id)
         + (SELECT count(*) FROM placement_part AS own WHERE own.fixing = fixing_kind.id OR own.keeper = fixing_kind.id) AS works,
       (SELECT count(*) FROM mark WHERE mark.fixing = fixing_kind.id) AS holes
     FROM fixing_kind`,
  )
  return new Map(counted.map(one => [one.fixing, one]))
}

export function uses({ db }: Reading, { exhibition }: Received<'fixing.uses'>): Output<'fixing.uses'> {
  const here = new Map<string, Use['here']>()
  for (const { fixing, ...use } of rows<Use['here'][number] & { fixing: string }>(
    db,
    `SELECT used.fixing, used.does, placement.id AS placement, work.id AS work, work.title, face.id AS face,
       room.name AS room, ${wallCalled} AS wall, wall.wall_type AS wallType
     FROM (SELECT id, fixing, 'holds' AS does FROM placement WHERE fixing IS NOT NULL
           UNION ALL SELECT id, keeper, 'keeps' FROM placement WHERE keeper IS NOT NULL
           UNION SELECT placement, fixing, 'holds' FROM placement_part WHERE fixing IS NOT NULL
           UNION SELECT placement, keeper, 'keeps' FROM placement_part WHERE keeper IS NOT NULL) AS used
     JOIN placement ON placement.id = used.id JOIN entry ON entry.id = placement.entry JOIN work ON work.id = entry.work
     JOIN face ON face.id = placement.face JOIN wall ON wall.id = face.wall JOIN room ON room.id = wall.room
     WHERE placement.exhibition = :exhibition
     ORDER BY room.position, wall.position, face.id, placement.x, placement.id, used.does`,
    { exhibition },
  )) {
    here.set(fixing, [...(here.get(fixing) ?? []), use])
  }
  const counts = countsOf(db)
  return {
    fixings: rows<{ fixing: string; inStock: number | null }>(
      db,
      'SELECT id AS fixing, in_stock AS inStock FROM fixing_kind ORDER BY kind, rated_kg, name, id',
    ).map(({ fixing, inStock }) => {
      const { works, holes } = counts.get(fixing) ?? { works: 0, holes: 0 }
      return { fixing, inStock, works, holes, here: here.get(fixing) ?? [] }
    }),
  }
}
