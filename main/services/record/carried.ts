/**
 * What one movement carries, as it is asked for: a set with its parts. The rule it keeps: a set goes where all of its
 * parts are, so it is carried when it is chosen, and with the last of its parts that follows the others.
 */
import type { Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { partIdsOf } from '../sets/figures.ts'
import { value } from '../sql.ts'
import { workName } from '../works/facts.ts'
import { inForce, standingOf } from './standing.ts'
import { setOf } from './wholes.ts'

export interface Carried {
  readonly kind: 'work' | 'crate'
  readonly id: string
  /** The field that named it, or its set. */
  readonly field: string
  /** The set that it is carried in. */
  readonly partOf: string | null
  /** What was said of its condition by an earlier record. */
  readonly condition: string
}

type Asked = Pick<Received<'movement.add'>, 'works' | 'crates' | 'staying'>

/** Sets stand before their parts. Refuses a part that stays of no set that is carried, and a set of which no part goes. */
export function carriedOf(db: ReadHandle, asked: Asked, to: string, at: string): Carried[] {
  const works = [...new Set(asked.works ?? [])]
  const staying = new Set(asked.staying ?? [])
  const parts = new Map(works.map(work => [work, partIdsOf(db, work)]))
  for (const [index, part] of (asked.staying ?? []).entries()) refuseStaying(db, part, index, parts)
  const named = (id: string, field: string, partOf: string | null): Carried => {
    return { kind: 'work', id, field, partOf, condition: '' }
  }
  const carried = works.flatMap((work, index) => {
    const field = `works.${index}`
    const own = parts.get(work) ?? []
    const going = own.filter(part => !staying.has(part))
    if (own.length > 0 && going.length === 0) {
      throw new Refusal('bad-input', `No part of ${workName(db, work)} is left to be moved: all of them stay.`, {
        field: 'staying',
      })
    }
    return [named(work, field, null), ...going.map(part => named(part, field, work))]
  })
  const crates = [...new Set(asked.crates ?? [])].map((id, index): Carried => {
    return { kind: 'crate', id, field: `crates.${index}`, partOf: null, condition: '' }
  })
  return [...withSets(db, onlyOnce(carried), to, at), ...crates]
}

function refuseStaying(
  db: ReadHandle,
  part: string,
  index: number,
  parts: ReadonlyMap<string, readonly string[]>,
): void {
  const set = setOf(db, part)
  if (set !== null && parts.has(set)) return
  const sentence = 'Only a part of a set that is moved can stay behind. Leave out what was not moved.'
  throw new Refusal('bad-input', sentence, { field: `staying.${index}` })
}

/** A part that was chosen beside its set is carried in it. */
function onlyOnce(carried: readonly Carried[]): Carried[] {
  const inSets = new Set(carried.flatMap(({ id, partOf }) => (partOf === null ? [] : [id])))
  return carried.filter(({ id, partOf }) => partOf !== null || !inSets.has(id))
}

/** With every set of which the last parts go where the others are; it stands before the first of them. */
function withSets(db: ReadHandle, carried: readonly Carried[], to: string, at: string): Carried[] {
  const ids = new Set(carried.map(({ id }) => id))
  const known = new Map<string, boolean>()
  const follows = (set: string) => {
    if (ids.has(set) || standingOf(db, 'work', set, at)?.place === to) return false
    // What is entered late of its parts says nothing of a set that was moved since.
    if (value(db, `SELECT 1 FROM moved WHERE work = :set AND at >= :at AND ${inForce} LIMIT 1`, { set, at }) === 1)
      return false
    return partIdsOf(db, set).every(part => ids.has(part) || standingOf(db, 'work', part, at)?.place === to)
  }
  return carried.flatMap(each => {
    if (each.partOf !== null) return [each]
    const set = setOf(db, each.id)
    if (set === null) return [each]
    const first = !known.has(set)
    const goes = known.get(set) ?? follows(set)
    known.set(set, goes)
    if (!goes) return [each]
    const part = { ...each, partOf: set }
    return first ? [{ ...each, id: set }, part] : [part]
  })
}
