/**
 * The stacks and grids of a whole show before it is planned, section by section, and those that hang already. Works that
 * a rule names, that stay or have no size hang by themselves. mm.
 */
import { type Framed, formUnits, type HangUnit } from './form-units.ts'
import { at } from './problem.ts'
import type { SectionHang } from './section-hang.ts'
import type { Stretch } from './stretches.ts'
import { mayHangOn } from './unit-on.ts'

export interface WorkOfSection extends Framed {
  readonly entry: string
  readonly section: string | null
  readonly labelled: boolean
  /** May stand with others: nothing holds it, no rule names it. */
  readonly free: boolean
}

export interface HangOfSection {
  readonly id: string
  readonly hang: SectionHang
}

/** A unit of several works, with what its section asks. */
export interface ShowUnit extends Omit<HangUnit, 'works'> {
  readonly section: string
  readonly entries: readonly string[]
  readonly hang: SectionHang
}

export interface WallRoom {
  readonly stretches: readonly Stretch[]
  readonly margin: number
  readonly gap: number
  /** Of one label in a column beside a unit, with what stays free about it. */
  readonly label: { readonly width: number; readonly height: number }
}

/** Free for works on a stretch. */
function freeOn({ from, to }: Stretch, margin: number): number {
  return to - from - 2 * margin
}

/**
 * How the works of a section are formed into units, singles among them: as many above one another as the section lets
 * and walls take that are long enough for all of it; else one less, and so on.
 */
export function sectionUnits(works: readonly Framed[], hang: SectionHang, room: WallRoom): HangUnit[] {
  const { stretches, margin, gap } = room
  let found: HangUnit[] = []
  for (let rows = hang.hang === 'row' ? 1 : hang.rows; rows >= 1; rows -= 1) {
    const form = rows === 1 ? { ...hang, hang: 'row' as const } : { ...hang, rows }
    const kept = new Map<string, boolean>()
    const fits = (width: number, height: number) => {
      const key = `${width} ${height}`
      const known = kept.get(key)
      if (known !== undefined) return known
      const takes = stretches.some(stretch => mayHangOn(stretch, { width, height }, hang, margin))
      kept.set(key, takes)
      return takes
    }
    found = formUnits(works, form, gap, fits)
    const several = found.filter(unit => unit.works.length > 1)
    const wanted = several.reduce((sum, unit) => sum + unit.width + gap, 0)
    const [width, height] = [
      Math.max(0, ...several.map(unit => unit.width)),
      Math.max(0, ...several.map(unit => unit.height)),
    ]
    const there = stretches
      .filter(stretch => several.length > 0 && mayHangOn(stretch, { width, height }, hang, margin))
      .reduce((sum, stretch) => sum + Math.max(0, freeOn(stretch, margin) + gap), 0)
    if (there >= wanted) return found
  }
  return found
}

/** Runs of works of one section that may stand together. */
function runsOf(works: readonly WorkOfSection[], section: string): (readonly WorkOfSection[])[] {
  const runs: WorkOfSection[][] = [[]]
  for (const work of works) {
    if (work.section !== section) continue
    if (work.free) at(runs, runs.length - 1).push(work)
    else runs.push([])
  }
  return runs.filter(run => run.length > 0)
}

/**
 * The gap beside a unit holds one column of labels. Where the labels of all its works are too many for a column of its
 * height, it is wider by the others, and stands at the left of that.
 */
function withLabels<U extends Omit<HangUnit, 'works'>>(unit: U, labels: number, { label }: WallRoom): U {
  const each = Math.max(1, Math.floor(unit.height / label.height))
  const more = Math.max(0, Math.ceil(labels / each) - 1) * label.width
  if (more === 0) return unit
  return { ...unit, width: unit.width + more, places: unit.places.map(({ dx, dy }) => ({ dx: dx - more / 2, dy })) }
}

/** Stacks and grids of a show, those of one work left out. */
export function unitsOfShow(
  works: readonly WorkOfSection[],
  sections: readonly HangOfSection[],
  room: WallRoom,
): ShowUnit[] {
  return sections.flatMap(({ id, hang }) => {
    if (hang.hang === 'row') return []
    return runsOf(works, id).flatMap(run =>
      sectionUnits(run, hang, room).flatMap(({ works: own, ...unit }) => {
        if (own.length < 2) return []
        const standing = own.map(index => at(run, index))
        const labels = standing.filter(work => work.labelled).length
        return [{ ...withLabels(unit, labels, room), section: id, hang, entries: standing.map(({ entry }) => entry) }]
      }),
    )
  })
}

export interface HungWork extends WorkOfSection {
  readonly x: number
  readonly y: number
}

/**
 * Stacks and grids as they hang on a wall: works of a section that asks for them which stand above one another, in a
 * grid the columns beside them too.
 */
export function unitsAsHung(works: readonly HungWork[], sections: readonly HangOfSection[]): ShowUnit[] {
  return sections.flatMap(({ id, hang }) => {
    if (hang.hang === 'row') return []
    const own = works
      .filter(work => work.section === id && work.free)
      .sort((a, b) => a.x - a.width / 2 - (b.x - b.width / 2))
    const reach = hang.hang === 'grid' ? hang.gapAcross + 1 : 0
    const groups: HungWork[][] = []
    let right = Number.NEGATIVE_INFINITY
    for (const work of own) {
      const group = groups.at(-1)
      const [from, to] = [work.x - work.width / 2, work.x + work.width / 2]
      if (group !== undefined && from < right + reach - 1e-6) group.push(work)
      else groups.push([work])
      right = Math.max(right, to)
    }
    return groups.flatMap(group => (stands(group) ? [asUnit(group, id, hang)] : []))
  })
}

/** Whether some work of a group stands above another. */
function stands(group: readonly HungWork[]): boolean {
  return group.some((one, index) =>
    group.slice(index + 1).some(other => Math.abs(one.x - other.x) < (one.width + other.width) / 2 - 1),
  )
}

function asUnit(group: readonly HungWork[], section: string, hang: SectionHang): ShowUnit {
  const left = Math.min(...group.map(({ x, width }) => x - width / 2))
  const right = Math.max(...group.map(({ x, width }) => x + width / 2))
  const bottom = Math.min(...group.map(({ y, height }) => y - height / 2))
  const top = Math.max(...group.map(({ y, height }) => y + height / 2))
  const [x, y] = [(left + right) / 2, (bottom + top) / 2]
  // Read as it was formed: rows from the top, each from its left end.
  const ordered = [...group].sort((a, b) =>
    Math.abs(a.y - b.y) > Math.min(a.height, b.height) / 2 ? b.y - a.y : a.x - b.x,
  )
  return {
    kind: hang.hang === 'grid' ? 'grid' : 'stack',
    section,
    hang,
    entries: ordered.map(({ entry }) => entry),
    width: right - left,
    height: top - bottom,
    places: ordered.map(work => ({ dx: work.x - x, dy: work.y - y })),
  }
}
