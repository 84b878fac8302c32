/**
 * Which of our columns holds what Spectrum asks to be recorded of a loan in. Names of units alone are quoted, from memory
 * of the standard's "loan in information" (Collections Trust); definitions are not.
 */
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { migrate } from '../../../main/database/migrate.ts'
import { migrations } from '../../../main/database/migrations/list.ts'

/** By unit: `table.column`. */
const loanIn: Readonly<Record<string, readonly string[]>> = {
  Lender: ['loan.party', 'party.name'],
  'Lender’s contact': ['loan_contact.name', 'loan_contact.role', 'loan_contact.reach'],
  'Lender’s authoriser': ['loan.authoriser'],
  'Lender’s authorisation date': ['loan.agreed'],
  'Loan in reference number': ['loan.number'],
  'Loan in date': ['loan.first'],
  'Loan in return date': ['loan.last'],
  'Loan in conditions': ['loan_term.kind', 'loan_term.low', 'loan_term.high', 'loan_term.said'],
  'Loan in note': ['loan.note'],
  'Loan purpose': ['loan.purpose'],
  'Loan status': ['loan.closed'],
  'Credit line': ['loan.credit_line'],
  'Insurance valuation': ['loan_work.value', 'loan_work.currency'],
  Insurer: ['loan_work.insured_by'],
}

test('every unit of a loan in stands in the columns named', () => {
  const db = new Database(':memory:')
  migrate(db, migrations, () => '2031-03-01T00:00:00.000Z')
  for (const [unit, held] of Object.entries(loanIn)) {
    for (const place of held) {
      const [table = '', column = ''] = place.split('.')
      const columns = db.prepare<[string], string>('SELECT name FROM pragma_table_info(?)').pluck().all(table)
      expect(columns, unit).toContain(column)
    }
  }
  expect(Object.keys(loanIn).filter(unit => loanIn[unit]?.length === 0)).toEqual([])
  db.close()
})
