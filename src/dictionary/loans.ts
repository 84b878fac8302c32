/** Words for loans: agreements with lenders and borrowers, their people, and what was agreed for each work. */
import { of, type Tables, table } from './words.ts'

export const loans: Tables = {
  loan: table('loan', 'An agreement by which works are lent to this house or by it.', ['id', 'note'], {
    party: of('lender or borrower', 'A party.'),
    way: ['in or out', 'In: to this house. Out: from it.'],
    number: ['agreement number', 'As the agreement has it.'],
    purpose: ['purpose', 'What the works are lent for.'],
    first: ['from', 'A day; the loan begins.'],
    last: ['until', 'A day; the loan ends.'],
    agreed: ['agreed on', 'A day: when the agreement was signed.'],
    credit_line: ['credit line', 'As the lender wants it, for all works of the loan.'],
    closed: ['closed on', 'A day; empty while the loan is open.'],
  }),
  loan_contact: table(
    'person of a loan',
    'Whom to reach about a loan.',
    ['id', 'position'],
    { loan: of('loan'), name: 'name', role: 'role', reach: ['how to reach them', 'Telephone, mail, address.'] },
    'loan',
  ),
  loan_work: table(
    'work of a loan',
    'A work that a loan names, and what was agreed for it.',
    ['id', 'position', 'note'],
    {
      loan: of('loan'),
      work: of('work'),
      item: ['item number', 'Of the agreement’s own list.'],
      value: ['agreed value', 'In minor units of the currency: cents, or its whole unit where it has none.'],
      currency: ['currency', 'By ISO 4217; empty where no value was agreed.'],
      insured_by: ['insured by', 'Lender, borrower, a state’s indemnity, nobody; empty where nobody said.'],
    },
    'loan',
  ),
  loan_term: table(
    'term of a loan',
    'What a lender asks of how works are shown.',
    ['id', 'position'],
    {
      loan: of('loan'),
      item: of('for which work', 'A work of the loan; empty: for all of them.'),
      kind: [
        'of what',
        'Light, dose, uv, humidity, temperature, glazing, fixing, framing, height, barrier, apart, handling.',
      ],
      low: ['at least', 'In per cent, °C or mm, by kind.'],
      high: ['at most', 'In lx, lx h within a year, µW/lm, per cent, °C or mm, by kind.'],
      choice: ['which', 'Glazing, what it may not hang beside, who may handle it.'],
      said: ['in the agreement’s words', ''],
    },
    'loan',
  ),
}
