/** The kinds of fixing as the library lists them: with stock and uses, found by words and put in an order. */
import type { Output } from '../../src/contract/contract.ts'

export type Fixing = Output<'fixing.list'>['fixings'][number]
export type Use = Output<'fixing.uses'>['fixings'][number]
export interface Kept {
  readonly fixing: Fixing
  readonly use: Use | null
}

export const orders = {
  name: 'by name',
  kind: 'by shape',
  rating: 'strongest first',
  stock: 'fewest in stock first',
  use: 'most used here first',
} as const
export type Order = keyof typeof orders

/** The highest figure that any packet gives; 0 where none does. kg. */
export function bestRating({ ratedKg, ratings }: Fixing): number {
  return Math.max(0, ratedKg ?? 0, ...ratings.map(rating => rating.ratedKg ?? 0))
}

/** Every word must be somewhere in what is known of it. */
export function isMeant({ name, kind, bit, tool, source, note, wallType, ratings }: Fixing, words: string): boolean {
  const text = [name, kind, bit, tool, source, note, wallType, ...ratings.flatMap(one => [one.wallType, one.source])]
    .join(' ')
    .toLowerCase()
  return words
    .toLowerCase()
    .split(/\s+/)
    .every(word => text.includes(word))
}

const byName = (a: Kept, b: Kept) => a.fixing.name.localeCompare(b.fixing.name, undefined, { numeric: true })
const compare: Readonly<Record<Order, (a: Kept, b: Kept) => number>> = {
  name: byName,
  kind: (a, b) => a.fixing.kind.localeCompare(b.fixing.kind),
  rating: (a, b) => bestRating(b.fixing) - bestRating(a.fixing),
  stock: (a, b) => (a.use?.inStock ?? Number.MAX_SAFE_INTEGER) - (b.use?.inStock ?? Number.MAX_SAFE_INTEGER),
  use: (a, b) => (b.use?.here.length ?? 0) - (a.use?.here.length ?? 0),
}

export function ordered(kept: readonly Kept[], order: Order): readonly Kept[] {
  return [...kept].sort((a, b) => compare[order](a, b) || byName(a, b))
}

/** The uses wall by wall, as they come. */
export function byWall(
  here: Use['here'],
): readonly { readonly first: Use['here'][number]; readonly works: Use['here'] }[] {
  const walls = new Map<string, Use['here'][number][]>()
  for (const use of here) walls.set(use.face, [...(walls.get(use.face) ?? []), use])
  return [...walls.values()].flatMap(works => (works[0] === undefined ? [] : [{ first: works[0], works }]))
}
