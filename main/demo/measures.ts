/** How the demo's sizes are written: as each lender's list has them, in its unit, and as the house's tape does. */
import type { Input } from '../../src/contract/contract.ts'
import { formatLength } from '../../src/measure/format.ts'
import { parseLength } from '../../src/measure/length.ts'
import { lenders } from './museum/house.ts'
import type { DemoWork } from './museum/work-shape.ts'

type Size = Omit<Input<'work.addSize'>, 'work'>
type Figures = readonly [height: number, width: number, depth?: number]

/** A length as a list writes it, and what that writing says in mm: an eighth of an inch moves it a little. */
function written(mm: number, unit: 'mm' | 'cm' | 'in'): { readonly text: string; readonly mm: number } {
  const text = formatLength(mm, { unit, fraction: 8, bare: true, thousands: '' })
  const read = parseLength(text, unit)
  if (!read.ok) throw new Error(read.message)
  return { text, mm: read.mm }
}

function sizeOf(
  part: Size['part'],
  figures: Figures,
  unit: 'mm' | 'cm' | 'in',
  kind: Size['kind'],
  source: string,
): Size {
  const each = figures.flatMap(mm => (mm === undefined ? [] : [written(mm, unit)]))
  return {
    part,
    height: each[0]?.mm ?? null,
    width: each[1]?.mm ?? null,
    depth: each[2]?.mm ?? null,
    raw: `${each.map(one => one.text).join(' × ')} ${unit}`,
    kind,
    source,
  }
}

/** What is measured of a work without its frame. */
function barePart(work: DemoWork): Size['part'] {
  if (work.kind === 'textile' || work.kind === 'object') return 'overall'
  return work.kind === 'painting' ? 'support' : 'sheet'
}

/** Depth of what hangs without a frame: its own, a stretcher's, a batten's. */
function bareDepth(work: DemoWork): number | undefined {
  if (work.depth !== undefined) return work.depth
  if (work.hangs === 'stretcher bar') return 38
  return work.hangs === 'cleat' ? 30 : undefined
}

/** The size that hangs: with its frame, or bare. */
export function hangingFigures(work: DemoWork): readonly [height: number, width: number] {
  return work.framed === null ? work.image : [work.framed[0], work.framed[1]]
}

/** The size as the list had it, for rows that were planned before anybody measured. */
export function listedFigures(work: DemoWork): readonly [height: number, width: number] {
  return work.listed === undefined ? hangingFigures(work) : [work.listed[0], work.listed[1]]
}

export function listedSizes(work: DemoWork): readonly Size[] {
  const { unit, name } = lenders[work.lender]
  const source = work.lender === 'house' ? 'inventory' : `list of the ${name}`
  const bare: Figures = work.depth === undefined ? work.image : [...work.image, work.depth]
  const sizes = [sizeOf(barePart(work), bare, unit, 'listed', source)]
  const framed = work.listed ?? work.framed
  return framed === null ? sizes : [sizeOf('framed', framed, unit, 'listed', source), ...sizes]
}

export function measuredSizes(work: DemoWork): readonly Size[] {
  if (!work.measured) return []
  if (work.framed !== null) return [sizeOf('framed', work.framed, 'mm', 'measured', 'tape, in the store')]
  const depth = bareDepth(work)
  const figures: Figures = depth === undefined ? work.image : [...work.image, depth]
  return [sizeOf(barePart(work), figures, 'mm', 'measured', 'tape, in the store')]
}

const KG_PER_POUND = 0.45359237

/** A mass as listed, whole pounds where the list is in inches, or as the house's scale gave it. */
export function massOf(work: DemoWork): Omit<Input<'work.addMass'>, 'work'> | null {
  if (work.kg === null) return null
  if (work.weighed === true)
    return { kg: work.kg, raw: `${work.kg} kg`, kind: 'measured', source: 'scale, in the store' }
  const { unit, name } = lenders[work.lender]
  const source = work.lender === 'house' ? 'inventory' : `list of the ${name}`
  if (unit !== 'in') return { kg: work.kg, raw: `${work.kg} kg`, kind: 'listed', source, approximate: true }
  const pounds = Math.round(work.kg / KG_PER_POUND)
  return { kg: pounds * KG_PER_POUND, raw: `about ${pounds} lb`, kind: 'listed', source, approximate: true }
}
