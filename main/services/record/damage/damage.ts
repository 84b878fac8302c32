/** The services of records of damage. */
import type { damageArea } from '../../../../src/contract/areas/damage.ts'
import type { ServicesOf } from '../../service.ts'
import { add, close, reopen, say, strike } from './say.ts'
import { get, list } from './tell.ts'

export const damageServices: ServicesOf<keyof typeof damageArea> = {
  'damage.list': list,
  'damage.get': get,
  'damage.add': add,
  'damage.say': say,
  'damage.strike': strike,
  'damage.close': close,
  'damage.reopen': reopen,
}
