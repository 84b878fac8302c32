/** Whether typed lengths and angles make a room, before anything is written. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { houseRules } from '../../../src/model/house-rules.ts'
import { outlineOf } from '../../../src/model/outline.ts'

export function checkRoom({ walls }: Received<'room.check'>): Output<'room.check'> {
  const { closes, gap, note, corners, area } = outlineOf(walls, houseRules.closesWithin.value)
  return { closes, gap, note, corners: corners.map(([x, y]) => [x, y]), area }
}
