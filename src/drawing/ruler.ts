/** The tape along the wall: to scale, in the unit of the day, with as fine a division as can be told apart. */
import { formatLength, THIN_SPACE } from '../measure/format.ts'
import type { View } from './view.ts'

export interface Tick {
  /** Pixels from the left of the drawing. */
  readonly x: number
  readonly size: 'long' | 'middle' | 'short'
  readonly label: string
}

const inch = 25.4
/** Steps of a tape in millimetres: what is numbered, what is halved, what is ticked. */
const metric = [
  [10, 5, 1],
  [50, 10, 5],
  [100, 50, 10],
  [500, 100, 50],
  [1000, 500, 100],
  [5000, 1000, 500],
  [10_000, 5000, 1000],
  [50_000, 10_000, 5000],
] as const
const imperial = [
  [inch, inch / 2, inch / 8],
  [3 * inch, inch, inch / 4],
  [6 * inch, inch, inch / 2],
  [12 * inch, 6 * inch, inch],
  [36 * inch, 12 * inch, 6 * inch],
  [120 * inch, 60 * inch, 12 * inch],
  [600 * inch, 120 * inch, 60 * inch],
] as const
/** Numbers stand at least this far apart, pixels, and ticks this far. */
const roomForNumber = 50
const roomForTick = 3.5

/** Ticks between the wall's ends that lie within the drawing. */
export function rulerTicks(view: View, length: number, width: number, unit: 'mm' | 'cm' | 'in'): readonly Tick[] {
  const steps = unit === 'in' ? imperial : metric
  const found = steps.find(([long]) => long * view.scale >= roomForNumber) ?? steps.at(-1)
  if (found === undefined) return []
  const [long, middle, short] = found
  const step = [short, middle, long].find(each => each * view.scale >= roomForTick) ?? long
  const from = Math.max(0, Math.ceil(-view.left / view.scale / step))
  const to = Math.floor(Math.min(length, (width - view.left) / view.scale) / step + 1e-9)
  const ticks: Tick[] = []
  for (let k = from; k <= to; k += 1) {
    const mm = k * step
    const size = isWhole(mm / long) ? 'long' : isWhole(mm / middle) ? 'middle' : 'short'
    ticks.push({ x: view.left + mm * view.scale, size, label: size === 'long' ? tapeNumber(mm, long, unit) : '' })
  }
  return ticks
}

function isWhole(value: number): boolean {
  return Math.abs(value - Math.round(value)) < 1e-6
}

/** Metres on a far view, the unit of the day on a near one. */
function tapeNumber(mm: number, step: number, unit: 'mm' | 'cm' | 'in'): string {
  if (unit === 'in') return step >= 12 * inch ? `${Math.round(mm / (12 * inch))} ft` : `${Math.round(mm / inch)} in`
  if (step >= 1000) return `${Math.round(mm / 1000)} m`
  return formatLength(mm, { unit, bare: false, thousands: THIN_SPACE })
}
