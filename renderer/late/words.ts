/** A way out in words: its price in what people count, and what was done once it is taken. */
import type { LateOffer } from '../../src/contract/areas/marks.ts'
import type { PlacedWork } from '../../src/contract/areas/walls.ts'
import type { Output } from '../../src/contract/contract.ts'
import { desk } from '../host/desk.svelte.ts'

type Voids = Output<'late.offer'>['voids']

export interface PricePart {
  readonly key: string
  readonly text: string
  /** Said aloud: something that hangs is touched. */
  readonly loud?: boolean
}

function counted(count: number, one: string, many: string): string {
  return `${count} ${Math.abs(count) === 1 ? one : many}`
}

/** What a way costs, in the order in which people ask. What it does not touch is said where that is what they hope for. */
export function priceParts({ cost, off }: LateOffer): readonly PricePart[] {
  const { hungMoved, moved, newHoles, deadHoles, labels, gapSpread, ends, offLine } = cost
  const parts: PricePart[] = []
  if (hungMoved > 0)
    parts.push({
      key: 'hung',
      text: `■ ${counted(hungMoved, 'work that hangs is', 'works that hang are')} moved`,
      loud: true,
    })
  if (moved > 0) parts.push({ key: 'moved', text: `${counted(moved, 'work', 'works')} moved` })
  else if (hungMoved === 0) parts.push({ key: 'moved', text: off.length > 0 ? 'nothing else moved' : 'nothing moved' })
  if (newHoles < 0) parts.push({ key: 'new', text: `${counted(-newHoles, 'hole', 'holes')} fewer to drill` })
  else parts.push({ key: 'new', text: newHoles === 0 ? 'no new hole' : counted(newHoles, 'new hole', 'new holes') })
  if (deadHoles < 0) parts.push({ key: 'dead', text: `${counted(-deadHoles, 'dead hole', 'dead holes')} in use again` })
  else
    parts.push({ key: 'dead', text: deadHoles === 0 ? 'no dead hole' : counted(deadHoles, 'dead hole', 'dead holes') })
  if (labels > 0) parts.push({ key: 'labels', text: `${counted(labels, 'label', 'labels')} moved` })
  parts.push({
    key: 'gaps',
    text: gapSpread < 0.5 ? 'all gaps of the row alike' : `widest less narrowest gap ${desk.lengthWithUnit(gapSpread)}`,
  })
  if (ends >= 0.5) parts.push({ key: 'ends', text: `ends of the row moved by ${desk.lengthWithUnit(ends)}` })
  if (offLine >= 0.5) parts.push({ key: 'line', text: `off its line by ${desk.lengthWithUnit(offLine)} in all` })
  return parts
}

export function sheetsVoid(voids: Voids): string {
  const some = voids.map(sheet => `${sheet.wall}, revision ${sheet.revision}`)
  return some.length < 2 ? (some[0] ?? '') : `${some.slice(0, -1).join('; ')} and ${some.at(-1)}`
}

/** What was done, where undo stands, and what has to be printed again. */
export function takenWords(offer: LateOffer, voids: Voids, subject: PlacedWork | null): string {
  const { moves, off } = offer
  const what = [
    ...(off.length > 0 ? [`${off.map(work => work.name).join(', ')} is off the wall`] : []),
    ...(moves.length > 0 ? [`${counted(moves.length, 'work has', 'works have')} moved`] : []),
    ...(moves.length === 0 && off.length === 0 && subject !== null
      ? [`${subject.running || subject.title} has its new frame`]
      : []),
  ]
  const sheets =
    voids.length === 0 ? '' : ` Printed sheets no longer true: ${sheetsVoid(voids)}. Print them again under Papers.`
  return `Late change made as one edit: ${what.join(', ')}.${sheets}`
}
