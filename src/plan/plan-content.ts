/** What a plan says, as one text: two plans that say the same are the same revision, on whatever paper and in any unit. */
import type { Point } from '../drawing/room-plan.ts'
import type { Figure, StoreyFigures } from './figures.ts'

/** To 0.1 mm: less than that is arithmetic, and nobody measures it. */
function tenth(mm: number): number {
  return Math.round(mm * 10) / 10 || 0
}

const point = ([x, y]: Point): readonly number[] => [tenth(x), tenth(y)]

function said(figure: Figure): readonly unknown[] {
  const { kind, layer } = figure
  if (figure.kind === 'line') return [kind, layer, figure.closed, figure.points.map(point)]
  if (figure.kind === 'circle') return [kind, layer, point(figure.at), tenth(figure.radius)]
  if (figure.kind === 'quarter') return [kind, layer, point(figure.from), point(figure.to), figure.clockwise]
  return [kind, layer, point(figure.at), figure.text]
}

/** @param north degrees clockwise from the top of the page; null where nobody said */
export function planContent(
  { figures, zones }: Pick<StoreyFigures, 'figures' | 'zones'>,
  north: number | null,
): string {
  const legend = zones.map(({ kind, name, note }) => [kind, name, note])
  // A plan without zones says what it said before there were any.
  return JSON.stringify([north, figures.map(said), ...(legend.length === 0 ? [] : [legend])])
}
