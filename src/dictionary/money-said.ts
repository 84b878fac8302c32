/** Money of a row as people write it, whatever column its currency is in. */
import { isMoneyTerm } from '../loan/terms/money.ts'
import { isCurrency } from '../money/currency.ts'
import { writeAmount } from '../money/write.ts'
import { dictionary } from './dictionary.ts'

/** The unit of columns that hold whole minor units of the currency beside them. */
export const minorUnits = 'minor units'

/** `EUR 45 000` for a column of money in a row; null for any other column, and where the row has no known currency. */
export function amountIn(table: string, column: string, row: Readonly<Record<string, unknown>>): string | null {
  const minor = row[column]
  const ofTerm = table === 'loan_term' && column === 'high' && isMoneyTerm(String(row.kind))
  if (!ofTerm && dictionary[table]?.columns[column]?.unit !== minorUnits) return null
  const currency = ofTerm ? row.choice : row.currency
  if (typeof minor !== 'number' || typeof currency !== 'string' || !isCurrency(currency)) return null
  return writeAmount({ minor, currency })
}
