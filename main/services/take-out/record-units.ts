/**
 * What works.json says of a work's damage and of the receipts that name it, in words of our own. What was struck or set
 * right is left out, as with movements; the tables beside it hold every row.
 */
import { closedAt, inForce } from '../../../src/record/damage/damage.ts'
import { wordTitles } from '../../../src/record/damage/say.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { type DamageOf, damageColumns, damageOfWorks, wordsOf } from '../record/damage/rows.ts'
import { rows } from '../sql.ts'
import { filled, type OfWork, type Units } from './units.ts'

const turned: ReadonlySet<string> = new Set(['closed', 'reopened'])

export function damageUnits(db: ReadHandle): readonly (OfWork & { readonly units: Units })[] {
  return rows<DamageOf>(db, `SELECT ${damageColumns} FROM ${damageOfWorks} ORDER BY damage.found_at, damage.rowid`).map(
    damage => {
      const words = wordsOf(db, damage.id)
      const entries = inForce(words).filter(({ kind }) => !turned.has(kind))
      const units = filled({
        'Damage reference': damage.reference,
        'Damage found': damage.foundAt,
        'Damage reported': damage.reportedAt,
        'Damage reporter': damage.reporter,
        'Damage cause': damage.how,
        'Damage circumstances': damage.circumstances,
        'Damage entries': entries.map(({ kind, at, whom, how, said }) =>
          filled({
            Entry: wordTitles[kind],
            'Entry date': at,
            'Entry contact': whom,
            'Entry means': how,
            'Entry note': said,
          }),
        ),
        'Damage closed': closedAt(words) ?? 'open',
      })
      return { work: damage.work, units }
    },
  )
}

export function receiptUnits(db: ReadHandle): readonly (OfWork & { readonly units: Units })[] {
  type Row = OfWork & Readonly<Record<string, string>>
  return rows<Row>(
    db,
    `SELECT named.work, receipt.number AS "Receipt number", receipt.kind AS "Receipt kind", receipt.day AS "Receipt date",
       loan.number AS "Loan number", receipt.place AS "Receipt place", receipt.handed_by AS "Handed over by",
       receipt.received_by AS "Received by", named.condition AS "Condition note", named.crate AS "Crate"
     FROM loan_receipt_work AS named JOIN loan_receipt AS receipt ON receipt.id = named.receipt
     JOIN loan ON loan.id = receipt.loan
     WHERE receipt.struck = 0 AND NOT EXISTS (SELECT 1 FROM loan_receipt AS later WHERE later.corrects = receipt.id)
     ORDER BY receipt.day, receipt.rowid`,
  ).map(({ work, ...units }) => ({ work, units: filled(units) }))
}
