/** Words for what works are worth: valuations, rates of exchange, limits. */
import { of, type Tables, table } from './words.ts'

const minor = 'In minor units of the currency: cents, or its whole unit where it has none.'
const currency = ['currency', 'By ISO 4217.'] as const

export const insured: Tables = {
  work_value: table(
    'valuation',
    'What a work is worth from a day on, where no loan agrees another value.',
    ['id', 'source', 'by'],
    {
      work: of('work'),
      value: ['value', minor, 'minor units'],
      currency,
      day: ['from', 'A day; until the next valuation.'],
    },
    'work',
  ),
  exchange_rate: table(
    'rate of exchange',
    'What one of a currency is in another from a day on, entered by hand.',
    ['id', 'source', 'by'],
    {
      from_currency: ['of currency', 'By ISO 4217; one of it is so much of the other.'],
      to_currency: ['in currency', 'By ISO 4217.'],
      rate: ['rate', 'A decimal, as it was typed.'],
      day: ['from', 'A day; until the next rate of these two.'],
    },
  ),
  value_limit: table(
    'limit',
    'How much may be together, by a policy, an indemnity or an agreement.',
    ['id', 'source', 'by'],
    {
      scope: ['what for', 'All; one lender; one place; each crate; each vehicle; each journey of a vehicle.'],
      lender: of('lender', 'A party; empty for the others.'),
      bearer: ['of works borne by', 'House, lender, borrower, indemnity, nobody; empty: whoever bears their loss.'],
      place: of('place', 'A room or an agreed place; empty for the others.'),
      value: ['most', minor, 'minor units'],
      currency,
      first: ['from', 'A day; empty where it always was.'],
      last: ['until', 'A day; empty while it lasts.'],
    },
  ),
}
