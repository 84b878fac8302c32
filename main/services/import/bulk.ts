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

/** Rows that are made only while they go in: an import's are many, and few of them are then kept at a time. */
export interface RowsAhead extends Iterable<readonly Value[]> {
  readonly length: number
}

export interface Queue {
  readonly put: (shape: Shape, values: readonly Value[]) => void
  /** Goes before what was put singly. */
  readonly ahead: (shape: Shape, rows: RowsAhead) => void
  /** Writes what was put, table by table. */
  readonly flush: () => void
}

export function makeQueue(db: WriteHandle, parent: Shape): Queue {
  const waiting = new Map<Shape, { readonly ahead: RowsAhead[]; readonly singly: (readonly Value[])[] }>()
  function of(shape: Shape) {
    const there = waiting.get(shape) ?? { ahead: [], singly: [] }
    waiting.set(shape, there)
    return there
  }
  of(parent)
  return {
    put: (shape, values) => void of(shape).singly.push(values),
    ahead: (shape, rows) => void of(shape).ahead.push(rows),
    flush() {
      db.insertMany(
        [...waiting].flatMap(([shape, { ahead, singly }]) => [...ahead, singly].map(rows => ({ ...shape, rows }))),
      )
      waiting.clear()
      of(parent)
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
