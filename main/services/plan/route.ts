/** The visitor's order of a show's faces as one edit, and the names of many walls as one edit. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { type Clash, changeFields, notFound, same } from '../change.ts'
import { openExhibition } from '../exhibitions/open.ts'
import type { Writing } from '../service.ts'
import { row, rows, update } from '../sql.ts'
import { facePlanOf } from '../walls/face-plan.ts'
import { refuseOtherShow } from '../walls/placements.ts'

interface Ordered {
  readonly id: string
  readonly face: string
}

function orderNow(db: ReadHandle, exhibition: string): readonly Ordered[] {
  return rows<Ordered>(
    db,
    `SELECT id, face FROM face_plan WHERE exhibition = :exhibition AND visitor_order IS NOT NULL
     ORDER BY visitor_order, face`,
    { exhibition },
  )
}

export function setRoute(writing: Writing, { exhibition, order }: Received<'route.set'>): Output<'route.set'> {
  const { db } = writing
  openExhibition(db, exhibition)
  writing.label(order.to.length === 0 ? 'Take back the visitor’s order' : 'Set the visitor’s order')
  const twice = order.to.findIndex((face, at) => order.to.indexOf(face) !== at)
  if (twice >= 0) {
    throw new Refusal('twice', 'A wall has one place in the visitor’s order; this one is in it twice.', {
      field: `order.to.${twice}`,
    })
  }
  const now = orderNow(db, exhibition)
  const theirs = now.map(one => one.face)
  if (same(theirs, order.to)) return { saved: ['order'], clashes: [] }
  if (!same(theirs, order.was)) {
    return {
      saved: [],
      clashes: [{ code: 'clash', id: exhibition, field: 'order', was: order.was, yours: order.to, theirs }],
    }
  }
  for (const one of now) if (!order.to.includes(one.face)) update(db, 'face_plan', one.id, { visitor_order: null })
  for (const [at, face] of order.to.entries()) {
    if (row(db, 'SELECT id FROM face WHERE id = :face', { face }) === undefined)
      throw notFound('wall', `order.to.${at}`)
    refuseOtherShow(db, exhibition, face, `order.to.${at}`)
    update(db, 'face_plan', facePlanOf(writing, exhibition, face), { visitor_order: at + 1 })
  }
  return { saved: ['order'], clashes: [] }
}

export function renameWalls(writing: Writing, { walls }: Received<'wall.rename'>): Output<'wall.rename'> {
  const { db } = writing
  const saved = new Set<string>()
  const clashes: Clash[] = []
  for (const [at, { id, name }] of walls.entries()) {
    if (row(db, 'SELECT id FROM wall WHERE id = :id', { id }) === undefined) throw notFound('wall', `walls.${at}.id`)
    const changed = changeFields(writing, 'wall', id, { name }, { name: 'name' }, 'wall')
    for (const field of changed.saved) saved.add(field)
    clashes.push(...changed.clashes.map(clash => ({ ...clash, id })))
  }
  writing.label(walls.length === 1 ? 'Name a wall' : `Name ${walls.length} walls`)
  return { saved: [...saved], clashes }
}
