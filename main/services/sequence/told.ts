/** A planner's hang as the contract tells it, and the other way round. */
import type { Received } from '../../../src/contract/contract.ts'
import { halfAway } from '../../../src/measure/rounding.ts'
import { at, type Hang, type TermWeights } from '../../../src/sequence/problem.ts'
import { type Centres, type Judged, judge, scaleOf, type TermValues } from '../../../src/sequence/terms.ts'
import type { Asked } from './question.ts'

const alike = { order: 1, balance: 1, evenness: 1, light: 1, sight: 1, rhythm: 1 }

/** Weights that a person set; all alike where none was set, or none counts. */
export function countingOf(weights: Received<'sequence.propose'>['weights']): TermWeights {
  return weights !== undefined && Object.values(weights).some(weight => weight > 0) ? weights : alike
}

/** To a millionth: nobody reads further. */
export function short(value: number): number {
  return halfAway(value * 1e6) / 1e6
}

export function shortened(values: TermValues): TermValues {
  return {
    order: short(values.order),
    balance: short(values.balance),
    evenness: short(values.evenness),
    light: short(values.light),
    sight: short(values.sight),
    rhythm: short(values.rhythm),
  }
}

/** A hang as the planner sees one: each work on the stretch where its middle is, from left to right. */
export function hangOf(
  { problem, entries, members, stretches }: Asked,
  faces: readonly {
    readonly face: string
    readonly works: readonly { readonly entry: string; readonly x: number }[]
  }[],
): Hang {
  const places = new Map(entries.map((entry, index) => [entry, index] as const))
  const on = new Map(faces.map(({ face, works }) => [face, works] as const))
  return stretches.map(({ elevation, from, to }) =>
    [...(on.get(elevation.wall.face) ?? [])]
      .map(({ entry, x }) => ({ entry, x: x - leadsBy(members, places.get(entry)) }))
      .filter(({ x }) => x > from && x < to)
      .sort((a, b) => a.x - b.x)
      .flatMap(({ entry }) => {
        const index = places.get(entry)
        return index === undefined || at(problem.works, index).stays !== null ? [] : [index]
      }),
  )
}

/** How far the first work of a stack or grid is from the middle of that, mm; to the right is positive. */
function leadsBy(members: Asked['members'], unit: number | undefined): number {
  return unit === undefined ? 0 : (at(members, unit)[0]?.dx ?? 0)
}

/** What hangs now. */
export function hungToday(asked: Asked): Hang {
  const walls = new Map(asked.stretches.map(({ elevation }) => [elevation.wall.face, elevation.works] as const))
  return hangOf(
    asked,
    [...walls].map(([face, works]) => ({ face, works })),
  )
}

/** Where works of today's hang really stand: gaps that are not even count as they are. */
export function centresToday({ entries, members, stretches }: Asked, hang: Hang): Centres {
  return hang.map((works, bay) => {
    const stands = new Map(at(stretches, bay).elevation.works.map(({ entry, x }) => [entry, x] as const))
    return works.map(work => (stands.get(at(entries, work)) ?? Number.NaN) - leadsBy(members, work))
  })
}

/** What hangs now, judged where it really stands. */
export function judgedToday(asked: Asked): Judged {
  const { problem } = asked
  const hang = hungToday(asked)
  return judge(problem, hang, scaleOf(problem), centresToday(asked, hang))
}
