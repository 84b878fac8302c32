/**
 * What code gets of a catalogue: a handle that only reads, or, inside an edit, one that also writes. The two are
 * branded, so that a function says in its signature which it needs, and neither is the driver's own connection.
 */
import type Database from 'better-sqlite3'
import { insertMany, type NewRows } from './many.ts'

declare const reads: unique symbol
declare const writes: unique symbol

export type Prepared = Database.Statement<unknown[]>

export interface ReadHandle {
  readonly [reads]: true
  /** Throws for a statement that writes. */
  readonly prepare: (sql: string) => Prepared
}

export interface WriteHandle extends ReadHandle {
  readonly [writes]: true
  /** New rows, table by table: what putting them in one by one leaves, for any number of them. */
  readonly insertMany: (batches: readonly NewRows[]) => void
}

/** An upsert by REPLACE hands its conflict rule to the triggers and corrupts the text index. */
const replaces = /\bREPLACE\s+INTO\b|\b(?:INSERT|UPDATE)\s+OR\b/i

export function readHandle(db: Database.Database): ReadHandle {
  function prepare(sql: string): Prepared {
    const statement = db.prepare<unknown[]>(sql)
    if (!statement.readonly) throw new Error(`A read handle cannot write: ${sql}`)
    return statement
  }
  return { prepare } as ReadHandle // the brand exists for the compiler only
}

/** `inEdit` says whether an edit of this connection is under way; the journal's triggers refuse everything else too. */
export function writeHandle(db: Database.Database, inEdit: () => boolean): WriteHandle {
  function prepare(sql: string): Prepared {
    if (!inEdit()) throw new Error(`A write handle is used outside its edit: ${sql}`)
    if (replaces.test(sql)) throw new Error(`Write ON CONFLICT … DO UPDATE instead: ${sql}`)
    return db.prepare<unknown[]>(sql)
  }
  function many(batches: readonly NewRows[]): void {
    if (!inEdit()) throw new Error('A write handle is used outside its edit: insertMany')
    insertMany(db, batches)
  }
  return { prepare, insertMany: many } as WriteHandle // the brand exists for the compiler only
}
