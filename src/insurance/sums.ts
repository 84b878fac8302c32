/**
 * Sums of a day, two ways. A day's sum is the greatest that was together at any moment of it: a van that goes three
 * times holds three loads, not all at once. Works without a value are counted apart, and so is money that no rate leads
 * from.
 */
import type { Day } from '../light/day.ts'
import { type DaySum, Greatest, Held, type Into } from './held.ts'
import type { Piece } from './pieces.ts'
import { type Clock, dayLong } from './stays.ts'

/**
 * Sums of every group on every day from `first` to `last` on which it holds a work, in one pass over what comes and goes.
 * Throws a RangeError where a sum is beyond 2^53.
 */
export function sumsByDay(pieces: readonly Piece[], into: Into, first: Day, last: Day): Map<string, DaySum[]> {
  const [start, end] = [first * dayLong, (last + 1) * dayLong]
  const events = pieces
    .filter(piece => piece.from < end && piece.to > start)
    .flatMap(piece => [
      { at: Math.max(piece.from, start), sign: 1 as const, piece },
      { at: piece.to, sign: -1 as const, piece },
    ])
    .sort((a, b) => a.at - b.at)
  const held = new Map<string, Held>()
  const sums = new Map<string, DaySum[]>()
  let next = 0
  for (let day = first; day <= last; day++) {
    const greatest = new Map<string, Greatest>()
    const see = (group: string, own: Held, at: number) => {
      if (own.works === 0) return
      const known = greatest.get(group) ?? new Greatest(at)
      greatest.set(group, known)
      known.see(own, into, day, at)
    }
    const touched = new Set(held.keys())
    let at = day * dayLong
    do {
      for (let event = events[next]; event !== undefined && event.at <= at; event = events[++next])
        for (const group of event.piece.groups) {
          const own = held.get(group) ?? new Held()
          held.set(group, own)
          own.take(event.piece.value, event.sign)
          touched.add(group)
        }
      for (const group of touched) {
        const own = held.get(group)
        if (own !== undefined) see(group, own, at)
      }
      touched.clear()
      at = events[next]?.at ?? end
    } while (at < (day + 1) * dayLong)
    for (const [group, one] of greatest) {
      const days = sums.get(group) ?? []
      sums.set(group, days)
      days.push(one.told(day))
    }
  }
  return sums
}

/** What is in a group at a moment, what came to it first first, at whatever value and in whichever of its places. */
export function inGroup(pieces: readonly Piece[], group: string, at: Clock): Piece[] {
  const until = pieces.filter(piece => piece.from <= at && piece.groups.includes(group))
  const present = [...Map.groupBy(until, ({ work }) => work).values()].flatMap(own => {
    const lately = own.toSorted((a, b) => b.from - a.from)
    const [piece] = lately
    if (piece === undefined || piece.to <= at) return []
    let came = piece.from
    for (const before of lately) if (before.to === came) came = before.from
    return [{ piece, came }]
  })
  return present.sort((a, b) => a.came - b.came || (a.piece.work < b.piece.work ? -1 : 1)).map(({ piece }) => piece)
}

/** The sum of one group on one day, looked up anew at every moment at which something comes or goes. */
export function sumOfDay(pieces: readonly Piece[], group: string, into: Into, day: Day): DaySum {
  const [start, end] = [day * dayLong, (day + 1) * dayLong]
  const moments = new Set([start, ...pieces.map(piece => piece.from), ...pieces.map(piece => piece.to)])
  let greatest: Greatest | undefined
  for (const at of [...moments].filter(at => start <= at && at < end).sort((a, b) => a - b)) {
    const held = new Held()
    for (const piece of inGroup(pieces, group, at)) held.take(piece.value, 1)
    if (held.works === 0) continue
    greatest ??= new Greatest(at)
    greatest.see(held, into, day, at)
  }
  return (greatest ?? new Greatest(start)).told(day)
}
