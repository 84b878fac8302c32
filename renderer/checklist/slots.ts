/**
 * The list as slots of one height: a work or the heading of a section. Groups come from the order of the show, so that
 * a heading's place is known without its works being loaded.
 */
export interface Group {
  readonly id: string | null
  readonly title: string
  readonly works: number
}

export type Slot =
  | { readonly kind: 'heading'; readonly group: Group; readonly at: number }
  | { readonly kind: 'work'; readonly index: number }

export interface Slots {
  readonly count: number
  readonly at: (slot: number) => Slot
  /** The slot of the work at an index. */
  readonly of: (index: number) => number
}

interface Ordered {
  readonly sections: readonly { readonly id: string; readonly title: string }[]
  readonly works: readonly { readonly section: string | null }[]
}

/** Sections in order with how many works each has; works without a section stand where the order has them. */
export function groupsOf(show: Ordered): readonly Group[] {
  const counts = new Map<string | null, number>()
  for (const work of show.works) counts.set(work.section, (counts.get(work.section) ?? 0) + 1)
  const loose = counts.get(null) ?? 0
  const without: Group = { id: null, title: show.sections.length === 0 ? '' : 'In no section', works: loose }
  const sections = show.sections.map(section => ({ ...section, works: counts.get(section.id) ?? 0 }))
  if (loose === 0) return sections
  return show.works[0]?.section === null ? [without, ...sections] : [...sections, without]
}

/** Slots without headings. */
export function plainSlots(total: number): Slots {
  return { count: total, at: index => ({ kind: 'work', index }), of: index => index }
}

/** Slots with a heading before each group. */
export function groupedSlots(groups: readonly Group[]): Slots {
  const starts: { readonly slot: number; readonly index: number; readonly group: Group; readonly at: number }[] = []
  let slot = 0
  let index = 0
  for (const [at, group] of groups.entries()) {
    starts.push({ slot, index, group, at })
    slot += group.works + 1
    index += group.works
  }
  function last(is: (start: (typeof starts)[number]) => boolean) {
    return starts.findLast(is) ?? starts[0]
  }
  return {
    count: slot,
    at(wanted) {
      const start = last(one => one.slot <= wanted)
      if (start === undefined) return { kind: 'work', index: wanted }
      if (start.slot === wanted) return { kind: 'heading', group: start.group, at: start.at }
      return { kind: 'work', index: start.index + wanted - start.slot - 1 }
    },
    of(wanted) {
      const start = last(one => one.index <= wanted && wanted < one.index + one.group.works)
      return start === undefined ? wanted : start.slot + 1 + wanted - start.index
    },
  }
}
