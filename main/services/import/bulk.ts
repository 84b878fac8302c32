/**
 * Inserts many rows of one shape: the statement is prepared once for a connection and its values go by place, since
 * for hundreds of thousands of rows the naming of columns costs more than the writing.
 */
import type { WriteHandle } from '../../database/handles.ts'
import type { Value } from '../sql.ts'

export interface Shape {
  readonly table: string
  readonly columns: readonly string[]
}

const prepared = new WeakMap<WriteHandle, Map<Shape, ReturnType<WriteHandle['prepare']>>>()

export interface Queue {
  readonly put: (shape: Shape, values: readonly Value[]) => void
  /** Writes what was put, table by table, the parent of all others first. */
  readonly flush: () => void
}

/** Rows of many tables, written table by table: neighbours in a file then lie beside one another in the database too. */
export function makeQueue(db: WriteHandle, parent: Shape): Queue {
  const waiting = new Map<Shape, (readonly Value[])[]>([[parent, []]])
  return {
    put(shape, values) {
      const rows = waiting.get(shape)
      if (rows === undefined) waiting.set(shape, [values])
      else rows.push(values)
    },
    flush() {
      for (const [shape, rows] of waiting) {
        for (const values of rows) insertRow(db, shape, values)
        rows.length = 0
      }
    },
  }
}

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
