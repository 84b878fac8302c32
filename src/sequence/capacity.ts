/**
 * Whether a checklist fits a building before anything is placed: the length that works want, side by side with what
 * must stay free between them, against the free lengths of the walls. Running lengths in mm. Sections come one after
 * the other along the visitor's way, so what does not fit is missing at the end.
 */
export interface Wanted {
  readonly id: string
  readonly section: string | null
  /** Null while its size is not known. */
  readonly width: number | null
  /** Above one another on that width; one where left out. */
  readonly works?: number
}

export interface FreeStretch {
  readonly length: number
  /** Free at either end, and between works. */
  readonly margin: number
  readonly gap: number
}

export interface SectionNeeds {
  readonly section: string | null
  readonly works: number
  readonly unsized: number
  /** Works, what stays free between them and the section's panel. */
  readonly needed: number
  /** Where along the whole it begins, and how much of it lies past the last wall. */
  readonly from: number
  readonly short: number
}

export interface Capacity {
  /** Free lengths, their ends taken off. */
  readonly there: number
  readonly needed: number
  /** Above 0 where not all fits, however it is put; where it is 0, single walls may still end at the wrong place. */
  readonly short: number
  readonly sections: readonly SectionNeeds[]
  /** Works wider than every stretch, which no order helps. */
  readonly tooWide: readonly string[]
}

/** What `works` of a row want: their widths, and after each what stays free. The last's is the end's. */
export function wants(widths: readonly number[], gap: number): number {
  return widths.reduce((sum, width) => sum + width + gap, 0)
}

/** What a stretch gives to works that each want their width and a gap. 0 where its ends leave nothing. */
export function gives({ length, margin, gap }: FreeStretch): number {
  return Math.max(0, length - 2 * margin + gap)
}

/**
 * @param sections in their order; works without one come last
 * @param panel width of a text panel at the beginning of each section that has works; 0 for none
 */
export function capacityOf(
  works: readonly Wanted[],
  sections: readonly (string | null)[],
  stretches: readonly FreeStretch[],
  panel: number,
): Capacity {
  const gap = stretches.reduce((sum, one) => sum + one.gap, 0) / Math.max(1, stretches.length)
  const there = stretches.reduce((sum, one) => sum + gives(one), 0)
  const longest = Math.max(0, ...stretches.map(({ length, margin }) => length - 2 * margin))
  let from = 0
  const needs = sections.flatMap((section): SectionNeeds[] => {
    const own = works.filter(work => work.section === section)
    if (own.length === 0) return []
    const widths = own.flatMap(work => work.width ?? [])
    const needed = wants(section !== null && panel > 0 ? [panel, ...widths] : widths, gap)
    const begins = from
    from += needed
    const short = Math.max(0, Math.min(needed, from - there))
    return [
      {
        section,
        works: own.reduce((sum, { works: n = 1 }) => sum + n, 0),
        unsized: own.length - widths.length,
        needed,
        from: begins,
        short,
      },
    ]
  })
  return {
    there,
    needed: from,
    short: Math.max(0, from - there),
    sections: needs,
    tooWide: works.filter(work => work.width !== null && work.width > longest).map(work => work.id),
  }
}
