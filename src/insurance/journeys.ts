/**
 * What vehicles carry on one journey: from when one was empty until it is empty again. The rule it keeps: whatever was in
 * it counts from when it came in until the journey's end, also what was set down on the way.
 */
import { groupParts, sliced } from './groups.ts'
import type { Limit } from './limits.ts'
import type { Piece } from './pieces.ts'
import type { Clock } from './stays.ts'

/** Pieces of every journey that a limit is for; their groups are `journey:` and the vehicle's key, and slices of it. */
export function journeysOf(pieces: readonly Piece[], limits: readonly Limit[]): Piece[] {
  if (!limits.some(({ scope }) => scope === 'journey')) return []
  const loads = new Map<string, Piece[]>()
  for (const piece of pieces)
    for (const group of piece.groups) {
      const { kind, key, slice } = groupParts(group)
      if (kind !== 'vehicle' || slice !== '') continue
      const load = loads.get(key) ?? []
      loads.set(key, load)
      load.push(piece)
    }
  return [...loads].flatMap(([vehicle, load]) =>
    journeysIn(load).flatMap(({ carried, to: end }) =>
      [...Map.groupBy(carried, ({ work }) => work).values()].flatMap(own =>
        own.flatMap((piece, at): Piece[] => {
          const groups = sliced([`journey:${vehicle}`], piece.slices, limits).filter(each => isAsked(each, limits))
          // Until the next piece of the same work, whether it was in the vehicle meanwhile or not.
          return groups.length === 0 ? [] : [{ ...piece, groups, to: own[at + 1]?.from ?? end }]
        }),
      ),
    ),
  )
}

const isAsked = (group: string, limits: readonly Limit[]) =>
  groupParts(group).slice !== '' || limits.some(({ scope, slice }) => scope === 'journey' && slice === '')

interface Journey {
  readonly carried: Piece[]
  to: Clock
}

/** A load parted where nothing is in the vehicle; emptied and loaded at one moment, it was not empty. */
function journeysIn(load: readonly Piece[]): readonly Journey[] {
  const journeys: Journey[] = []
  for (const piece of load.toSorted((a, b) => a.from - b.from || a.to - b.to)) {
    const last = journeys.at(-1)
    if (last === undefined || piece.from > last.to) journeys.push({ carried: [piece], to: piece.to })
    else {
      last.carried.push(piece)
      last.to = Math.max(last.to, piece.to)
    }
  }
  return journeys
}
