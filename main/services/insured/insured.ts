/** What works are worth: valuations, rates, limits, and sums of them. */
import type { insuredArea } from '../../../src/contract/areas/insured.ts'
import type { ServicesOf } from '../service.ts'
import { dayTold } from './day.ts'
import { daysTold } from './days.ts'
import * as limits from './limits.ts'
import * as rates from './rates.ts'
import * as values from './values.ts'

export const insuredServices: ServicesOf<keyof typeof insuredArea> = {
  'insured.days': daysTold,
  'insured.day': dayTold,
  'insured.values': values.list,
  'insured.addValue': values.add,
  'insured.removeValue': values.remove,
  'insured.rates': rates.list,
  'insured.addRate': rates.add,
  'insured.removeRate': rates.remove,
  'insured.limits': limits.list,
  'insured.addLimit': limits.add,
  'insured.removeLimit': limits.remove,
}
