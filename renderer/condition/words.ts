/** What the screens of condition say, in the unit of the day. */
import type { ConditionFindingTold, ReportHead } from '../../src/contract/areas/condition.ts'
import { boxOf } from '../../src/record/condition/shape.ts'
import { desk } from '../host/desk.svelte.ts'

/** Its greatest measure; a mark has one only where a rule took it. */
export function sizeOf({ form, reach, along }: Pick<ConditionFindingTold, 'form' | 'reach' | 'along'>): string {
  if (form === 'outline') return `${desk.lengthWithUnit(along)} long`
  return reach === null ? '' : `${desk.lengthWithUnit(reach)} across`
}

/** Where its upper left end is, as a rule is laid. */
export function placeOf(finding: Pick<ConditionFindingTold, 'points' | 'third'>): string {
  const { left, top } = boxOf(finding)
  return `${finding.third}, ${desk.lengthWithUnit(left)} from the left, ${desk.lengthWithUnit(top)} from the top`
}

export const titles: Readonly<Record<ReportHead['kind'], string>> = {
  incoming: 'Incoming report',
  check: 'Check in between',
  outgoing: 'Outgoing report',
}

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
