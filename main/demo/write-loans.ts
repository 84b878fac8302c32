/** The demo's loans with what was agreed for each work, what came under them, and what the house's own works are worth. */
import { exponentOf } from '../../src/money/currency.ts'
import { lenders } from './museum/house.ts'
import { type DemoLoan, loans, rate, worth } from './museum/loans.ts'
import type { Do, Session } from './session.ts'
import { dayAfter } from './write-checklist.ts'
import type { HouseIds } from './write-house.ts'

const minorOf = (units: number, currency: string) => units * 10 ** exponentOf(currency)

/** @param today ISO 8601, from which the days of loans count */
export async function writeLoans(
  session: Session,
  house: HouseIds,
  workOf: (key: string) => string | undefined,
  today: string,
  daysAgo: number,
): Promise<void> {
  const id = (key: string) => workOf(key) ?? ''
  const on = (days: number) => dayAfter(today, days)
  await session.edit('Write down the loans, their terms and values', 'loan.add', daysAgo, act => {
    for (const loan of loans) write(act, loan)
    for (const [key, ago, euros, source] of worth) {
      const value = { minor: minorOf(euros, 'EUR'), currency: 'EUR' }
      act('insured.addValue', { work: id(key), value, day: on(-ago), source })
    }
    const { daysAgo: entered, ...said } = rate
    act('insured.addRate', { ...said, day: on(-entered) })
  })

  function write(act: Do, { lender, currency, bearer, ...demo }: DemoLoan): void {
    const { id: loan } = act('loan.add', {
      party: house.lenders[lender],
      number: demo.number,
      purpose: demo.purpose,
      note: demo.note,
      creditLine: lenders[lender].creditLine,
      agreed: on(demo.agreed),
      first: on(demo.first),
      last: on(demo.last),
    })
    for (const contact of demo.contacts) act('loan.addContact', { loan, ...contact })
    const { added } = act('loan.addWorks', { loan, works: demo.works.map(([key]) => id(key)) })
    const items = new Map(demo.works.map(([key], nth) => [key, added[nth]?.id ?? '']))
    for (const [key, item, units] of demo.works) {
      act('loan.updateWork', {
        id: items.get(key) ?? '',
        changes: {
          item: { was: '', to: item },
          insuredBy: { was: '', to: bearer },
          ...(units === null ? {} : { value: { was: null, to: { minor: minorOf(units, currency), currency } } }),
        },
      })
    }
    for (const { work, ...term } of demo.terms)
      act('loan.addTerm', { loan, ...term, ...(work === undefined ? {} : { item: items.get(work) }) })
    for (const { on: came, crate, works, ...receipt } of demo.receipts)
      act('receipt.add', {
        loan,
        ...receipt,
        kind: 'received',
        day: on(came),
        works: works.map(key => ({ work: id(key), condition: 'as packed', crate })),
      })
  }
}
