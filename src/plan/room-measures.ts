/**
 * Which figures of a room count as measured, which are only drawn or taken as square, and how each stands to the corners
 * that are drawn. A wall or a corner without a row of its own counts once by the figure in force: a length as measured; a
 * corner of 90° as taken for square, since that is what an untold corner is given; one of 180° as one wall in two parts.
 */
import type { Adjusted } from './adjust.ts'
import { computed } from './adjust-model.ts'
import type { SurveyedWall, SurveyRow } from './room-survey.ts'
import type { Measure, Point } from './survey.ts'

export interface Measured extends Measure {
  /** What the drawn outline has; the residual is measured less this. */
  readonly fitted: number
  readonly residual: number
  readonly standardised: number | null
  readonly checked: number
}

export function measuresOf(walls: readonly SurveyedWall[], rows: readonly SurveyRow[]): readonly Measure[] {
  const at = new Map(walls.map(({ from }, index) => [from, index]))
  const count = walls.length
  const sides = walls.flatMap((wall, from): Measure[] => {
    const to = (from + 1) % count
    const own = rows.filter(row => row.kind === 'side' && row.wall === wall.id)
    return inForce(
      own,
      { key: `wall:${wall.id}`, kind: 'side', from, to },
      { value: wall.length, standing: 'measured' },
    )
  })
  const angles = walls.flatMap((wall, index): Measure[] => {
    const corner = (index + 1) % count
    const own = rows.filter(row => row.kind === 'angle' && row.from === wall.to)
    const { angle } = wall
    const standing = angle === 180 ? 'straight' : angle === 90 ? 'taken' : 'measured'
    const known = angle === null ? null : ({ value: angle, standing } as const)
    return inForce(own, { key: `corner:${wall.to}`, kind: 'angle', from: corner, to: corner }, known)
  })
  const diagonals = rows.flatMap((row): Measure[] => {
    const [from, to] = [at.get(row.from ?? ''), at.get(row.to ?? '')]
    if (row.kind !== 'diagonal' || !row.used || from === undefined || to === undefined || from === to) return []
    return [{ key: row.id, kind: 'diagonal', from, to, value: row.value, standing: standingOf(row) }]
  })
  return [...sides, ...angles, ...diagonals]
}

const standingOf = ({ how }: SurveyRow) => (how === 'measured' ? 'measured' : 'taken')

/** Every used measured row; else the used drawn ones; else the figure that stands in the tables. */
function inForce(
  rows: readonly SurveyRow[],
  as: Omit<Measure, 'value' | 'standing'>,
  known: Pick<Measure, 'value' | 'standing'> | null,
): Measure[] {
  const used = rows.filter(row => row.used)
  const measured = used.filter(row => row.how === 'measured')
  const some = measured.length > 0 ? measured : used
  if (some.length > 0) return some.map(row => ({ ...as, key: row.id, value: row.value, standing: standingOf(row) }))
  if (known === null) return []
  // Rows of which none is used leave a figure that nobody vouches for.
  return [{ ...as, ...known, standing: rows.length > 0 && known.standing === 'measured' ? 'taken' : known.standing }]
}

/** Each measure against the corners that are drawn; how well it is checked comes of the adjustment, where there is one. */
export function fittedTo(
  measures: readonly Measure[],
  corners: readonly Point[],
  fit: Adjusted | null,
): readonly Measured[] {
  const told = new Map(fit?.fitted.map(one => [one.key, one]))
  return measures.map(measure => {
    const unit = measure.kind === 'angle' ? 180 / Math.PI : 1
    const fitted = computed(measure, corners) * unit
    const own = told.get(measure.key)
    const { standardised, checked } = own ?? { standardised: null, checked: 0 }
    return { ...measure, fitted, residual: measure.value - fitted, standardised, checked }
  })
}
