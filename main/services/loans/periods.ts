/** Works of a show that are lent for a shorter time than it is open. */

import type { Output, Received } from '../../../src/contract/contract.ts'
import { daySaid } from '../../../src/light/day.ts'
import { grouped, type LoanFinding } from '../../../src/loan/grouped.ts'
import { type LentPeriod, periodFindings, type ShowPeriod } from '../../../src/loan/period.ts'
import { calledOn } from '../../../src/model/called.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import type { Reading } from '../service.ts'
import { row, rows, value } from '../sql.ts'
import { firstNumber } from '../works/figures.ts'

interface Lent extends LentPeriod {
  readonly work: string
  readonly title: string
  readonly workNumber: string
}

/** Of these works and of the parts of those that are sets, in the order in which they are named. */
export function loanPeriodFindings(db: ReadHandle, exhibition: string, works: readonly string[]): LoanFinding[] {
  const show = row<ShowPeriod>(db, 'SELECT opens, closes FROM exhibition WHERE id = :exhibition', { exhibition })
  if (show === undefined || (show.opens === '' && show.closes === '')) return []
  const lent = rows<Lent>(
    db,
    `WITH wanted(id, at) AS (SELECT value, key FROM json_each(:works)),
      each(id, at) AS (SELECT id, at FROM wanted UNION SELECT work.id, wanted.at FROM wanted JOIN work ON work.parent = wanted.id)
     SELECT work.id AS work, work.title, coalesce(${firstNumber}, '') AS workNumber, loan.id AS loan, loan.number,
      party.name AS partyName, loan.first, loan.last
     FROM each CROSS JOIN loan_work ON loan_work.work = each.id JOIN loan ON loan.id = loan_work.loan
     JOIN party ON party.id = loan.party JOIN work ON work.id = each.id
     WHERE loan.closed = '' AND loan.way = 'in' ORDER BY each.at, work.id, loan.id`,
    { works: JSON.stringify(works) },
  )
  return [...Map.groupBy(lent, ({ work }) => work)].flatMap(([id, loans]) => {
    const [{ title, workNumber } = { title: '', workNumber: '' }] = loans
    return periodFindings({ id, called: calledOn({ title, number: workNumber, running: '' }) }, loans, show, daySaid)
  })
}

/** Of the shows that are not over and have works of this loan, or sets that these are parts of. */
export function periods({ db }: Reading, { loan }: Received<'loan.periods'>): Output<'loan.periods'> {
  if (value(db, 'SELECT id FROM loan WHERE id = :loan', { loan }) === undefined) throw notFound('loan', 'loan')
  const works = rows<{ work: string }>(db, 'SELECT work FROM loan_work WHERE loan = :loan ORDER BY position, id', {
    loan,
  }).map(({ work }) => work)
  const shows = rows<{ exhibition: string; title: string; works: string }>(
    db,
    `SELECT exhibition.id AS exhibition, exhibition.title, json_group_array(lent.work) AS works
     FROM loan_work AS lent JOIN work ON work.id = lent.work
     JOIN entry ON entry.work = coalesce(work.parent, work.id) JOIN exhibition ON exhibition.id = entry.exhibition
     WHERE lent.loan = :loan AND exhibition.state <> 'closed'
     GROUP BY exhibition.id ORDER BY exhibition.opens, exhibition.id`,
    { loan },
  )
  return {
    shows: shows
      .map(({ exhibition, title, works: shown }) => {
        const there = JSON.parse(shown) as string[] // the keys that the query gathers
        const findings = loanPeriodFindings(
          db,
          exhibition,
          works.filter(work => there.includes(work)),
        )
        return { exhibition, title, findings: grouped(findings) }
      })
      .filter(({ findings }) => findings.length > 0),
  }
}
