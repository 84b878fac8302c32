/**
 * The period of loans against that of a show. The rule it keeps: where one day is not known nothing is said of it, and
 * loans that follow one another are one stay.
 */
import type { LoanFinding } from './grouped.ts'
import { daysBetween } from './receipts/outstanding.ts'

/** Days; '' where none is agreed. */
export interface LentPeriod {
  readonly loan: string
  readonly number: string
  readonly partyName: string
  readonly first: string
  readonly last: string
}

export interface ShowPeriod {
  readonly opens: string
  readonly closes: string
}

/**
 * What of the show no loan of the work covers, at its beginning and at its end.
 * @param called as the sentence names the work
 * @param loans of the work to this house, those that are not closed
 * @param day a day in words
 */
export function periodFindings(
  work: { readonly id: string; readonly called: string },
  loans: readonly LentPeriod[],
  { opens, closes }: ShowPeriod,
  day: (day: string) => string,
): LoanFinding[] {
  const subject = { kind: 'work', id: work.id }
  const findings: LoanFinding[] = []
  const { called } = work
  const [one] = loans
  if (one === undefined) return findings
  const begins = loans.reduce((a, b) => (b.first < a.first ? b : a), one)
  // '' comes before every day: a loan without a beginning is the first of all.
  const late = begins.first === '' ? 0 : daysBetween(opens, begins.first)
  if (late > 0) {
    const said = (who: string, it: string) =>
      `${who} lent from ${day(begins.first)} on, by loan ${begins.number} of ${begins.partyName}; the show opens on ${day(opens)}, ${days(late)} before. Ask for an earlier beginning, or hang ${it} later.`
    const figures = { loan: begins.loan, first: begins.first, opens, days: late }
    const finding = {
      severity: 'settle' as const,
      code: 'loan-begins-late',
      subject,
      text: said(`${called} is`, 'it'),
      figures,
    }
    findings.push({ finding, loan: begins.loan, called, ofSeveral: works => said(`${works} are`, 'them') })
  }
  const ends = loans.reduce((a, b) => (a.last !== '' && (b.last === '' || b.last > a.last) ? b : a), one)
  const short = ends.last === '' ? 0 : daysBetween(ends.last, closes)
  if (short > 0) {
    const said = (who: string, it: string) =>
      `${who} lent until ${day(ends.last)}, by loan ${ends.number} of ${ends.partyName}; the show closes on ${day(closes)}, ${days(short)} later. Ask for a longer loan, or take ${it} down before.`
    const figures = { loan: ends.loan, last: ends.last, closes, days: short }
    const finding = {
      severity: 'settle' as const,
      code: 'loan-ends-early',
      subject,
      text: said(`${called} is`, 'it'),
      figures,
    }
    findings.push({ finding, loan: ends.loan, called, ofSeveral: works => said(`${works} are`, 'them') })
  }
  return findings
}

const days = (count: number) => (count === 1 ? 'one day' : `${count} days`)
