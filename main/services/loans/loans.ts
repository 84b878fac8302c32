/** Loans, their people and their works. */
import type { loansArea } from '../../../src/contract/areas/loans.ts'
import type { ServicesOf } from '../service.ts'
import * as held from './held.ts'
import * as loan from './loan.ts'
import { periods } from './periods.ts'
import * as read from './read.ts'
import * as terms from './terms.ts'
import * as works from './works.ts'

export const loanServices: ServicesOf<keyof typeof loansArea> = {
  'loan.list': read.list,
  'loan.get': read.get,
  'loan.periods': periods,
  'loan.ofWork': read.ofWork,
  'loan.add': loan.add,
  'loan.update': loan.change,
  'loan.remove': loan.remove,
  'loan.addContact': loan.addContact,
  'loan.updateContact': loan.changeContact,
  'loan.removeContact': loan.removeContact,
  'loan.addWorks': works.addWorks,
  'loan.updateWork': works.changeWork,
  'loan.removeWork': works.removeWork,
  'loan.terms': held.termsOfLoan,
  'loan.termsOfWork': held.termsOfWork,
  'loan.addTerm': terms.addTerm,
  'loan.updateTerm': terms.changeTerm,
  'loan.removeTerm': terms.removeTerm,
}
