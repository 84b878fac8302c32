/** Who bears the loss of a work, seen from this house, whichever way it is lent. */

/** `house` is this house, by its own policy; `indemnity` is a state's; `unsaid` where nobody said. */
export const bearers = ['house', 'lender', 'borrower', 'indemnity', 'nobody', 'unsaid'] as const
export type Bearer = (typeof bearers)[number]

export const bearerWords: Readonly<Record<Bearer, string>> = {
  house: 'this house’s policy',
  lender: 'lenders’ own insurance',
  borrower: 'borrowers’ insurance',
  indemnity: 'state indemnity',
  nobody: 'borne by nobody',
  unsaid: 'nobody said who bears it',
}

/**
 * @param insuredBy as the loan names them: `lender`, `borrower`, `indemnity`, `nobody`, or empty
 * @param indemnified a term of the loan puts the work under an indemnity; it counts where the work itself says nothing
 */
export function bearerOf(way: 'in' | 'out', insuredBy: string, indemnified: boolean): Bearer {
  if (insuredBy === 'indemnity' || insuredBy === 'nobody') return insuredBy
  if (insuredBy === 'lender') return way === 'in' ? 'lender' : 'house'
  if (insuredBy === 'borrower') return way === 'in' ? 'house' : 'borrower'
  return indemnified ? 'indemnity' : 'unsaid'
}
