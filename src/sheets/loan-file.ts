/** The whole file of a loan: the agreement, and what the records say of its works. */
import type { Report } from '../contract/areas/condition-shape.ts'
import type { DamageTold } from '../contract/areas/damage.ts'
import type { Output } from '../contract/contract.ts'
import { damageTable } from './damage-table.ts'
import type { FileStyle } from './file-table.ts'
import { agreementTable, type FiledLoan, peopleTable, termsTable, worksOfLoanTable } from './loan-tables.ts'
import { outstandingTable, receiptsTable } from './receipt-tables.ts'
import { conditionTable, historyTable, movementsOfWorksTable } from './record-tables.ts'
import { coverLine, filed, inConfidence, type WholeFile } from './whole-file.ts'

export interface LoanQuestion {
  readonly loan: FiledLoan
  readonly terms: Output<'loan.terms'>
  readonly receipts: Output<'receipt.list'>
  /** Of each of its works within the period, the first one first. */
  readonly movements: readonly {
    readonly work: FiledLoan['items'][number]
    readonly movements: Output<'movement.history'>['movements']
  }[]
  readonly reports: readonly Report[]
  readonly damages: readonly DamageTold[]
  readonly history: Output<'edit.history'>
  readonly style: FileStyle
  /** Whether values, contacts, places and changes, which tell them all, may stand in it. */
  readonly withValues: boolean
  readonly made: string
}

export function loanFile({
  loan,
  terms,
  receipts,
  movements,
  reports,
  damages,
  history,
  style,
  withValues,
  made,
}: LoanQuestion): WholeFile {
  const period = [loan.first, loan.last].map(day => (day === '' ? 'a day not agreed yet' : style.day(day))).join(' to ')
  const works = loan.items.length === 1 ? 'one work' : `${loan.items.length} works`
  return {
    called: loan.number,
    picture: null,
    made,
    foot: inConfidence(withValues),
    cover: [
      { text: loan.partyName, face: 'title', size: 7 },
      coverLine(`${works} ${loan.way === 'in' ? 'lent to us' : 'lent by us'}, ${period}`),
      coverLine(loan.purpose),
      coverLine(loan.creditLine),
    ],
    tables: filed([
      agreementTable(loan, style, withValues),
      peopleTable(loan, withValues),
      worksOfLoanTable(loan, withValues),
      termsTable(terms, loan, style, withValues),
      outstandingTable(receipts, loan, style),
      receiptsTable(receipts, loan, style),
      ...(withValues ? [movementsOfWorksTable(movements, style)] : []),
      conditionTable(reports, style, 'works'),
      damageTable(damages, style, 'works'),
      ...(withValues ? [historyTable(history, style)] : []),
    ]),
  }
}
