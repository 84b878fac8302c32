/** The texts of a work of which a checklist knows nothing; the compiler demands every column. */
import type { ChecklistWork } from '../../../src/sheets/checklist.ts'

export const nothing: ChecklistWork['texts'] = {
  running: '',
  permanent: '',
  lenderNumber: '',
  loan: '',
  entryNumber: '',
  exhibitionNumber: '',
  formerNumber: '',
  maker: '',
  title: '',
  date: '',
  medium: '',
  method: '',
  lender: '',
  credit: '',
  kind: '',
  section: '',
  place: '',
  status: '',
  sensitivity: '',
  glazing: '',
  handling: '',
  loanTerms: '',
  notBeside: '',
  note: '',
}
