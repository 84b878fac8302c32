/**
 * Groups of works that have a sum: `all`, a lender, a room, a crate, a vehicle, what a vehicle carries on one journey.
 * A slice, as in `vehicle:v7/indemnity`, is that part of a group which one bears, or which one term of a loan is about.
 */
import { bearers } from './bearer.ts'
import { isFor, type Limit } from './limits.ts'

export const groupKinds = ['all', 'lender', 'room', 'crate', 'vehicle', 'journey'] as const
export type GroupKind = (typeof groupKinds)[number]

export interface Group {
  readonly kind: GroupKind
  readonly key: string
  /** A bearer, or `term-` and the key of a term of a loan; empty for the whole group. */
  readonly slice: string
}

export function groupParts(group: string): Group {
  const [whole = '', slice = ''] = group.split('/')
  const [kind = '', key = ''] = whole.split(':')
  return { kind: groupKinds.find(each => each === kind) ?? 'all', key, slice }
}

const isBearer = (slice: string) => bearers.some(each => each === slice)

/** Groups with their slices: everything by who bears it, the others where a limit is for the slice. */
export function sliced(groups: readonly string[], slices: readonly string[], limits: readonly Limit[]): string[] {
  return groups.flatMap(group => [
    group,
    ...slices
      .filter(slice => (group === 'all' && isBearer(slice)) || limits.some(limit => isFor(limit, `${group}/${slice}`)))
      .map(slice => `${group}/${slice}`),
  ])
}
