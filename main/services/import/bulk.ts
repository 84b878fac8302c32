/**
 * Rows of many tables, kept back and written together, the parent of all others first: the catalogue has a short way
 * for many rows at once, and neighbours in a file then lie beside one another in the database too.
 */
import type { WriteHandle } from '../../database/handles.ts'
import type { Value } from '../sql.ts'

export interface Shape {
  readonly table: string
  readonly columns: readonly string[]
}

export interface Queue {
  readonly put: (shape: Shape, values: readonly Value[]) => void
  /** Writes what was put, table by table. */
  readonly flush: () => void
}

export function makeQueue(db: WriteHandle, parent: Shape): Queue {
  const waiting = new Map<Shape, (readonly Value[])[]>([[parent, []]])
  return {
    put(shape, values) {
      const rows = waiting.get(shape)
      if (rows === undefined) waiting.set(shape, [values])
      else rows.push(values)
    },
    flush() {
      db.insertMany([...waiting].map(([shape, rows]) => ({ ...shape, rows })))
      waiting.clear()
      waiting.set(parent, [])
    },
  }
}

const prepared = new WeakMap<WriteHandle, Map<Shape, ReturnType<WriteHandle['prepare']>>>()

/** One row at once; its statement is prepared once a connection and its values go by place. */
export function insertRow(db: WriteHandle, shape: Shape, values: readonly Value[]): void {
  let known = prepared.get(db)
  if (known === undefined) {
    known = new Map()
    prepared.set(db, known)
  }
  let statement = known.get(shape)
  if (statement === undefined) {
    const places = shape.columns.map(() => '?').join(', ')
    statement = db.prepare(`INSERT INTO ${shape.table} (${shape.columns.join(', ')}) VALUES (${places})`)
    known.set(shape, statement)
  }
  statement.run(values)
}
