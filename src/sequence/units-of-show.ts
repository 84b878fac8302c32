/**
 * The stacks and grids of a whole show before it is planned, section by section, and those that hang already. Works that
 * a rule names, that stay or have no size hang by themselves. mm.
 */
import { centreOf } from '../geometry/rect.ts'
import { stacksOn } from '../layout/stacks-on.ts'
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
  /** Of the band in which labels can be read. */
  readonly band: number
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
 * height in the band that can be read, it is wider by the others, and stands at the left of that.
 */
function withLabels<U extends Omit<HangUnit, 'works'>>(unit: U, labels: number, { label, band }: WallRoom): U {
  const each = Math.max(1, Math.floor(Math.min(unit.height, band) / label.height))
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

/** Stacks and grids as they hang on a wall, of works that are free to. */
export function unitsAsHung(works: readonly HungWork[], sections: readonly HangOfSection[]): ShowUnit[] {
  const stands = new Map(works.map(work => [work.entry, work] as const))
  const rects = works.map(({ entry, x, y, width, height }) => ({
    id: entry,
    ...{ x: x - width / 2, y: y - height / 2, width, height },
  }))
  return sections.flatMap(({ id, hang }) => {
    if (hang.hang === 'row') return []
    const own = works.filter(work => work.section === id && work.free).map(({ entry }) => entry)
    return stacksOn(rects, [{ hang: hang.hang, gapDown: hang.gapDown, gapAcross: hang.gapAcross, works: own }]).map(
      ({ works: entries, ...rect }): ShowUnit => {
        const middle = centreOf(rect)
        return {
          kind: hang.hang === 'grid' ? 'grid' : 'stack',
          section: id,
          hang,
          entries,
          width: rect.width,
          height: rect.height,
          places: entries.flatMap(entry => {
            const work = stands.get(entry)
            return work === undefined ? [] : [{ dx: work.x - middle.x, dy: work.y - middle.y }]
          }),
        }
      },
    )
  })
}
