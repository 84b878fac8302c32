/**
 * How a sheet stands to its prints. The rule it keeps: the same content is the same revision, a changed one is the next
 * and voids the older; going back to what was printed last makes that print good again.
 */
import { createHash } from 'node:crypto'
import type { ReadHandle } from '../../database/handles.ts'
import type { Writing } from '../service.ts'
import { insert, rows } from '../sql.ts'

/** What is printed: of a wall its face; of a storey none, its kind then names the storey. */
export interface Printable {
  readonly exhibition: string
  readonly face: string | null
  readonly kind: string
}

export interface Print {
  readonly revision: number
  readonly hash: string
  readonly at: string
  readonly by: string
}

export interface Standing {
  /** Hash of what the sheet says now. */
  readonly hash: string
  readonly last: Print | null
  readonly upToDate: boolean
  /** The revision that printing now would give. */
  readonly next: number
  /** Revisions that are no longer good; `next` itself is never among them. */
  readonly voids: readonly number[]
}

/** @param content all that the sheet says, whatever paper or unit it is on */
export function standingOf(db: ReadHandle, of: Printable, content: string): Standing {
  const hash = createHash('sha256').update(content).digest('hex')
  const prints = rows<Print>(
    db,
    `SELECT revision, hash, at, "by" FROM sheet_print
     WHERE exhibition = :exhibition AND face IS :face AND kind = :kind ORDER BY revision, at, id`,
    { ...of },
  )
  const last = prints.at(-1) ?? null
  const upToDate = last?.hash === hash
  const next = upToDate ? last.revision : (last?.revision ?? 0) + 1
  const voids = [...new Set(prints.map(print => print.revision))].filter(revision => revision < next)
  return { hash, last, upToDate, next, voids }
}

/** How it is told: until the next print the last one is out of date, but only printing makes it void. */
export function toldStanding({ last, upToDate, voids }: Standing) {
  return {
    printed: last === null ? null : { revision: last.revision, at: last.at, by: last.by },
    upToDate,
    voids: voids.filter(revision => revision !== last?.revision),
  }
}

/** Whether something was printed or changed since `drawn` was asked: its number would then be another paper's too. */
export function movedOn(now: Standing, drawn: Standing): boolean {
  return now.hash !== drawn.hash || now.next !== drawn.next
}

export function recordPrint(writing: Writing, of: Printable, { next, hash }: Standing, at: string, by: string): void {
  insert(writing.db, 'sheet_print', { id: writing.newId(), ...of, revision: next, hash, at, by })
}
