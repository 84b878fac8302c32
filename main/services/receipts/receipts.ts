/** Receipts of loans, written and told. */
import type { receiptsArea } from '../../../src/contract/areas/receipts.ts'
import type { ServicesOf } from '../service.ts'
import * as read from './read.ts'
import * as write from './write.ts'

export const receiptServices: ServicesOf<keyof typeof receiptsArea> = {
  'receipt.list': read.list,
  'receipt.ofWork': read.ofWork,
  'receipt.outstanding': read.outstanding,
  'receipt.add': write.add,
  'receipt.correct': write.correct,
}
