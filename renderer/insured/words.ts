/** How sums and limits are said. */
import type { InsuredLine, LineKind } from '../../src/contract/areas/insured.ts'
import { bearerWords } from '../../src/insurance/bearer.ts'
import type { LimitScope } from '../../src/insurance/limits.ts'
import type { Amount } from '../../src/money/currency.ts'
import { writeAmount } from '../../src/money/write.ts'
import { plural } from '../record/words.ts'

export const kindWords: Readonly<Record<LineKind, string>> = {
  all: 'Together',
  bearer: 'Borne by',
  loan: 'By terms of loans',
  lender: 'Lenders',
  room: 'Rooms and places',
  crate: 'Crates',
  vehicle: 'Vehicles',
  journey: 'Journeys of vehicles',
}

export const scopeWords: Readonly<Record<LimitScope, string>> = {
  all: 'everything',
  lender: 'one lender',
  place: 'one place',
  crate: 'each crate',
  vehicle: 'each vehicle',
  journey: 'each journey',
}

/** Whose works a limit counts, by who bears their loss. */
export const limitBearers = [
  ['', 'whoever bears it'],
  ['house', bearerWords.house],
  ['indemnity', bearerWords.indemnity],
  ['lender', bearerWords.lender],
  ['borrower', bearerWords.borrower],
  ['nobody', bearerWords.nobody],
] as const

/** `and JPY 500 apart`: money that no rate leads from. */
export function apartSaid(apart: readonly Amount[]): string {
  return apart.length === 0 ? '' : `and ${apart.map(writeAmount).join(', ')} apart`
}

/** What keeps a sum from being told to be within its limit. */
export function openSaid({ without, apart }: Pick<InsuredLine, 'without' | 'apart'>): string {
  const reasons = [
    ...(without > 0 ? [`${plural(without, 'work')} without a value`] : []),
    ...(apart.length > 0 ? [`no rate from ${apart.map(({ currency }) => currency).join(', ')}`] : []),
  ]
  return reasons.join(', ')
}
