/**
 * A dimension figure of the plan typed anew: the whole of a wall is its length; of the stretches between openings one
 * is an opening's width, the others say how far an opening stands from its neighbour or from the wall's end, so that
 * the opening moves. Millimetres from the wall's left end.
 */
import type { PlanWallRow } from '../contract/areas/plan.ts'

export interface Stretch {
  readonly from: number
  readonly to: number
}

type Opening = Pick<PlanWallRow['openings'][number], 'id' | 'kind' | 'x' | 'width' | 'label'>
type Wall = Pick<PlanWallRow, 'name' | 'length'> & { readonly openings: readonly Opening[] }

/** What a figure is the measure of. */
export type Measured =
  | { readonly is: 'wall' }
  | { readonly is: 'width'; readonly opening: Opening }
  /** From `from` to the opening's left edge. */
  | { readonly is: 'before'; readonly opening: Opening }
  /** From the opening's right edge to the wall's right end. */
  | { readonly is: 'after'; readonly opening: Opening }

/** Nearer than this two edges are one, mm. */
const SAME = 0.01
const same = (a: number, b: number) => Math.abs(a - b) < SAME

/** Null where openings lie over one another, so that a stretch is no edge of any one. */
export function measuredBy({ length, openings }: Wall, { from, to }: Stretch): Measured | null {
  if (same(from, 0) && same(to, length)) return { is: 'wall' }
  const width = openings.find(({ x, width: wide }) => same(x, from) && same(x + wide, to))
  if (width !== undefined) return { is: 'width', opening: width }
  const next = openings.find(({ x }) => same(x, to))
  if (next !== undefined) return { is: 'before', opening: next }
  const last = same(to, length) ? openings.find(({ x, width: wide }) => same(x + wide, from)) : undefined
  return last === undefined ? null : { is: 'after', opening: last }
}

const called = ({ kind, label }: Opening) => (label === '' ? `the ${kind}` : `the ${kind} “${label}”`)

/** In words, as the name of the field that it is typed in. */
export function figureName(wall: Wall, stretch: Stretch): string {
  const measured = measuredBy(wall, stretch)
  if (measured === null) return `a stretch of ${wall.name}`
  if (measured.is === 'wall') return `length of ${wall.name}`
  const opening = called(measured.opening)
  if (measured.is === 'width') return `width of ${opening} in ${wall.name}`
  if (measured.is === 'after') return `from ${opening} to the right end of ${wall.name}`
  return same(stretch.from, 0)
    ? `from the left end of ${wall.name} to ${opening}`
    : `before ${opening} in ${wall.name}, from its neighbour`
}

export type FigureChange =
  | { readonly ok: true; readonly of: 'wall'; readonly to: number }
  | {
      readonly ok: true
      readonly of: 'opening'
      readonly id: string
      readonly field: 'x' | 'width'
      readonly was: number
      readonly to: number
    }
  | { readonly ok: false; readonly problem: string }

/** What changes when `mm` is typed for a stretch. */
export function figureChange(wall: Wall, stretch: Stretch, mm: number): FigureChange {
  const measured = measuredBy(wall, stretch)
  if (measured === null)
    return { ok: false, problem: 'Openings lie over one another here. Move them on the wall’s elevation first.' }
  if (mm < 0 || (mm === 0 && (measured.is === 'wall' || measured.is === 'width')))
    return { ok: false, problem: 'A length is more than nothing.' }
  if (measured.is === 'wall') return { ok: true, of: 'wall', to: mm }
  const { id, x, width } = measured.opening
  const field = measured.is === 'width' ? ('width' as const) : ('x' as const)
  const to = { width: mm, before: stretch.from + mm, after: wall.length - width - mm }[measured.is]
  const ends = measured.is === 'width' ? x + mm : to + width
  if (to < 0 || ends > wall.length + SAME)
    return { ok: false, problem: `${capital(called(measured.opening))} would reach beyond the end of ${wall.name}.` }
  return { ok: true, of: 'opening', id, field, was: field === 'x' ? x : width, to }
}

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`
