/** Whether typed lengths and angles make a room by the house's own rule, before anything is written. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { outlineOf } from '../../../src/model/outline.ts'
import { ruleNumber } from '../rules.ts'
import type { Reading } from '../service.ts'

export function checkRoom({ db }: Reading, { walls }: Received<'room.check'>): Output<'room.check'> {
  const { closes, gap, note, corners, area } = outlineOf(walls, ruleNumber(db, 'closesWithin'))
  return { closes, gap, note, corners: corners.map(([x, y]) => [x, y]), area }
}
