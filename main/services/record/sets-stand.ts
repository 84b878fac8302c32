/** Where sets are, by their parts: together, or apart and which part where. */
import type { ReadHandle } from '../../database/handles.ts'
import { row, rows } from '../sql.ts'
import { workName } from '../works/facts.ts'
import { type Stood, standingOf, worksStanding } from './standing.ts'
import { setOf } from './wholes.ts'

export interface Part {
  readonly work: string
  /** Undefined where no movement of it was recorded by then. */
  readonly stood: Stood | undefined
}

const partsOfShow = `${worksStanding} WHERE work.parent IN (SELECT work FROM entry WHERE exhibition = :exhibition)`

/** By set, its parts in their order. @param known where all works stood, if all are asked for */
export function setsStanding(
  db: ReadHandle,
  at: string,
  exhibition: string | undefined,
  known: ReadonlyMap<string, Stood>,
): ReadonlyMap<string, readonly Part[]> {
  const of = exhibition === undefined ? {} : { exhibition }
  const parts = rows<{ set: string; work: string }>(
    db,
    `SELECT parent AS "set", id AS work FROM work WHERE parent IS NOT NULL
      ${exhibition === undefined ? '' : 'AND parent IN (SELECT work FROM entry WHERE exhibition = :exhibition)'}
     ORDER BY parent, part_order, id`,
    of,
  )
  const stood =
    exhibition === undefined || parts.length === 0
      ? known
      : new Map(rows<Stood>(db, partsOfShow, { at, exhibition }).map(each => [each.thing, each]))
  const sets = new Map<string, Part[]>()
  for (const { set, work } of parts) {
    const own = sets.get(set) ?? []
    own.push({ work, stood: stood.get(work) })
    sets.set(set, own)
  }
  return sets
}

/** Where all parts stand together, since the last of them came; its movement is none of the set's. */
export function togetherOf(set: string, parts: readonly Part[] = []): Stood | undefined {
  const stood = parts.flatMap(part => part.stood ?? [])
  const [first] = stood
  if (first === undefined || stood.length < parts.length || stood.some(({ place }) => place !== first.place)) return
  return {
    ...first,
    thing: set,
    movement: '',
    at:
      stood
        .map(each => each.at)
        .sort()
        .at(-1) ?? first.at,
  }
}

/**
 * Which parts stand elsewhere than their set, in words; null where none does. @param whole where the set itself stands
 */
export function setApart(
  db: ReadHandle,
  parts: readonly Part[],
  whole: { readonly place: string; readonly words: string } | null,
  name: (place: string) => string | undefined,
): string | null {
  const places = new Map<string, string[]>()
  for (const { work, stood } of parts) {
    if (stood === undefined || stood.place === whole?.place) continue
    places.set(stood.place, [...(places.get(stood.place) ?? []), work])
  }
  if (places.size === 0) return null
  const called = (place: string) => name(place) ?? 'another place'
  const elsewhere = [...places.values()].reduce((sum, works) => sum + works.length, 0)
  const [only] = places.keys()
  if (places.size === 1 && elsewhere === parts.length && whole !== null && only !== undefined) {
    return `All its parts are at ${called(only)}, while the record has the set at ${whole.words}.`
  }
  const groups = [...places].map(([place, works]) => `${worksSaid(db, works)} at ${called(place)}`)
  const rest = parts.length - elsewhere
  const others =
    rest === 0 ? [] : [`the other${rest === 1 ? '' : 's'} ${whole === null ? 'in no place' : `at ${whole.words}`}`]
  return `Its parts are apart: ${[...groups, ...others].join('; ')}.`
}

/** Whether the parts of a set tell where it is, each for itself. */
export function isTold(
  { thing }: { readonly thing: { readonly id: string } },
  sets: ReadonlyMap<string, readonly Part[]>,
) {
  return (sets.get(thing.id) ?? []).some(({ stood }) => stood !== undefined)
}

/** Up to three by name: `Ford, left and Ford, right`, `7 parts`. */
export function worksSaid(db: ReadHandle, works: readonly string[]): string {
  if (works.length > 3) return `${works.length} parts`
  const names = works.map(work => workName(db, work))
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join('; ')} and ${names.at(-1)}`
}

/** What is said of a work that no movement names; of a part, where its set was moved without it. */
export function nowhereSaid(db: ReadHandle, work: string): string {
  const set = setOf(db, work)
  const moved = set === null ? undefined : standingOf(db, 'work', set, '9999')
  const place =
    moved &&
    row<{ words: string }>(db, 'SELECT place_words AS words FROM movement WHERE id = :id', { id: moved.movement })
  if (set === null || place === undefined) return 'No movement of it is recorded: nobody can say where it was.'
  return `${workName(db, set)}, which it is a part of, was moved to ${place.words}; the record does not say that it went along.`
}
