/** What the screens of condition say, in the unit of the day. */
import type { ConditionFindingTold, ReportHead } from '../../src/contract/areas/condition-shape.ts'
import { placeSaid, sizeSaid } from '../../src/record/condition/say.ts'
import { desk } from '../host/desk.svelte.ts'

type Sized = Pick<ConditionFindingTold, 'form' | 'reach' | 'along'>
type Lying = Pick<ConditionFindingTold, 'points' | 'third' | 'side'>

const length = (mm: number) => desk.lengthWithUnit(mm)
export const sizeOf = (finding: Sized) => sizeSaid(finding, length)
export const placeOf = (finding: Lying) => placeSaid(finding, length)

type Standing = Pick<ReportHead, 'completeAt' | 'correctedBy' | 'signedBy' | 'corrects'>

/** How a report stands, in a few words. */
export function standing({ completeAt, correctedBy, signedBy, corrects }: Standing): string {
  const right = corrects === null ? '' : ', sets an earlier one right'
  if (correctedBy !== null) return `complete, set right by a later one${right}`
  if (completeAt !== null) return `complete${right}`
  return signedBy.length === 0
    ? `draft${right}`
    : `draft, signed by ${signedBy.map(each => each.name).join(' and ')}${right}`
}

export const signs = { same: '●', grown: '▲', new: '■', 'not seen': '○' } as const
