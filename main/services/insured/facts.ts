/** Works of a show, of a loan or of the catalogue, with their movements, shows, loans and valuations; each read at once for all. */
import { type Bearer, bearerOf } from '../../../src/insurance/bearer.ts'
import type { Known, Move, Shown } from '../../../src/insurance/stays.ts'
import type { Lent, Valued } from '../../../src/insurance/value.ts'
import { dayOf } from '../../../src/light/day.ts'
import { isCurrency } from '../../../src/money/currency.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { clockAt } from '../days.ts'
import { amountOf } from '../loans/works.ts'
import { inForce } from '../record/standing.ts'
import { rows } from '../sql.ts'
import { daysOf, moneyTermsOf } from './terms.ts'

interface Work {
  readonly id: string
  readonly parent: string | null
  readonly lender: string | null
  /** What its lender is, where it has one. */
  readonly lenderKind: string | null
}

export interface Facts {
  readonly works: readonly Work[]
  /** Its loans are those to this house: one that was lent out comes back. */
  readonly known: (work: string) => Known
  /** Values that loans agree and who bears its loss, whichever way it is lent. */
  readonly agreed: (work: string) => readonly Lent[]
  readonly valued: (work: string) => readonly Valued[]
  /** Who bears a work on days of no loan: this house its own. */
  readonly unlent: (work: Work) => Bearer
}

/** A part of a set is in shows through its set; it may move by itself and have a value of its own. */
const ofShow = `(SELECT work FROM entry WHERE exhibition = :exhibition
  UNION SELECT id FROM work WHERE parent IN (SELECT work FROM entry WHERE exhibition = :exhibition))`
const ofLoan = '(SELECT work FROM loan_work WHERE loan = :loan)'
const ofCatalogue = `(SELECT work FROM moved WHERE work IS NOT NULL UNION SELECT work FROM entry
  UNION SELECT work FROM loan_work UNION SELECT work FROM work_value
  UNION SELECT id FROM work WHERE parent IN (SELECT work FROM entry))`

const ofWorks = `(SELECT value FROM json_each(:works)
  UNION SELECT parent FROM work WHERE id IN (SELECT value FROM json_each(:works)) AND parent IS NOT NULL)`

/** A show, a loan, a few works, or the whole catalogue. */
export type Scope =
  | { readonly exhibition: string }
  | { readonly loan: string }
  | { readonly works: readonly string[] }
  | 'catalogue'

function scopeOf(scope: Scope): readonly [string, Readonly<Record<string, string>>] {
  if (scope === 'catalogue') return [ofCatalogue, {}]
  if ('loan' in scope) return [ofLoan, { ...scope }]
  return 'works' in scope ? [ofWorks, { works: JSON.stringify(scope.works) }] : [ofShow, { ...scope }]
}

export function factsOf(db: ReadHandle, of: Scope): Facts {
  const [scope, named] = scopeOf(of)
  const all = rows<Work>(
    db,
    `SELECT id, parent, lender, (SELECT kind FROM party WHERE party.id = work.lender) AS lenderKind
     FROM work WHERE id IN ${scope} ORDER BY sort_number, n`,
    named,
  )
  const parents = new Map(all.map(({ id, parent }) => [id, parent]))
  const grouped = <R extends { readonly work: string }>(sql: string) =>
    Map.groupBy(rows<R>(db, sql.replace(':scope', scope), named), each => each.work)
  const moves = grouped<{ work: string; at: string; place: string }>(
    `SELECT work, at, place FROM moved WHERE work IN :scope AND ${inForce} ORDER BY at, movement`,
  )
  const shows = grouped<{ work: string; opens: string; closes: string; face: string | null }>(
    `SELECT entry.work, exhibition.opens, exhibition.closes, placement.face FROM entry
     JOIN exhibition ON exhibition.id = entry.exhibition LEFT JOIN placement ON placement.entry = entry.id
     WHERE entry.work IN :scope AND exhibition.opens <> '' AND exhibition.closes >= exhibition.opens
     ORDER BY exhibition.opens, exhibition.id`,
  )
  const loans = grouped<{
    work: string
    loan: string
    way: 'in' | 'out'
    first: string
    last: string
    closed: string
    value: number | null
    currency: string
    insuredBy: string
    item: string
  }>(
    `SELECT loan_work.work, loan.id AS loan, loan.way, loan.first, loan.last, loan.closed, loan_work.value, loan_work.currency,
      loan_work.insured_by AS insuredBy, loan_work.id AS item
     FROM loan_work JOIN loan ON loan.id = loan_work.loan WHERE loan_work.work IN :scope ORDER BY loan.id`,
  )
  const values = grouped<{ work: string; id: string; minor: number; currency: string; day: string }>(
    'SELECT work, id, value AS minor, currency, day FROM work_value WHERE work IN :scope ORDER BY day, id',
  )
  // Of a few works those that may be around them alone: a long record has very many crates.
  const crates =
    of === 'catalogue'
      ? 'crate IS NOT NULL'
      : `crate IN (WITH RECURSIVE around(place) AS (SELECT place FROM moved WHERE work IN ${scope}
          UNION SELECT moved.place FROM around JOIN moved ON moved.crate = around.place) SELECT place FROM around)`
  const carried = Map.groupBy(
    rows<{ crate: string; at: string; place: string }>(
      db,
      `SELECT crate, at, place FROM moved WHERE ${crates} AND ${inForce} ORDER BY at, movement`,
      named,
    ).map(({ crate, ...move }) => ({ crate, ...moveOf(move) })),
    each => each.crate,
  )
  const terms = Map.groupBy(moneyTermsOf(db), ({ loan }) => loan)
  const lentOf = (work: string, way?: 'in') =>
    (loans.get(work) ?? [])
      .filter(each => way === undefined || each.way === way)
      .map(({ loan, value, currency, insuredBy, item, ...each }): Lent => {
        const { first, last } = daysOf(each)
        const own = (terms.get(loan) ?? []).filter(term => term.item === null || term.item === item)
        const bearer = bearerOf(
          each.way,
          insuredBy,
          own.some(({ kind }) => kind === 'indemnity'),
        )
        return {
          loan,
          first,
          last,
          bearer,
          // What something else bears is under no indemnity; a journey is the agreement's, whoever bears it.
          slices: own.flatMap(({ id, kind }) => (kind === 'indemnity' && bearer !== 'indemnity' ? [] : [`term-${id}`])),
          // A code that nobody knows the decimals of is no value.
          value: isCurrency(currency) ? amountOf({ value, currency }) : null,
        }
      })
  const valued = (work: string) =>
    (values.get(work) ?? []).map(({ id, minor, currency, day }) => ({
      id,
      day: dayOf(day),
      value: { minor, currency },
    }))
  const hasValue = (work: string) => values.has(work) || lentOf(work).some(lent => lent.value !== null)
  const valuedSets = new Set(all.flatMap(({ id, parent }) => (parent !== null && hasValue(id) ? [parent] : [])))
  return {
    // A set or its parts, never both: the set where it has a value, else its parts that have one.
    works: all.filter(({ id, parent }) =>
      parent === null ? hasValue(id) || !valuedSets.has(id) : hasValue(id) && !hasValue(parent),
    ),
    known: work => {
      const whole = parents.get(work) ?? work
      return {
        moves: (moves.get(work) ?? moves.get(whole) ?? []).map(moveOf),
        carried,
        shows: (shows.get(whole) ?? []).map(({ opens, closes, face }): Shown => {
          return { first: dayOf(opens), last: dayOf(closes), place: face }
        }),
        loans: whole === work ? lentOf(work, 'in') : [...lentOf(work, 'in'), ...lentOf(whole, 'in')],
      }
    },
    agreed: work => {
      const whole = parents.get(work) ?? work
      // A part is under its set's agreement, but not at the set's value.
      return whole === work ? lentOf(work) : [...lentOf(whole).map(each => ({ ...each, value: null })), ...lentOf(work)]
    },
    valued,
    unlent: ({ lender, lenderKind }) => (lender === null || lenderKind === 'house' ? 'house' : 'unsaid'),
  }
}

function moveOf({ at, place }: { readonly at: string; readonly place: string }): Move {
  return { at: clockAt(at), place }
}
