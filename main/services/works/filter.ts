/**
 * The filters of a list of works, each a query for the row numbers of the works that pass it. The rule it keeps: a
 * filter knows nothing of order and of pages, so that each is answered once and joined to any order.
 */
import { normalNumber } from '../../../src/checklist/numbers.ts'
import type { Received } from '../../../src/contract/contract.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { ruleNumber } from '../rules.ts'
import type { Value } from '../sql.ts'

export type Filter = Received<'work.list'>

export interface Clause {
  /** Gives `work.n`. */
  readonly sql: string
  readonly parameters: Readonly<Record<string, Value>>
  /** The works that it finds are left out, instead of the others. */
  readonly not?: boolean
}

/** Letters and figures; but for a few vowel signs of Asia, at which SQLite's index parts words. */
const word = /[[\p{L}\p{N}]--[\u19b0-\u19c9\u1cf2\u1cf3]]+/gv

/** Each word a prefix, each quoted: what a person types is never the index's own syntax. */
export function fullTextQuery(search: string): string {
  const words = search.normalize('NFC').match(word) ?? []
  return words.map(word => `"${word}"*`).join(' ')
}

/** The newest listed size of the part that hangs, for works whose measured size is in force. */
export const listedOf = `work_size AS listed ON work.hang_source = 'measured' AND listed.id = (
    SELECT id FROM work_size WHERE work_size.work = work.id AND kind = 'listed' AND part = work.hang_part
    ORDER BY chosen DESC, at DESC, id DESC LIMIT 1)`
export const higher = '(work.hang_height - coalesce(listed.height, listed.diameter))'
export const wider = '(work.hang_width - coalesce(listed.width, listed.diameter))'
/** A cross join keeps the few measured works outside: the other way round, every size of the catalogue is walked. */
export const differing = `work CROSS JOIN ${listedOf}
  WHERE work.hang_source = 'measured' AND (abs(${higher}) > :differsBy OR abs(${wider}) > :differsBy)`

export function clausesOf(db: ReadHandle, filter: Filter): readonly Clause[] {
  const clauses: Clause[] = []
  const only = (sql: string, parameters: Clause['parameters'] = {}) => clauses.push({ sql, parameters })
  const { exhibition, section, lender, kind, settle } = filter
  if (exhibition !== undefined) {
    const entries = 'entry CROSS JOIN work ON work.id = entry.work WHERE entry.exhibition = :exhibition'
    if (filter.outside === true) {
      clauses.push({ sql: `SELECT work.n FROM ${entries}`, parameters: { exhibition }, not: true })
      // A part comes into a show with its set.
      clauses.push({ sql: 'SELECT n FROM work WHERE parent IS NOT NULL', parameters: {}, not: true })
    }
    if (section !== undefined)
      only(`SELECT work.n FROM ${entries} AND entry.section = :section`, { exhibition, section })
    if (settle === 'unplaced') {
      only(`SELECT work.n FROM ${entries} AND entry.id NOT IN (SELECT entry FROM placement)`, { exhibition })
    }
  }
  if (lender !== undefined) only('SELECT n FROM work WHERE lender = :lender', { lender })
  if (kind !== undefined) only('SELECT n FROM work WHERE kind = :kind', { kind })
  if (settle === 'questions') {
    only('SELECT work.n FROM import_question CROSS JOIN work ON work.id = import_question.work WHERE answer IS NULL')
  }
  if (settle === 'unmeasured') only(`SELECT n FROM work WHERE hang_source <> 'measured'`)
  if (settle === 'differs') only(`SELECT work.n FROM ${differing}`, { differsBy: ruleNumber(db, 'differsBy') })
  const search = filter.search?.trim() ?? ''
  if (search !== '') clauses.push(searchClause(search, exhibition))
  return clauses
}

function searchClause(search: string, exhibition: string | undefined): Clause {
  const words = fullTextQuery(search)
  const number = normalNumber(search)
  const ways: string[] = []
  const parameters: Record<string, Value> = {}
  if (words !== '') {
    ways.push('SELECT rowid FROM work_fts WHERE work_fts MATCH :words')
    parameters.words = words
  }
  if (number !== '') {
    parameters.number = number
    // One run of letters or figures is found by the text index too, which holds the numbers' normal forms.
    if (!/^[\p{L}\p{N}]+$/u.test(search) || search.toUpperCase() !== number) {
      // Upper bound of a prefix search that the index on norm can answer.
      ways.push(`SELECT work.n FROM work_number CROSS JOIN work ON work.id = work_number.work
        WHERE norm >= :number AND norm < :number || char(1114111)`)
    }
    if (exhibition !== undefined) {
      ways.push(`SELECT work.n FROM entry CROSS JOIN work ON work.id = entry.work
        WHERE entry.exhibition = :exhibition AND entry.running = :number`)
      parameters.exhibition = exhibition
    } else if (ways.length === 1) delete parameters.number
  }
  return { sql: ways.length === 0 ? 'SELECT n FROM work WHERE 0' : ways.join(' UNION ALL '), parameters }
}
