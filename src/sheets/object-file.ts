/** The whole file of one work: all that is on record of it. */
import { numberKindWords } from '../checklist/number-kinds.ts'
import type { Report } from '../contract/areas/condition-shape.ts'
import type { DamageTold } from '../contract/areas/damage.ts'
import type { Output } from '../contract/contract.ts'
import { damageTable } from './damage-table.ts'
import type { FileStyle } from './file-table.ts'
import { lightTables } from './light-tables.ts'
import { loansOfWorkTable, termsOfWorkTable } from './loan-tables.ts'
import {
  backsTable,
  type FiledWork,
  factsTable,
  filesTable,
  numbersTable,
  showsTable,
  sizesTable,
} from './object-tables.ts'
import { receiptsOfWorkTable } from './receipt-tables.ts'
import { conditionTable, historyTable, movementsTable } from './record-tables.ts'
import { coverLine, filed, inConfidence, type WholeFile } from './whole-file.ts'

export interface ObjectQuestion {
  readonly work: FiledWork
  /** The hash of its picture; null where there is none to show. */
  readonly picture: string | null
  readonly loans: Output<'loan.ofWork'>
  readonly terms: Output<'loan.termsOfWork'>
  readonly receipts: Output<'receipt.ofWork'>
  readonly movements: Output<'movement.history'>['movements']
  /** The first one first. */
  readonly reports: readonly Report[]
  /** The first found first. */
  readonly damages: readonly DamageTold[]
  readonly light: Output<'light.ledger'>
  readonly history: Output<'edit.history'>
  readonly style: FileStyle
  /** Whether values, places and changes, which tell both, may stand in it. */
  readonly withValues: boolean
  /** When it was made, by whom. */
  readonly made: string
}

export function objectFile(question: ObjectQuestion): WholeFile {
  const {
    work,
    picture,
    loans,
    terms,
    receipts,
    movements,
    reports,
    damages,
    light,
    history,
    style,
    withValues,
    made,
  } = question
  const { facts, numbers, lenderName } = work
  return {
    called: numbers[0]?.text ?? (facts.title === '' ? 'work without a number' : facts.title),
    picture,
    made,
    foot: inConfidence(withValues),
    cover: [
      { text: facts.title === '' ? 'untitled' : facts.title, face: 'title', size: 7 },
      coverLine([facts.maker, facts.dateText].filter(each => each !== '').join(', ')),
      coverLine(facts.medium),
      coverLine(facts.creditLine),
      coverLine(lenderName === '' ? '' : `lent by ${lenderName}`),
      coverLine(numbers.map(({ kind, text }) => `${numberKindWords[kind]} ${text}`).join(' · '), 3.3),
    ],
    tables: filed([
      factsTable(work),
      numbersTable(work),
      ...sizesTable(work, style),
      backsTable(work, style),
      ...showsTable(work, style),
      loansOfWorkTable(loans, style, withValues),
      termsOfWorkTable(terms, style, withValues),
      receiptsOfWorkTable(receipts, work.id, style),
      ...(withValues ? [movementsTable(movements, style)] : []),
      conditionTable(reports, style),
      damageTable(damages, style),
      ...lightTables(light, style),
      filesTable(work, style),
      ...(withValues ? [historyTable(history, style)] : []),
    ]),
  }
}
