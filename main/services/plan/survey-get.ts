/** A room's measures with how each fits the outline as drawn: what the table of the screen shows. */
import type { MeasureRow } from '../../../src/contract/areas/survey.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { computed } from '../../../src/plan/adjust-model.ts'
import type { Measured } from '../../../src/plan/room-measures.ts'
import { surveyRoom } from '../../../src/plan/room-survey.ts'
import { notFound } from '../change.ts'
import type { Reading } from '../service.ts'
import { row } from '../sql.ts'
import { type StoredSide, type StoredSurvey, sidesOf, surveyRowsOf, surveyRulesOf } from './survey-read.ts'

export function survey({ db }: Reading, { room }: Received<'survey.get'>): Output<'survey.get'> {
  if (row(db, 'SELECT id FROM room WHERE id = :room', { room }) === undefined) throw notFound('room', 'room')
  const sides = sidesOf(db, room)
  const stored = surveyRowsOf(db, room)
  const {
    corners,
    closed,
    area: _,
    measures,
    suspects,
    problems,
    ...told
  } = surveyRoom(sides, stored, surveyRulesOf(db))
  return {
    corners: cornersOf(sides, corners, closed),
    measures: listed(sides, stored, measures),
    ...told,
    suspects: [...suspects],
    problems: problems.map(one =>
      one.code === 'crosses'
        ? { ...one, sides: [...one.sides] }
        : one.code === 'impossible'
          ? { ...one, by: [...one.by] }
          : one,
    ),
  }
}

function cornersOf(sides: readonly StoredSide[], corners: readonly (readonly [number, number])[], closed: boolean) {
  const first = sides[0]
  const ids = closed || first === undefined ? sides.map(({ from }) => from) : [first.from, ...sides.map(({ to }) => to)]
  return ids.map((id, at) => {
    const here = { key: '', kind: 'angle', from: at, to: at, value: 0, standing: 'taken' } as const
    return {
      id,
      at: [...(corners[at] ?? [0, 0])] as [number, number],
      angle: closed ? (computed(here, corners) * 180) / Math.PI : null,
    }
  })
}

const nothing = { fitted: null, residual: null, standardised: null, checked: null }

/** Sides first, then diagonals, then angles, each in the order of its corners and of time. */
function listed(
  sides: readonly StoredSide[],
  stored: readonly StoredSurvey[],
  measures: readonly Measured[],
): MeasureRow[] {
  const told = new Map(measures.map(one => [one.key, one]))
  const place = new Map(sides.map(({ from }, at) => [from, at]))
  const rows = stored.flatMap((one): MeasureRow[] => {
    const wall = sides.findIndex(({ id }) => id === one.wall)
    const from = one.kind === 'side' ? wall : (place.get(one.from ?? '') ?? -1)
    const to =
      one.kind === 'side' ? (wall + 1) % sides.length : one.kind === 'angle' ? from : (place.get(one.to ?? '') ?? -1)
    if (from < 0 || to < 0) return []
    const { id, kind, value, text, how, used, at, by, note } = one
    return [{ key: id, id, kind, from, to, value, text, how, used, at, by, note, ...fitOf(told.get(id)) }]
  })
  // What has no row of its own counts by the figure in force; corners that are only taken as square are no measures.
  const bare = measures.flatMap((one): MeasureRow[] => {
    const wall = sides[one.from]
    if (wall === undefined || stored.some(({ id }) => id === one.key) || one.standing !== 'measured') return []
    const of = one.kind === 'side' ? wall : sides.at(one.from - 1)
    const { key, kind, from, to, value } = one
    const text = kind === 'side' ? wall.lengthText : ''
    const kept = {
      text,
      how: 'measured' as const,
      used: true,
      at: of?.measuredAt ?? '',
      by: of?.measuredBy ?? '',
      note: '',
    }
    return [{ key, id: null, kind, from, to, value, ...kept, ...fitOf(one) }]
  })
  const order = { side: 0, diagonal: 1, angle: 2 }
  return [...bare, ...rows].sort(
    (a, b) =>
      order[a.kind] - order[b.kind] || a.from - b.from || a.to - b.to || (a.at < b.at ? -1 : a.at > b.at ? 1 : 0),
  )
}

function fitOf(one: Measured | undefined) {
  if (one === undefined) return nothing
  const { fitted, residual, standardised, checked } = one
  return { fitted, residual, standardised, checked }
}
