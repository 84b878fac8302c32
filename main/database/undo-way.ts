/** What stands in the way of taking an edit back: later edits that are still in force, and closed exhibitions. */
import type Database from 'better-sqlite3'
import { Refusal } from '../../src/contract/refusal.ts'
import { takenBack } from './history.ts'
import { quoted } from './tables.ts'
import type { Span } from './undo.ts'

export type Obstacle =
  /** A row that taking back would change though the edit did not; `before` is the first entry of the attempt. */
  { readonly kind: 'row'; readonly table: string; readonly key: string; readonly before: number }

type Question =
  | Obstacle
  | { readonly kind: 'later'; readonly span: Span }
  | { readonly kind: 'any'; readonly edit: number }

export interface Standing {
  readonly edit: number
  readonly label: string
  readonly person: string
  readonly at: string
}

const select = 'SELECT e.id AS edit, e.label, e.person_name AS person, e.at FROM edit AS e'
const inForce = `e.undoes IS NULL AND NOT ${takenBack}`

/** The edit to name. Undo and its redo cancel out, so only ordinary edits in force count. */
export function inTheWay(db: Database.Database, question: Question): Standing | null {
  switch (question.kind) {
    case 'later': {
      const { first_seq, last_seq } = question.span
      return (
        db
          .prepare<[number, number, number], Standing>(
            `${select} WHERE e.id IN (
               SELECT j.edit FROM (SELECT DISTINCT tbl, key FROM journal WHERE seq BETWEEN ? AND ?) AS mine
               CROSS JOIN journal AS j ON j.tbl = mine.tbl AND j.key = mine.key AND j.seq > ?)
             AND ${inForce} ORDER BY e.id DESC LIMIT 1`,
          )
          .get(first_seq, last_seq, last_seq) ?? null
      )
    }
    case 'row':
      return (
        db
          .prepare<[string, string, number], Standing>(
            `${select} WHERE e.id = (SELECT edit FROM journal WHERE tbl = ? AND key = ? AND seq < ? ORDER BY seq DESC LIMIT 1)`,
          )
          .get(question.table, question.key, question.before) ?? null
      )
    case 'any':
      // A key or a place that somebody else has taken since: the newest edit that touched the same tables.
      return (
        db
          .prepare<[number, number], Standing>(
            `${select} WHERE e.id > ? AND ${inForce} AND EXISTS (SELECT 1 FROM journal AS j WHERE j.seq BETWEEN e.first_seq AND e.last_seq
               AND j.tbl IN (SELECT tbl FROM journal AS t JOIN edit AS x ON t.seq BETWEEN x.first_seq AND x.last_seq WHERE x.id = ?))
             ORDER BY e.id DESC LIMIT 1`,
          )
          .get(question.edit, question.edit) ?? null
      )
  }
}

/** Where a table's row says which exhibition it belongs to; `$` stands for the row's value of that column. */
const belongs: readonly { readonly table: string; readonly column: string; readonly show: string }[] = [
  { table: 'exhibition', column: 'id', show: '$' },
  ...['section', 'entry', 'face_plan', 'placement', 'kept_layout', 'import_run', 'wall', 'standing'].map(table => ({
    table,
    column: 'exhibition',
    show: '$',
  })),
  ...['opening', 'keep_clear', 'face'].map(table => ({
    table,
    column: 'wall',
    show: '(SELECT exhibition FROM wall WHERE id = $)',
  })),
  { table: 'kept_place', column: 'layout', show: '(SELECT exhibition FROM kept_layout WHERE id = $)' },
]

/** Refuses where the edit touched a closed exhibition, unless closing it is what the edit did. */
export function refuseClosedShow(db: Database.Database, { first_seq, last_seq }: Span, label: string): void {
  for (const { table, column, show } of belongs) {
    const row = `(SELECT row.${column} FROM ${quoted(table)} AS row WHERE row.id = j.key)`
    const gone = `json_extract(CASE j.op WHEN 'd' THEN j.data END, '$.${column}')`
    const closed = db
      .prepare<[string, number, number, number, number], { id: string; title: string }>(
        `SELECT show.id, show.title FROM journal AS j
         JOIN exhibition AS show ON show.id = ${show.replace('$', `coalesce(${row}, ${gone})`)}
         WHERE j.tbl = ? AND j.seq BETWEEN ? AND ? AND show.state = 'closed'
         AND NOT EXISTS (SELECT 1 FROM journal AS c WHERE c.seq BETWEEN ? AND ? AND c.tbl = 'exhibition' AND c.key = show.id
           AND c.op = 'u' AND json_extract(c.data, '$.state[1]') = 'closed') LIMIT 1`,
      )
      .get(table, first_seq, last_seq, first_seq, last_seq)
    if (closed !== undefined) {
      throw new Refusal(
        'undo-blocked',
        `“${label}” cannot be taken back: ${closed.title} is closed. Take the closing back first. Nothing was changed.`,
        { details: { exhibition: closed.id, title: closed.title } },
      )
    }
  }
}
