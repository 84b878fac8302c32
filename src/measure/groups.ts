/**
 * Puts the items of a statement together: which words name which size, which sizes are one size in two units, what the
 * counts belong to. The rule it keeps: a word in the same clause binds first, then the one before a colon or in
 * brackets behind; where two bindings are as good, the group says so.
 */
import type { Item } from './grammar.ts'
import type { Dim } from './measures.ts'
import { sameSize, turnPaper } from './same-size.ts'
import type { LengthUnit } from './units.ts'
import type { AxisWord } from './words.ts'

export type SizeItem = Extract<Item, { readonly kind: 'size' }>
export type LabelItem = Extract<Item, { readonly kind: 'label' }>
export type CountItem = Extract<Item, { readonly kind: 'count' }>
export type MassItem = Extract<Item, { readonly kind: 'mass' }>

export interface Group {
  readonly dims: readonly Dim[]
  /** The same size in another unit, each as many measures as `dims`. */
  readonly others: readonly (readonly Dim[])[]
  readonly labels: readonly LabelItem[]
  readonly count: CountItem | undefined
  readonly each: boolean
  readonly about: boolean
  readonly broken: boolean
  /** The name of the paper it was written as. */
  readonly paper: SizeItem['paper'] | undefined
  /** The words around it could name another size as well. */
  readonly unclear: boolean
  readonly at: number
  readonly end: number
}

export interface Grouped {
  readonly groups: readonly Group[]
  readonly masses: readonly (MassItem & { readonly about: boolean })[]
  readonly order: readonly AxisWord[]
  readonly unit: LengthUnit | undefined
  /** A count that no size took. */
  readonly count: CountItem | undefined
}

export type Draft = { -readonly [K in keyof Group]: Group[K] }

interface Clause {
  readonly items: readonly Item[]
  readonly bracket: boolean
  readonly weakBefore: boolean
  weakAfter: boolean
}

export function groupItems(items: readonly Item[]): Grouped {
  const clauses = cutClauses(items)
  const groups: Draft[] = []
  const masses: (MassItem & { readonly about: boolean })[] = []
  const aboutAll = items[0]?.kind === 'about' || (items[0]?.kind === 'size' && items[0].about)
  let pending: LabelItem[] = []
  let count: CountItem | undefined
  let each = false
  let carried: CountItem | undefined
  let unclear = false
  for (const clause of clauses) {
    const sizes = clause.items.filter(item => item.kind === 'size')
    const labels = clause.items.filter(item => item.kind === 'label')
    const about = aboutAll || clause.items.some(item => item.kind === 'about')
    for (const item of clause.items) if (item.kind === 'mass') masses.push({ ...item, about })
    const last = groups.at(-1)
    const counted = clause.items.find(item => item.kind === 'count')
    const eached = clause.items.some(item => item.kind === 'each')
    // 60 x 110 cm (each), 60 x 110 cm each (4 panels): brackets speak of the size before them.
    if (sizes.length === 0 && clause.bracket && last?.labels.every(label => label.weak)) {
      last.count ??= counted
      last.each ||= eached
    } else {
      count = counted ?? count
      each ||= eached
    }
    if (sizes.length === 0) {
      if (last && clause.bracket && about && labels.length === 0) last.about = true
      if (labels.length === 0) continue
      const forNext = labels.some(label => label.colon) || last === undefined || isNamed(last)
      if (forNext) pending = [...pending, ...labels]
      else {
        // 50 x 70 cm, framed, 60 x 80 cm: the word may belong to either.
        if (!clause.bracket && clause.weakBefore && clause.weakAfter) {
          unclear = true
          last.unclear = true
        }
        last.labels = [...last.labels, ...labels]
      }
      continue
    }
    const made: Draft[] = []
    for (const size of sizes) {
      const before = groups.at(-1)
      if (before) turnPaper(before, size)
      if (before && addsTo(before, size, labels)) continue
      const other =
        before && (made.length > 0 || labels.length === 0 || clause.bracket)
          ? sameSize(before, size, clause.bracket && labels.length === 0)
          : undefined
      if (before && other && pending.length === 0) {
        before.dims = other.dims
        before.others = [...before.others, other.other]
        before.end = size.end
        if (made.length === 0 && !isNamed(before)) before.labels = [...before.labels, ...labels]
        continue
      }
      const group: Draft = {
        dims: size.dims,
        others: [],
        labels: [],
        count: undefined,
        each: false,
        about: about || size.about,
        broken: size.broken,
        paper: size.paper,
        unclear,
        at: size.at,
        end: size.end,
      }
      unclear = false
      groups.push(group)
      made.push(group)
    }
    share(made, labels, clause.items)
    const [first] = made
    if (first === undefined) continue
    first.labels = [...pending, ...first.labels]
    pending = []
    if (each || (count && first.labels.every(label => label.weak || label.part === 'part'))) {
      first.each = each
      first.count = count
      // 12 photographs, each: image 20 x 30 cm, frame 40 x 50 cm: it holds for every part that has a name.
      carried = each && count && isNamed(first) ? count : undefined
      each = false
      count = undefined
    } else if (carried && isNamed(first) && first.labels.every(label => label.part !== 'overall')) {
      first.each = true
      first.count = carried
    }
  }
  const last = groups.at(-1)
  if (last && pending.length > 0 && !isNamed(last)) last.labels = [...last.labels, ...pending]
  const taker =
    groups.find(group => group.each && group.count === undefined) ?? (each || groups.length === 1 ? last : undefined)
  if (taker && (each || (count && (taker.each || !isNamed(taker))))) {
    taker.each ||= each
    taker.count ??= count
    count = undefined
  }
  const order = items.find(item => item.kind === 'order')
  const units = new Set(items.flatMap(item => (item.kind === 'unit' ? [item.unit] : [])))
  const [unit] = units
  return { groups, masses, order: order?.axes ?? [], unit: units.size === 1 ? unit : undefined, count }
}

function cutClauses(items: readonly Item[]): readonly Clause[] {
  const clauses: Clause[] = []
  let held: Item[] = []
  let depth = 0
  let weakBefore = false
  const close = (weakAfter: boolean) => {
    if (held.length > 0) clauses.push({ items: held, bracket: depth > 0, weakBefore, weakAfter })
    held = []
  }
  for (const item of items) {
    if (item.kind !== 'break' && item.kind !== 'open' && item.kind !== 'close') {
      held.push(item)
      continue
    }
    const weak = item.kind === 'break' && !item.strong
    close(weak)
    weakBefore = weak
    if (item.kind === 'open') depth++
    if (item.kind === 'close') depth = Math.max(0, depth - 1)
  }
  close(false)
  return clauses
}

/** Whether a word that is more than a support or a medium names the group. */
function isNamed(group: Draft): boolean {
  return group.labels.some(label => !label.weak)
}

/** Shares the words of one clause among its sizes. */
function share(made: readonly Draft[], labels: readonly LabelItem[], items: readonly Item[]): void {
  const [only] = made
  if (only === undefined || labels.length === 0) return
  if (made.length === 1) {
    only.labels = labels
    return
  }
  const named = items.filter(item => item.kind === 'label' || item.kind === 'size')
  if (labels.length === made.length) {
    for (const [index, group] of made.entries()) group.labels = labels.slice(index, index + 1)
    return
  }
  const leads = named[0]?.kind === 'label'
  for (const label of labels) {
    const forNext = leads || label.colon
    const group = forNext ? made.find(one => one.at > label.at) : made.findLast(one => one.at < label.at)
    if (group) group.labels = [...group.labels, label]
    if (!forNext) for (const one of made) one.unclear = true
  }
}

/** A depth or the like said behind the size it belongs to: 60 x 40 cm, depth 3 cm. */
function addsTo(group: Draft, size: SizeItem, labels: readonly LabelItem[]): boolean {
  const [dim] = size.dims
  const fits = size.dims.length === 1 && labels.length === 0 && group.dims.length === 2 && group.others.length === 0
  if (!fits || dim?.axis === undefined || !/^(?:depth|d)$/.test(dim.axis.axis)) return false
  group.dims = [...group.dims, dim]
  group.end = size.end
  return true
}

/** The piece of the text a group was read from, with its closing brackets. */
export function pieceOf(text: string, group: { readonly at: number; readonly end: number }): string {
  const piece = text.slice(group.at, group.end)
  const isOpen =
    Math.max(...'([{'.split('').map(one => piece.lastIndexOf(one))) >
    Math.max(...')]}'.split('').map(one => piece.lastIndexOf(one)))
  const closing = isOpen ? /^\s*[)\]}]/.exec(text.slice(group.end, group.end + 4)) : null
  return piece + (closing?.[0] ?? '')
}
